package org.gritwright.units;

import java.io.Serializable;
import java.math.BigInteger;

/**
 * An exact factor as a sum of two doubles, {@code high + low}, so that a product is almost correctly rounded.
 *
 * <p>With one double the product is rounded twice (the factor, then the product) and differs from the correctly rounded
 * result in about four cases in ten. {@code fma(x, high, x·low)} keeps the error below 0.51 ulp while the result is at
 * least 2⁻¹⁰¹⁶ in size; below that the product {@code x·low} itself is rounded to a multiple of 2⁻¹⁰⁷⁴ and the error
 * may reach 1 ulp. Example: x·high lies half-way between two multiples of 2⁻¹⁰⁷⁴ and x·low = 0.49·2⁻¹⁰⁷⁴ is rounded to
 * zero, so the tie goes down and the result is 0.99 ulp too small. No rate on a road is that small, so this is left as
 * it is.
 *
 * <p>{@code high} is rounded toward zero, so that {@code low} is never negative: with a negative low part, −0.0 would
 * come out as −0.0 + 0.0 = +0.0. A factor that is a double has {@code low} zero and is a plain product, since ∞ × 0
 * would turn an infinity into NaN.
 *
 * <p>Factors in use lie between 1e-12 and 1e12, so neither part is subnormal.
 */
record CompiledFactor(double high, double low) implements Serializable {
    /** Of a double's significand. */
    private static final int SIGNIFICAND_BITS = 53;

    /** Enough for both parts, with ten bits to spare for the rounding of the low one. */
    private static final int QUOTIENT_BITS = 2 * SIGNIFICAND_BITS + 10;

    static CompiledFactor of(ExactFactor factor) {
        BigInteger numerator = factor.numerator();
        BigInteger denominator = factor.denominator();
        int scale = QUOTIENT_BITS + denominator.bitLength();
        BigInteger quotient = numerator.shiftLeft(scale).divide(denominator);
        int lowBits = quotient.bitLength() - SIGNIFICAND_BITS;
        BigInteger head = quotient.shiftRight(lowBits);
        BigInteger tail = quotient.subtract(head.shiftLeft(lowBits));
        return new CompiledFactor(
                Math.scalb(head.doubleValue(), lowBits - scale), Math.scalb(tail.doubleValue(), -scale));
    }

    double times(double value) {
        return low == 0 ? value * high : Math.fma(value, high, value * low);
    }

    /** Fills {@code results[from..to)}; two plain loops, so that the compiler can use vector instructions. */
    void times(double[] values, double[] results, int from, int to) {
        double h = high;
        double l = low;
        if (l == 0) {
            for (int i = from; i < to; i++) {
                results[i] = values[i] * h;
            }
        } else {
            for (int i = from; i < to; i++) {
                results[i] = Math.fma(values[i], h, values[i] * l);
            }
        }
    }
}
