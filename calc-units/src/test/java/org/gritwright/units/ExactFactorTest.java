package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.numbers.fraction.BigFraction;

/** Laws of exact factors. */
class ExactFactorTest {

    @Property
    void isKeptInLowestTermsSoThatEqualFactorsAreEqual(
            @ForAll @LongRange(min = 1) long numerator,
            @ForAll @LongRange(min = 1) long denominator,
            @ForAll @LongRange(min = 1) long common) {
        ExactFactor factor = ExactFactor.of(numerator, denominator);
        assertThat(factor.numerator().gcd(factor.denominator())).isEqualTo(BigInteger.ONE);
        BigInteger times = BigInteger.valueOf(common);
        ExactFactor same = new ExactFactor(
                BigInteger.valueOf(numerator).multiply(times),
                BigInteger.valueOf(denominator).multiply(times));
        assertThat(same).isEqualTo(factor).hasSameHashCodeAs(factor).hasToString(factor.toString());
    }

    @Property
    void dividesLikeAFraction(
            @ForAll @LongRange(min = 1) long a,
            @ForAll @LongRange(min = 1) long b,
            @ForAll @LongRange(min = 1) long c,
            @ForAll @LongRange(min = 1) long d) {
        ExactFactor quotient = ExactFactor.of(a, b).dividedBy(ExactFactor.of(c, d));
        assertThat(Ulps.fraction(quotient)).isEqualTo(BigFraction.of(a, b).divide(BigFraction.of(c, d)));
        assertThat(ExactFactor.of(a, b).dividedBy(ExactFactor.of(a, b))).isEqualTo(ExactFactor.of(1, 1));
    }

    @Example
    void printsAsAFractionOrAWholeNumber() {
        assertThat(ExactFactor.of(4123567, 14630400)).hasToString("4123567/14630400");
        assertThat(ExactFactor.of(10, 5)).hasToString("2");
        assertThat(ExactFactor.of(1, 60)).hasToString("1/60");
    }

    @Example
    void isRoundedHalfToEvenAsADecimal() {
        assertThat(ExactFactor.of(4123567, 14630400).toDecimal(20)).isEqualTo(new BigDecimal("0.28184923173665791776"));
        assertThat(ExactFactor.of(125, 1000).toDecimal(2)).isEqualByComparingTo("0.12");
        assertThat(ExactFactor.of(375, 1000).toDecimal(2)).isEqualByComparingTo("0.38");
        assertThat(ExactFactor.of(1, 3).toDecimal(1)).isEqualByComparingTo("0.3");
    }

    @Example
    void neitherPartMayBeZeroOrNegative() {
        for (long[] parts : new long[][] {{0, 1}, {1, 0}, {-1, 2}, {1, -2}, {-1, -2}}) {
            assertThatThrownBy(() -> ExactFactor.of(parts[0], parts[1]))
                    .isInstanceOf(InvalidInputException.class)
                    .hasMessage("factor must be greater than 0: " + parts[0] + "/" + parts[1]);
        }
    }
}
