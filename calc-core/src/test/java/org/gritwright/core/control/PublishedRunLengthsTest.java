package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.gritwright.core.ControlTables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Published run lengths, each by the integral equation and observation by observation. The tables name their sources. */
class PublishedRunLengthsTest {
    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static ControlChart chart(Map<String, String> row, boolean isOwnLimit) {
        double limit = number(row, "limit");
        if (row.containsKey("lambda")) {
            double lambda = number(row, "lambda");
            return EwmaChart.fixed(lambda, isOwnLimit ? limit / Math.sqrt(lambda / (2 - lambda)) : limit);
        }
        return new CusumChart(
                number(row, "allowance"),
                limit,
                Double.parseDouble(row.getOrDefault("headstart", "0")),
                Sides.valueOf(row.getOrDefault("sides", "UPPER")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"ewma-step", "cusum-step", "ewma-drift", "cusum-drift"})
    void everyAverageIsThePrintedOneByBothMethods(String table) {
        boolean isDrift = table.endsWith("drift");
        List<Map<String, String>> rows = ControlTables.rows(table);
        assertThat(rows).hasSizeGreaterThan(10);
        for (Map<String, String> row : rows) {
            Change change = isDrift ? Change.drift(number(row, "drift")) : Change.step(number(row, "shift"));
            ControlChart chart = chart(row, isDrift);
            BigDecimal printed = new BigDecimal(row.get("published"));
            double average = chart.averageRunLength(change);

            assertThat(average)
                    .as("%s", row)
                    .isCloseTo(
                            printed.doubleValue(), within(printed.ulp().doubleValue() * number(row, "units") + 1e-12));
            assertThat(chart.runLengths(change).average()).as("%s", row).isCloseTo(average, within(1e-8 * average));
        }
    }

    @Test
    void aKnownValueComesOutToItsTenDigits() {
        assertThat(EwmaChart.fixed(0.25, 3).averageRunLength(Change.step(1))).isCloseTo(11.1542670164, within(5e-11));
    }

    @ParameterizedTest
    @CsvSource({"0.95, 346, 1", "0.5, 82, 0", "0.05, 9, 0"})
    void quantilesAreWaldmannsWithin(double probability, long expected, long offFromPrinted) {
        RunLengths lengths = new CusumChart(0.5, 3, 0, Sides.UPPER).runLengths(Change.none());

        assertThat(lengths.quantile(probability)).isEqualTo(expected);
        // Waldmann's printed 345 is one too few: there a chance of 0.0502 is left.
        assertThat(lengths.survival(expected)).isLessThanOrEqualTo(1 - probability);
        assertThat(lengths.survival(expected - 1)).isGreaterThan(1 - probability);
        assertThat(expected - offFromPrinted).isIn(345L, 82L, 9L);
    }

    @ParameterizedTest
    @CsvSource({"0.05, 0.441", "0.1, 0.675", "0.15, 0.863", "0.2, 1.027", "0.25, 1.177"})
    void medianDesignsAreGans(double lambda, double limit) {
        EwmaChart chart = EwmaChart.designed(lambda, EwmaChart.Limits.FIXED, Sides.BOTH, Goal.median(500));

        assertThat(chart.limitAt(1)).isCloseTo(limit, within(0.00061));
        assertThat(chart.runLengths(Change.none()).median()).isBetween(500L, 501L);
    }

    @ParameterizedTest
    @CsvSource({
        "0.05, 250, 2.318", "0.1, 250, 2.546", "0.15, 250, 2.654", "0.2, 250, 2.719", "0.25, 250, 2.761",
        "0.05, 500, 2.6151", "0.1, 500, 2.8143", "0.2, 500, 2.9622", "0.25, 500, 2.9981", "0.3, 500, 3.0230",
        "0.4, 500, 3.0540", "0.5, 500, 3.0711"
    })
    void limitsForAnAverageAreThoseOfAnIndependentProgram(double lambda, double average, BigDecimal limit) {
        assertThat(EwmaChart.designed(lambda, EwmaChart.Limits.FIXED, Sides.BOTH, Goal.average(average))
                        .limit())
                .isCloseTo(limit.doubleValue(), within(limit.ulp().doubleValue() * 0.5001));
    }

    @ParameterizedTest
    @CsvSource({"370.4, 4.7749", "500, 5.0707", "465.4435, 5", "167.6838, 4"})
    void cusumLimitsForAnAverageAreThoseOfAnIndependentProgram(double average, BigDecimal limit) {
        assertThat(CusumChart.designed(0.5, 0, Sides.BOTH, Goal.average(average))
                        .limit())
                .isCloseTo(limit.doubleValue(), within(0.5001e-4));
    }

    @Test
    void anObservationMoreOfDriftMakesRunsShorterByLessThanOne() {
        EwmaChart chart = EwmaChart.fixed(0.242, 3);
        double fromSecond = chart.averageRunLength(Change.drift(0.1));
        double fromFirst = chart.averageRunLength(Change.driftFromFirst(0.1));

        assertThat(fromSecond - fromFirst).isBetween(0.5, 1.0);
    }
}
