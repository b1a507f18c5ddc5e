package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FillLimitsTest {
    @Test
    void usualIsFromOneHalfTo115AndPossibleFromThreeTenthsTo13() {
        // common practice, no source
        assertThat(FillLimits.COMMON).isEqualTo(new FillLimits(0.3, 0.5, 1.15, 1.3));
    }

    @ParameterizedTest
    @CsvSource({
        "0.29, false, false",
        "0.3, false, true",
        "0.49, false, true",
        "0.5, true, true",
        "1.15, true, true",
        "1.16, false, true",
        "1.3, false, true",
        "1.31, false, false",
        "NaN, false, false"
    })
    void limitsThemselvesAreInside(double fill, boolean usual, boolean possible) {
        assertThat(FillLimits.COMMON.isUsual(fill)).isEqualTo(usual);
        assertThat(FillLimits.COMMON.isPossible(fill)).isEqualTo(possible);
    }

    @Test
    void theUsualMayBeAllThatIsPossible() {
        assertThat(new FillLimits(0.5, 0.5, 1.15, 1.15).isPossible(1.15)).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "0.0, 0.5, 1.15, 1.3",
        "0.6, 0.5, 1.15, 1.3",
        "0.3, 0.5, 0.5, 1.3",
        "0.3, 0.5, 1.15, 1.1",
        "0.3, 0.5, 1.15, Infinity",
        "NaN, 0.5, 1.15, 1.3",
        "0.3, NaN, 1.15, 1.3",
        "0.3, 0.5, NaN, 1.3",
        "0.3, 0.5, 1.15, NaN"
    })
    void limitsRise(double lowestPossible, double lowestUsual, double highestUsual, double highestPossible) {
        assertRefused(
                "limits of the apparent fill must be finite, greater than 0 and in rising order: " + lowestPossible
                        + ", " + lowestUsual + ", " + highestUsual + ", " + highestPossible,
                () -> new FillLimits(lowestPossible, lowestUsual, highestUsual, highestPossible));
    }
}
