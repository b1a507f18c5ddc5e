package org.gritwright.units;

import java.math.BigInteger;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The decimal with the fewest digits that reads back as a double, of these the nearest, and of two as near the one with the even
 * last digit: {@code digits · 10^exponent}.
 *
 * <p>{@code Double.toString} before JDK 19 sometimes writes more digits than it takes: JDK 17 writes 2.0E23 as
 * 1.9999999999999998E23.
 *
 * <p>Source: R. Giulietti, "The Schubfach way to render doubles", 2020, with its names: a double is c · 2^q; the decimals that read
 * back as it lie between half the way to its neighbors; the largest power of ten 10^k not above the width of that interval leaves
 * two candidates, and the next one ten times as large one at the most. Powers of ten of 126 bits are enough to tell on which side
 * of an end a candidate lies, if whatever is cut off is kept in the last bit.
 *
 * @param digits without a sign, 1 or more; it may end in zeros
 * @param exponent of ten
 */
record ShortestDecimal(long digits, int exponent) {
    private static final int FRACTION_BITS = 52;
    private static final long HIDDEN_BIT = 1L << FRACTION_BITS;
    private static final int EXPONENT_MASK = 0x7FF;
    private static final int LOWEST_Q = -1074;

    /** The exponents k of all doubles. */
    private static final int LOWEST_K = -324;

    private static final int HIGHEST_K = 292;
    private static final int POWER_BITS = 126;
    private static final long LOW_63 = Long.MAX_VALUE;

    /** Logarithms are cut to so many bits after the point, which is enough for all exponents of doubles. */
    private static final int LOG_BITS = 38;

    private static final long LOG2_OF_10 = cut(StrictMath.log(10) / StrictMath.log(2));
    private static final long LOG10_OF_2 = cut(StrictMath.log10(2));
    private static final long LOG10_OF_THREE_QUARTERS = cut(StrictMath.log10(0.75));

    /** For each k. */
    private static final List<Scale> SCALES =
            IntStream.rangeClosed(LOWEST_K, HIGHEST_K).mapToObj(Scale::of).toList();

    /** 10^−k, scaled to 126 bits and rounded up: its upper and its lower 63 bits. */
    private record Scale(long upper, long lower) {
        static Scale of(int k) {
            int shift = POWER_BITS - 1 - log2OfPowerOfTen(-k);
            BigInteger ten = BigInteger.TEN.pow(Math.abs(k));
            BigInteger cut = k > 0 ? BigInteger.ONE.shiftLeft(shift).divide(ten) : ten.shiftLeft(shift);
            BigInteger above = cut.add(BigInteger.ONE);
            return new Scale(above.shiftRight(POWER_BITS / 2).longValueExact(), above.longValue() & LOW_63);
        }

        /** A number times 10^−k, cut to a whole one; the last bit is set if it wasn't whole. */
        long times(long number) {
            long middle = ((upper * number) >>> 1) + Math.multiplyHigh(lower, number);
            long whole = Math.multiplyHigh(upper, number) + (middle >>> 63);
            return whole | (((middle & LOW_63) + LOW_63) >>> 63);
        }
    }

    private static long cut(double logarithm) {
        return (long) Math.scalb(logarithm, LOG_BITS);
    }

    /** ⌊log₂ 10^e⌋. */
    private static int log2OfPowerOfTen(int e) {
        return (int) ((e * LOG2_OF_10) >> LOG_BITS);
    }

    /** ⌊log₁₀ 2^e⌋. */
    private static int log10OfPowerOfTwo(int e) {
        return (int) ((e * LOG10_OF_2) >> LOG_BITS);
    }

    /** ⌊log₁₀ (¾ · 2^e)⌋. */
    private static int log10OfThreeQuartersOfPowerOfTwo(int e) {
        return (int) ((e * LOG10_OF_2 + LOG10_OF_THREE_QUARTERS) >> LOG_BITS);
    }

    /** @param value finite and not 0; its sign is left out */
    static ShortestDecimal of(double value) {
        long bits = Double.doubleToRawLongBits(value);
        int biased = (int) (bits >>> FRACTION_BITS) & EXPONENT_MASK;
        long fraction = bits & (HIDDEN_BIT - 1);
        boolean isSubnormal = biased == 0;
        long c = isSubnormal ? fraction : HIDDEN_BIT | fraction;
        int q = LOWEST_Q + (isSubnormal ? 0 : biased - 1);
        // Below a power of two doubles lie half as far apart as above it.
        return within(c, q, fraction == 0 && biased > 1);
    }

    private static ShortestDecimal within(long c, int q, boolean isNearerBelow) {
        int k = isNearerBelow ? log10OfThreeQuartersOfPowerOfTwo(q) : log10OfPowerOfTwo(q);
        int shift = q + log2OfPowerOfTen(-k) + 2;
        Scale scale = SCALES.get(k - LOWEST_K);
        // In quarters of 10^k.
        long v = scale.times((4 * c) << shift);
        // An end reads back as the value where c is even.
        long isOpen = c & 1;
        long low = scale.times((4 * c - (isNearerBelow ? 1 : 2)) << shift) + isOpen;
        long high = scale.times((4 * c + 2) << shift) - isOpen;

        long below = v >> 2;
        long tensBelow = below / 10 * 10;
        long tensAbove = tensBelow + 10;
        if (low <= (tensBelow << 2)) {
            return new ShortestDecimal(tensBelow, k);
        }
        if ((tensAbove << 2) <= high) {
            return new ShortestDecimal(tensAbove, k);
        }
        // Of the two the nearer, and one of them reads back; the interval is never longer below than above.
        long pastMiddle = v - 2 * (2 * below + 1);
        boolean isNearerToBelow = pastMiddle < 0 || (pastMiddle == 0 && (below & 1) == 0);
        return new ShortestDecimal(isNearerToBelow && low <= (below << 2) ? below : below + 1, k);
    }

    /** The same number without zeros at the end of its digits. */
    ShortestDecimal stripped() {
        long left = digits;
        int e = exponent;
        while (left % 10 == 0) {
            left /= 10;
            e++;
        }
        return new ShortestDecimal(left, e);
    }
}
