package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The example of the dead opening: 26 lb/rev at 2 in and 58 lb/rev at 4 in. */
class CurveFitTest {
    private static final CurveFit.Shape STRAIGHT = CurveFitShapes.LINEAR;
    private static final double[] INCHES = {2, 4};
    private static final double[] POUNDS = {26, 58};
    private static final double[] EQUAL = {1, 1};

    @Test
    void twoPointsGiveTheDeadOpeningWithoutUncertainty() {
        CurveFit fit = CurveFit.shifted(STRAIGHT, 0, 40, INCHES, POUNDS, EQUAL);

        assertThat(fit.scale()).isCloseTo(16, within(1e-12));
        assertThat(fit.shift()).isCloseTo(0.375, within(1e-13));
        assertThat(fit.at(3)).isCloseTo(42.0, within(1e-12));
        assertThat(fit.at(1)).isCloseTo(10.0, within(1e-12));
        assertThat(fit.parameters()).isEqualTo(2);
        assertThat(fit.degreesOfFreedom()).isZero();
        assertThat(fit.relativeDeviation()).isEmpty();
        assertThat(fit.scaleUncertainty()).isEmpty();
        assertThat(fit.shiftUncertainty()).isEmpty();
        assertThat(fit.uncertaintyAt(3)).isEmpty();
    }

    @Test
    void aLineThroughZeroFromTheSecondPointAlonePredictsFarTooMuch() {
        CurveFit fit = CurveFit.proportional(STRAIGHT, new double[] {4}, new double[] {58}, new double[] {1});

        assertThat(fit.at(1)).isEqualTo(14.5);
        assertThat(fit.shift()).isZero();
        assertThat(fit.parameters()).isEqualTo(1);
        assertThat(fit.degreesOfFreedom()).isZero();
        assertThat(fit.scaleUncertainty()).isEmpty();
        assertThat(fit.uncertaintyAt(1)).isEmpty();
    }

    @Test
    void aProportionIsTheWeightedMeanOfTheRatios() {
        // Ratios 13 and 14.5 with weights 1 and 3: k = 14.125. Scaled weights 1/2 and 3/2, residuals −9/113 and 3/113:
        // s² = (81/2 + 27/2)/113² = 54/113²; u(k) = k·s/√2 = 0.125·√27.
        CurveFit fit = CurveFit.proportional(STRAIGHT, INCHES, POUNDS, new double[] {1, 3});

        assertThat(fit.scale()).isCloseTo(14.125, within(1e-14));
        assertThat(fit.degreesOfFreedom()).isEqualTo(1);
        assertThat(fit.relativeDeviation().orElseThrow()).isCloseTo(Math.sqrt(54) / 113, within(1e-15));
        assertThat(fit.scaleUncertainty().orElseThrow()).isCloseTo(0.125 * Math.sqrt(27), within(1e-14));
        assertThat(fit.uncertaintyAt(10).orElseThrow()).isCloseTo(1.25 * Math.sqrt(27), within(1e-13));
        assertThat(fit.shiftUncertainty()).isEmpty();
    }

    @Test
    void atOneXAProportionIsTheMeanOfRatiosWithItsUncertainty() {
        double[] y = {31, 30.25, 30.5};
        CurveFit fit = CurveFit.proportional(STRAIGHT, new double[] {5, 5, 5}, y, new double[] {7, 7, 7});
        RatioEstimate estimate = RatioEstimator.MEAN_OF_RATIOS.estimate(y, new double[] {5, 5, 5});

        assertThat(fit.scale()).isCloseTo(estimate.ratio(), within(1e-14));
        assertThat(fit.scaleUncertainty().orElseThrow())
                .isCloseTo(estimate.standardUncertainty().orElseThrow(), within(1e-14));
    }

    @Test
    void onlyTheProportionsOfWeightsMatter() {
        double[] x = {2, 3, 4};
        double[] y = {26, 41, 59};
        CurveFit small = CurveFit.shifted(STRAIGHT, 0, 40, x, y, new double[] {1, 2, 3});
        CurveFit large = CurveFit.shifted(STRAIGHT, 0, 40, x, y, new double[] {100, 200, 300});

        assertThat(large.scale()).isCloseTo(small.scale(), within(1e-11));
        assertThat(large.relativeDeviation().orElseThrow())
                .isCloseTo(small.relativeDeviation().orElseThrow(), within(1e-14));
        assertThat(large.shiftUncertainty().orElseThrow())
                .isCloseTo(small.shiftUncertainty().orElseThrow(), within(1e-13));
    }

