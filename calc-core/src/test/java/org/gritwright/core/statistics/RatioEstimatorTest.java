package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RatioEstimatorTest {
    private static final double[] REVOLUTIONS = {5, 10, 20};
    private static final double[] POUNDS = {31, 60.5, 122};

    @Test
    void theUncertaintyOfARatioOfSumsIsThatOfTheFormula() {
        // R = 213.5/35 = 6.1; residuals 0.5, −0.5, 0; u² = 3/2 · 0.5/35²
        RatioEstimate estimate = RatioEstimator.RATIO_OF_SUMS.estimate(POUNDS, REVOLUTIONS);

        assertThat(estimate.ratio()).isEqualTo(6.1);
        assertThat(estimate.standardUncertainty().orElseThrow()).isCloseTo(Math.sqrt(0.75) / 35, within(1e-15));
        assertThat(estimate.degreesOfFreedom()).isEqualTo(2);
    }

    @Test
    void theUncertaintyOfAMeanOfRatiosIsTheDeviationOverTheRootOfTheNumber() {
        // ratios 6.2, 6.05, 6.1; mean 6.11666…; s² = (0.08333² + 0.06667² + 0.01667²)/2 = 0.00583333…
        RatioEstimate estimate = RatioEstimator.MEAN_OF_RATIOS.estimate(POUNDS, REVOLUTIONS);

        double deviation = Math.sqrt(0.0035 / 0.6);
        assertThat(estimate.sampleDeviation().orElseThrow()).isCloseTo(deviation, within(1e-14));
        assertThat(estimate.standardUncertainty().orElseThrow()).isCloseTo(deviation / Math.sqrt(3), within(1e-14));
    }

    @Test
    void aLinesSampleDeviationIsThatOfItsResidualsPerDenominator() {
        // y = 0.6·x − 0.5: residuals −0.1, 0.3, −0.3, 0.1; over x −0.1, 0.15, −0.1, 0.025; squares 0.043125
        RatioEstimate estimate =
                RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {0, 1, 1, 2}, new double[] {1, 2, 3, 4});

        assertThat(estimate.sampleDeviation().orElseThrow()).isCloseTo(Math.sqrt(0.043125 / 2), within(1e-15));
    }

    @Test
    void theSensitivitiesAreThoseOfTheFormulas() {
        assertThat(RatioEstimator.RATIO_OF_SUMS.sensitivities(REVOLUTIONS))
                .containsExactly(new double[] {1 / 35.0, 1 / 35.0, 1 / 35.0}, within(1e-16));
        assertThat(RatioEstimator.MEAN_OF_RATIOS.sensitivities(REVOLUTIONS))
                .containsExactly(new double[] {1 / 15.0, 1 / 30.0, 1 / 60.0}, within(1e-16));
        // From the mean, 35/3: −20/3, −5/3, 25/3; squares 350/3
        assertThat(RatioEstimator.LINE_WITH_INTERCEPT.sensitivities(REVOLUTIONS))
                .containsExactly(new double[] {-2 / 35.0, -1 / 70.0, 1 / 14.0}, within(1e-16));
    }

    @ParameterizedTest
    @EnumSource
    void theRatioIsTheSumOfTheNumeratorsTimesTheirSensitivities(RatioEstimator estimator) {
        double[] sensitivities = estimator.sensitivities(REVOLUTIONS);
        double sum = 0;
        for (int i = 0; i < POUNDS.length; i++) {
            sum += POUNDS[i] * sensitivities[i];
        }

        assertThat(sum).isCloseTo(estimator.estimate(POUNDS, REVOLUTIONS).ratio(), within(1e-14));
    }

    @Test
    void theSampleDeviationIsThatOfTheRatiosWhateverTheEstimator() {
        assertThat(RatioEstimator.RATIO_OF_SUMS.estimate(POUNDS, REVOLUTIONS).sampleDeviation())
                .isEqualTo(RatioEstimator.MEAN_OF_RATIOS
                        .estimate(POUNDS, REVOLUTIONS)
                        .sampleDeviation());
    }

    @ParameterizedTest
    @EnumSource(names = "LINE_WITH_INTERCEPT", mode = EnumSource.Mode.EXCLUDE)
    void forOnePairTheUncertaintyIsAbsentAndNotZero(RatioEstimator estimator) {
        RatioEstimate estimate = estimator.estimate(new double[] {31}, new double[] {5});

        assertThat(estimate).isEqualTo(new RatioEstimate(6.2, OptionalDouble.empty(), OptionalDouble.empty(), 1));
    }

    @ParameterizedTest
    @EnumSource(names = "LINE_WITH_INTERCEPT", mode = EnumSource.Mode.EXCLUDE)
    void equalPairsHaveNoUncertaintyButItIsThere(RatioEstimator estimator) {
        RatioEstimate estimate = estimator.estimate(new double[] {31, 31}, new double[] {5, 5});

        assertThat(estimate.standardUncertainty()).hasValue(0);
        assertThat(estimate.sampleDeviation()).hasValue(0);
    }

    @ParameterizedTest
    @EnumSource
    void refusesWhatIsNoListOfPairs(RatioEstimator estimator) {
        assertRefused(
                "pairs must be one or more, each with a numerator and a denominator: 0 numerators, 0 denominators",
                () -> estimator.estimate(new double[0], new double[0]));
        assertRefused(
                "pairs must be one or more, each with a numerator and a denominator: 1 numerators, 2 denominators",
                () -> estimator.estimate(new double[1], new double[2]));
    }

    @ParameterizedTest
    @EnumSource(names = "LINE_WITH_INTERCEPT", mode = EnumSource.Mode.EXCLUDE)
    void refusesNumbersThatGiveNoRatio(RatioEstimator estimator) {
        assertRefused(
                "denominator must be greater than 0: 0.0",
                () -> estimator.estimate(new double[] {1}, new double[] {0}));
        assertRefused(
                "denominator must be finite: NaN",
                () -> estimator.estimate(new double[] {1}, new double[] {Double.NaN}));
        assertRefused(
                "numerator must be finite: Infinity",
                () -> estimator.estimate(new double[] {Double.POSITIVE_INFINITY}, new double[] {1}));
        assertRefused(
                "ratio must be finite: Infinity",
                () -> estimator.estimate(new double[] {1e300}, new double[] {1e-300}));
    }

    @Test
    void aLineTellsTheRatioFromWhatAStartGains() {
        // Means 35/3 and 213.5/3; Sxx 350/3, Sxy 709.1666…: slope 6.078571…, intercept 0.25.
        RatioEstimate estimate = RatioEstimator.LINE_WITH_INTERCEPT.estimate(POUNDS, REVOLUTIONS);

        double slope = 85.1 / 14;
        assertThat(estimate.ratio()).isCloseTo(slope, within(1e-14));
        assertThat(estimate.intercept().orElseThrow()).isCloseTo(0.25, within(1e-13));
        assertThat(estimate.degreesOfFreedom()).isEqualTo(1);
        double[] residuals = {31 - 0.25 - 5 * slope, 60.5 - 0.25 - 10 * slope, 122 - 0.25 - 20 * slope};
        double squares = Arrays.stream(residuals).map(r -> r * r).sum();
        assertThat(estimate.standardUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(squares / (350 / 3.0)), within(1e-13));
        assertThat(estimate.interceptUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(squares * (1 / 3.0 + 35 * 35 / 9.0 / (350 / 3.0))), within(1e-13));
        assertThat(estimate.sampleDeviation().orElseThrow())
                .isCloseTo(
                        Math.hypot(Math.hypot(residuals[0] / 5, residuals[1] / 10), residuals[2] / 20), within(1e-13));
    }

    @Test
    void aLineThroughTwoPairsHasNoUncertainty() {
        assertThat(RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {26, 58}, new double[] {2, 4}))
                .isEqualTo(new RatioEstimate(
                        16,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        2,
                        OptionalDouble.of(-6),
                        OptionalDouble.empty()));
    }

    @Test
    void aLineNeedsALongestPairOfOneAndAHalfTimesTheShortest() {
        assertThat(RatioEstimator.LINE_WITH_INTERCEPT
                        .estimate(new double[] {20, 30}, new double[] {10, 15})
                        .ratio())
                .isEqualTo(2);
        assertRefused(
                "denominators of a line must be two or more, the largest at least 1.5 times the smallest: 10.0 to 14.9",
                () -> RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {20, 30}, new double[] {10, 14.9}));
        assertRefused(
                "denominators of a line must be two or more, the largest at least 1.5 times the smallest: 10.0 to 10.0",
                () -> RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {20}, new double[] {10}));
    }

    @Test
    void aLineThatDoesNotRiseIsNoRatio() {
        assertRefused(
                "numerators of a line must be rising with the denominators: slope 0.0",
                () -> RatioEstimator.LINE_WITH_INTERCEPT.estimate(new double[] {20, 20}, new double[] {10, 20}));
    }

    @Test
    void anEstimateHoldsTogether() {
        OptionalDouble none = OptionalDouble.empty();
        OptionalDouble some = OptionalDouble.of(0.1);

        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 0 pairs, deviation none, uncertainty none, intercept none, its uncertainty"
                        + " none",
                () -> new RatioEstimate(6.1, none, none, 0));
        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 1 pairs, deviation 0.1, uncertainty none, intercept none, its uncertainty none",
                () -> new RatioEstimate(6.1, some, none, 1));
        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 3 pairs, deviation 0.1, uncertainty none, intercept none, its uncertainty none",
                () -> new RatioEstimate(6.1, some, none, 3));
        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 1 pairs, deviation none, uncertainty none, intercept 0.1, its uncertainty none",
                () -> new RatioEstimate(6.1, none, none, 1, some, none));
        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 3 pairs, deviation 0.1, uncertainty 0.1, intercept 0.1, its uncertainty none",
                () -> new RatioEstimate(6.1, some, some, 3, some, none));
        assertRefused(
                "ratio of pairs must be as many pairs as parameters without uncertainties, or more with deviation and"
                        + " uncertainties: 3 pairs, deviation 0.1, uncertainty 0.1, intercept none, its uncertainty 0.1",
                () -> new RatioEstimate(6.1, some, some, 3, none, some));
        assertRefused(
                "intercept must be finite: NaN",
                () -> new RatioEstimate(6.1, some, some, 3, OptionalDouble.of(Double.NaN), some));
        assertRefused(
                "uncertainty of the intercept must be finite: NaN",
                () -> new RatioEstimate(6.1, some, some, 3, some, OptionalDouble.of(Double.NaN)));
        assertRefused(
                "standard uncertainty must be finite: NaN",
                () -> new RatioEstimate(6.1, some, OptionalDouble.of(Double.NaN), 3));
        assertRefused(
                "sample deviation must be finite: NaN",
                () -> new RatioEstimate(6.1, OptionalDouble.of(Double.NaN), some, 3));
    }
}
