package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.junit.jupiter.api.Test;

class NameCheckTest {
    private static RejectedDocumentException told(int unknown) {
        Problems problems = new Problems(DocumentLimits.COMMON);
        NameCheck check = new NameCheck(Stream.of("platform", "hanging"), problems);
        check.check(Pointer.ROOT, "platform");
        for (int i = 0; i < unknown; i++) {
            check.check(Pointer.ROOT.at(i), "plattform");
        }
        return problems.rejected();
    }

    @Test
    void aNameThatIsKnownIsNoProblemAndOneThatIsNotHasItsNearest() {
        assertThat(told(0).problems()).isEmpty();
        assertThat(told(1))
                .hasMessage("/0: expected one of [hanging, platform], found \"plattform\"; did you mean \"platform\"?");
    }

    @Test
    void noMoreThanAHundredAreTold() {
        assertThat(told(100).problems()).hasSize(100);
        assertThat(told(101).problems()).hasSize(100);
        assertThat(told(101).more()).isZero();
    }
}
