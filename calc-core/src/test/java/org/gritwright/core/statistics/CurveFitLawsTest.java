package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.gritwright.units.InvalidInputException;

class CurveFitLawsTest {
    private static final double HIGHEST = CurveFitShapes.HIGHEST;

    /** One observation: where, how far the y is off the truth, and its weight. */
    record Point(double x, double off, double weight) {}

    /** A truth and what was seen of it. The x are at least 1 apart and 1 above the shift. */
    record Case(CurveFitShapes shape, double scale, double shift, List<Point> points) {
        double truth(double x) {
            return scale * shape.applyAsDouble(x - shift);
        }

        Case exact() {
            return new Case(
                    shape,
                    scale,
                    shift,
                    points.stream().map(p -> new Point(p.x, 0, p.weight)).toList());
        }

        Case shuffled(long seed) {
            List<Point> others = new ArrayList<>(points);
            Collections.shuffle(others, new Random(seed));
            return new Case(shape, scale, shift, others);
        }

        Case scaled(double factor) {
            return new Case(shape, scale * factor, shift, points);
        }

        double[] all(ToDoubleFunction<Point> part) {
            return points.stream().mapToDouble(part).toArray();
        }

        double[] y() {
            return all(p -> truth(p.x) * (1 + p.off));
        }

        CurveFit shifted() {
            return CurveFit.shifted(shape, 0, HIGHEST, all(Point::x), y(), all(Point::weight));
        }

        CurveFit proportional() {
            return CurveFit.proportional(shape, all(Point::x), y(), all(Point::weight));
        }
    }

    @Provide
    Arbitrary<Case> cases() {
        Arbitrary<Double> offs = Arbitraries.doubles().between(-0.05, 0.05).ofScale(4);
        Arbitrary<Double> weights = Arbitraries.doubles().between(0.5, 4).ofScale(2);
        // Wide apart, so that no scatter of 5 % makes a rise a fall.
        Arbitrary<List<Double>> ends = Arbitraries.of(List.of(
                List.of(3.0, 6.0), List.of(2.0, 3.5, 7.0), List.of(4.0, 8.0, 16.0), List.of(2.5, 5.0, 10.0, 20.0)));
        Arbitrary<Double> shifts = Arbitraries.doubles().between(-1, 1).ofScale(3);
        Arbitrary<Double> scales = Arbitraries.doubles().between(0.1, 100).ofScale(3);
        return ends.flatMap(xs -> Combinators.combine(
                        Arbitraries.of(CurveFitShapes.class),
                        scales,
                        shifts,
                        Combinators.combine(offs, weights)
                                .as((off, weight) -> new Point(0, off, weight))
                                .list()
                                .ofMinSize(xs.size())
                                .ofMaxSize(xs.size() * 3))
                .as((shape, scale, shift, drawn) -> {
                    List<Point> points = new ArrayList<>();
                    for (int i = 0; i < drawn.size(); i++) {
                        points.add(new Point(xs.get(i % xs.size()), drawn.get(i).off, drawn.get(i).weight));
                    }
                    return new Case(shape, scale, shift, points);
                }));
    }

    private static void assertSame(CurveFit actual, CurveFit expected, double scaleFactor, double xFactor) {
        double tolerance = 1e-8;
        assertThat(actual.scale() / expected.scale()).isCloseTo(scaleFactor, within(tolerance * scaleFactor));
        assertThat(actual.shift()).isCloseTo(expected.shift() * xFactor, within(tolerance * xFactor));
        assertThat(actual.degreesOfFreedom()).isEqualTo(expected.degreesOfFreedom());
        assertThat(actual.shiftUncertainty().isPresent())
                .isEqualTo(expected.shiftUncertainty().isPresent());
        if (expected.degreesOfFreedom() > 0) {
            assertThat(actual.relativeDeviation().orElseThrow())
                    .isCloseTo(expected.relativeDeviation().orElseThrow(), within(tolerance));
            assertThat(actual.scaleUncertainty().orElseThrow() / actual.scale())
                    .isCloseTo(expected.scaleUncertainty().orElseThrow() / expected.scale(), within(tolerance));
            assertThat(actual.shiftUncertainty().orElse(0))
                    .isCloseTo(expected.shiftUncertainty().orElse(0) * xFactor, within(tolerance * xFactor));
        }
    }

