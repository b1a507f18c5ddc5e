package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import org.gritwright.core.Shipped;
import org.gritwright.core.statistics.MonotoneCurve.Interval;
import org.hipparchus.analysis.interpolation.HermiteInterpolator;
import org.junit.jupiter.api.Test;

class MonotoneCurveTest {
    private static final double[] X = {0, 1, 3, 4, 6};
    private static final double[] Y = {0, 2, 4, 4, 9};

    @Test
    void itGoesThroughItsPoints() {
        for (int i = 0; i < X.length; i++) {
            assertThat(MonotoneCurve.cubic(X, Y).at(X[i])).isEqualTo(Y[i]);
            assertThat(MonotoneCurve.straight(X, Y).at(X[i])).isEqualTo(Y[i]);
        }
    }

    @Test
    void throughTwoPointsItIsALine() {
        MonotoneCurve curve = MonotoneCurve.cubic(new double[] {1, 3}, new double[] {10, 20});

        assertThat(curve.at(1.5)).isCloseTo(12.5, within(1e-14));
        assertThat(curve.at(2.9)).isCloseTo(19.5, within(1e-14));
    }

    @Test
    void throughOnePointItIsThatPoint() {
        MonotoneCurve curve = MonotoneCurve.cubic(new double[] {3}, new double[] {7});

        assertThat(curve.at(3)).isEqualTo(7);
        assertThat(curve.where(7)).hasValue(new Interval(3, 3));
        assertThat(curve.where(7.1)).isEmpty();
        assertRefused("x of the curve must be within 3.0 to 3.0: 3.1", () -> curve.at(3.1));
    }

    @Test
    void pointsOnALineGiveTheLine() {
        MonotoneCurve curve = MonotoneCurve.cubic(new double[] {0, 1, 3, 7}, new double[] {1, 3, 7, 15});
        for (double x = 0; x <= 7; x += 0.125) {
            assertThat(curve.at(x)).isCloseTo(2 * x + 1, within(1e-13));
        }
    }

    /**
     * The slopes by hand. Lines: 2, 1, 0, 2.5. At 0: ((2·1 + 2)·2 − 1·1) ÷ 3 = 7/3. At 1, widths 1 and 2: weights 5 and 4, 9 ÷ (5/2 +
     * 4/1) = 18/13. At 3 and 4 a line is flat: 0. At 6: ((2·2 + 1)·2.5 − 2·0) ÷ 3 = 25/6. The pieces by Hermite's interpolation.
     */
    @Test
    void itsPiecesAreHermitesWithTheWeightedHarmonicMeans() {
        double[] slopes = {7.0 / 3, 18.0 / 13, 0, 0, 25.0 / 6};
        MonotoneCurve curve = MonotoneCurve.cubic(X, Y);
        for (int i = 0; i + 1 < X.length; i++) {
            HermiteInterpolator piece = new HermiteInterpolator();
            piece.addSamplePoint(X[i], new double[] {Y[i]}, new double[] {slopes[i]});
            piece.addSamplePoint(X[i + 1], new double[] {Y[i + 1]}, new double[] {slopes[i + 1]});
            for (double part = 0.0625; part < 1; part += 0.0625) {
                double x = X[i] + part * (X[i + 1] - X[i]);
                assertThat(curve.at(x)).isCloseTo(piece.value(x)[0], within(1e-12));
            }
        }
    }

    /**
     * The data RPN 14 of Fritsch and Carlson (1980). 12 digits were computed independently; the two-step algorithm of that paper
     * gives 0.970007 at 10.392, so its curve is another one.
     */
    @Test
    void itIsNotTheCurveOf1980() {
        MonotoneCurve curve = MonotoneCurve.cubic(
                new double[] {7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20},
                new double[] {0, 2.7643e-5, 0.04375, 0.16918, 0.46943, 0.94374, 0.99864, 0.99992, 0.99999});

        assertThat(curve.at(9.191)).isCloseTo(0.464016263710, within(1e-12));
        assertThat(curve.at(10.392)).isCloseTo(0.964471183448, within(1e-12));
    }

    /** ((2·1 + 1)·1 − 1·10) ÷ 2 is below 0. */
    @Test
    void theSlopeAtAnEndIsNeverBelowZero() {
        MonotoneCurve curve = MonotoneCurve.cubic(new double[] {0, 1, 2}, new double[] {0, 1, 11});
        HermiteInterpolator piece = new HermiteInterpolator();
        piece.addSamplePoint(0, new double[] {0}, new double[] {0});
        piece.addSamplePoint(1, new double[] {1}, new double[] {6 / (3 / 1.0 + 3 / 10.0)});

        assertThat(curve.at(0.25)).isCloseTo(piece.value(0.25)[0], within(1e-14));
    }

