package org.gritwright.core.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Bounds of rates against what they are by definition. */
class RatesTest {

    /** With none of n, (1 − p)ⁿ is 1 %. */
    @Test
    void noneOfSoManyProvesARate() {
        assertThat(Rates.upperBound(0, 300)).isCloseTo(1 - Math.pow(0.01, 1 / 300.0), within(1e-12));
        assertThat(Rates.lowerBound(300, 300)).isCloseTo(Math.pow(0.01, 1 / 300.0), within(1e-12));
    }

    /** The chance of that few hits at the bound, summed up term by term, is 1 %. */
    @Test
    void atTheBoundSoFewHitsHaveAChanceOfOnePercent() {
        double p = Rates.upperBound(3, 50);
        double sum = 0;
        double term = Math.pow(1 - p, 50);
        for (int k = 0; k <= 3; k++) {
            sum += term;
            term *= (50.0 - k) / (k + 1) * p / (1 - p);
        }

        assertThat(sum).isCloseTo(0.01, within(1e-10));
    }

    @Test
    void allAndNothing() {
        assertThat(Rates.upperBound(5, 5)).isEqualTo(1);
        assertThat(Rates.lowerBound(0, 5)).isZero();
    }
}
