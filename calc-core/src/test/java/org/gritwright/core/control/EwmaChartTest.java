package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.gritwright.core.ControlTables;
import org.gritwright.core.control.EwmaChart.Limits;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EwmaChartTest {
    private static final EwmaChart CHART = new EwmaChart(0.1, 2.7, Limits.EXACT, Sides.BOTH);

    private static double[] observations() {
        return ControlTables.rows("montgomery-table-9-1").stream()
                .mapToDouble(row -> Double.parseDouble(row.get("x")) - 10)
                .toArray();
    }

    @Test
    void montgomerysExampleComesOut() {
        List<EwmaChart.Point> points = CHART.run(observations());
        List<Map<String, String>> rows = ControlTables.rows("montgomery-table-9-1");

        assertThat(points).hasSameSizeAs(rows);
        for (int i = 0; i < points.size(); i++) {
            EwmaChart.Point point = points.get(i);
            assertThat(point.number()).isEqualTo(i + 1);
            assertThat(10 + point.value())
                    .isCloseTo(Double.parseDouble(rows.get(i).get("ewma")), within(5.1e-9));
            assertThat(10 + point.limit())
                    .isCloseTo(Double.parseDouble(rows.get(i).get("upper")), within(5.1e-7));
            assertThat(10 - point.limit())
                    .isCloseTo(Double.parseDouble(rows.get(i).get("lower")), within(5.1e-7));
        }
        assertThat(points.stream().filter(point -> point.signal().isPresent()).map(EwmaChart.Point::number))
                .containsExactly(29L, 30L);
        assertThat(points.get(28).signal()).contains(Sides.UPPER);
    }

    @Test
    void fixedLimitsAreThoseThatExactOnesApproach() {
        EwmaChart fixed = EwmaChart.fixed(0.1, 2.7);

        assertThat(fixed.limitAt(1)).isCloseTo(2.7 * Math.sqrt(0.1 / 1.9), within(1e-15));
        assertThat(fixed.limitAt(500)).isEqualTo(fixed.limitAt(1));
        assertThat(CHART.limitAt(500)).isCloseTo(fixed.limitAt(1), within(1e-14));
        assertThat(CHART.limitAt(1)).isCloseTo(2.7 * 0.1, within(1e-15));
        assertThat(fixed.start()).isEqualTo(new EwmaChart.Point(0, 0, fixed.limitAt(1)));
        assertThat(fixed).isEqualTo(new EwmaChart(0.1, 2.7, Limits.FIXED, Sides.BOTH));
    }

    @Test
    void aLambdaOf1IsAShewhartChart() {
        EwmaChart shewhart = EwmaChart.fixed(1, 3);

        assertThat(shewhart.run(1, -3.5, 3)).extracting(EwmaChart.Point::value).containsExactly(1.0, -3.5, 3.0);
        assertThat(shewhart.run(-3.5).get(0).signal()).contains(Sides.LOWER);
        assertThat(shewhart.run(3).get(0).signal()).isEmpty();
        assertThat(shewhart.run(-3).get(0).signal()).isEmpty();
        assertThat(shewhart.averageRunLength(Change.none())).isCloseTo(1 / (2 * Normal.below(-3)), within(1e-7));
        assertThat(new EwmaChart(1, 3, Limits.EXACT, Sides.UPPER).averageRunLength(Change.step(1)))
                .isCloseTo(1 / Normal.below(-2), within(1e-7));
    }

    @Test
    void exactLimitsAreSettledOnceTheyLackLessThanAPartIn100Million() {
        // They lack 1 − √(1 − 0.99²ⁱ) of themselves: 5.2·10⁻⁸ at i = 800, 0.7·10⁻⁸ at i = 900.
        FilterChain chain = new EwmaChart(0.01, 3, Limits.EXACT, Sides.BOTH).chain();
        for (int i = 1; i <= 800; i++) {
            chain.advance(0);
        }
        assertThat(chain.isSettled()).isFalse();
        for (int i = 801; i <= 900; i++) {
            chain.advance(0);
        }
        assertThat(chain.isSettled()).isTrue();
    }

    @Test
    void theFarthestLimitIsStillAChart() {
        assertThat(EwmaChart.fixed(1, 1000).limitAt(1)).isEqualTo(1000);
    }

    @Test
    void aOneSidedChartStaysAtZeroOnTheOtherSide() {
        EwmaChart upper = new EwmaChart(0.5, 2, Limits.FIXED, Sides.UPPER);
        EwmaChart lower = new EwmaChart(0.5, 2, Limits.FIXED, Sides.LOWER);

        assertThat(upper.run(-4, 1, 9)).extracting(EwmaChart.Point::value).containsExactly(0.0, 0.5, 4.75);
        assertThat(lower.run(-4, 1, 9)).extracting(EwmaChart.Point::value).containsExactly(-2.0, -0.5, 0.0);
        assertThat(upper.run(9).get(0).signal()).contains(Sides.UPPER);
        assertThat(lower.run(-9).get(0).signal()).contains(Sides.LOWER);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1.01, 1", "-0.1, 1", "NaN, 1", "0.1, 0", "0.1, NaN", "0.1, 1000.1"})
    void whatIsNoChartIsRefused(double lambda, double limit) {
        assertThatThrownBy(() -> EwmaChart.fixed(lambda, limit)).isInstanceOf(InvalidInputException.class);
    }

    @Test
    void whatIsNoPointIsRefused() {
        assertThatThrownBy(() -> new EwmaChart.Point(-1, 0, 1)).hasMessageContaining("number of the observation");
        assertThatThrownBy(() -> new EwmaChart.Point(1, Double.NaN, 1)).hasMessageContaining("EWMA");
        assertThatThrownBy(() -> new EwmaChart.Point(1, 0, -1)).hasMessageContaining("limit");
        assertThatThrownBy(() -> CHART.run(1, Double.NaN)).hasMessageContaining("observation");
        assertThatThrownBy(() -> CHART.limitAt(0)).hasMessageContaining("number of the observation");
        assertThatThrownBy(() -> CHART.scaled(0)).hasMessageContaining("factor");
        assertThat(new EwmaChart.Point(0, 0, 0).signal()).isEmpty();
    }

    @Test
    void limitsTooFarOutForTheMethodAreRefusedAndNotGuessed() {
        assertThatThrownBy(() -> EwmaChart.fixed(0.001, 40).averageRunLength(Change.none()))
                .hasMessageContaining("distance of the limits");
        assertThat(new CusumChart(0.5, 930, 0, Sides.UPPER).side(0).isSettled()).isFalse();
        assertThatThrownBy(() -> new CusumChart(0.5, 930.1, 0, Sides.UPPER).averageRunLength(Change.none()))
                .hasMessageContaining("distance of the limits must be at most 930.0 standard deviations");
        assertThatThrownBy(() -> EwmaChart.fixed(0.1, 9).averageRunLength(Change.none()))
                .hasMessageContaining("average run length");
        assertThatThrownBy(() -> EwmaChart.fixed(0.1, 9).runLengths(Change.none()))
                .hasMessageContaining("average run length");
    }
}