    @Property(tries = 200)
    void theOrderOfObservationsDoesNotMatter(@ForAll("cases") Case data, @ForAll long seed) {
        assertSame(data.shuffled(seed).shifted(), data.shifted(), 1, 1);
        assertSame(data.shuffled(seed).proportional(), data.proportional(), 1, 1);
    }

    @Property(tries = 200)
    void aScaleOfYIsAScaleOfTheFactorAndOfNothingElse(
            @ForAll("cases") Case data, @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double factor) {
        assertSame(data.scaled(factor).shifted(), data.shifted(), factor, 1);
        assertSame(data.scaled(factor).proportional(), data.proportional(), factor, 1);
    }

    @Property(tries = 200)
    void anotherUnitOfXIsAScaleOfTheShiftAndOfNothingElse(
            @ForAll("cases") Case data, @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double factor) {
        CurveFit.Shape shape = x -> data.shape.applyAsDouble(Math.min(x / factor, HIGHEST));
        CurveFit fit = CurveFit.shifted(
                shape, 0, HIGHEST * factor, data.all(p -> p.x * factor), data.y(), data.all(Point::weight));

        assertSame(fit, data.shifted(), 1, factor);
    }

    @Property(tries = 200)
    void exactDataGiveBackTheTruth(@ForAll("cases") Case data) {
        CurveFit fit = data.exact().shifted();

        assertThat(fit.scale()).isCloseTo(data.scale, within(1e-9 * data.scale));
        assertThat(fit.shift()).isCloseTo(data.shift, within(1e-9));
        for (double x : new double[] {2, 5, 21}) {
            assertThat(fit.at(x)).isCloseTo(data.truth(x), within(1e-9 * data.truth(x)));
        }
    }

    @Property(tries = 200)
    void theCurveSolvesTheEquationsOfTheQuasiLikelihood(@ForAll("cases") Case data) {
        CurveFit fit = data.shifted();
        double[] y = data.y();
        double first = 0;
        double second = 0;
        for (int i = 0; i < y.length; i++) {
            Point point = data.points.get(i);
            double argument = point.x - fit.shift();
            double residual = y[i] / fit.at(point.x) - 1;
            first += point.weight * residual;
            second += point.weight * residual * data.shape.slope(argument) / data.shape.applyAsDouble(argument);
        }
        assertThat(first).isCloseTo(0, within(1e-10));
        assertThat(second).isCloseTo(0, within(1e-8));
    }

    @Property(tries = 200)
    void whatIsCaughtIsPredictedGreaterThanZero(@ForAll("cases") Case data) {
        CurveFit fit = data.shifted();

        assertThat(fit.shift())
                .isLessThan(Arrays.stream(data.all(Point::x)).min().orElseThrow());
        assertThat(data.points).allSatisfy(p -> assertThat(fit.at(p.x)).isGreaterThan(0));
    }

    @Property(tries = 200)
    void uncertaintiesAreThereExactlyWhereADegreeOfFreedomIs(@ForAll("cases") Case data) {
        CurveFit fit = data.shifted();

        assertThat(fit.degreesOfFreedom()).isEqualTo(data.points.size() - 2);
        boolean known = data.points.size() > 2;
        assertThat(fit.relativeDeviation().isPresent()).isEqualTo(known);
        assertThat(fit.scaleUncertainty().isPresent()).isEqualTo(known);
        assertThat(fit.shiftUncertainty().isPresent()).isEqualTo(known);
        assertThat(fit.uncertaintyAt(5).isPresent()).isEqualTo(known);
        assertThat(data.proportional().shiftUncertainty()).isEmpty();
    }

    @Property(tries = 200)
    void aYThatFallsAsXGrowsIsRefused(
            @ForAll CurveFitShapes shape, @ForAll @Scale(3) @DoubleRange(min = 0, max = 5) double fall) {
        double[] x = {2, 3, 5, 5, 9};
        double[] y = Arrays.stream(x).map(at -> 60 - fall * at).toArray();

        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> CurveFit.shifted(shape, 0, HIGHEST, x, y, new double[] {1, 1, 1, 1, 1}))
                .withMessageEndingWith("no such shift fits best");
    }
}
