package org.gritwright.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;

import java.util.List;
import org.junit.jupiter.api.Test;

class RejectedDocumentExceptionTest {
    private static final Problem ID = new Problem("type", "/trucks/3/id", "a text", "7");
    private static final Problem WHOLE = new Problem("type", "", "an object", "a text");

    @Test
    void theMessageHasALineForEachProblem() {
        RejectedDocumentException rejected = new RejectedDocumentException(List.of(ID, WHOLE));

        assertThat(rejected).hasMessage("""
                /trucks/3/id: expected a text, found 7
                document: expected an object, found a text""");
        assertThat(rejected.problems()).containsExactly(ID, WHOLE);
        assertThat(rejected.more()).isZero();
    }

    @Test
    void andOneForThoseThatAreNotListed() {
        RejectedDocumentException rejected = new RejectedDocumentException(List.of(ID), 2);

        assertThat(rejected).hasMessage("/trucks/3/id: expected a text, found 7\nand 2 more");
        assertThat(rejected.more()).isEqualTo(2);
    }

    @Test
    void whatIsMissingInAProblemIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(ID);
    }
}
