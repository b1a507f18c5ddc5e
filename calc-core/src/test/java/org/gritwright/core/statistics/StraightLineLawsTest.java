package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.stat.regression.GLSMultipleLinearRegression;
import org.hipparchus.stat.regression.OLSMultipleLinearRegression;
import org.hipparchus.stat.regression.SimpleRegression;

/** Laws of straight lines, and other people's lines (Hipparchus) through the same points. */
class StraightLineLawsTest {
    /** Far above what sums of ten numbers of this size lose, far below what a wrong formula does. */
    private static final double ROUNDING = 1e-9;

    record Point(double x, double y, double weight) {}

    /** Three to nine points at least 1 apart in x, with y up to 5 off a line of slope 1 to 3. */
    @Provide
    Arbitrary<List<Point>> points() {
        Arbitrary<Double> slope = Arbitraries.doubles().between(1, 3).ofScale(3);
        Arbitrary<List<Point>> scattered = Combinators.combine(
                        Arbitraries.doubles().between(0, 0.9).ofScale(3),
                        Arbitraries.doubles().between(-5, 5).ofScale(3),
                        Arbitraries.doubles().between(0.1, 10).ofScale(3))
                .as(Point::new)
                .list()
                .ofMinSize(3)
                .ofMaxSize(9);
        return Combinators.combine(scattered, slope)
                .as((points, b) -> IntStream.range(0, points.size())
                        .mapToObj(i -> {
                            Point p = points.get(i);
                            double x = 2 * i + 1 + p.x;
                            return new Point(x, 3 + b * x + p.y, p.weight);
                        })
                        .toList());
    }

    private static double[] column(List<Point> points, ToDoubleFunction<Point> column) {
        return points.stream().mapToDouble(column).toArray();
    }

    private static StraightLine line(List<Point> points, boolean throughOrigin) {
        double[] x = column(points, Point::x);
        double[] y = column(points, Point::y);
        double[] weights = column(points, Point::weight);
        return throughOrigin ? StraightLine.throughOrigin(x, y, weights) : StraightLine.fit(x, y, weights);
    }

    private static StraightLine unweighted(List<Point> points, boolean throughOrigin) {
        double[] x = column(points, Point::x);
        double[] y = column(points, Point::y);
        return throughOrigin ? StraightLine.throughOrigin(x, y) : StraightLine.fit(x, y);
    }

    private static void assertSame(double actual, double expected) {
        assertThat(actual).isCloseTo(expected, within(ROUNDING * (1 + Math.abs(expected))));
    }

    private static void assertSame(OptionalDouble actual, OptionalDouble expected, double factor) {
        assertThat(actual.isPresent()).isEqualTo(expected.isPresent());
        assertSame(actual.orElse(0), expected.orElse(0) * factor);
    }

    @Property(tries = 300, seed = "1")
    void theOrderOfPointsDoesNotMatter(
            @ForAll("points") List<Point> points, @ForAll boolean throughOrigin, @ForAll long seed) {
        List<Point> shuffled = new ArrayList<>(points);
        Collections.shuffle(shuffled, new Random(seed));
        StraightLine actual = line(shuffled, throughOrigin);
        StraightLine expected = line(points, throughOrigin);

        assertSame(actual.slope(), expected.slope());
        assertSame(actual.intercept(), expected.intercept());
        assertSame(actual.residualDeviation(), expected.residualDeviation(), 1);
        assertSame(actual.interceptUncertainty(), expected.interceptUncertainty(), 1);
    }

