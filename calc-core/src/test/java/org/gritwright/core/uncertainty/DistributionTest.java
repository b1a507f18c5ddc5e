package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Arrays;
import java.util.PrimitiveIterator;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import java.util.stream.DoubleStream;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.statistics.Student;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DistributionTest {
    private static final int DRAWS = 200_000;

    private static double[] draws(Distribution distribution, double degreesOfFreedom) {
        SplittableRandom random = new SplittableRandom(7);
        return DoubleStream.generate(() -> distribution.draw(degreesOfFreedom, random))
                .limit(DRAWS)
                .sorted()
                .toArray();
    }

    /** JCGM 100:2008 (the GUM), 4.3.7 and 4.3.9: a ÷ √3, a ÷ √6; a ÷ √2 for what swings. */
    @ParameterizedTest
    @CsvSource({"RECTANGULAR, 3", "TRIANGULAR, 6", "ARCSINE, 2"})
    void theUncertaintyOfLimitsIsTheDeviationOfTheShape(Distribution distribution, double squared) {
        assertThat(distribution.standardUncertainty(0.5)).isCloseTo(0.5 / Math.sqrt(squared), within(1e-15));
        assertThat(distribution.standardUncertainty(0)).isZero();
    }

    @ParameterizedTest
    @CsvSource({"RECTANGULAR, 3", "TRIANGULAR, 6", "ARCSINE, 2"})
    void drawsOfLimitsHaveADeviationOfOneAndStayWithin(Distribution distribution, double squared) {
        double[] draws = draws(distribution, Double.POSITIVE_INFINITY);
        double limit = Math.sqrt(squared);

        assertThat(Sample.of(draws).mean()).isCloseTo(0, within(0.01));
        assertThat(Sample.of(draws).deviation().orElseThrow()).isCloseTo(1, within(0.01));
        assertThat(draws[0]).isBetween(-limit * (1 + 1e-12), -0.97 * limit);
        assertThat(draws[DRAWS - 1]).isBetween(0.97 * limit, limit * (1 + 1e-12));
    }

    /** A part of 1/2, of 3/4 and of 1/3 lies within half the limits. */
    @ParameterizedTest
    @CsvSource({"RECTANGULAR, 3, 0.5", "TRIANGULAR, 6, 0.75", "ARCSINE, 2, 0.333333333"})
    void drawsOfLimitsHaveTheShape(Distribution distribution, double squared, double inside) {
        double half = Math.sqrt(squared) / 2;

        assertThat(Arrays.stream(draws(distribution, Double.POSITIVE_INFINITY))
                                .filter(x -> Math.abs(x) <= half)
                                .count()
                        / (double) DRAWS)
                .isCloseTo(inside, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"1", "2", "4.5", "30", "Infinity"})
    void normalDrawsHaveStudentsQuantiles(double degreesOfFreedom) {
        double[] draws = draws(Distribution.NORMAL, degreesOfFreedom);
        Student student = Student.of(degreesOfFreedom);

        for (double probability : new double[] {0.025, 0.25, 0.5, 0.9, 0.975}) {
            double quantile = draws[(int) (probability * DRAWS)];
            assertThat(student.probabilityBelow(quantile)).isCloseTo(probability, within(0.005));
        }
    }

    /** A source of these numbers from 0 to 1, each exact in binary. */
    private static RandomGenerator of(double... numbers) {
        PrimitiveIterator.OfDouble next = Arrays.stream(numbers).iterator();
        return () -> (long) (next.nextDouble() * 0x1p53) << 11;
    }

    /** Bailey's method by hand: u = 1/2 and v = 0 give w = 1/4, and t = u·√(2·(1/w − 1) ÷ w) = √6. */
    @Test
    void aPointOfTheDiskGivesStudentsT() {
        assertThat(Distribution.NORMAL.draw(2, of(0.75, 0.5))).isCloseTo(Math.sqrt(6), within(1e-15));
    }

    /** u = −1 and v = 0 are on the edge, where t = 0; both 0 are the center, which has no direction. */
    @Test
    void theEdgeOfTheDiskCountsAndItsCenterIsDrawnAgain() {
        assertThat(Math.abs(Distribution.NORMAL.draw(2, of(0, 0.5, 0.75, 0.5)))).isZero();
        assertThat(Distribution.NORMAL.draw(2, of(0.5, 0.5, 0.75, 0.5))).isCloseTo(Math.sqrt(6), within(1e-15));
    }

    @Test
    void theNormalDistributionHasNoLimits() {
        assertRefused(
                "distribution of an error within limits must be one with limits: normal",
                () -> Distribution.NORMAL.standardUncertainty(1));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, -1e-300})
    void refusesANegativeHalfWidth(double negative) {
        assertRefused(
                "half-width must be 0 or more: " + negative,
                () -> Distribution.RECTANGULAR.standardUncertainty(negative));
    }

    @Test
    void refusesAHalfWidthThatIsNotFinite() {
        assertRefused("half-width must be finite: NaN", () -> Distribution.TRIANGULAR.standardUncertainty(Double.NaN));
        assertRefused(
                "half-width must be finite: Infinity",
                () -> Distribution.ARCSINE.standardUncertainty(Double.POSITIVE_INFINITY));
    }
}
