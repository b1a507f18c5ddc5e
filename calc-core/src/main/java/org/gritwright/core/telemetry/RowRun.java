package org.gritwright.core.telemetry;

/**
 * The rows about which nothing is odd, and nearly all are: evaluated with what the one before them was, in order, in automatic. They are looked
 * through in blocks, by whether any difference has a sign that it shouldn't have, which the compiler makes vector instructions of; only
 * a block in which something is odd is looked through row by row.
 */
abstract class RowRun {
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

    /**
     * What every row has to keep to.
     *
     * @param begin the earliest time
     * @param end the latest
     * @param longest the longest time between two rows
     * @param perMilli pulses in a millisecond, at most
     * @param mostAtOnce pulses that may come with no time between, at most
     * @param highest the highest reading
     */
    record Limits(long begin, long end, double longest, double perMilli, long mostAtOnce, long highest) {}

    private final Limits limits;
    private final long longest;
    private final long perMilli;
    private final int slot;
    private final long firstCount;

    private long time;

    /** The reading of the last row that was evaluated. */
    private long count;

    /** How many rows counted nothing. */
    long standing;

    RowRun(Limits limits, RowState state) {
        this.limits = limits;
        this.longest = (long) Math.min(limits.longest(), LONGEST);
        this.perMilli = (long) Math.scalb(Math.min(limits.perMilli(), 1), SHIFT);
        this.slot = state.slot;
        this.time = state.time;
        this.count = state.count;
        this.firstCount = state.count;
    }

    static long whole(double perCount, double counts) {
        return Double.doubleToRawLongBits(perCount * counts + ROUNDER) - ROUNDER_BITS;
    }

    long count() {
        return count;
    }

    long counted() {
        return count - firstCount;
    }

    /** Whether the settings of some rows are such that they can be evaluated. */
    abstract boolean hasItsSettings(Rows rows, int from, int to);

    /** The same of one: loops that were seen to run once aren't made vector instructions of. */
    abstract boolean hasItsSetting(Rows rows, int row);

    /** Evaluates rows about which nothing is odd. */
    abstract void evaluate(Rows rows, int from, int to, long[] amounts, byte[] statuses);

    /**
     * Evaluates rows in all of which a count stands for the same.
     *
     * @param before the reading before them
     * @return the last reading
     */
    long evenly(double perCount, long[] counts, long before, int from, int to, long[] amounts, byte[] statuses) {
        long last = before;
        long then = whole(perCount, (double) before);
        long stood = 0;
        for (int i = from; i < to; i++) {
            long next = counts[i];
            long now = whole(perCount, (double) next);
            amounts[i] = now - then;
            // 1 where nothing was counted, which is the code of a standing truck; that of what was laid is 0.
            long stands = (next - last - 1) >>> 63;
            statuses[i] = (byte) stands;
            stood += stands;
            then = now;
            last = next;
        }
        standing += stood;
        return last;
    }

    /** Hands the run on, once it has filled rows: to the state, which has taken the last reading, and to the sums. */
    abstract void add(RowState state, RowSums sums, HeldArrays held, int rows);

    /** Evaluates rows up to the first odd one, and gives its place. */
    int fill(Rows rows, int from, int to, long[] amounts, byte[] statuses) {
        int row = from;
        int block = FIRST_BLOCK;
        while (row < to) {
            int last = Math.min(row + block, to);
            block = Math.min(2 * block, BLOCK);
            int plain = isPlain(rows, row, last) ? last : firstOdd(rows, row, last);
            if (plain > row) {
                evaluate(rows, row, plain, amounts, statuses);
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
                | (times[from] - limits.begin())
                | (limits.end() - times[to - 1])
                | (limits.highest() - counts[to - 1]);
        for (int i = from + 1; i < to; i++) {
            long passed = times[i] - times[i - 1];
            long counted = counts[i] - counts[i - 1];
            odd |= odd(passed, counted);
        }
        return odd >= 0 && isAsBefore(rows, from, to);
    }

    /** Negative if a row isn't plain after the one before it. */
    private long odd(long passed, long counted) {
        return (passed - 1)
                | (longest - passed)
                | counted
                | (limits.mostAtOnce() + ((passed * perMilli) >> SHIFT) - counted);
    }

    private boolean isAsBefore(Rows rows, int from, int to) {
        int other = 0;
        if (rows.slots().length > 0) {
            int[] slots = rows.slots();
            for (int i = from; i < to; i++) {
                other |= slots[i] ^ slot;
            }
        }
        if (rows.modes().length > 0) {
            byte[] modes = rows.modes();
            for (int i = from; i < to; i++) {
                other |= modes[i];
            }
        }
        return other == 0 && hasItsSettings(rows, from, to);
    }

    private boolean isOther(Rows rows, int row) {
        return (rows.slots().length > 0 && rows.slots()[row] != slot)
                || rows.mode(row) != 0
                || !hasItsSetting(rows, row);
    }

    private int firstOdd(Rows rows, int from, int to) {
        long t = time;
        long n = count;
        for (int i = from; i < to; i++) {
            long nextTime = rows.times()[i];
            long next = rows.counts()[i];
            long odd = odd(nextTime - t, next - n)
                    | (nextTime - limits.begin())
                    | (limits.end() - nextTime)
                    | (limits.highest() - next);
            if (odd < 0 || isOther(rows, i)) {
                return i;
            }
            t = nextTime;
            n = next;
        }
        return to;
    }
}
