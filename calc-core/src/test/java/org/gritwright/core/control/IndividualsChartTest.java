package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IndividualsChartTest {
    @Test
    void factorsOfTheRangeOfTwoAreThoseOfTheTables() {
        // 1.128 and 3.267 in every textbook, from memory.
        assertThat(IndividualsChart.d2()).isCloseTo(1.128, within(0.0005));
        assertThat(IndividualsChart.d4()).isCloseTo(3.267, within(0.0005));
    }

    @Test
    void limitsComeFromTheMeanRange() {
        IndividualsChart chart = IndividualsChart.of(10, 12, 11, 15);

        // Ranges 2, 1, 4: mean 7/3.
        assertThat(chart.center()).isEqualTo(12);
        assertThat(chart.deviation()).isCloseTo(7.0 / 3 / IndividualsChart.d2(), within(1e-15));
        assertThat(chart.upper()).isCloseTo(12 + 3 * chart.deviation(), within(1e-14));
        assertThat(chart.lower()).isCloseTo(12 - 3 * chart.deviation(), within(1e-14));
        assertThat(chart.highestRange()).isCloseTo(IndividualsChart.d4() * 7 / 3, within(1e-14));
    }

    @Test
    void observationsAndRangesBeyondTheirLimitsAreSignals() {
        IndividualsChart chart = new IndividualsChart(10, 2, 3, 4);
        List<IndividualsChart.Point> points = chart.run(16, 16.5, 8, 4, 3.9, 5);

        assertThat(points)
                .containsExactly(
                        new IndividualsChart.Point(1, 16, 0, false, false),
                        new IndividualsChart.Point(2, 16.5, 0.5, true, false),
                        new IndividualsChart.Point(3, 8, 8.5, false, true),
                        new IndividualsChart.Point(4, 4, 4, false, false),
                        new IndividualsChart.Point(5, 3.9, 4 - 3.9, true, false),
                        new IndividualsChart.Point(6, 5, 5 - 3.9, false, false));
        assertThat(points)
                .extracting(IndividualsChart.Point::isSignal)
                .containsExactly(false, true, true, false, true, false);
        assertThat(chart.run()).isEmpty();
        // 2 deviations times the range's limit of 4: at it is no signal.
        assertThat(chart.run(14, 6, 14.5))
                .extracting(IndividualsChart.Point::isRangeOutside)
                .containsExactly(false, false, true);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 18.2164",
        "0.25, 16.3541",
        "0.5, 12.4282",
        "0.75, 8.7559",
        "1, 6.1071",
        "1.25, 4.3582",
        "1.5, 3.2260",
        "1.75, 2.4878",
        "2, 1.9989"
    })
    void averagesAreCrowdersToThePartsPerThousandThatHisIntegrationKeeps(double shift, double printed) {
        IndividualsChart chart = IndividualsChart.standardized(2, 3);
        double average = chart.averageRunLength(Change.step(shift));

        assertThat(average).isCloseTo(printed, within(0.001 * printed));
        assertThat(chart.runLengths(Change.step(shift)).average()).isCloseTo(average, within(1e-9 * average));
    }

    @Test
    void aRangeThatIsNeverTooLargeLeavesTheIndividualsAlone() {
        double alone = 1 / (2 * Normal.below(-2.5));

        assertThat(IndividualsChart.standardized(2.5, 5).averageRunLength(Change.none()))
                .isCloseTo(alone, within(1e-9));
        assertThat(IndividualsChart.standardized(2.5, 100).averageRunLength(Change.none()))
                .isCloseTo(alone, within(1e-9));
        assertThat(IndividualsChart.standardized(2.5, 4.9).averageRunLength(Change.none()))
                .isBetween(alone * 0.99, alone * 0.99999);
    }

    @ParameterizedTest
    @CsvSource({"2, 1", "2, 2", "2, 0.8", "3, 1.5"})
    void aRangeThatFitsAWholeNumberOfTimesIsNoSpecialCase(double limit, double range) {
        double at = IndividualsChart.standardized(limit, range).averageRunLength(Change.step(0.3));
        double narrower =
                IndividualsChart.standardized(limit, range * (1 - 1e-6)).averageRunLength(Change.step(0.3));
        double wider = IndividualsChart.standardized(limit, range * (1 + 1e-6)).averageRunLength(Change.step(0.3));

        assertThat(at).isCloseTo((narrower + wider) / 2, within(1e-9 * at));
        assertThat(narrower).isLessThan(at);
        assertThat(wider).isGreaterThan(at);
    }

    @ParameterizedTest
    @CsvSource({
        "NaN, 1, 3, 3",
        "0, 0, 3, 3",
        "0, NaN, 3, 3",
        "0, 1, 0, 3",
        "0, 1, NaN, 3",
        "0, 1, 20.1, 30",
        "0, 1, 3, 0.29",
        "0, 1, 3, NaN",
        "0, 1, 3, Infinity"
    })
    void whatIsNoChartIsRefused(double center, double deviation, double limit, double rangeLimit) {
        assertThatThrownBy(() -> new IndividualsChart(center, deviation, limit, rangeLimit))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void observationsThatTellNothingAreRefused() {
        assertThat(IndividualsChart.standardized(20, 2).limit()).isEqualTo(20);
        assertThatThrownBy(() -> IndividualsChart.standardized(20, 1.9)).hasMessageContaining("or more, 2.0");
        assertThat(IndividualsChart.of(1, 2).center()).isEqualTo(1.5);
        assertThatThrownBy(() -> IndividualsChart.of(1)).hasMessageContaining("two or more");
        assertThatThrownBy(() -> IndividualsChart.of(1, 1, 1)).hasMessageContaining("standard deviation");
        assertThatThrownBy(() -> IndividualsChart.of(1, Double.NaN)).hasMessageContaining("observation");
        assertThatThrownBy(() -> IndividualsChart.of(Double.NaN, 1)).hasMessageContaining("observation");
        assertThatThrownBy(() -> new IndividualsChart.Point(0, 1, 0, false, false))
                .hasMessageContaining("number");
        assertThatThrownBy(() -> new IndividualsChart.Point(1, Double.NaN, 0, false, false))
                .hasMessageContaining("observation");
        assertThatThrownBy(() -> new IndividualsChart.Point(1, 1, -1, false, false))
                .hasMessageContaining("moving range");
        assertThatThrownBy(() -> IndividualsChart.standardized(3, 3).scaled(0)).hasMessageContaining("factor");
    }
}