    @Property(tries = 300, seed = "1")
    void unitsOfXAndYScaleTheLine(
            @ForAll("points") List<Point> points,
            @ForAll boolean throughOrigin,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 100) double ofX,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 100) double ofY) {
        StraightLine actual = line(
                points.stream()
                        .map(p -> new Point(p.x * ofX, p.y * ofY, p.weight))
                        .toList(),
                throughOrigin);
        StraightLine expected = line(points, throughOrigin);

        assertSame(actual.slope(), expected.slope() * ofY / ofX);
        assertSame(actual.intercept(), expected.intercept() * ofY);
        assertSame(actual.slopeUncertainty(), expected.slopeUncertainty(), ofY / ofX);
        assertSame(actual.interceptUncertainty(), expected.interceptUncertainty(), ofY);
        assertSame(actual.residualDeviation(), expected.residualDeviation(), ofY);
        assertSame(actual.correlation(), expected.correlation(), 1);
        assertSame(
                actual.xForObservation(7 * ofY, 2).value(),
                expected.xForObservation(7, 2).value() * ofX);
        assertSame(
                actual.xForObservation(7 * ofY, 2).standardUncertainty(),
                expected.xForObservation(7, 2).standardUncertainty(),
                ofX);
    }

    @Property(tries = 300, seed = "1")
    void anotherOriginMovesTheLineAndLeavesWhatItPredicts(
            @ForAll("points") List<Point> points,
            @ForAll @Scale(3) @DoubleRange(min = -100, max = 100) double dx,
            @ForAll @Scale(3) @DoubleRange(min = -100, max = 100) double dy) {
        StraightLine actual = line(
                points.stream()
                        .map(p -> new Point(p.x + dx, p.y + dy, p.weight))
                        .toList(),
                false);
        StraightLine expected = line(points, false);

        assertSame(actual.slope(), expected.slope());
        assertSame(actual.slopeUncertainty(), expected.slopeUncertainty(), 1);
        assertSame(actual.residualDeviation(), expected.residualDeviation(), 1);
        assertSame(actual.meanAt(4 + dx).value(), expected.meanAt(4).value() + dy);
        assertSame(
                actual.meanAt(4 + dx).standardUncertainty(), expected.meanAt(4).standardUncertainty(), 1);
        assertSame(
                actual.xForObservation(9 + dy, 1).value(),
                expected.xForObservation(9, 1).value() + dx);
    }

    @Property(tries = 300, seed = "1")
    void interceptAndSlopeWithTheirCovarianceGiveTheUncertaintyOfTheLine(
            @ForAll("points") List<Point> points, @ForAll @Scale(3) @DoubleRange(min = -50, max = 50) double x) {
        StraightLine line = line(points, false);
        double ofIntercept = line.interceptUncertainty().orElseThrow();
        double ofSlope = line.slopeUncertainty().orElseThrow();
        double covariance = line.correlation().orElseThrow() * ofIntercept * ofSlope;

        assertSame(line.covariance().orElseThrow(), covariance);
        assertSame(
                line.meanAt(x).standardUncertainty().orElseThrow(),
                Math.sqrt(Math.max(0, ofIntercept * ofIntercept + 2 * x * covariance + x * x * ofSlope * ofSlope)));
    }

    @Property(tries = 300, seed = "1")
    void equalWeightsOnlySayWhatTheDeviationIsOf(
            @ForAll("points") List<Point> points,
            @ForAll boolean throughOrigin,
            @ForAll @Scale(3) @DoubleRange(min = 0.01, max = 100) double weight) {
        StraightLine actual =
                line(points.stream().map(p -> new Point(p.x, p.y, weight)).toList(), throughOrigin);
        StraightLine expected = unweighted(points, throughOrigin);

        assertSame(actual.slope(), expected.slope());
        assertSame(actual.intercept(), expected.intercept());
        assertSame(actual.slopeUncertainty(), expected.slopeUncertainty(), 1);
        assertSame(actual.interceptUncertainty(), expected.interceptUncertainty(), 1);
        assertSame(actual.residualDeviation(), expected.residualDeviation(), Math.sqrt(weight));
        assertSame(
                actual.observationAt(5, weight).standardUncertainty(),
                expected.observationAt(5, 1).standardUncertainty(),
                1);
    }

    @Property(tries = 300, seed = "1")
    void aPointTwiceIsAPointOfTwiceTheWeight(@ForAll("points") List<Point> points, @ForAll boolean throughOrigin) {
        List<Point> twice = new ArrayList<>(points);
        twice.add(points.get(0));
        List<Point> heavy = new ArrayList<>(points);
        heavy.set(0, new Point(points.get(0).x, points.get(0).y, 2 * points.get(0).weight));

        assertSame(
                line(heavy, throughOrigin).slope(), line(twice, throughOrigin).slope());
        assertSame(
                line(heavy, throughOrigin).intercept(),
                line(twice, throughOrigin).intercept());
    }

    @Property(tries = 300, seed = "1")
    void theRangeOfXHoldsTheXAndGrowsWithTheCoverage(
            @ForAll("points") List<Point> points, @ForAll boolean throughOrigin) {
        StraightLine line = line(points, throughOrigin);
        StraightLine.Range narrow = line.rangeOfXForObservation(8, 1, 0.5).orElse(null);
        if (narrow == null) {
            assertThat(line.rangeOfXForObservation(8, 1, 0.9)).isEmpty();
            return;
        }
        double slack = ROUNDING * (1 + Math.abs(line.xForObservation(8, 1).value()));

        assertThat(line.xForObservation(8, 1).value()).isBetween(narrow.lowest() - slack, narrow.highest() + slack);
        line.rangeOfXForObservation(8, 1, 0.9).ifPresent(wide -> {
            assertThat(wide.lowest()).isLessThanOrEqualTo(narrow.lowest() + slack);
            assertThat(wide.highest()).isGreaterThanOrEqualTo(narrow.highest() - slack);
        });
    }

    @Property(tries = 300, seed = "1")
    void unweightedLinesAreThoseOfAnotherLibrary(@ForAll("points") List<Point> points, @ForAll boolean throughOrigin) {
        SimpleRegression other = new SimpleRegression(!throughOrigin);
        points.forEach(p -> other.addData(p.x, p.y));
        StraightLine line = unweighted(points, throughOrigin);

        assertSame(line.slope(), other.getSlope());
        assertSame(line.intercept(), other.getIntercept());
        assertSame(line.meanAt(6).value(), other.predict(6));
        // That library multiplies its sums out and loses digits of a small scatter.
        double scatter = Math.sqrt(ROUNDING);
        assertThat(line.slopeUncertainty().orElseThrow()).isCloseTo(other.getSlopeStdErr(), within(scatter));
        assertThat(line.residualDeviation().orElseThrow())
                .isCloseTo(Math.sqrt(Math.max(0, other.getMeanSquareError())), within(scatter));
        if (!throughOrigin) {
            assertThat(line.interceptUncertainty().orElseThrow())
                    .isCloseTo(other.getInterceptStdErr(), within(scatter));
        }
    }

    @Property(tries = 300, seed = "1")
    void weightedLinesAreThoseOfAnotherLibrary(@ForAll("points") List<Point> points, @ForAll boolean throughOrigin) {
        GLSMultipleLinearRegression other = new GLSMultipleLinearRegression();
        other.setNoIntercept(throughOrigin);
        double[][] x = points.stream().map(p -> new double[] {p.x}).toArray(double[][]::new);
        double[][] variances = new DiagonalMatrix(
                        points.stream().mapToDouble(p -> 1 / p.weight).toArray())
                .getData();
        other.newSampleData(column(points, Point::y), x, variances);
        StraightLine line = line(points, throughOrigin);
        double[] parameters = other.estimateRegressionParameters();

        assertSame(line.slope(), parameters[parameters.length - 1]);
        if (!throughOrigin) {
            assertSame(line.intercept(), parameters[0]);
        }
    }

    /** With y and both regressors multiplied by √w, a weighted line is an unweighted plane through the origin. */
    @Property(tries = 300, seed = "1")
    void weightedUncertaintiesAreThoseOfAnotherLibrary(
            @ForAll("points") List<Point> points, @ForAll boolean throughOrigin) {
        OLSMultipleLinearRegression other = new OLSMultipleLinearRegression();
        other.setNoIntercept(true);
        double[] y = points.stream().mapToDouble(p -> p.y * Math.sqrt(p.weight)).toArray();
        double[][] x = points.stream()
                .map(p -> throughOrigin
                        ? new double[] {p.x * Math.sqrt(p.weight)}
                        : new double[] {p.x * Math.sqrt(p.weight), Math.sqrt(p.weight)})
                .toArray(double[][]::new);
        other.newSampleData(y, x);
        StraightLine line = line(points, throughOrigin);
        double[] errors = other.estimateRegressionParametersStandardErrors();

        assertSame(line.slopeUncertainty().orElseThrow(), errors[0]);
        assertSame(line.residualDeviation().orElseThrow(), other.estimateRegressionStandardError());
        if (!throughOrigin) {
            assertSame(line.interceptUncertainty().orElseThrow(), errors[1]);
        }
    }
}
