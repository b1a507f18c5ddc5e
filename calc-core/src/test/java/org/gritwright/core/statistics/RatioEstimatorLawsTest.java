package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class RatioEstimatorLawsTest {
    private static final double ROUNDING = 1e-12;

    /** One catch: mass and revolutions. */
    record Pair(double mass, double revolutions) {}

    @Provide
    Arbitrary<List<Pair>> catches() {
        Arbitrary<Double> revolutions = Arbitraries.doubles().between(1, 500).ofScale(4);
        Arbitrary<Double> ratio = Arbitraries.doubles().between(0.5, 50).ofScale(6);
        return Combinators.combine(revolutions, ratio)
                .as((n, r) -> new Pair(n * r, n))
                .list()
                .ofMinSize(2)
                .ofMaxSize(8);
    }

    /** Those that lie among the ratios; the laws of the line are those of {@link StraightLine}. */
    @Provide
    Arbitrary<RatioEstimator> ofRatios() {
        return Arbitraries.of(RatioEstimator.RATIO_OF_SUMS, RatioEstimator.MEAN_OF_RATIOS);
    }

    private static RatioEstimate estimate(RatioEstimator estimator, List<Pair> catches) {
        return estimator.estimate(
                catches.stream().mapToDouble(Pair::mass).toArray(),
                catches.stream().mapToDouble(Pair::revolutions).toArray());
    }

    @Property
    void theEstimateLiesBetweenTheLeastAndTheLargestRatio(
            @ForAll("catches") List<Pair> catches, @ForAll("ofRatios") RatioEstimator estimator) {
        double least =
                catches.stream().mapToDouble(c -> c.mass / c.revolutions).min().orElseThrow();
        double largest =
                catches.stream().mapToDouble(c -> c.mass / c.revolutions).max().orElseThrow();

        assertThat(estimate(estimator, catches).ratio()).isBetween(least * (1 - ROUNDING), largest * (1 + ROUNDING));
    }

    @Property
    void theOrderOfCatchesDoesNotMatter(
            @ForAll("catches") List<Pair> catches, @ForAll("ofRatios") RatioEstimator estimator, @ForAll long seed) {
        List<Pair> shuffled = new ArrayList<>(catches);
        Collections.shuffle(shuffled, new Random(seed));

        assertSame(estimate(estimator, shuffled), estimate(estimator, catches), 1, 1);
    }

    @Property
    void massesScaleTheEstimateAndItsUncertainty(
            @ForAll("catches") List<Pair> catches,
            @ForAll("ofRatios") RatioEstimator estimator,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double factor) {
        List<Pair> heavier = catches.stream()
                .map(c -> new Pair(c.mass * factor, c.revolutions))
                .toList();

        assertSame(estimate(estimator, heavier), estimate(estimator, catches), factor, factor);
    }

    @Property
    void countsScaleTheEstimateAndItsUncertaintyTheOtherWay(
            @ForAll("catches") List<Pair> catches,
            @ForAll("ofRatios") RatioEstimator estimator,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1000) double factor) {
        List<Pair> longer = catches.stream()
                .map(c -> new Pair(c.mass, c.revolutions * factor))
                .toList();

        assertSame(estimate(estimator, longer), estimate(estimator, catches), 1 / factor, 1 / factor);
    }

    @Property
    void withEqualCountsTheTwoEstimatorsAgree(@ForAll("catches") List<Pair> catches) {
        List<Pair> equalCounts = catches.stream().map(c -> new Pair(c.mass, 20)).toList();

        assertSame(
                estimate(RatioEstimator.RATIO_OF_SUMS, equalCounts),
                estimate(RatioEstimator.MEAN_OF_RATIOS, equalCounts),
                1,
                1);
    }

    @Property
    void theUncertaintyAgreesWithAnIndependentCalculationInDecimals(@ForAll("catches") List<Pair> catches) {
        MathContext digits = MathContext.DECIMAL128;
        BigDecimal n = BigDecimal.valueOf(catches.size());
        BigDecimal mass = catches.stream().map(c -> new BigDecimal(c.mass)).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal count =
                catches.stream().map(c -> new BigDecimal(c.revolutions)).reduce(BigDecimal.ZERO, BigDecimal::add);
        BigDecimal ratio = mass.divide(count, digits);
        // The same sum of squares, multiplied out: Σm² − 2RΣmN + R²ΣN².
        BigDecimal squares = BigDecimal.ZERO;
        for (Pair c : catches) {
            BigDecimal m = new BigDecimal(c.mass);
            BigDecimal r = new BigDecimal(c.revolutions);
            squares = squares.add(m.pow(2))
                    .subtract(ratio.multiply(m).multiply(r).multiply(BigDecimal.valueOf(2)))
                    .add(ratio.pow(2).multiply(r.pow(2)));
        }
        BigDecimal variance =
                n.divide(n.subtract(BigDecimal.ONE), digits).multiply(squares).divide(count.pow(2), digits);

        RatioEstimate estimate = estimate(RatioEstimator.RATIO_OF_SUMS, catches);
        assertThat(estimate.ratio()).isCloseTo(ratio.doubleValue(), within(ROUNDING * ratio.doubleValue()));
        assertThat(estimate.standardUncertainty().orElseThrow())
                .isCloseTo(Math.sqrt(Math.max(0, variance.doubleValue())), within(ROUNDING * ratio.doubleValue()));
    }

    @Property
    void whatEveryStartLosesLeavesTheLinesRatioAsItIs(
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 50) double ratio,
            @ForAll @Scale(6) @DoubleRange(min = -2, max = 2) double perStart,
            @ForAll @Scale(4) @DoubleRange(min = 5, max = 500) double revolutions) {
        double[] lengths = {revolutions, 2 * revolutions, 4 * revolutions};
        double[] masses = Arrays.stream(lengths).map(n -> perStart + ratio * n).toArray();

        RatioEstimate estimate = RatioEstimator.LINE_WITH_INTERCEPT.estimate(masses, lengths);
        assertThat(estimate.ratio()).isCloseTo(ratio, within(ROUNDING * ratio));
        assertThat(estimate.intercept().orElseThrow()).isCloseTo(perStart, within(ROUNDING * masses[2]));
        assertThat(estimate.sampleDeviation().orElseThrow()).isCloseTo(0, within(ROUNDING * ratio));
    }

    private static void assertSame(
            RatioEstimate actual, RatioEstimate expected, double ratioFactor, double spreadFactor) {
        double ratio = expected.ratio() * ratioFactor;
        double allowed = ROUNDING * ratio;
        assertThat(actual.ratio()).isCloseTo(ratio, within(allowed));
        assertThat(actual.sampleDeviation().orElseThrow())
                .isCloseTo(expected.sampleDeviation().orElseThrow() * spreadFactor, within(allowed));
        assertThat(actual.standardUncertainty().orElseThrow())
                .isCloseTo(expected.standardUncertainty().orElseThrow() * spreadFactor, within(allowed));
    }
}
