package org.gritwright.core.telemetry;

/**
 * The rows about which nothing is odd, and nearly all are: evaluated as the one before them, in order, in automatic. They are looked
 * through in blocks, by whether any difference has a sign that it shouldn't have, which the compiler makes vector instructions of; only
 * a block in which something is odd is looked through row by row.
 */
final class PlainRows {
    /** Blocks begin small, so that what is looked through in vain stays in proportion where many rows are odd. */
    private static final int FIRST_BLOCK = 8;

    private static final int BLOCK = 512;

    /** Pulses in a millisecond are kept in parts of 2⁻²⁰, rounded down: who is slower than that is never a leap. */
    private static final int SHIFT = 20;

    /** 34 years in milliseconds: with it and a pulse a microsecond nothing overflows. */
    private static final long LONGEST = 1L << 40;

    /** Added to a number from 0 to 2⁵¹ it leaves the nearest whole number, of two the even one, in the low bits, as {@link Math#rint} does. */
    private static final double ROUNDER = 0x1.8p52;

    private static final long ROUNDER_BITS = Double.doubleToRawLongBits(ROUNDER);

    private final long begin;
    private final long end;
    private final long longest;
    private final long perMilli;
    private final long mostAtOnce;
    private final long highest;
    private final long setting;
    private final int slot;
    private final double perCount;

    private long time;
    private long count;
    private long standing;
    private final long firstCount;
    private final long firstWhole;

    PlainRows(long begin, long end, double longest, double perMilli, long mostAtOnce, long highest, RowState state) {
        this.begin = begin;
        this.end = end;
        this.longest = (long) Math.min(longest, LONGEST);
        this.perMilli = (long) Math.scalb(Math.min(perMilli, 1), SHIFT);
        this.mostAtOnce = mostAtOnce;
        this.highest = highest;
        this.setting = Double.doubleToRawLongBits(state.setting);
        this.slot = state.slot;
        this.perCount = state.perCount;
        this.time = state.time;
        this.count = state.count;
        this.firstCount = state.count;
        this.firstWhole = whole(perCount, state.count);
    }

    static long whole(double perCount, long count) {
        return Double.doubleToRawLongBits(perCount * count + ROUNDER) - ROUNDER_BITS;
    }

    long standing() {
        return standing;
    }

    long counted() {
        return count - firstCount;
    }

    long amount() {
        return whole(perCount, count) - firstWhole;
    }

    /** Evaluates rows up to the first odd one, and gives its place. */
    int fill(Rows rows, int from, int to, long[] amounts, byte[] statuses) {
        int row = from;
        int block = FIRST_BLOCK;
        while (row < to) {
            int last = Math.min(row + block, to);
            block = Math.min(2 * block, BLOCK);
            int plain = isPlain(rows, row, last) ? last : firstOdd(rows, row, last);
            evaluate(rows.counts(), row, plain, amounts, statuses);
            if (plain > row) {
                time = rows.times()[plain - 1];
                count = rows.counts()[plain - 1];
            }
            row = plain;
            if (plain < last) {
                break;
            }
        }
        return row;
    }

    /** Since times and counts rise where no difference is negative, their limits need only be looked at at the ends. */
    private boolean isPlain(Rows rows, int from, int to) {
        long[] times = rows.times();
        long[] counts = rows.counts();
        long odd = odd(times[from] - time, counts[from] - count)
                | (times[from] - begin)
                | (end - times[to - 1])
                | (highest - counts[to - 1]);
        for (int i = from + 1; i < to; i++) {
            long passed = times[i] - times[i - 1];
            long counted = counts[i] - counts[i - 1];
            odd |= odd(passed, counted);
        }
        return odd >= 0 && isAsBefore(rows, from, to);
    }

    /** Negative if a row isn't plain after the one before it. */
    private long odd(long passed, long counted) {
        return (passed - 1) | (longest - passed) | counted | (mostAtOnce + ((passed * perMilli) >> SHIFT) - counted);
    }

    private boolean isAsBefore(Rows rows, int from, int to) {
        long other = 0;
        if (rows.settings().length > 0) {
            double[] settings = rows.settings();
            for (int i = from; i < to; i++) {
                other |= Double.doubleToRawLongBits(settings[i]) ^ setting;
            }
        }
        if (rows.slots().length > 0) {
            int[] slots = rows.slots();
            int otherSlot = 0;
            for (int i = from; i < to; i++) {
                otherSlot |= slots[i] ^ slot;
            }
            other |= otherSlot;
        }
        if (rows.modes().length > 0) {
            byte[] modes = rows.modes();
            int otherMode = 0;
            for (int i = from; i < to; i++) {
                otherMode |= modes[i];
            }
            other |= otherMode;
        }
        return other == 0;
    }

    private int firstOdd(Rows rows, int from, int to) {
        long t = time;
        long n = count;
        for (int i = from; i < to; i++) {
            long nextTime = rows.times()[i];
            long next = rows.counts()[i];
            long odd = odd(nextTime - t, next - n) | (nextTime - begin) | (end - nextTime) | (highest - next);
            if (odd < 0 || !isAsBefore(rows, i, i + 1)) {
                return i;
            }
            t = nextTime;
            n = next;
        }
        return to;
    }

    private void evaluate(long[] counts, int from, int to, long[] amounts, byte[] statuses) {
        double each = perCount;
        long before = whole(each, count);
        long last = count;
        long stood = 0;
        for (int i = from; i < to; i++) {
            long next = counts[i];
            long now = whole(each, next);
            amounts[i] = now - before;
            // 1 where nothing was counted, which is the code of a standing truck; that of what was laid is 0.
            long stands = (next - last - 1) >>> 63;
            statuses[i] = (byte) stands;
            stood += stands;
            before = now;
            last = next;
        }
        standing += stood;
    }
}