    @Test
    void twiceTheWeightIsTheSamePointTwice() {
        CurveFit weighted = CurveFit.shifted(
                STRAIGHT, 0, 40, new double[] {2, 3, 4}, new double[] {26, 41, 59}, new double[] {1, 2, 1});
        CurveFit repeated = CurveFit.shifted(
                STRAIGHT, 0, 40, new double[] {2, 3, 3, 4}, new double[] {26, 41, 41, 59}, new double[] {1, 1, 1, 1});

        assertThat(weighted.scale()).isCloseTo(repeated.scale(), within(1e-11));
        assertThat(weighted.shift()).isCloseTo(repeated.shift(), within(1e-12));
    }

    @Test
    void aShapeWithADeadZoneOfItsOwnIsShiftedEitherWay() {
        CurveFit.Shape gate = x -> Math.max(0, x - 1);
        double[] x = {1.5, 3, 5};

        // In truth the gate closes at 1.25 and at 0.5.
        CurveFit later = CurveFit.shifted(gate, 0, 40, x, new double[] {4, 28, 60}, new double[] {1, 1, 1});
        CurveFit sooner = CurveFit.shifted(gate, 0, 40, x, new double[] {16, 40, 72}, new double[] {1, 1, 1});

        assertThat(later.shift()).isCloseTo(0.25, within(1e-12));
        assertThat(sooner.shift()).isCloseTo(-0.5, within(1e-12));
        assertThat(later.scale()).isCloseTo(16, within(1e-11));
        assertThat(sooner.scale()).isCloseTo(16, within(1e-11));
        assertThat(later.at(1.2)).isZero();
    }

    @Test
    void aPointInTheShapesDeadZoneIsNoBarToAShift() {
        CurveFit fit = CurveFit.shifted(
                x -> Math.max(0, x - 1), 0, 40, new double[] {0.75, 3}, new double[] {4, 40}, new double[] {1, 1});

        assertThat(fit.shift()).isCloseTo(-0.5, within(1e-12));
        assertThat(fit.scale()).isCloseTo(16, within(1e-11));
    }

    @Test
    void theShiftIsFoundCloseToTheLeastThatTheShapeAllows() {
        // The least shift is 6 − 6.1 = −0.1; the first steps from there are long.
        double[] x = {2, 4, 6};
        for (double shift : new double[] {-0.099, -0.05, 0, 0.1, 0.25}) {
            double[] y = {16 * (2 - shift), 16 * (4 - shift), 16 * (6 - shift)};
            CurveFit fit = CurveFit.shifted(STRAIGHT, 0, 6.1, x, y, new double[] {1, 1, 1});

            assertThat(fit.shift()).isCloseTo(shift, within(1e-12));
        }
    }

    @Test
    void theShapesLimitsMayLieOnBothSidesOfZeroAndItIsAskedOnlyWithinThem() {
        CurveFit.Shape raised = at -> {
            assertThat(at).isBetween(-20.0, 20.0);
            return at + 25;
        };

        // 16·(x − 3 + 25)
        CurveFit fit = CurveFit.shifted(
                raised, -20, 20, new double[] {2, 4, 6}, new double[] {384, 416, 448}, new double[] {1, 1, 1});

        assertThat(fit.shift()).isCloseTo(3, within(1e-9));
        assertThat(fit.scale()).isCloseTo(16, within(1e-9));
    }

    @Test
    void theShiftIsFoundCloseToTheFirstX() {
        for (double distance : new double[] {1e-1, 1e-2, 1e-3, 2e-4}) {
            double[] y = {16 * distance, 16 * (2 + distance), 16 * (4 + distance)};
            CurveFit fit = CurveFit.shifted(STRAIGHT, 0, 40, new double[] {2, 4, 6}, y, new double[] {1, 1, 1});

            assertThat(2 - fit.shift()).isCloseTo(distance, within(1e-11));
        }
    }

    @Test
    void exactDataWithMorePointsHaveNoUncertaintyButItIsThere() {
        CurveFit fit = CurveFit.shifted(
                STRAIGHT, 0, 40, new double[] {2, 3, 4}, new double[] {26, 42, 58}, new double[] {1, 1, 1});

        assertThat(fit.degreesOfFreedom()).isEqualTo(1);
        assertThat(fit.relativeDeviation().orElseThrow()).isLessThan(1e-14);
        assertThat(fit.scaleUncertainty().orElseThrow()).isLessThan(1e-13);
        assertThat(fit.shiftUncertainty().orElseThrow()).isLessThan(1e-13);
    }
}
