package org.gritwright.core.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.apache.commons.statistics.distribution.FDistribution;
import org.junit.jupiter.api.Test;

class VarianceTest {
    private static final double FIRM = Double.POSITIVE_INFINITY;

    private static Variance ofDeviation(double deviation, double degreesOfFreedom) {
        return new Variance(deviation * deviation, degreesOfFreedom);
    }

    /**
     * NIST/SEMATECH e-Handbook, 1.3.5.3, AUTO83B.DAT: 249 cars with a standard deviation of 6.41470 and 79 with 6.10771 have
     * a pooled one of 6.34260 with 326 degrees of freedom (second-hand: read in a copy of the page).
     */
    @Test
    void theHandbooksTwoSamplesArePooledAsItSays() {
        Variance pooled = ofDeviation(6.41470, 248).pooledWith(ofDeviation(6.10771, 78));

        assertThat(Math.sqrt(pooled.value())).isCloseTo(6.34260, within(5e-6));
        assertThat(pooled.degreesOfFreedom()).isEqualTo(326);
    }

    /**
     * NIST/SEMATECH e-Handbook, 1.3.5.9, ceramic strength: standard deviations of 65.54909 and 61.85425 of 240 each, F =
     * 1.123037 with a cumulative probability of 0.814808, inside of 0 to 0.950 (second-hand: read in a copy of the page).
     */
    @Test
    void theHandbooksFTestAcceptsItsTwoDeviations() {
        double ratio = Math.pow(65.54909 / 61.85425, 2);

        assertThat(ratio).isCloseTo(1.123037, within(5e-7));
        assertThat(FDistribution.of(239, 239).cumulativeProbability(ratio)).isCloseTo(0.814808, within(5e-7));
        assertThat(ofDeviation(61.85425, 239).isExceededBy(ofDeviation(65.54909, 239)))
                .isFalse();
    }

    /** With 2 and 2 degrees of freedom the upper 5 % point of F is 1 ÷ 0.05 − 1 = 19. */
    @Test
    void thePointOfTheFTestIsTheUpperFivePercent() {
        Variance known = new Variance(4, 2);

        assertThat(known.isExceededBy(new Variance(4 * 18.99, 2))).isFalse();
        assertThat(known.isExceededBy(new Variance(4 * 19.01, 2))).isTrue();
    }

    /** With 2 degrees of freedom the upper 5 % point of chi-squared is −2 ln 0.05 = 5.99146, of its ratio 2.99573. */
    @Test
    void againstWhatIsFirmlyKnownTheTestIsThatOfChiSquared() {
        Variance known = new Variance(4, FIRM);

        assertThat(known.isExceededBy(new Variance(4 * 2.9957, 2))).isFalse();
        assertThat(known.isExceededBy(new Variance(4 * 2.9958, 2))).isTrue();
    }

    @Test
    void whateverVariesIsMoreThanNothing() {
        assertThat(new Variance(0, 2).isExceededBy(new Variance(1e-300, 1))).isTrue();
        assertThat(new Variance(0, FIRM).isExceededBy(new Variance(1e-300, 1))).isTrue();
        assertThat(new Variance(0, 2).isExceededBy(new Variance(0, 1))).isFalse();
    }

    @Test
    void valuesOutOfTheirRangeAreRefused() {
        assertRefused("variance must be 0 or more: -1.0", () -> new Variance(-1, 2));
        assertRefused("variance must be finite: NaN", () -> new Variance(Double.NaN, 2));
        assertRefused("degrees of freedom must be greater than 0: 0.0", () -> new Variance(1, 0));
        assertRefused("degrees of freedom must be greater than 0: NaN", () -> new Variance(1, Double.NaN));
    }

    @Provide
    Arbitrary<Variance> variances() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0, 1e6).ofScale(6),
                        Arbitraries.doubles().between(0.5, 1000).ofScale(3))
                .as(Variance::new);
    }

    @Property(tries = 300)
    void whatIsPooledLiesBetweenAndIsKnownBetter(
            @ForAll("variances") Variance known, @ForAll("variances") Variance observed) {
        Variance pooled = known.pooledWith(observed);

        assertThat(pooled.value())
                .isBetween(
                        Math.min(known.value(), observed.value()) * (1 - 1e-14),
                        Math.max(known.value(), observed.value()) * (1 + 1e-14));
        assertThat(pooled.degreesOfFreedom()).isEqualTo(known.degreesOfFreedom() + observed.degreesOfFreedom());
    }

    @Property(tries = 300)
    void theOrderDoesNotMatter(
            @ForAll("variances") Variance one,
            @ForAll("variances") Variance other,
            @ForAll("variances") Variance third) {
        assertClose(one.pooledWith(other), other.pooledWith(one));
        assertClose(one.pooledWith(other).pooledWith(third), one.pooledWith(other.pooledWith(third)));
    }

    private static void assertClose(Variance actual, Variance expected) {
        assertThat(actual.value()).isCloseTo(expected.value(), within(1e-12 * expected.value()));
        assertThat(actual.degreesOfFreedom())
                .isCloseTo(expected.degreesOfFreedom(), within(1e-12 * expected.degreesOfFreedom()));
    }

    @Property(tries = 100)
    void whatIsFirmlyKnownStays(@ForAll("variances") Variance any, @ForAll("variances") Variance observed) {
        Variance firm = new Variance(any.value(), FIRM);

        assertThat(firm.pooledWith(observed)).isEqualTo(firm);
    }

    @Property(tries = 300)
    void theMoreItVariesTheSoonerItExceeds(
            @ForAll("variances") Variance known, @ForAll("variances") Variance observed) {
        Variance more = new Variance(observed.value() * 1.5, observed.degreesOfFreedom());

        assertThat(known.isExceededBy(new Variance(known.value(), observed.degreesOfFreedom())))
                .isFalse();
        assertThat(!known.isExceededBy(observed) || known.isExceededBy(more)).isTrue();
    }

    @Property(tries = 300)
    void whatIsMoreByAnyFactorStaysSo(@ForAll("variances") Variance known, @ForAll("variances") Variance observed) {
        Variance larger = new Variance(known.value() * 1024, known.degreesOfFreedom());

        assertThat(larger.isExceededBy(new Variance(observed.value() * 1024, observed.degreesOfFreedom())))
                .isEqualTo(known.isExceededBy(observed));
    }
}
