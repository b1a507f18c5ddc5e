package org.gritwright.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DocumentLimitsTest {

    @Test
    void oneOfEachIsTheLeast() {
        assertThat(new DocumentLimits(1, 1, 1, 1, 1, 1, 1).nodes()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "0,1,1,1,1,1,1",
        "1,0,1,1,1,1,1",
        "1,1,0,1,1,1,1",
        "1,1,1,0,1,1,1",
        "1,1,1,1,0,1,1",
        "1,1,1,1,1,0,1",
        "1,1,1,1,1,1,0"
    })
    void aLimitBelowOneIsRefused(
            int bytes, int depth, int nodes, int textLength, int nameLength, int problems, int problemsLength) {
        assertThatThrownBy(
                        () -> new DocumentLimits(bytes, depth, nodes, textLength, nameLength, problems, problemsLength))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("document limits must be 1 or more each");
    }
}
