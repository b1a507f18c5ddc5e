package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tuple;

/** Compiled conversions against the exact rational product. */
class ConversionAccuracyTest {
    /** From here up the documented error bound is 0.51 ulp; below it is 1 ulp. */
    private static final double WELL_ABOVE_SUBNORMAL = 0x1p-1016;

    @Property(tries = 120_000)
    void everyConversionIsWithinItsBoundOfTheExactProduct(
            @ForAll("pairs") UnitPairs.Pair pair, @ForAll("finiteDoubles") double value) {
        check(pair, value);
    }

    private static void check(UnitPairs.Pair pair, double value) {
        ExactFactor factor = pair.conversion().exactFactor();
        if (Ulps.overflows(value, factor)) {
            assertThatThrownBy(() -> pair.conversion().convert(value)).isInstanceOf(InvalidInputException.class);
            return;
        }
        double result = pair.conversion().convert(value);
        assertThat(Ulps.error(value, factor, result))
                .as("error in ulp of %s for %s", pair, value)
                .isLessThanOrEqualTo(Math.abs(result) >= WELL_ABOVE_SUBNORMAL ? 0.51 : 1.0);
        assertThat(Math.copySign(1, result)).isEqualTo(Math.copySign(1, value));
    }

    @Property(tries = 30_000)
    void theBoundHoldsWhereTheLowPartIsRounded(
            @ForAll("pairs") UnitPairs.Pair pair, @ForAll("resultsNearTheSmallestNormal") double wanted) {
        ExactFactor factor = pair.conversion().exactFactor();
        check(pair, wanted / factor.toDecimal(20).doubleValue());
    }

    @Provide
    Arbitrary<UnitPairs.Pair> pairs() {
        return Arbitraries.of(UnitPairs.ALL);
    }

    @Provide
    Arbitrary<Double> finiteDoubles() {
        return Arbitraries.frequencyOf(
                Tuple.of(4, bits()), Tuple.of(2, nearPowersOfTwo()), Tuple.of(1, subnormals()), Tuple.of(2, rates()));
    }

    private static Arbitrary<Double> bits() {
        return Arbitraries.longs()
                .withDistribution(RandomDistribution.uniform())
                .map(Double::longBitsToDouble)
                .filter(Double::isFinite);
    }

    private static Arbitrary<Double> nearPowersOfTwo() {
        return Combinators.combine(
                        Arbitraries.integers().between(Double.MIN_EXPONENT - 52, Double.MAX_EXPONENT),
                        Arbitraries.integers().between(-2, 2),
                        Arbitraries.of(1.0, -1.0))
                .as((exponent, steps, sign) -> {
                    double power = Math.scalb(sign, exponent);
                    return power + steps * Math.ulp(power);
                });
    }

    private static Arbitrary<Double> subnormals() {
        return Arbitraries.longs()
                .between(0, 0x000f_ffff_ffff_ffffL)
                .withDistribution(RandomDistribution.uniform())
                .map(Double::longBitsToDouble);
    }

    private static Arbitrary<Double> rates() {
        return Arbitraries.doubles().between(-2000, 2000);
    }

    @Provide
    Arbitrary<Double> resultsNearTheSmallestNormal() {
        return Combinators.combine(
                        Arbitraries.doubles().between(1, 2),
                        Arbitraries.integers().between(-1030, -1010))
                .as(Math::scalb);
    }
}
