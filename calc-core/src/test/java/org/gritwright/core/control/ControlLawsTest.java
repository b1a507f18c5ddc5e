package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.control.EwmaChart.Limits;

/** What must hold for any chart. */
class ControlLawsTest {
    @Provide
    Arbitrary<EwmaChart> ewmas() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.02, 1),
                        Arbitraries.doubles().between(0.5, 3),
                        Arbitraries.of(Limits.values()),
                        Arbitraries.of(Sides.values()))
                .as(EwmaChart::new);
    }

    @Provide
    Arbitrary<CusumChart> cusums() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0, 1.5),
                        Arbitraries.doubles().between(0.5, 6),
                        Arbitraries.doubles().between(0, 0.5),
                        Arbitraries.of(Sides.values()))
                .as((k, h, part, sides) -> new CusumChart(k, h, part * h, sides));
    }

    @Provide
    Arbitrary<ControlChart> twoSided() {
        return Arbitraries.oneOf(
                ewmas().map(c -> new EwmaChart(c.lambda(), c.limit(), c.limits(), Sides.BOTH)),
                cusums().map(c -> new CusumChart(c.allowance(), c.limit(), c.headstart(), Sides.BOTH)),
                Combinators.combine(
                                Arbitraries.doubles().between(1, 3),
                                Arbitraries.doubles().between(1, 5))
                        .as(IndividualsChart::standardized),
                Arbitraries.subsetOf(RunRulesChart.COMMON)
                        .ofMinSize(1)
                        .map(rules -> new RunRulesChart(List.copyOf(rules))));
    }

    private static double[] numbers(List<Integer> hundredths) {
        return hundredths.stream().mapToDouble(i -> i / 100.0).toArray();
    }

    private static double[] times(double factor, double[] x) {
        return Arrays.stream(x).map(value -> value * factor).toArray();
    }

    private static Sides mirrored(Sides side) {
        return side == Sides.UPPER ? Sides.LOWER : side == Sides.LOWER ? Sides.UPPER : Sides.BOTH;
    }

    @Property(tries = 200)
    void mirroredObservationsSignalOnTheOtherSide(
            @ForAll("ewmas") EwmaChart ewma,
            @ForAll("cusums") CusumChart cusum,
            @ForAll @Size(max = 40) List<@IntRange(min = -400, max = 400) Integer> x) {
        double[] numbers = numbers(x);
        EwmaChart otherEwma = new EwmaChart(ewma.lambda(), ewma.limit(), ewma.limits(), mirrored(ewma.sides()));
        CusumChart otherCusum =
                new CusumChart(cusum.allowance(), cusum.limit(), cusum.headstart(), mirrored(cusum.sides()));

        assertThat(otherEwma.run(times(-1, numbers)).stream()
                        .map(p -> p.signal().map(ControlLawsTest::mirrored)))
                .containsExactlyElementsOf(
                        ewma.run(numbers).stream().map(EwmaChart.Point::signal).toList());
        List<CusumChart.Point> points = cusum.run(numbers);
        List<CusumChart.Point> others = otherCusum.run(times(-1, numbers));
        for (int i = 0; i < points.size(); i++) {
            assertThat(others.get(i).above()).isEqualTo(points.get(i).below());
            assertThat(others.get(i).sinceAbove()).isEqualTo(points.get(i).sinceBelow());
            if (!points.get(i).signal().equals(Optional.of(Sides.BOTH))) {
                assertThat(otherCusum.changeAt(others.get(i)).map(CusumChart.EstimatedChange::firstChanged))
                        .isEqualTo(cusum.changeAt(points.get(i)).map(CusumChart.EstimatedChange::firstChanged));
            }
        }
    }

    @Property(tries = 100)
    void mirroredChangesHaveTheSameRunLengths(
            @ForAll("twoSided") ControlChart chart, @ForAll @DoubleRange(min = 0, max = 3) double shift) {
        double average = chart.averageRunLength(Change.step(shift));

        assertThat(chart.averageRunLength(Change.step(-shift))).isCloseTo(average, within(1e-9 * average));
        assertThat(chart.averageRunLength(new Change(-shift, -0.05)))
                .isCloseTo(chart.averageRunLength(new Change(shift, 0.05)), within(1e-8 * average));
    }

    @Property(tries = 200)
    void largerObservationsOnAWiderChartAreTheSame(
            @ForAll("ewmas") EwmaChart ewma,
            @ForAll("cusums") CusumChart cusum,
            @ForAll @Size(max = 40) List<@IntRange(min = -400, max = 400) Integer> x) {
        double[] numbers = numbers(x);

        // A power of two scales without rounding.
        assertThat(ewma.scaled(4).run(times(4, numbers)).stream().map(EwmaChart.Point::signal))
                .containsExactlyElementsOf(
                        ewma.run(numbers).stream().map(EwmaChart.Point::signal).toList());
        assertThat(cusum.scaled(4).run(times(4, numbers)).stream().map(CusumChart.Point::signal))
                .containsExactlyElementsOf(cusum.run(numbers).stream()
                        .map(CusumChart.Point::signal)
                        .toList());
        assertThat(IndividualsChart.standardized(2, 2.5).scaled(4).run(times(4, numbers)).stream()
                        .map(IndividualsChart.Point::isSignal))
                .containsExactlyElementsOf(IndividualsChart.standardized(2, 2.5).run(numbers).stream()
                        .map(IndividualsChart.Point::isSignal)
                        .toList());
        RunRulesChart rules = new RunRulesChart(RunRulesChart.COMMON);
        assertThat(rules.scaled(4).run(times(4, numbers)).stream().map(RunRulesChart.Point::isSignal))
                .containsExactlyElementsOf(rules.run(numbers).stream()
                        .map(RunRulesChart.Point::isSignal)
                        .toList());
    }

    @Property(tries = 100)
    void theFartherTheMeanIsTheSoonerItIsNoticed(
            @ForAll("ewmas") EwmaChart ewma,
            @ForAll("cusums") CusumChart cusum,
            @ForAll @DoubleRange(min = 0, max = 3) double shift,
            @ForAll @DoubleRange(min = 0.01, max = 2) double more) {
        for (ControlChart chart : List.of(ewma, cusum)) {
            Sides sides = chart instanceof EwmaChart one ? one.sides() : ((CusumChart) chart).sides();
            int sign = sides == Sides.LOWER ? -1 : 1;
            double near = chart.averageRunLength(Change.step(sign * shift));

            assertThat(chart.averageRunLength(Change.step(sign * (shift + more))))
                    .isLessThanOrEqualTo(near * (1 + 1e-9));
            assertThat(chart.averageRunLength(new Change(sign * shift, sign * more)))
                    .isLessThanOrEqualTo(near * (1 + 1e-9));
        }
    }

    @Property(tries = 40)
    void aLongerAverageNeedsAWiderLimit(
            @ForAll @DoubleRange(min = 0.05, max = 1) double lambda,
            @ForAll @DoubleRange(min = 0, max = 1) double allowance,
            @ForAll @DoubleRange(min = 20, max = 2000) double average,
            @ForAll @DoubleRange(min = 1.01, max = 3) double times) {
        Goal few = Goal.average(average);
        Goal many = Goal.average(average * times);

        assertThat(EwmaChart.designed(lambda, Limits.FIXED, Sides.BOTH, many).limit())
                .isGreaterThan(EwmaChart.designed(lambda, Limits.FIXED, Sides.BOTH, few)
                        .limit());
        assertThat(CusumChart.designed(allowance, 0, Sides.UPPER, many).limit())
                .isGreaterThan(
                        CusumChart.designed(allowance, 0, Sides.UPPER, few).limit());
    }

    @Property(tries = 200)
    void aChartRunInPartsIsTheChartRunAtOnce(
            @ForAll("ewmas") EwmaChart ewma,
            @ForAll("cusums") CusumChart cusum,
            @ForAll @Size(max = 30) List<@IntRange(min = -400, max = 400) Integer> first,
            @ForAll @Size(max = 30) List<@IntRange(min = -400, max = 400) Integer> second) {
        List<Integer> both = new ArrayList<>(first);
        both.addAll(second);
        int n = first.size();

        List<EwmaChart.Point> ewmaPoints = ewma.run(numbers(first));
        assertThat(ewma.runFrom(n == 0 ? ewma.start() : ewmaPoints.get(n - 1), numbers(second)))
                .isEqualTo(ewma.run(numbers(both)).subList(n, both.size()));
        List<CusumChart.Point> cusumPoints = cusum.run(numbers(first));
        assertThat(cusum.runFrom(n == 0 ? cusum.start() : cusumPoints.get(n - 1), numbers(second)))
                .isEqualTo(cusum.run(numbers(both)).subList(n, both.size()));
        RunRulesChart rules = new RunRulesChart(RunRulesChart.COMMON);
        List<RunRulesChart.Point> rulePoints = rules.run(numbers(first));
        assertThat(rules.runFrom(rulePoints.subList(Math.max(0, n - 8), n), numbers(second)))
                .isEqualTo(rules.run(numbers(both)).subList(n, both.size()));
        IndividualsChart individuals = IndividualsChart.standardized(2, 2.5);
        List<IndividualsChart.Point> individual = individuals.run(numbers(first));
        Optional.of(individual)
                .filter(points -> n > 0)
                .ifPresent(points -> assertThat(individuals.runFrom(points.get(n - 1), numbers(second)))
                        .isEqualTo(individuals.run(numbers(both)).subList(n, both.size())));
    }

    @Property(tries = 100)
    void aHeadstartNeverLengthensARun(
            @ForAll("cusums") CusumChart chart,
            @ForAll @DoubleRange(min = -1, max = 3) double shift,
            @ForAll @Size(max = 40) List<@IntRange(min = -400, max = 400) Integer> x) {
        CusumChart without = new CusumChart(chart.allowance(), chart.limit(), 0, chart.sides());
        int sign = chart.sides() == Sides.LOWER ? -1 : 1;
        Change change = Change.step(sign * Math.max(shift, chart.sides() == Sides.BOTH ? shift : 0));
        double average = without.averageRunLength(change);

        assertThat(chart.averageRunLength(change)).isLessThanOrEqualTo(average * (1 + 1e-9));
        List<CusumChart.Point> points = chart.run(numbers(x));
        List<CusumChart.Point> others = without.run(numbers(x));
        for (int i = 0; i < points.size(); i++) {
            assertThat(points.get(i).above())
                    .isGreaterThanOrEqualTo(others.get(i).above() - 1e-12);
            assertThat(points.get(i).below())
                    .isGreaterThanOrEqualTo(others.get(i).below() - 1e-12);
        }
    }

    @Property(tries = 60)
    void exactLimitsNeverSignalLaterThanFixedOnes(
            @ForAll("ewmas") EwmaChart chart, @ForAll @DoubleRange(min = 0, max = 2) double shift) {
        EwmaChart fixed = new EwmaChart(chart.lambda(), chart.limit(), Limits.FIXED, Sides.BOTH);
        EwmaChart exact = new EwmaChart(chart.lambda(), chart.limit(), Limits.EXACT, Sides.BOTH);
        double average = fixed.averageRunLength(Change.step(shift));

        assertThat(exact.averageRunLength(Change.step(shift))).isLessThanOrEqualTo(average * (1 + 1e-8));
    }
}
