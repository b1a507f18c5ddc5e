package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.Stream;
import org.gritwright.core.control.EwmaChart.Limits;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Charts that are run on random observations, with a fixed seed, against what is computed of them. */
class SimulatedRunLengthsTest {
    private static final int RUNS = 12_000;
    private static final int BLOCK = 16;

    static Stream<Arguments> charts() {
        EwmaChart exact = new EwmaChart(0.1, 2, Limits.EXACT, Sides.BOTH);
        EwmaChart upper = new EwmaChart(0.2, 1.8, Limits.EXACT, Sides.UPPER);
        EwmaChart lower = new EwmaChart(0.2, 1.8, Limits.FIXED, Sides.LOWER);
        CusumChart both = CusumChart.twoSided(0.25, 3);
        CusumChart head = new CusumChart(0.25, 4, 2, Sides.BOTH);
        CusumChart below = new CusumChart(0.5, 3, 1.5, Sides.LOWER);
        IndividualsChart individuals = IndividualsChart.standardized(2, 2.5);
        RunRulesChart rules = new RunRulesChart(RunRulesChart.COMMON);
        return Stream.of(
                Arguments.of(exact, Change.none()),
                Arguments.of(exact, Change.step(0.5)),
                Arguments.of(exact, Change.driftFromFirst(0.02)),
                Arguments.of(upper, Change.none()),
                Arguments.of(upper, Change.drift(0.02)),
                Arguments.of(lower, Change.step(-0.5)),
                Arguments.of(lower, Change.drift(-0.02)),
                Arguments.of(both, Change.none()),
                Arguments.of(both, Change.step(-0.5)),
                Arguments.of(both, Change.drift(-0.02)),
                Arguments.of(head, Change.none()),
                Arguments.of(head, Change.drift(0.03)),
                Arguments.of(below, Change.step(0.25)),
                Arguments.of(individuals, Change.none()),
                Arguments.of(individuals, Change.drift(0.05)),
                Arguments.of(rules, Change.step(0.3)),
                Arguments.of(rules, Change.drift(0.02)));
    }

    /** Runs a chart on blocks of observations until it signals. */
    private static long runLength(ControlChart chart, Change change, SplittableRandom random) {
        Function<double[], Long> runner = runner(chart);
        for (long done = 0; ; done += BLOCK) {
            double[] block = new double[BLOCK];
            for (int i = 0; i < BLOCK; i++) {
                block[i] = change.mean(done + i + 1) + random.nextGaussian();
            }
            long signal = runner.apply(block);
            if (signal > 0) {
                return signal;
            }
        }
    }

    /** Takes a block and gives the number of the first signal in it, or 0; keeps where the chart is. */
    private static Function<double[], Long> runner(ControlChart chart) {
        if (chart instanceof EwmaChart ewma) {
            EwmaChart.Point[] last = {ewma.start()};
            return block -> {
                var points = ewma.runFrom(last[0], block);
                last[0] = points.get(points.size() - 1);
                return points.stream()
                        .filter(point -> point.signal().isPresent())
                        .findFirst()
                        .map(EwmaChart.Point::number)
                        .orElse(0L);
            };
        }
        if (chart instanceof CusumChart cusum) {
            CusumChart.Point[] last = {cusum.start()};
            return block -> {
                var points = cusum.runFrom(last[0], block);
                last[0] = points.get(points.size() - 1);
                return points.stream()
                        .filter(point -> point.signal().isPresent())
                        .findFirst()
                        .map(CusumChart.Point::number)
                        .orElse(0L);
            };
        }
        if (chart instanceof IndividualsChart individuals) {
            var all = new ArrayList<IndividualsChart.Point>();
            return block -> {
                var points =
                        all.isEmpty() ? individuals.run(block) : individuals.runFrom(all.get(all.size() - 1), block);
                all.addAll(points);
                return points.stream()
                        .filter(IndividualsChart.Point::isSignal)
                        .findFirst()
                        .map(IndividualsChart.Point::number)
                        .orElse(0L);
            };
        }
        var all = new ArrayList<RunRulesChart.Point>();
        return block -> {
            var points = ((RunRulesChart) chart).runFrom(all.subList(Math.max(0, all.size() - 8), all.size()), block);
            all.addAll(points);
            return points.stream()
                    .filter(RunRulesChart.Point::isSignal)
                    .findFirst()
                    .map(RunRulesChart.Point::number)
                    .orElse(0L);
        };
    }

    @ParameterizedTest
    @MethodSource("charts")
    void averageAndDistributionAreMetWithinThreePercent(ControlChart chart, Change change) {
        SplittableRandom random = new SplittableRandom(1);
        RunLengths lengths = chart.runLengths(change);
        long tenth = lengths.quantile(0.1);
        long median = lengths.median();
        long most = lengths.quantile(0.9);
        double sum = 0;
        int[] within = new int[3];
        for (int run = 0; run < RUNS; run++) {
            long length = runLength(chart, change, random);
            sum += length;
            within[0] += length <= tenth ? 1 : 0;
            within[1] += length <= median ? 1 : 0;
            within[2] += length <= most ? 1 : 0;
        }
        double average = chart.averageRunLength(change);

        assertThat(lengths.average()).isCloseTo(average, within(1e-7 * average));
        assertThat(sum / RUNS).isCloseTo(average, within(0.03 * average));
        assertThat((double) within[0] / RUNS).isCloseTo(lengths.signalWithin(tenth), within(0.015));
        assertThat((double) within[1] / RUNS).isCloseTo(lengths.signalWithin(median), within(0.015));
        assertThat((double) within[2] / RUNS).isCloseTo(lengths.signalWithin(most), within(0.015));
    }
}
