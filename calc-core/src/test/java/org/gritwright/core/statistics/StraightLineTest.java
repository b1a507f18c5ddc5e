package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.gritwright.core.Strd;
import org.gritwright.core.statistics.StraightLine.Prediction;
import org.gritwright.core.statistics.StraightLine.Range;
import org.gritwright.units.InvalidInputException;
import org.junit.jupiter.api.Test;

class StraightLineTest {
    /** Means 2.5 and 1, Sxx 5, Sxy 3; residuals −0.1, 0.3, −0.3, 0.1, so that the variance is 0.2/2 = 0.1. */
    private static final StraightLine LINE = StraightLine.fit(new double[] {1, 2, 3, 4}, new double[] {0, 1, 1, 2});

    /** Σx² 14, Σxy 23, Σy² 38. */
    private static final StraightLine THROUGH_ORIGIN =
            StraightLine.throughOrigin(new double[] {1, 2, 3}, new double[] {2, 3, 5});

    private static double of(OptionalDouble known) {
        return known.orElseThrow();
    }

    private static double u(Prediction prediction) {
        return of(prediction.standardUncertainty());
    }

    @Test
    void twoPointsGiveTheLineThroughThemWithoutUncertainty() {
        StraightLine line = StraightLine.fit(new double[] {2, 4}, new double[] {26, 58});

        assertThat(line.intercept()).isEqualTo(-6);
        assertThat(line.slope()).isEqualTo(16);
        assertThat(line.degreesOfFreedom()).isZero();
        assertThat(line.interceptUncertainty()).isEmpty();
        assertThat(line.slopeUncertainty()).isEmpty();
        assertThat(line.covariance()).isEmpty();
        assertThat(line.correlation()).isEmpty();
        assertThat(line.residualDeviation()).isEmpty();
        assertThat(line.meanAt(3)).isEqualTo(new Prediction(42, OptionalDouble.empty(), 0));
        assertThat(line.observationAt(3, 1)).isEqualTo(new Prediction(42, OptionalDouble.empty(), 0));
        assertThat(line.xForObservation(42, 1)).isEqualTo(new Prediction(3, OptionalDouble.empty(), 0));
        assertThat(line.meanAt(3).halfWidth(0.95)).isEmpty();
        assertThat(line.rangeOfXForObservation(42, 1, 0.95)).isEmpty();
    }

    @Test
    void onePointGivesALineThroughTheOriginWithoutUncertainty() {
        StraightLine line = StraightLine.throughOrigin(new double[] {2}, new double[] {32});

        assertThat(line.slope()).isEqualTo(16);
        assertThat(line.degreesOfFreedom()).isZero();
        assertThat(line.slopeUncertainty()).isEmpty();
        assertThat(line.meanAt(3)).isEqualTo(new Prediction(48, OptionalDouble.empty(), 0));
    }

