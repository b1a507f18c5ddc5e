package org.gritwright.units.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ComparisonTest {
    @Test
    void whatRoundingAddsDoesNotCarryANumberOverItsLimit() {
        double revolutions = 62.0 / 60 * 30;

        assertThat(revolutions).isGreaterThan(31);
        assertThat(Comparison.isAbove(revolutions, 31)).isFalse();
        assertThat(Comparison.isAbove(31.0000001, 31)).isTrue();
    }

    @Test
    void whatRoundingAddsDoesNotCarryADifferenceOverItsLimit() {
        double error = 104.0 / 100 - 1;

        assertThat(error).isGreaterThan(0.04);
        assertThat(Comparison.isAbove(error, 0.04, 1)).isFalse();
        assertThat(Comparison.isAbove(0.0400001, 0.04, 1)).isTrue();
    }

    @Test
    void zeroIsALimitLikeAnyOther() {
        assertThat(Comparison.isAbove(0, 0)).isFalse();
        assertThat(Comparison.isAbove(Double.MIN_VALUE, 0)).isTrue();
        assertThat(Comparison.isAbove(-1, 0)).isFalse();
    }
}