    @Test
    void straightLinesRunBetweenThePoints() {
        MonotoneCurve curve = MonotoneCurve.straight(X, Y);

        assertThat(curve.at(0.25)).isCloseTo(0.5, within(1e-15));
        assertThat(curve.at(2)).isCloseTo(3, within(1e-15));
        assertThat(curve.at(5.5)).isCloseTo(7.75, within(1e-14));
        assertThat(curve.where(7.75).orElseThrow().lowest()).isCloseTo(5.5, within(1e-14));
    }

    @Test
    void aPlateauInvertsToAllOfIt() {
        assertThat(MonotoneCurve.cubic(X, Y).where(4)).hasValue(new Interval(3, 4));
        assertThat(MonotoneCurve.cubic(X, Y).where(2)).hasValue(new Interval(1, 1));
        assertThat(MonotoneCurve.cubic(new double[] {1, 2, 3}, new double[] {5, 5, 5})
                        .where(5))
                .hasValue(new Interval(1, 3));
    }

    @Test
    void outsideThereIsNothing() {
        MonotoneCurve curve = MonotoneCurve.cubic(X, Y);
        assertThat(curve.where(-1e-9)).isEmpty();
        assertThat(curve.where(9.000001)).isEmpty();
        assertThat(curve.where(Double.NaN)).isEmpty();
        assertThat(curve.where(0)).hasValue(new Interval(0, 0));
        assertThat(curve.where(9)).hasValue(new Interval(6, 6));
        assertThat(curve.lowest()).isZero();
        assertThat(curve.highest()).isEqualTo(6);
        assertRefused("x of the curve must be within 0.0 to 6.0: -0.1", () -> curve.at(-0.1));
        assertRefused("x of the curve must be within 0.0 to 6.0: NaN", () -> curve.at(Double.NaN));
    }

    @Test
    void whatIsNoMonotoneCurveIsRefused() {
        assertRefused(
                "points of a curve must be one or more, with an x and a y each: 0 x, 0 y",
                () -> MonotoneCurve.cubic(new double[0], new double[0]));
        assertRefused(
                "points of a curve must be one or more, with an x and a y each: 1 x, 2 y",
                () -> MonotoneCurve.straight(new double[] {1}, new double[] {1, 2}));
        assertRefused(
                "x must be greater than the one before: 1.0",
                () -> MonotoneCurve.cubic(new double[] {1, 1}, new double[] {1, 2}));
        assertRefused(
                "y must be at least the one before: 1.0",
                () -> MonotoneCurve.cubic(new double[] {1, 2}, new double[] {2, 1}));
        assertRefused("x must be finite: NaN", () -> MonotoneCurve.cubic(new double[] {Double.NaN}, new double[] {2}));
        assertRefused("y must be finite: NaN", () -> MonotoneCurve.cubic(new double[] {1}, new double[] {Double.NaN}));
        assertRefused(
                "slope must be finite: Infinity",
                () -> MonotoneCurve.cubic(new double[] {0, 1e-300}, new double[] {0, 1e300}));
    }

    @Test
    void whatIsGivenMayChangeAfterwards() {
        double[] x = {1, 2};
        double[] y = {1, 2};
        MonotoneCurve curve = MonotoneCurve.straight(x, y);
        x[1] = 9;
        y[1] = 9;

        assertThat(curve).isEqualTo(MonotoneCurve.straight(new double[] {1, 2}, new double[] {1, 2}));
    }

    @Test
    void itIsAValue() {
        Shipped.assertIsAValue(
                MonotoneCurve.cubic(X, Y), MonotoneCurve.cubic(X, Y), MonotoneCurve.cubic(X, new double[] {0, 2, 4, 4, 8
                }));
        assertThat(MonotoneCurve.straight(X, Y)).isNotEqualTo(MonotoneCurve.cubic(X, Y));
        assertThat(MonotoneCurve.cubic(X, Y)).hasToString("monotone curve through 5 points from 0.0 to 6.0");
        assertThat(MonotoneCurve.cubic(new double[] {3}, new double[] {7}))
                .hasToString("monotone curve through 1 point at 3.0");
    }
}
