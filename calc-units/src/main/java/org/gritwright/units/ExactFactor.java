package org.gritwright.units;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * A positive exact rational: how many of one unit make one of another, without rounding.
 *
 * <p>Kept in lowest terms, so that equal factors are equal values. Immutable, thread-safe, a value.
 *
 * @param numerator the numerator, greater than zero
 * @param denominator the denominator, greater than zero
 */
public record ExactFactor(BigInteger numerator, BigInteger denominator) implements Serializable {
    static final ExactFactor ONE = of(1, 1);

    /**
     * Reduces to lowest terms.
     *
     * @throws InvalidInputException if either part is not greater than zero
     */
    public ExactFactor {
        Objects.requireNonNull(numerator, "numerator");
        Objects.requireNonNull(denominator, "denominator");
        if (numerator.signum() <= 0 || denominator.signum() <= 0) {
            throw new InvalidInputException(
                    RefusalCode.NOT_POSITIVE, "factor", "greater than 0", numerator + "/" + denominator);
        }
        BigInteger common = numerator.gcd(denominator);
        numerator = numerator.divide(common);
        denominator = denominator.divide(common);
    }

    /**
     * A factor from two whole numbers.
     *
     * @param numerator the numerator, greater than zero
     * @param denominator the denominator, greater than zero
     * @return the factor in lowest terms
     */
    public static ExactFactor of(long numerator, long denominator) {
        return new ExactFactor(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    /**
     * This factor divided by another.
     *
     * @param other the divisor
     * @return the exact quotient
     */
    public ExactFactor dividedBy(ExactFactor other) {
        Objects.requireNonNull(other, "other");
        return new ExactFactor(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    /**
     * This factor as a decimal.
     *
     * @param digits significant digits, 1 or more; rounded half to even
     * @return the decimal value
     */
    public BigDecimal toDecimal(int digits) {
        return new BigDecimal(numerator)
                .divide(new BigDecimal(denominator), new MathContext(digits, RoundingMode.HALF_EVEN));
    }

    /**
     * Writes the factor as "numerator/denominator", or as a whole number when it is one.
     *
     * @return for example "4123567/14630400"
     */
    @Override
    public String toString() {
        return denominator.equals(BigInteger.ONE) ? numerator.toString() : numerator + "/" + denominator;
    }
}
