package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EstimatedRunLengthsTest {
    private static final int FLEETS = 4000;

    /** For each of many estimates, the chart's average run length in truth. */
    private static double[] simulated(EwmaChart chart, int observations) {
        SplittableRandom random = new SplittableRandom(20_261_128L + observations);
        double[] averages = new double[FLEETS];
        for (int f = 0; f < FLEETS; f++) {
            double[] x = new double[observations];
            Arrays.setAll(x, i -> random.nextGaussian());
            double mean = Arrays.stream(x).average().orElseThrow();
            double deviation = Math.sqrt(Arrays.stream(x)
                            .map(value -> (value - mean) * (value - mean))
                            .sum()
                    / (observations - 1));
            // The chart sees (x − mean)/deviation.
            averages[f] = chart.scaled(deviation).averageRunLength(Change.step(mean));
        }
        Arrays.sort(averages);
        return averages;
    }

    @ParameterizedTest
    @CsvSource({"20", "100"})
    void theDistributionIsThatOfSimulatedEstimates(int observations) {
        EwmaChart chart = EwmaChart.designed(0.2, EwmaChart.Limits.FIXED, Sides.BOTH, Goal.average(500));
        EstimatedRunLengths lengths = EstimatedRunLengths.of(chart, observations);
        double[] averages = simulated(chart, observations);

        for (double p : new double[] {0.05, 0.1, 0.25, 0.5, 0.75, 0.9}) {
            double found = averages[(int) (p * FLEETS)];
            // Three standard deviations of the share of so many estimates.
            assertThat(lengths.chanceBelow(found)).isCloseTo(p, within(3 * Math.sqrt(p * (1 - p) / FLEETS)));
            assertThat(lengths.chanceBelow(lengths.quantile(p))).isCloseTo(p, within(1e-6));
        }
    }

    @Test
    void fiveHundredOfTwentyObservationsIsOftenMuchLess() {
        EwmaChart chart = EwmaChart.designed(0.2, EwmaChart.Limits.FIXED, Sides.BOTH, Goal.average(500));
        EstimatedRunLengths of20 = EstimatedRunLengths.of(chart, 20);

        assertThat(of20.chanceBelow(500)).isBetween(0.70, 0.78);
        assertThat(of20.quantile(0.1)).isBetween(38.0, 48.0);
        assertThat(of20.median()).isBetween(180.0, 215.0);
    }

    @Test
    void manyObservationsAreAsGoodAsKnowing() {
        for (ControlChart chart : new ControlChart[] {
            EwmaChart.fixed(0.2, 2.9622), CusumChart.twoSided(0.5, 5.0707), IndividualsChart.standardized(3.3, 4.5)
        }) {
            double known = chart.averageRunLength(Change.none());
            EstimatedRunLengths lengths = EstimatedRunLengths.of(chart, 1_000_000);

            assertThat(lengths.median()).isCloseTo(known, within(0.002 * known));
            assertThat(lengths.quantile(0.05)).isGreaterThan(0.97 * known);
            assertThat(lengths.quantile(0.95)).isLessThan(1.03 * known);
        }
    }

    @Test
    void aShewhartChartHasItInOneIntegral() {
        // With the mean known, P(ARL < a) is that of W below L(a)/L; the estimated mean only adds to it.
        EwmaChart chart = new EwmaChart(1, 3, EwmaChart.Limits.FIXED, Sides.BOTH);
        EstimatedRunLengths lengths = EstimatedRunLengths.of(chart, 30);

        assertThat(lengths.chanceBelow(370.398)).isGreaterThan(0.5);
        assertThat(lengths.chanceBelow(1)).isZero();
        assertThat(lengths.chanceBelow(1e7)).isCloseTo(1, within(1e-4));
    }

    @Test
    void whatIsOutOfRangeIsRefused() {
        EwmaChart chart = EwmaChart.fixed(1, 3);
        EstimatedRunLengths lengths = EstimatedRunLengths.of(chart, 5);

        assertThatThrownBy(() -> EstimatedRunLengths.of(chart, 4)).hasMessageContaining("5 to 1000000");
        assertThatThrownBy(() -> EstimatedRunLengths.of(chart, 1_000_001)).hasMessageContaining("5 to 1000000");
        assertThatThrownBy(() -> lengths.chanceBelow(0.9)).hasMessageContaining("average run length");
        assertThatThrownBy(() -> lengths.chanceBelow(1.1e7)).hasMessageContaining("average run length");
        assertThatThrownBy(() -> lengths.quantile(0.9999)).hasMessageContaining("can't be computed");
        assertThatThrownBy(() -> lengths.quantile(0)).hasMessageContaining("probability");
        assertThatThrownBy(() -> EstimatedRunLengths.of(EwmaChart.fixed(1, 30), 20))
                .hasMessageContaining("average run length in control");
    }

    @Test
    void aChartThatAlwaysSignalsHasAnAverageOf1() {
        EstimatedRunLengths lengths = EstimatedRunLengths.of(EwmaChart.fixed(1, 1e-17), 20);

        assertThat(lengths.quantile(1e-7)).isEqualTo(1);
        assertThat(lengths.chanceBelow(2)).isCloseTo(1, within(1e-6));
    }

    @Test
    void itKnowsWhatItIsOf() {
        EwmaChart chart = EwmaChart.fixed(1, 3);
        EstimatedRunLengths lengths = EstimatedRunLengths.of(chart, 20);

        assertThat(lengths.chart()).isEqualTo(chart);
        assertThat(lengths.observations()).isEqualTo(20);
        assertThat(lengths)
                .isEqualTo(EstimatedRunLengths.of(chart, 20))
                .isNotEqualTo(EstimatedRunLengths.of(chart, 21))
                .isNotEqualTo(EstimatedRunLengths.of(EwmaChart.fixed(1, 3.1), 20))
                .isNotEqualTo("");
        assertThat(lengths.hashCode())
                .isNotEqualTo(EstimatedRunLengths.of(chart, 21).hashCode());
        assertThat(lengths.toString()).contains("with estimates from 20 observations");
    }
}
