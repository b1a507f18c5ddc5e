package org.gritwright.units;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import org.apache.commons.numbers.fraction.BigFraction;

/** Errors of double results against exact rationals. */
final class Ulps {
    private Ulps() {}

    /** How far a result is from the exact product of value and factor, in units of the result's last place. */
    static double error(double value, ExactFactor factor, double result) {
        BigDecimal denominator = new BigDecimal(factor.denominator());
        BigDecimal exact = new BigDecimal(value).multiply(new BigDecimal(factor.numerator()));
        BigDecimal difference = new BigDecimal(result).multiply(denominator).subtract(exact);
        return difference
                .abs()
                .divide(denominator.multiply(new BigDecimal(Math.ulp(result))), MathContext.DECIMAL64)
                .doubleValue();
    }

    /** Whether the exact product of value and factor, rounded to nearest, is larger than any double. */
    static boolean overflows(double value, ExactFactor factor) {
        BigDecimal firstTooLarge = new BigDecimal(Double.MAX_VALUE).add(new BigDecimal(Math.ulp(Double.MAX_VALUE) / 2));
        return new BigDecimal(value)
                        .abs()
                        .multiply(new BigDecimal(factor.numerator()))
                        .compareTo(firstTooLarge.multiply(new BigDecimal(factor.denominator())))
                >= 0;
    }

    static BigFraction fraction(ExactFactor factor) {
        return BigFraction.of(factor.numerator(), factor.denominator());
    }

    /** A fraction from text such as "4123567/14630400". */
    static BigFraction fraction(String text) {
        String[] parts = text.split("/", -1);
        return BigFraction.of(new BigInteger(parts[0]), new BigInteger(parts[1]));
    }
}
