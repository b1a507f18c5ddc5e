package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * What a part of a truck's rows adds up to, in whole numbers, with its first and last reading, so that parts of a truck that follow
 * each other merge to what one pass would have given, bit for bit, whoever evaluated which ({@link RowEvaluator#merged}). For one thread at a
 * time. Make it with {@link RowEvaluator#sums()}.
 *
 * <p>It doesn't overflow while a truck's amounts stay below 10⁸ t.
 */
public final class RowSums implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Relative uncertainties are kept in whole parts: products of amounts with them are exact. */
    static final double PARTS = 65_536;

    private static final int STATUSES = RowStatus.count();

    private final long[] rows = new long[STATUSES];
    private final long[] counts = new long[STATUSES];
    private final long[] amounts = new long[STATUSES];

    /** What each share of the timeline laid on the road, and of curves that times their uncertainty. */
    private final long[] laid;

    private final long[] uncertain;

    /** What was turned with each share, and what left the hopper, on the road or not. */
    private final long[] turned;

    private final long[] gone;

    /** Of the readings between the first and the last: the squares of by how much what a count stands for changes there. */
    private final WideSum changes = new WideSum();

    /** Whether the first reading is another part's last, from which the first row is counted. */
    private boolean continues;

    private boolean hasReading;
    private long firstTime;
    private long firstCount;
    private double firstSetting;
    private int firstSlot;
    private int firstMode;

    /** Whether something is counted from the first reading; then what a count stands for after it and before the last. */
    private boolean hasSecond;

    private long afterFirst;
    private long intoLast;
    private long lastTime;
    private long lastCount;

    RowSums(int shares) {
        laid = new long[shares];
        uncertain = new long[shares];
        turned = new long[shares];
        gone = new long[shares];
    }

    /** Takes a row that isn't counted from; it changes nothing but its status' number. */
    void skip(RowStatus status) {
        rows[status.code()]++;
    }

    /** Takes a row that is the first reading. */
    void first(RowState state, double setting, int slot, int mode) {
        rows[RowStatus.FIRST.code()]++;
        begin(state);
        continues = false;
        firstSetting = setting;
        firstSlot = slot;
        firstMode = mode;
    }

    /** Begins with the reading that the next row is counted from. */
    private void begin(RowState state) {
        hasReading = true;
        continues = true;
        firstTime = state.time;
        firstCount = state.count;
        lastTime = state.time;
        lastCount = state.count;
    }

    /** Called before the state takes a row; a part that goes on from another begins with the other's last reading. */
    void before(RowState state) {
        if (!hasReading) {
            begin(state);
        }
    }

    /** Takes a row that the next one is counted from, and that the state has taken. */
    void take(RowState state, RowStatus status, long counted) {
        int code = status.code();
        rows[code]++;
        counts[code] += counted;
        amounts[code] += state.amount;
        follow(state.parts);
        intoLast = state.parts;
        lastTime = state.time;
        lastCount = state.count;
    }

    /** What a count stands for after the last reading. */
    private void follow(long parts) {
        if (!hasSecond) {
            hasSecond = true;
            afterFirst = parts;
        } else if (parts != intoLast) {
            changes.addSquare(parts - intoLast);
        }
    }

    /** @param relative the curve's own relative standard uncertainty, in parts of {@link #PARTS} */
    void share(int share, long counted, long amount, boolean onRoad, long relative) {
        turned[share] += counted;
        gone[share] += amount;
        if (onRoad) {
            laid[share] += amount;
            uncertain[share] += amount * relative;
        }
    }

    /** Many plain rows at once, evaluated as the one before them: laid or standing. */
    void takeMany(RowState state, long laidRows, long standing, long counted, long amount, int share, long relative) {
        rows[RowStatus.LAID.code()] += laidRows;
        rows[RowStatus.STANDING.code()] += standing;
        counts[RowStatus.LAID.code()] += counted;
        amounts[RowStatus.LAID.code()] += amount;
        turned[share] += counted;
        gone[share] += amount;
        laid[share] += amount;
        uncertain[share] += amount * relative;
        lastTime = state.time;
        lastCount = state.count;
    }

    /** Whether what is counted with this is counted as the row before was: only then rows can be taken many at a time. */
    boolean goesOn(long parts) {
        return hasSecond && parts == intoLast;
    }

    /**
     * How many rows there are of a status.
     *
     * @param status the status
     * @return 0 or more
     */
    public long rows(RowStatus status) {
        return rows[Objects.requireNonNull(status, "status").code()];
    }

    /**
     * What the rows of a status counted, or would have as far as their readings tell: after a restart what was turned since, in a gap or
     * a leap the difference of the readings.
     *
     * @param status the status
     * @return pulses, 0 or more
     */
    public long counts(RowStatus status) {
        return counts[Objects.requireNonNull(status, "status").code()];
    }

    /**
     * What the rows of a status hold.
     *
     * @param status the status
     * @return milligrams or microliters, 0 or more
     */
    public long amount(RowStatus status) {
        return amounts[Objects.requireNonNull(status, "status").code()];
    }

    /**
     * What was laid on the road.
     *
     * @return milligrams or microliters
     */
    public long laid() {
        return sum(amounts, true, true);
    }

    /**
     * What left the hopper, on the road or not.
     *
     * @return milligrams or microliters
     */
    public long left() {
        return sum(amounts, true, false);
    }

    /**
     * What was turned and counted as what it was.
     *
     * @return pulses
     */
    public long turned() {
        return sum(counts, true, false);
    }

    /**
     * What was turned, as far as the readings tell, in rows that nobody can say of what left the hopper.
     *
     * @return pulses
     */
    public long unattributed() {
        return Arrays.stream(counts).sum() - turned();
    }

    private static long sum(long[] of, boolean counted, boolean onRoad) {
        long sum = 0;
        for (RowStatus status : RowStatus.values()) {
            if (status.isCounted() == counted && (!onRoad || status.isOnRoad())) {
                sum += of[status.code()];
            }
        }
        return sum;
    }

    long laid(int share) {
        return laid[share];
    }

    double uncertain(int share) {
        return uncertain[share] / PARTS;
    }

    long turned(int share) {
        return turned[share];
    }

    long gone(int share) {
        return gone[share];
    }

    int shares() {
        return laid.length;
    }

    /** The squares of what a count stands for before and after each reading, less each other. */
    WideSum squares() {
        WideSum all = new WideSum();
        all.add(changes);
        all.addSquare(afterFirst);
        all.addSquare(intoLast);
        return all;
    }

    boolean isCountedOn() {
        return continues || !hasReading;
    }

    /** Adds what follows: rows that were counted on from these, or rows of their own, whose first is counted now. */
    void append(RowSums next, RowEvaluator evaluator) {
        if (next.hasReading) {
            if (!hasReading) {
                beginAs(next);
            } else if (next.continues) {
                Require.that(
                        next.firstTime == lastTime && next.firstCount == lastCount,
                        "part that follows",
                        "counted on from " + lastCount + " pulse at " + lastTime + " ms",
                        () -> next.firstCount + " pulse at " + next.firstTime + " ms");
            } else {
                Require.that(
                        next.firstTime >= lastTime,
                        "part that follows",
                        "one that begins no earlier than this one ends, at " + lastTime + " ms",
                        () -> next.firstTime + " ms");
                countOn(next, evaluator);
            }
            if (next.hasSecond) {
                follow(next.afterFirst);
                intoLast = next.intoLast;
            }
            lastTime = next.lastTime;
            lastCount = next.lastCount;
        }
        add(rows, next.rows);
        add(counts, next.counts);
        add(amounts, next.amounts);
        add(laid, next.laid);
        add(uncertain, next.uncertain);
        add(turned, next.turned);
        add(gone, next.gone);
        changes.add(next.changes);
    }

    private void beginAs(RowSums next) {
        hasReading = true;
        continues = next.continues;
        firstTime = next.firstTime;
        firstCount = next.firstCount;
        firstSetting = next.firstSetting;
        firstSlot = next.firstSlot;
        firstMode = next.firstMode;
    }

    /** The other's first row had nothing to be counted from; now it has. */
    private void countOn(RowSums next, RowEvaluator evaluator) {
        RowState state = evaluator.start();
        state.hasReading = true;
        state.time = lastTime;
        state.count = lastCount;
        evaluator.step(state, this, next.firstTime, next.firstCount, next.firstSetting, next.firstSlot, next.firstMode);
        rows[RowStatus.FIRST.code()]--;
    }

    private static void add(long[] to, long[] more) {
        for (int i = 0; i < to.length; i++) {
            to[i] += more[i];
        }
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof RowSums that
                        && Arrays.equals(rows, that.rows)
                        && Arrays.equals(counts, that.counts)
                        && Arrays.equals(amounts, that.amounts)
                        && Arrays.equals(laid, that.laid)
                        && Arrays.equals(uncertain, that.uncertain)
                        && Arrays.equals(turned, that.turned)
                        && Arrays.equals(gone, that.gone)
                        && changes.equals(that.changes)
                        && hasReading == that.hasReading
                        && lastTime == that.lastTime
                        && lastCount == that.lastCount
                        && intoLast == that.intoLast
                        && firstTime == that.firstTime
                        && firstCount == that.firstCount
                        && afterFirst == that.afterFirst
                        && hasSecond == that.hasSecond
                        && continues == that.continues);
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(rows), Arrays.hashCode(amounts), lastTime, lastCount);
    }

    @Override
    public String toString() {
        return laid() + " laid, " + turned() + " pulse turned, " + unattributed() + " pulse unattributed";
    }
}
