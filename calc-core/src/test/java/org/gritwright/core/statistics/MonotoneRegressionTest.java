package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import org.gritwright.core.Shipped;
import org.junit.jupiter.api.Test;

class MonotoneRegressionTest {
    static MonotoneRegression fit(double... y) {
        double[] x = new double[y.length];
        double[] ones = new double[y.length];
        Arrays.setAll(x, i -> i + 1);
        Arrays.fill(ones, 1);
        return MonotoneRegression.fit(x, y, ones);
    }

    private static double[] values(MonotoneRegression fit) {
        return fit.rows().stream().mapToDouble(MonotoneRegression.Row::value).toArray();
    }

    @Test
    void aRiseStaysAsItIs() {
        assertThat(values(fit(-1, 0, 0, 2.5))).containsExactly(-1, 0, 0, 2.5);
    }

    @Test
    void whatFallsIsPooledAtItsWeightedMean() {
        MonotoneRegression fit =
                MonotoneRegression.fit(new double[] {1, 2, 3}, new double[] {3, 2, 9}, new double[] {1, 3, 1});

        assertThat(values(fit)).containsExactly(new double[] {2.25, 2.25, 9}, within(1e-12));
        assertThat(fit.rows()).extracting(MonotoneRegression.Row::block).containsExactly(0, 0, 1);
        assertThat(fit.rows().get(1).blockWeight()).isCloseTo(4, within(1e-12));
        assertThat(fit.rows().get(2).blockWeight()).isCloseTo(1, within(1e-12));
        assertThat(fit.rows().get(1).weight()).isCloseTo(3, within(1e-12));
        assertThat(fit.rows()).extracting(MonotoneRegression.Row::mean).containsExactly(3.0, 2.0, 9.0);
    }

    /** (1, 3; weights 1, 3) have the mean 2.5 and weighted squares 1·1.5² + 3·0.5² = 3; 10 and 12 have 2. */
    @Test
    void repeatsBecomeOneRowAndShowTheScatterOfOneReading() {
        MonotoneRegression fit = MonotoneRegression.fit(
                new double[] {2, 1, 1, 2}, new double[] {10, 1, 3, 12}, new double[] {1, 1, 3, 1});

        assertThat(fit.rows()).extracting(MonotoneRegression.Row::x).containsExactly(1.0, 2.0);
        assertThat(fit.rows()).extracting(MonotoneRegression.Row::size).containsExactly(2, 2);
        assertThat(values(fit)).containsExactly(new double[] {2.5, 11}, within(1e-12));
        assertThat(fit.rows().get(0).squares()).isCloseTo(3, within(1e-12));
        assertThat(fit.rows().get(1).squares()).isCloseTo(2, within(1e-12));
        assertThat(fit.degreesOfFreedom()).isEqualTo(2);
        assertThat(fit.deviation().orElseThrow()).isCloseTo(Math.sqrt(2.5), within(1e-12));
    }

    @Test
    void withoutRepeatsNothingIsKnownOfTheScatter() {
        assertThat(fit(1, 5, 2).degreesOfFreedom()).isZero();
        assertThat(fit(1, 5, 2).deviation()).isEmpty();
    }

    @Test
    void itIsAValue() {
        Shipped.assertIsAValue(fit(1, 2, 3), fit(1, 2, 3), fit(1, 2, 4));
        assertThat(fit(1, 5, 2)).hasToString("monotone regression, 3 rows in 2 blocks, 0 degrees of freedom");
        assertThat(fit(7)).hasToString("monotone regression, 1 row in 1 block, 0 degrees of freedom");
    }

    @Test
    void whatCantBeFittedIsRefused() {
        double[] one = {1};
        double[] two = {1, 2};
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 1 x, 2 y, 1 weights",
                () -> MonotoneRegression.fit(one, two, one));
        assertRefused("weight must be greater than 0: 0.0", () -> MonotoneRegression.fit(one, one, new double[] {0}));
        assertRefused("y must be finite: NaN", () -> MonotoneRegression.fit(one, new double[] {Double.NaN}, one));
        assertRefused(
                "fitted value must be finite: Infinity",
                () -> MonotoneRegression.fit(two, new double[] {1.7e308, 1.6e308}, new double[] {1, 1}));
    }
}
