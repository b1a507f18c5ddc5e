package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.List;
import org.gritwright.core.control.EwmaChart.Limits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunLengthsTest {
    private static final EwmaChart SHEWHART = EwmaChart.fixed(1, 2);

    @Test
    void ofAShewhartChartTheyAreGeometric() {
        double alarm = 2 * Normal.below(-2);
        RunLengths lengths = SHEWHART.runLengths(Change.none());

        assertThat(lengths.average()).isCloseTo(1 / alarm, within(1e-9));
        for (int n : new int[] {0, 1, 2, 10, 300, 2000}) {
            assertThat(lengths.survival(n)).isCloseTo(Math.pow(1 - alarm, n), within(1e-11));
            assertThat(lengths.signalWithin(n)).isEqualTo(1 - lengths.survival(n));
        }
        for (double p : new double[] {0.001, 0.045, 0.046, 0.5, 0.9, 0.999999}) {
            assertThat(lengths.quantile(p)).isEqualTo((long) Math.ceil(Math.log1p(-p) / Math.log1p(-alarm)));
        }
        assertThat(lengths.median()).isEqualTo(15);
    }

    @Test
    void quantilesAreTheFirstNumberThatIsEnough() {
        RunLengths few = new RunLengths(new double[] {1, 0.75, 0.5, 0.25}, 0.5);

        assertThat(few.quantile(0.2)).isEqualTo(1);
        assertThat(few.quantile(0.25)).isEqualTo(1);
        assertThat(few.quantile(0.26)).isEqualTo(2);
        assertThat(few.quantile(0.5)).isEqualTo(2);
        assertThat(few.quantile(0.75)).isEqualTo(3);
        assertThat(few.quantile(0.76)).isEqualTo(4);
        assertThat(few.quantile(0.875)).isEqualTo(4);
        assertThat(few.quantile(0.88)).isEqualTo(5);
        assertThat(few.survival(4)).isEqualTo(0.125);
        assertThat(few.survival(5)).isEqualTo(0.0625);
        assertThat(few.average()).isEqualTo(2.75);
        assertThatThrownBy(() -> few.quantile(0)).hasMessageContaining("probability");
        assertThatThrownBy(() -> few.quantile(1)).hasMessageContaining("probability");
        assertThatThrownBy(() -> few.survival(-1)).hasMessageContaining("number of observations");
    }

    @Test
    void aMeanFarOutSignalsAtOnce() {
        assertThat(SHEWHART.runLengths(Change.step(50)).average()).isEqualTo(1);
        assertThat(SHEWHART.runLengths(Change.step(50)).quantile(0.99)).isEqualTo(1);
        assertThat(EwmaChart.fixed(0.1, 3).runLengths(Change.drift(100)).average())
                .isCloseTo(2, within(1e-9));
    }

    @Test
    void aDriftAwayFromTheSideThatIsLookedAtIsRefused() {
        EwmaChart upper = new EwmaChart(0.2, 2.5, Limits.FIXED, Sides.UPPER);
        CusumChart lower = new CusumChart(0.5, 4, 0, Sides.LOWER);

        assertThatThrownBy(() -> upper.averageRunLength(Change.drift(-0.1))).hasMessageContaining("drift");
        assertThatThrownBy(() -> lower.runLengths(Change.drift(0.1))).hasMessageContaining("drift");
        assertThat(upper.averageRunLength(Change.drift(0.1))).isLessThan(30);
        assertThat(lower.averageRunLength(Change.drift(-0.1))).isLessThan(30);
    }

    @Test
    void aChangeIsChecked() {
        assertThat(Change.none().mean(9)).isZero();
        assertThat(Change.step(2).mean(9)).isEqualTo(2);
        assertThat(Change.drift(0.5).mean(1)).isZero();
        assertThat(Change.drift(0.5).mean(3)).isEqualTo(1);
        assertThat(Change.driftFromFirst(0.5).mean(3)).isEqualTo(1.5);
        assertThatThrownBy(() -> Change.none().mean(0)).hasMessageContaining("number of the observation");
        assertThatThrownBy(() -> Change.step(Double.NaN)).hasMessageContaining("mean of the first observation");
        assertThatThrownBy(() -> Change.drift(Double.POSITIVE_INFINITY)).hasMessageContaining("drift per observation");
    }

    @Test
    void chartsWithoutAnySignalAreRefusedSoon() {
        assertThatThrownBy(
                        () -> RunRulesChart.of(new RunRulesChart.Rule(1, 1, 30)).averageRunLength(Change.none()))
                .hasMessageContaining("average run length");
        assertThatThrownBy(() -> IndividualsChart.standardized(20, 40).averageRunLength(Change.none()))
                .hasMessageContaining("average run length");
        assertThatThrownBy(() -> CusumChart.twoSided(1, 30).averageRunLength(Change.none()))
                .hasMessageContaining("average run length");
    }

    @Test
    void aDriftThatTakesAMillionObservationsIsRefused() {
        RunRulesChart chart = RunRulesChart.of(new RunRulesChart.Rule(1, 1, 5));

        assertThatThrownBy(() -> chart.averageRunLength(Change.drift(1e-12)))
                .hasMessageContaining("hardly any is beyond 1000000 observations");
        assertThat(chart.averageRunLength(Change.drift(1e-4))).isBetween(10_000.0, 50_000.0);
    }

    /** Without a memory, the chances that the observations one by one are within multiply. */
    @ParameterizedTest
    @CsvSource({"3, 0.02", "3, 0.5", "5, 1e-4", "2, 3"})
    void underADriftTheAverageWithoutAMemoryIsASumOfProducts(double limit, double drift) {
        double sum = 0;
        double left = 1;
        for (int n = 1; left > 1e-18; n++) {
            sum += left;
            double mean = (n - 1) * drift;
            left *= Normal.between(-limit - mean, limit - mean);
        }

        assertThat(RunRulesChart.of(new RunRulesChart.Rule(1, 1, limit)).averageRunLength(Change.drift(drift)))
                .isCloseTo(sum, within(1e-11 * sum));
        assertThat(EwmaChart.fixed(1, limit).averageRunLength(Change.drift(drift)))
                .isCloseTo(sum, within(1e-9 * sum));
        assertThat(IndividualsChart.standardized(limit, 2 * limit).averageRunLength(Change.drift(drift)))
                .isCloseTo(sum, within(1e-9 * sum));
    }

    @Test
    void theLongestRunsThatAreComputedAreStillRight() {
        double alarm = 2 * Normal.below(-6);
        double average = 1 / alarm;

        assertThat(EwmaChart.fixed(1, 6).averageRunLength(Change.none())).isCloseTo(average, within(1e-6 * average));
        assertThat(EwmaChart.fixed(1, 6).runLengths(Change.none()).average())
                .isCloseTo(average, within(1e-6 * average));
    }

    @Test
    void thingsThatAreMovedByADataEngineStayTheSame() throws IOException, ClassNotFoundException {
        List<Object> values = List.of(
                SHEWHART,
                SHEWHART.run(1).get(0),
                CusumChart.twoSided(0.5, 4),
                CusumChart.twoSided(0.5, 4).run(1).get(0),
                new CusumChart.EstimatedChange(3, 1),
                IndividualsChart.standardized(3, 3.7),
                IndividualsChart.standardized(3, 3.7).run(1).get(0),
                new RunRulesChart(RunRulesChart.COMMON),
                new RunRulesChart(RunRulesChart.COMMON).run(4).get(0),
                Change.drift(0.1),
                Goal.average(500),
                Goal.median(500),
                SHEWHART.runLengths(Change.step(1)),
                EstimatedRunLengths.of(SHEWHART, 20));
        for (Object value : values) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
                out.writeObject(value);
            }
            try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
                assertThat(in.readObject())
                        .isEqualTo(value)
                        .hasSameHashCodeAs(value)
                        .hasToString(value.toString());
            }
        }
    }

    @Test
    void othersAreOthers() {
        RunLengths one = new RunLengths(new double[] {1, 0.75}, 0.5);

        assertThat(one)
                .isEqualTo(new RunLengths(new double[] {1, 0.75}, 0.5))
                .isNotEqualTo(new RunLengths(new double[] {1, 0.75}, 0.6))
                .isNotEqualTo(new RunLengths(new double[] {1, 0.7}, 0.5))
                .isNotEqualTo("");
        assertThat(one.hashCode()).isNotEqualTo(new RunLengths(new double[] {1, 0.75}, 0.6).hashCode());
        assertThat(one).hasToString("run lengths, on average 2.5, median 2");
    }
}
