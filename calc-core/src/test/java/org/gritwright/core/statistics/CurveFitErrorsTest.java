package org.gritwright.core.statistics;

import static org.gritwright.core.Samples.assertRefused;

import org.junit.jupiter.api.Test;

class CurveFitErrorsTest {
    private static final CurveFit.Shape STRAIGHT = CurveFitShapes.LINEAR;
    private static final double[] X = {2, 4};
    private static final double[] Y = {26, 58};
    private static final double[] EQUAL = {1, 1};

    @Test
    void refusesNothingAndWhatIsNotWhole() {
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 0 x, 0 y, 0 weights",
                () -> CurveFit.proportional(STRAIGHT, new double[0], new double[0], new double[0]));
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 2 x, 1 y, 2 weights",
                () -> CurveFit.proportional(STRAIGHT, X, new double[] {26}, EQUAL));
        assertRefused(
                "observations must be one or more, with an x, a y and a weight each: 2 x, 2 y, 3 weights",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, Y, new double[] {1, 1, 1}));
    }

    @Test
    void refusesNumbersOutOfTheirRange() {
        assertRefused(
                "x must be finite: NaN", () -> CurveFit.proportional(STRAIGHT, new double[] {2, Double.NaN}, Y, EQUAL));
        assertRefused(
                "y must be greater than 0: 0.0", () -> CurveFit.proportional(STRAIGHT, X, new double[] {26, 0}, EQUAL));
        assertRefused(
                "y must be finite: Infinity",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, new double[] {26, Double.POSITIVE_INFINITY}, EQUAL));
        assertRefused(
                "weight must be greater than 0: -1.0",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, Y, new double[] {1, -1}));
    }

    @Test
    void refusesAProportionWhereTheShapeIsNotAboveZero() {
        assertRefused(
                "shape at 2.0 must be greater than 0: 0.0",
                () -> CurveFit.proportional(x -> Math.max(0, x - 3), X, Y, EQUAL));
        assertRefused(
                "shape at 4.0 must be finite: NaN",
                () -> CurveFit.proportional(x -> x < 3 ? x : Double.NaN, X, Y, EQUAL));
    }

    @Test
    void refusesAShiftFromOneX() {
        assertRefused(
                "observations must be at two different x or more: all at 2.0",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, new double[] {2, 2}, Y, EQUAL));
    }

    @Test
    void refusesLimitsThatAreNotFinite() {
        assertRefused(
                "highest argument of the shape must be finite: Infinity",
                () -> CurveFit.shifted(STRAIGHT, 0, Double.POSITIVE_INFINITY, X, Y, EQUAL));
        assertRefused(
                "lowest argument of the shape must be finite: NaN",
                () -> CurveFit.shifted(STRAIGHT, Double.NaN, 40, X, Y, EQUAL));
    }

    @Test
    void refusesAYThatDoesNotRise() {
        assertRefused(
                "observations must be rising like the shape shifted by between -36.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, new double[] {58, 26}, EQUAL));
        assertRefused(
                "observations must be rising like the shape shifted by between -36.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, new double[] {58, 58}, EQUAL));
    }

    @Test
    void refusesAShiftBeyondWhatTheShapesLimitsAllow() {
        // A shift of −0.05 fits; the shape ends where it would have to begin.
        assertRefused(
                "observations must be rising like the shape shifted by between 0.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(STRAIGHT, 0, 4, X, new double[] {2.05, 4.05}, EQUAL));
        // The first y is so small that the shift would be at the first x.
        assertRefused(
                "observations must be rising like the shape shifted by between -36.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(STRAIGHT, 0, 40, X, new double[] {1e-6, 58}, EQUAL));
        // The x are further apart than the shape is wide.
        assertRefused(
                "observations must be rising like the shape shifted by between 3.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(STRAIGHT, 0, 1, X, Y, EQUAL));
    }

    @Test
    void refusesAFlatShape() {
        assertRefused(
                "observations must be rising like the shape shifted by between -36.0 and 2.0: no such shift fits best",
                () -> CurveFit.shifted(x -> 5, 0, 40, X, Y, EQUAL));
    }
}