    @Test
    void pointsOnALineGiveThatLineAndNoUncertaintyButItIsThere() {
        StraightLine line = StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 7, 9});

        assertThat(line.intercept()).isEqualTo(3);
        assertThat(line.slope()).isEqualTo(2);
        assertThat(line.interceptUncertainty()).hasValue(0);
        assertThat(line.slopeUncertainty()).hasValue(0);
        assertThat(of(line.correlation())).isCloseTo(-2 / Math.sqrt(14 / 3.0), within(1e-15));
        assertThat(line.rangeOfXForObservation(6, 1, 0.95)).contains(new Range(1.5, 1.5));
    }

    @Test
    void theUncertaintiesAreThoseOfTheFormula() {
        assertThat(LINE.slope()).isCloseTo(0.6, within(1e-15));
        assertThat(LINE.intercept()).isCloseTo(-0.5, within(1e-15));
        assertThat(LINE.residuals()).containsExactly(new double[] {-0.1, 0.3, -0.3, 0.1}, within(1e-15));
        assertThat(LINE.degreesOfFreedom()).isEqualTo(2);
        assertThat(of(LINE.residualDeviation())).isCloseTo(Math.sqrt(0.1), within(1e-15));
        assertThat(of(LINE.slopeUncertainty())).isCloseTo(Math.sqrt(0.1 / 5), within(1e-15));
        assertThat(of(LINE.interceptUncertainty()))
                .isCloseTo(Math.sqrt(0.1 * (1 / 4.0 + 2.5 * 2.5 / 5)), within(1e-15));
        assertThat(of(LINE.covariance())).isCloseTo(-0.1 * 2.5 / 5, within(1e-15));
        assertThat(of(LINE.correlation())).isCloseTo(-0.05 / Math.sqrt(0.15 * 0.02), within(1e-15));
    }

    @Test
    void aLargeNumberAddedToEveryYCostsTheSlopeNoDigit() {
        StraightLine line = StraightLine.fit(new double[] {0, 1, 3}, new double[] {1e15, 1e15 + 1, 1e15 + 3});

        assertThat(line.slope()).isCloseTo(1, within(1e-14));
    }

    @Test
    void aFlatLineLeavesNoXOutEvenWithoutScatter() {
        StraightLine flat = StraightLine.fit(new double[] {1, 2, 3}, new double[] {5, 5, 5});

        assertThat(flat.slopeUncertainty()).hasValue(0);
        assertThat(flat.rangeOfXForMean(5, 0.95)).isEmpty();
    }

    @Test
    void predictionsAreThoseOfTheFormula() {
        assertThat(LINE.meanAt(4.5).value()).isCloseTo(2.2, within(1e-15));
        assertThat(u(LINE.meanAt(4.5))).isCloseTo(Math.sqrt(0.1 * (1 / 4.0 + 4 / 5.0)), within(1e-15));
        assertThat(LINE.observationAt(4.5, 3).value()).isCloseTo(2.2, within(1e-15));
        assertThat(u(LINE.observationAt(4.5, 3)))
                .isCloseTo(Math.sqrt(0.1 * (1 / 3.0 + 1 / 4.0 + 4 / 5.0)), within(1e-15));
        assertThat(LINE.meanAt(4.5).degreesOfFreedom()).isEqualTo(2);
        // t for 95 % and 2 degrees of freedom is 4.302652729749.
        assertThat(of(LINE.meanAt(4.5).halfWidth(0.95))).isCloseTo(4.302652729749 * Math.sqrt(0.105), within(1e-11));
    }

    @Test
    void readBackwardsTheUncertaintyIsThatOfAnObservationOverTheSlope() {
        Prediction x = LINE.xForObservation(2.2, 3);

        assertThat(x.value()).isCloseTo(4.5, within(1e-15));
        assertThat(u(x)).isCloseTo(u(LINE.observationAt(4.5, 3)) / 0.6, within(1e-15));
        assertThat(x.degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void theEndsOfTheRangeOfXAreWhereTheReadingIsJustCovered() {
        Range range = THROUGH_ORIGIN.rangeOfXForObservation(4, 2, 0.9).orElseThrow();

        assertThat(range.lowest()).isLessThan(4 / THROUGH_ORIGIN.slope());
        assertThat(range.highest()).isGreaterThan(4 / THROUGH_ORIGIN.slope());
        for (double end : new double[] {range.lowest(), range.highest()}) {
            Prediction there = THROUGH_ORIGIN.observationAt(end, 2);
            assertThat(Math.abs(4 - there.value())).isCloseTo(of(there.halfWidth(0.9)), within(1e-14));
        }
    }

    @Test
    void aSlopeThatMightBeZeroLeavesNoXOut() {
        // t = slope ÷ u(slope) = 0.6 ÷ 0.1414 = 4.243; for 95 % it takes 4.303, for 90 % 2.920.
        assertThat(LINE.rangeOfXForObservation(1, 1, 0.95)).isEmpty();
        assertThat(LINE.rangeOfXForObservation(1, 1, 0.90)).isPresent();
    }

    /** Without the term of the observation, and where one of a weight beyond all bounds would end. */
    @Test
    void aMeanIsKnownBetterThanOneMoreObservation() {
        assertThat(u(LINE.meanAt(4.5))).isCloseTo(Math.sqrt(0.1 * (1 / 4.0 + 4 / 5.0)), within(1e-15));
        assertThat(u(LINE.observationAt(4.5))).isCloseTo(Math.sqrt(0.1 * (1 + 1 / 4.0 + 4 / 5.0)), within(1e-15));
        assertThat(LINE.observationAt(4.5)).isEqualTo(LINE.observationAt(4.5, 1));
        assertThat(u(LINE.observationAt(4.5, 1e300))).isCloseTo(u(LINE.meanAt(4.5)), within(1e-15));
    }

    @Test
    void aLineReadBackwardsForAMeanLeavesTheObservationOut() {
        assertThat(LINE.xForMean(2.2).value()).isCloseTo(4.5, within(1e-15));
        assertThat(u(LINE.xForMean(2.2))).isCloseTo(u(LINE.meanAt(4.5)) / 0.6, within(1e-15));
        assertThat(LINE.xForObservation(2.2)).isEqualTo(LINE.xForObservation(2.2, 1));
        assertThat(LINE.rangeOfXForObservation(2.2, 0.8)).isEqualTo(LINE.rangeOfXForObservation(2.2, 1, 0.8));
        Range range = THROUGH_ORIGIN.rangeOfXForMean(4, 0.9).orElseThrow();
        for (double end : new double[] {range.lowest(), range.highest()}) {
            Prediction there = THROUGH_ORIGIN.meanAt(end);
            assertThat(Math.abs(there.value() - 4))
                    .isCloseTo(there.halfWidth(0.9).orElseThrow(), within(1e-12));
        }
    }

    @Test
    void throughTheOriginThereIsOneDegreeOfFreedomMoreAndNoIntercept() {
        assertThat(THROUGH_ORIGIN.intercept()).isZero();
        assertThat(THROUGH_ORIGIN.slope()).isEqualTo(23 / 14.0);
        assertThat(THROUGH_ORIGIN.degreesOfFreedom()).isEqualTo(2);
        assertThat(THROUGH_ORIGIN.interceptUncertainty()).isEmpty();
        assertThat(THROUGH_ORIGIN.covariance()).isEmpty();
        assertThat(THROUGH_ORIGIN.correlation()).isEmpty();
        // Σy² − (Σxy)²/Σx² = 38 − 529/14
        double variance = (38 - 529 / 14.0) / 2;
        assertThat(of(THROUGH_ORIGIN.residualDeviation())).isCloseTo(Math.sqrt(variance), within(1e-14));
        assertThat(of(THROUGH_ORIGIN.slopeUncertainty())).isCloseTo(Math.sqrt(variance / 14), within(1e-14));
        assertThat(u(THROUGH_ORIGIN.meanAt(2))).isCloseTo(2 * Math.sqrt(variance / 14), within(1e-14));
        assertThat(u(THROUGH_ORIGIN.observationAt(2, 4)))
                .isCloseTo(Math.sqrt(variance * (1 / 4.0 + 4 / 14.0)), within(1e-14));
        assertThat(u(THROUGH_ORIGIN.meanAt(0))).isZero();
    }

    @Test
    void theDeviationIsThatOfAnObservationOfWeightOne() {
        double[] x = {0, 2, 2};
        double[] y = {1, 1, 3};
        double[] weights = {2, 2, 2};
        StraightLine line = StraightLine.fit(x, y, weights);

        // At x = 2 the mean is 2, so the residuals are 0, −1, 1 and Σw·r² = 4 with one degree of freedom.
        assertThat(of(line.residualDeviation())).isCloseTo(2, within(1e-15));
        assertThat(u(line.observationAt(0, 2))).isCloseTo(Math.sqrt(2 + 2), within(1e-15));
        assertThat(of(StraightLine.fit(x, y).residualDeviation())).isCloseTo(Math.sqrt(2), within(1e-15));
    }

    @Test
    void referenceLinesComeOutToTwelveDigits() {
        StraightLine norris = StraightLine.fit(Strd.column("norris", "x"), Strd.column("norris", "y"));
        StraightLine noInt1 = StraightLine.throughOrigin(Strd.column("noint1", "x"), Strd.column("noint1", "y"));

        assertThat(norris.intercept()).isCloseTo(-0.262323073774029, within(2.6e-13));
        assertThat(norris.slope()).isCloseTo(1.00211681802045, within(1e-14));
        assertThat(of(norris.residualDeviation())).isCloseTo(0.884796396144373, within(8.8e-14));
        assertThat(noInt1.slope()).isCloseTo(251 / 121.0, within(1e-15));
        assertThat(of(noInt1.slopeUncertainty())).isCloseTo(0.0165289256198347, within(1e-15));
        assertThat(of(noInt1.residualDeviation())).isCloseTo(3.56753034006338, within(1e-14));
    }

    /** The data of JCGM 100:2008, the GUM, H.3; the digits beyond those it prints were computed with another program. */
    @Test
    void theThermometersLineComesOutToTenDigits() {
        StraightLine line = StraightLine.fit(
                new double[] {1.521, 2.012, 2.512, 3.003, 3.507, 3.999, 4.513, 5.002, 5.503, 6.010, 6.511},
                new double[] {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160});

        assertThat(line.intercept()).isCloseTo(-0.17120379013135, within(1e-13));
        assertThat(of(line.interceptUncertainty())).isCloseTo(0.00287759783515995, within(1e-14));
        assertThat(line.slope()).isCloseTo(0.00218269773988728, within(1e-14));
        assertThat(of(line.slopeUncertainty())).isCloseTo(0.000667938773227832, within(1e-14));
        assertThat(of(line.correlation())).isCloseTo(-0.930429603093446, within(1e-12));
        assertThat(of(line.residualDeviation())).isCloseTo(0.00349756396350528, within(1e-14));
        assertThat(line.meanAt(10).value()).isCloseTo(-0.149376812732477, within(1e-13));
        assertThat(u(line.meanAt(10))).isCloseTo(0.00413859575285495, within(1e-14));
        assertThat(line.degreesOfFreedom()).isEqualTo(9);
    }

    @Test
    void aFarOriginCostsNoDigits() {
        StraightLine line = StraightLine.fit(new double[] {1e8, 1e8 + 1, 1e8 + 2}, new double[] {5, 7, 9});

        assertThat(line.slope()).isEqualTo(2);
        assertThat(line.residualDeviation()).hasValue(0);
    }

    @Test
    void residualsAreACopy() {
        Arrays.fill(LINE.residuals(), 7);

        assertThat(LINE.residuals()[0]).isCloseTo(-0.1, within(1e-15));
    }

    @Test
    void refusesWhatGivesNoLine() {
        assertRefused(
                "points of a line must be two or more, with an x, a y and a weight each: 1 x, 1 y, 1 weights",
                () -> StraightLine.fit(new double[] {1}, new double[] {1}));
        assertRefused(
                "points of a line must be two or more, with an x, a y and a weight each: 2 x, 3 y, 2 weights",
                () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, 2, 3}));
        assertRefused(
                "points of a line must be two or more, with an x, a y and a weight each: 2 x, 2 y, 1 weights",
                () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, 2}, new double[] {1}));
        assertRefused(
                "points of a line must be at two different x or more: all at 1.0",
                () -> StraightLine.fit(new double[] {1, 1}, new double[] {1, 2}));
        assertRefused(
                "points of a line must be one or more, with an x, a y and a weight each: 0 x, 0 y, 0 weights",
                () -> StraightLine.throughOrigin(new double[0], new double[0]));
        assertRefused(
                "points of a line must be at an x other than 0: all at 0.0",
                () -> StraightLine.throughOrigin(new double[] {0, 0}, new double[] {1, 2}));
    }

    @Test
    void refusesWhatIsNotFinite() {
        assertRefused(
                "x must be finite: NaN", () -> StraightLine.fit(new double[] {1, Double.NaN}, new double[] {1, 2}));
        assertRefused(
                "y must be finite: Infinity",
                () -> StraightLine.fit(new double[] {1, 2}, new double[] {1, Double.POSITIVE_INFINITY}));
        assertRefused(
                "variance of the residuals must be finite: Infinity",
                () -> StraightLine.fit(new double[] {1, 2, 3}, new double[] {1e200, -1e200, 1e200}));
        assertRefused("x must be finite: NaN", () -> LINE.meanAt(Double.NaN));
        assertRefused("y must be finite: NaN", () -> LINE.xForMean(Double.NaN));
        assertRefused("y must be finite: NaN", () -> LINE.rangeOfXForMean(Double.NaN, 0.95));
        assertRefused("y must be finite: NaN", () -> LINE.xForObservation(Double.NaN, 1));
        assertRefused("y must be finite: NaN", () -> LINE.rangeOfXForObservation(Double.NaN, 1, 0.95));
    }

    @Test
    void refusesAWeightThatIsNone() {
        double[] two = {1, 2};
        for (double bad : new double[] {0, -1}) {
            String message = "weight must be greater than 0: " + bad;
            assertRefused(message, () -> StraightLine.fit(two, two, new double[] {1, bad}));
            assertRefused(message, () -> StraightLine.throughOrigin(two, two, new double[] {1, bad}));
            assertRefused(message, () -> LINE.observationAt(1, bad));
            assertRefused(message, () -> LINE.xForObservation(1, bad));
            assertRefused(message, () -> LINE.rangeOfXForObservation(1, bad, 0.95));
        }
        assertRefused("weight must be finite: NaN", () -> LINE.observationAt(1, Double.NaN));
    }

    @Test
    void refusesACoverageThatIsNone() {
        for (double bad : new double[] {0, 1, Double.NaN}) {
            String message = "coverage must be greater than 0 and below 1: " + bad;
            assertRefused(message, () -> LINE.meanAt(1).halfWidth(bad));
            assertRefused(message, () -> LINE.rangeOfXForObservation(1, 1, bad));
            assertRefused(message, () -> LINE.rangeOfXForMean(1, bad));
        }
    }

    @Test
    void aLevelLineIsNotReadBackwards() {
        StraightLine level = StraightLine.fit(new double[] {1, 2}, new double[] {3, 3});

        String message = "slope of a line that is read backwards must be other than 0: 0";
        assertRefused(message, () -> level.xForObservation(3, 1));
        assertRefused(message, () -> level.xForMean(3));
    }

    @Test
    void whatALineSaysHoldsTogether() {
        assertRefused(
                "uncertainty of a predicted value must be present with a degree of freedom, and absent without:"
                        + " none with 1 degree of freedom",
                () -> new Prediction(1, OptionalDouble.empty(), 1));
        assertRefused(
                "uncertainty of a predicted value must be present with a degree of freedom, and absent without:"
                        + " 1.0 with 0 degrees of freedom",
                () -> new Prediction(1, OptionalDouble.of(1), 0));
        assertRefused(
                "uncertainty of a predicted value must be present with a degree of freedom, and absent without:"
                        + " none with -1 degrees of freedom",
                () -> new Prediction(1, OptionalDouble.empty(), -1));
        assertRefused(
                "predicted value must be finite: NaN", () -> new Prediction(Double.NaN, OptionalDouble.empty(), 0));
        assertRefused(
                "uncertainty of a predicted value must be finite: NaN",
                () -> new Prediction(1, OptionalDouble.of(Double.NaN), 1));
        assertRefused("highest value must be at least 2.0: 1.0", () -> new Range(2, 1));
        assertRefused("lowest value must be finite: NaN", () -> new Range(Double.NaN, 1));
        assertRefused("highest value must be finite: NaN", () -> new Range(1, Double.NaN));
    }

    @Test
    void numbersAtTheEndOfWhatADoubleHoldsNeverGiveNaN() {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> StraightLine.throughOrigin(new double[] {1e200}, new double[] {1e-100}))
                .withMessage("sum of squares of x must be finite: Infinity");
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> StraightLine.fit(new double[] {-1.7e308, 1.7e308}, new double[] {1, 2}))
                .withMessageContaining("must be finite");
    }
}
