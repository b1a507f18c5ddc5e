package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.gritwright.core.control.EwmaChart.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DesignTest {
    @ParameterizedTest
    @CsvSource({
        "0.1, FIXED, BOTH, 500",
        "0.1, EXACT, BOTH, 500",
        "0.2, FIXED, UPPER, 370",
        "0.2, EXACT, LOWER, 200",
        "1, FIXED, BOTH, 370.398",
        "0.02, FIXED, BOTH, 1.5",
        "0.3, FIXED, BOTH, 1000000"
    })
    void anEwmaKeepsTheAverageItWasDesignedFor(double lambda, Limits limits, Sides sides, double average) {
        EwmaChart chart = EwmaChart.designed(lambda, limits, sides, Goal.average(average));

        assertThat(chart.averageRunLength(Change.none())).isCloseTo(average, within(1e-6 * average));
        assertThat(chart.lambda()).isEqualTo(lambda);
        assertThat(chart.limits()).isEqualTo(limits);
        assertThat(chart.sides()).isEqualTo(sides);
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, 0, BOTH, 500",
        "0.5, 0.5, BOTH, 500",
        "0.25, 1, UPPER, 300",
        "0, 0, BOTH, 200",
        "1, 0.5, LOWER, 500"
    })
    void aCusumKeepsTheAverageItWasDesignedFor(double allowance, double part, Sides sides, double average) {
        CusumChart chart = CusumChart.designed(allowance, part, sides, Goal.average(average));

        assertThat(chart.averageRunLength(Change.none())).isCloseTo(average, within(1e-6 * average));
        assertThat(chart.headstart()).isCloseTo(part * chart.limit(), within(1e-12 * chart.limit()));
        assertThat(chart.allowance()).isEqualTo(allowance);
        assertThat(chart.sides()).isEqualTo(sides);
    }

    @ParameterizedTest
    @CsvSource({"FIXED, 0.05, 30", "EXACT, 0.05, 30", "EXACT, 1e-6, 100", "FIXED, 0.9, 3", "FIXED, 0.01, 1"})
    void anEwmaKeepsTheChanceItWasDesignedFor(Limits limits, double chance, int within) {
        EwmaChart chart = EwmaChart.designed(0.2, limits, Sides.BOTH, new Goal.FalseAlarm(chance, within));

        assertThat(chart.runLengths(Change.none()).signalWithin(within)).isCloseTo(chance, within(2e-6 * chance));
    }

    @Test
    void aCusumKeepsTheChanceItWasDesignedFor() {
        CusumChart chart = CusumChart.designed(0.5, 0.5, Sides.BOTH, Goal.falseAlarms(2, 40, 25));

        assertThat(chart.runLengths(Change.none()).signalWithin(25)).isCloseTo(0.05, within(1e-7));
    }

    @Test
    void oneObservationIsAQuantileOfTheNormalDistribution() {
        assertThat(EwmaChart.designed(0.3, Limits.EXACT, Sides.BOTH, new Goal.FalseAlarm(0.05, 1))
                        .limit())
                .isCloseTo(Normal.exceededWith(0.025), within(1e-7));
    }

    @Test
    void goalsThatNoLimitMeetsAreRefused() {
        // Even with h near 0, one of 1/(2·Φ(−2)) = 22 is a signal on average.
        assertThatThrownBy(() -> CusumChart.designed(2, 0, Sides.BOTH, Goal.average(20)))
                .hasMessageContaining("goal in control");
        // With no allowance a sum of 10⁷ observations wanders some thousand standard deviations.
        assertThatThrownBy(() -> CusumChart.designed(0, 0, Sides.BOTH, Goal.average(1e7)))
                .hasMessageContaining("goal in control must be no more than the widest limit keeps: ")
                .hasMessageContaining("1.0E7")
                .cause()
                .hasMessageContaining("limit");
        assertThatThrownBy(() -> CusumChart.designed(0.5, 1.1, Sides.BOTH, Goal.average(20)))
                .hasMessageContaining("headstart as a part of the limit");
        assertThatThrownBy(() -> CusumChart.designed(0.5, -0.1, Sides.BOTH, Goal.average(20)))
                .hasMessageContaining("headstart as a part of the limit");
    }

    @Test
    void goalsAreChecked() {
        assertThat(Goal.median(500)).isEqualTo(new Goal.FalseAlarm(0.5, 500));
        assertThat(Goal.falseAlarms(1, 20, 30)).isEqualTo(new Goal.FalseAlarm(0.05, 30));
        assertThat(Goal.median(100_000)).isEqualTo(new Goal.FalseAlarm(0.5, 100_000));
        assertThat(Goal.average(1e7)).isEqualTo(new Goal.Average(1e7));
        assertThatThrownBy(() -> Goal.average(1)).hasMessageContaining("average run length in control");
        assertThatThrownBy(() -> Goal.average(1.1e7)).hasMessageContaining("average run length in control");
        assertThatThrownBy(() -> Goal.average(Double.NaN)).hasMessageContaining("average run length in control");
        assertThatThrownBy(() -> Goal.median(0)).hasMessageContaining("number of observations");
        assertThatThrownBy(() -> Goal.median(100_001)).hasMessageContaining("number of observations");
        assertThatThrownBy(() -> Goal.falseAlarms(1, 1, 30)).hasMessageContaining("chance of a false alarm");
        assertThatThrownBy(() -> Goal.falseAlarms(1, 0, 30)).hasMessageContaining("number of charts");
        assertThatThrownBy(() -> new Goal.FalseAlarm(1e-10, 30)).hasMessageContaining("chance of a false alarm");
        assertThat(new Goal.FalseAlarm(1e-9, 1).within()).isEqualTo(1);
    }
}
