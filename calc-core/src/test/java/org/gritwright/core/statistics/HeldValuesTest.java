package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Shipped.assertIsAValue;

import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.gritwright.core.Shipped;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a user keeps of this package is a value: equal, hashed, printed and serialized as such. */
class HeldValuesTest {
    private static final double[] X = {2, 2, 4, 4};
    private static final double[] Y = {26, 27, 58, 57};
    private static final double[] EQUAL = {1, 1, 1, 1};
    private static final double[] OTHER_Y = {26, 27, 58, 60};

    private static double straight(double x) {
        return x;
    }

    private static StraightLine line(double[] y) {
        return StraightLine.fit(X, y);
    }

    private static CurveFit fit(double[] y) {
        return CurveFit.shifted(HeldValuesTest::straight, 0, 40, X, y, EQUAL);
    }

    private static LackOfFit lackOfFit(double[] y) {
        return LackOfFit.test(Scatter.RELATIVE, X, y, x -> 14 * x, 1).orElseThrow();
    }

    private static Arguments value(Object value, Object madeAnew, Object other) {
        return Arguments.of(value, madeAnew, other);
    }

    private static Stream<Arguments> values() {
        return Stream.of(
                value(Sample.of(1, 2, 4), Sample.of(1, 2, 4), Sample.of(1, 2, 5)),
                value(Sample.of(3), Sample.of(3), Sample.of(4)),
                value(
                        RatioEstimator.RATIO_OF_SUMS.estimate(Y, X),
                        RatioEstimator.RATIO_OF_SUMS.estimate(Y, X),
                        RatioEstimator.RATIO_OF_SUMS.estimate(OTHER_Y, X)),
                value(
                        RatioEstimator.LINE_WITH_INTERCEPT.estimate(Y, X),
                        RatioEstimator.LINE_WITH_INTERCEPT.estimate(Y, X),
                        RatioEstimator.LINE_WITH_INTERCEPT.estimate(OTHER_Y, X)),
                value(line(Y), line(Y), line(OTHER_Y)),
                value(line(Y), line(Y), StraightLine.throughOrigin(X, Y)),
                // All on their lines, so that only the lines differ.
                value(
                        StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 7, 9}),
                        StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 7, 9}),
                        StraightLine.fit(new double[] {1, 2, 3}, new double[] {6, 8, 10})),
                value(line(Y).meanAt(3), line(Y).meanAt(3), line(Y).observationAt(3)),
                value(
                        line(Y).rangeOfXForMean(40, 0.95).orElseThrow(),
                        line(Y).rangeOfXForMean(40, 0.95).orElseThrow(),
                        line(Y).rangeOfXForMean(41, 0.95).orElseThrow()),
                value(fit(Y), fit(Y), fit(OTHER_Y)),
                value(fit(Y), fit(Y), CurveFit.proportional(HeldValuesTest::straight, X, Y, EQUAL)),
                value(
                        MonotoneTable.fit(X, Y, EQUAL),
                        MonotoneTable.fit(X, Y, EQUAL),
                        MonotoneTable.fit(X, OTHER_Y, EQUAL)),
                value(lackOfFit(Y), lackOfFit(Y), lackOfFit(OTHER_Y)),
                value(Grubbs.of(1, 2, 4), Grubbs.of(1, 2, 4), Grubbs.of(1, 2, 5)),
                value(Student.of(9), Student.of(9), Student.of(10)));
    }

    @ParameterizedTest
    @MethodSource("values")
    void isAValue(Object value, Object madeAnew, Object other) {
        // A lambda is read as another object, so a fit is compared by what it says, below.
        if (value instanceof CurveFit) {
            assertThat(madeAnew).isEqualTo(value).hasSameHashCodeAs(value);
            assertThat(other).isNotEqualTo(value).doesNotHaveSameHashCodeAs(value);
        } else {
            assertIsAValue(value, madeAnew, other);
        }
    }

    @Test
    void aFitArrivesWithItsShape() {
        CurveFit sent = fit(Y);
        CurveFit arrived = Shipped.copyOf(sent);

        assertThat(arrived).hasToString(sent.toString());
        for (double x : new double[] {2, 3.7, 30}) {
            assertThat(arrived.at(x)).isEqualTo(sent.at(x));
            assertThat(arrived.uncertaintyAt(x)).isEqualTo(sent.uncertaintyAt(x));
        }
        CurveFit ofEnum = CurveFit.shifted(CurveFitShapes.LINEAR, 0, 40, X, Y, EQUAL);
        assertIsAValue(ofEnum, CurveFit.shifted(CurveFitShapes.LINEAR, 0, 40, X, Y, EQUAL), fit(Y));
    }

    @Test
    void aDistributionWorksWhereItArrives() {
        assertThat(Shipped.copyOf(Student.of(9)).coverageFactor(0.95))
                .isEqualTo(Student.of(9).coverageFactor(0.95));
    }

    @Test
    void valuesArePrintedShort() {
        assertThat(Sample.of(5.5, 6.5, 6)).hasToString("3 numbers, mean 6.0, deviation 0.5");
        assertThat(Sample.of(6)).hasToString("1 number, 6.0");
        assertThat(new RatioEstimate(6.1, OptionalDouble.of(0.04), OptionalDouble.of(0.02), 3))
                .hasToString("6.1 (u 0.02, 2 degrees of freedom)");
        assertThat(new RatioEstimate(6.1, OptionalDouble.empty(), OptionalDouble.empty(), 1))
                .hasToString("6.1 (no uncertainty)");
        assertThat(RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {26, 58}, new double[] {2, 4}))
                .hasToString("16.0 (no uncertainty), intercept -6.0");
        assertThat(StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 7, 9}))
                .hasToString("y = 3.0 + 2.0 · x, 1 degree of freedom");
        assertThat(StraightLine.throughOrigin(new double[] {2}, new double[] {32}))
                .hasToString("y = 16.0 · x, 0 degrees of freedom");
        assertThat(new StraightLine.Prediction(2.2, OptionalDouble.of(0.3), 2))
                .hasToString("2.2 (u 0.3, 2 degrees of freedom)");
        assertThat(CurveFit.proportional(
                        HeldValuesTest::straight, new double[] {4}, new double[] {58}, new double[] {1}))
                .hasToString("y = 14.5 · g(x), 0 degrees of freedom");
        assertThat(MonotoneTable.fit(X, Y, EQUAL))
                .hasToString("rising table of 2 rows from 2.0 to 4.0, 2 degrees of freedom");
        assertThat(MonotoneTable.fit(new double[] {2}, new double[] {26}, new double[] {1}))
                .hasToString("rising table of 1 row at 2.0, 0 degrees of freedom");
        assertThat(Student.of(Double.POSITIVE_INFINITY)).hasToString("Student's t, ∞ degrees of freedom");
    }

    private static void assertNamesNull(String parameter, ThrowingCallable call) {
        assertThatNullPointerException().isThrownBy(call).withMessage(parameter);
    }

    @Test
    void nullIsRefusedByName() {
        assertNamesNull("values", () -> Sample.of((double[]) null));
        assertNamesNull("deviation", () -> new Sample(1, 2, null));
        assertNamesNull("values", () -> Grubbs.of((double[]) null));
        assertNamesNull("numerators", () -> RatioEstimator.MEAN_OF_RATIOS.estimate(null, X));
        assertNamesNull("denominators", () -> RatioEstimator.MEAN_OF_RATIOS.estimate(X, null));
        assertNamesNull("standardUncertainty", () -> new RatioEstimate(1, OptionalDouble.of(1), null, 2));
        assertNamesNull("x", () -> StraightLine.fit(null, Y));
        assertNamesNull("y", () -> StraightLine.fit(X, null));
        assertNamesNull("weights", () -> StraightLine.throughOrigin(X, Y, null));
        assertNamesNull("standardUncertainty", () -> new StraightLine.Prediction(1, null, 0));
        assertNamesNull("shape", () -> CurveFit.proportional(null, X, Y, EQUAL));
        assertNamesNull("shape", () -> CurveFit.shifted(null, 0, 1, X, Y, EQUAL));
        assertNamesNull("weights", () -> CurveFit.proportional(HeldValuesTest::straight, X, Y, null));
        assertNamesNull("y", () -> MonotoneTable.fit(X, null, EQUAL));
        assertNamesNull("scatter", () -> LackOfFit.test(null, X, Y, x -> x, 1));
        assertNamesNull("x", () -> LackOfFit.test(Scatter.ABSOLUTE, null, Y, x -> x, 1));
        assertNamesNull("curve", () -> LackOfFit.test(Scatter.ABSOLUTE, X, Y, null, 1));
    }
}
