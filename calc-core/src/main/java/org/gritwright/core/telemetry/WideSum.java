package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.math.BigInteger;

/** An exact sum of squares of longs, in 128 bits: some 10³⁸, which no season reaches. */
final class WideSum implements Serializable {
    private static final long serialVersionUID = 1L;

    private long high;
    private long low;

    void addSquare(long number) {
        add(Math.multiplyHigh(number, number), number * number);
    }

    void add(WideSum other) {
        add(other.high, other.low);
    }

    /** Adds addedHigh·2⁶⁴ + addedLow, the latter without a sign. */
    void add(long addedHigh, long addedLow) {
        long sum = low + addedLow;
        high += addedHigh + (Long.compareUnsigned(sum, low) < 0 ? 1 : 0);
        low = sum;
    }

    BigInteger value() {
        return BigInteger.valueOf(high).shiftLeft(Long.SIZE).add(new BigInteger(Long.toUnsignedString(low)));
    }

    @Override
    public boolean equals(Object other) {
        return this == other || (other instanceof WideSum that && high == that.high && low == that.low);
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(high) + Long.hashCode(low);
    }

    @Override
    public String toString() {
        return value().toString();
    }
}
