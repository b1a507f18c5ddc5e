package org.gritwright.core.document;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class ProblemCodeTest {

    @Test
    void theIdsStayAsTheyAre() {
        assertThat(ProblemCode.values())
                .extracting(ProblemCode::id)
                .containsExactly(
                        "not-json",
                        "too-large",
                        "wrong-format",
                        "newer-version",
                        "missing-field",
                        "unknown-field",
                        "repeated-name",
                        "repeated-item",
                        "wrong-type",
                        "wrong-form",
                        "unknown-word",
                        "not-accepted");
    }
}
