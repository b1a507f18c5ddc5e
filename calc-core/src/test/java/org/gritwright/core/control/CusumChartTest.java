package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.gritwright.core.ControlTables;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CusumChartTest {
    private static final CusumChart CHART = CusumChart.twoSided(0.5, 5);

    private static double[] observations() {
        return ControlTables.rows("montgomery-table-9-1").stream()
                .mapToDouble(row -> Double.parseDouble(row.get("x")) - 10)
                .toArray();
    }

    @Test
    void montgomerysExampleComesOut() {
        List<CusumChart.Point> points = CHART.run(observations());
        List<Map<String, String>> rows = ControlTables.rows("montgomery-table-9-1");

        assertThat(points).hasSameSizeAs(rows);
        for (int i = 0; i < points.size(); i++) {
            CusumChart.Point point = points.get(i);
            Map<String, String> row = rows.get(i);
            assertThat(point.number()).isEqualTo(i + 1);
            assertThat(point.above()).isCloseTo(Double.parseDouble(row.get("above")), within(1e-12));
            assertThat(point.below()).isCloseTo(Double.parseDouble(row.get("below")), within(1e-12));
            assertThat(point.sinceAbove()).isEqualTo(Long.parseLong(row.get("sinceabove")));
            assertThat(point.sinceBelow()).isEqualTo(Long.parseLong(row.get("sincebelow")));
        }
        assertThat(points.stream().filter(point -> point.signal().isPresent()).map(CusumChart.Point::number))
                .containsExactly(29L, 30L);
    }

    @Test
    void aSignalSaysSinceWhenAndHowFar() {
        List<CusumChart.Point> points = CHART.run(observations());

        assertThat(CHART.changeAt(points.get(27))).isEmpty();
        CusumChart.EstimatedChange change = CHART.changeAt(points.get(28)).orElseThrow();
        assertThat(change.firstChanged()).isEqualTo(23);
        assertThat(change.mean()).isCloseTo(0.5 + 5.28 / 7, within(1e-12));
    }

    @Test
    void aSignalBelowSaysSoToo() {
        List<CusumChart.Point> points = CusumChart.twoSided(0.5, 2).run(1, -2, -3);

        assertThat(points.get(2).signal()).contains(Sides.LOWER);
        assertThat(CusumChart.twoSided(0.5, 2).changeAt(points.get(2)))
                .contains(new CusumChart.EstimatedChange(2, -2.5));
    }

    @Test
    void aHeadstartIsNoPartOfTheEstimate() {
        CusumChart chart = new CusumChart(0.5, 4, 2, Sides.BOTH);
        List<CusumChart.Point> points = chart.run(1.5, 2.5);

        assertThat(points.get(1).above()).isEqualTo(5);
        assertThat(chart.changeAt(points.get(1))).contains(new CusumChart.EstimatedChange(1, 2));
        // Once the sum was 0, nothing is left of it.
        List<CusumChart.Point> later = chart.run(-3, 3, 3);
        assertThat(chart.changeAt(later.get(2))).contains(new CusumChart.EstimatedChange(2, 3));
    }

    @Test
    void theHeadstartIsWhereBothSidesBegin() {
        assertThat(new CusumChart(0.5, 4, 2, Sides.BOTH).start()).isEqualTo(new CusumChart.Point(0, 2, 2, 0, 0, 4));
        assertThat(new CusumChart(0.5, 4, 2, Sides.UPPER).start()).isEqualTo(new CusumChart.Point(0, 2, 0, 0, 0, 4));
        assertThat(new CusumChart(0.5, 4, 2, Sides.LOWER).start()).isEqualTo(new CusumChart.Point(0, 0, 2, 0, 0, 4));
    }

    @Test
    void aSideThatIsNotLookedAtStaysAtZero() {
        assertThat(new CusumChart(0.5, 4, 0, Sides.UPPER).run(-9).get(0))
                .isEqualTo(new CusumChart.Point(1, 0, 0, 0, 0, 4));
        assertThat(new CusumChart(0.5, 4, 0, Sides.LOWER).run(9).get(0))
                .isEqualTo(new CusumChart.Point(1, 0, 0, 0, 0, 4));
        assertThat(new CusumChart(0.5, 4, 0, Sides.LOWER).run(-9).get(0))
                .isEqualTo(new CusumChart.Point(1, 0, 8.5, 0, 1, 4));
    }

    @Test
    void aSumAtTheLimitIsNoSignal() {
        assertThat(new CusumChart.Point(3, 4, 4, 1, 1, 4).signal()).isEmpty();
        assertThat(new CusumChart.Point(3, 4.1, 4.1, 1, 1, 4).signal()).contains(Sides.BOTH);
        assertThat(CHART.changeAt(new CusumChart.Point(3, 6, 7, 1, 2, 5)))
                .contains(new CusumChart.EstimatedChange(3, 6.5));
    }

    @ParameterizedTest
    @CsvSource({
        "-0.1, 4, 0",
        "NaN, 4, 0",
        "0.5, 0, 0",
        "0.5, NaN, 0",
        "0.5, 10001, 0",
        "0.5, 4, 4.1",
        "0.5, 4, -0.1",
        "0.5, 4, NaN"
    })
    void whatIsNoChartIsRefused(double allowance, double limit, double headstart) {
        assertThatThrownBy(() -> new CusumChart(allowance, limit, headstart, Sides.BOTH))
                .isInstanceOf(InvalidInputException.class);
    }

    @Test
    void theFarthestLimitIsStillAChart() {
        assertThat(CusumChart.twoSided(0, 10_000).scaled(0.5)).isEqualTo(CusumChart.twoSided(0, 5_000));
    }

    @Test
    void whatIsNoPointIsRefused() {
        assertThatThrownBy(() -> new CusumChart.Point(-1, 0, 0, 0, 0, 4))
                .hasMessageContaining("number of the observation");
        assertThatThrownBy(() -> new CusumChart.Point(1, -1, 0, 0, 0, 4)).hasMessageContaining("CUSUM above");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, -1, 0, 0, 4)).hasMessageContaining("CUSUM below");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, 0, 2, 0, 4)).hasMessageContaining("N above");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, 0, -1, 0, 4)).hasMessageContaining("N above");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, 0, 0, 2, 4)).hasMessageContaining("N below");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, 0, 0, -1, 4)).hasMessageContaining("N below");
        assertThatThrownBy(() -> new CusumChart.Point(1, 0, 0, 0, 0, 0)).hasMessageContaining("limit");
        assertThatThrownBy(() -> CHART.run(1, Double.NaN)).hasMessageContaining("observation");
        assertThatThrownBy(() -> CHART.scaled(-1)).hasMessageContaining("factor");
    }

    @Test
    void runLengthsOfTwoSidesNeedAHeadstartThatKeepsThemApart() {
        CusumChart far = new CusumChart(0.5, 4, 2.6, Sides.BOTH);

        assertThat(far.run(1.5)).hasSize(1);
        assertThatThrownBy(() -> far.averageRunLength(Change.none())).hasMessageContaining("at most h/2 + k = 2.5");
        assertThatThrownBy(() -> far.runLengths(Change.none())).hasMessageContaining("at most h/2 + k = 2.5");
        assertThat(new CusumChart(0.5, 4, 2.5, Sides.BOTH).averageRunLength(Change.none()))
                .isLessThan(149);
    }

    @Test
    void aMeanFarToOneSideIsNoObstacle() {
        CusumChart chart = CusumChart.twoSided(0.5, 4);

        // The lower side alone would take beyond any number for it.
        assertThat(chart.averageRunLength(Change.step(6))).isBetween(1.0, 1.2);
        assertThat(chart.averageRunLength(Change.step(6)))
                .isCloseTo(new CusumChart(0.5, 4, 0, Sides.UPPER).averageRunLength(Change.step(6)), within(1e-9));
    }
}
