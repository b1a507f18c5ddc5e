package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * What a part of a truck's rows adds up to, in whole numbers, with its first and last reading, so that parts of a truck that follow
 * each other merge to what one pass would have given, bit for bit, whoever evaluated which ({@link RowEvaluator#merged}). For one thread at a
 * time. Make it with {@link RowEvaluator#sums()}.
 *
 * <p>It doesn't overflow while a truck's amounts stay below 100 000 t.
 */
public final class RowSums implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Relative uncertainties are kept in whole parts: products of amounts with them are exact. */
    static final double PARTS = 65_536;

    /** Totals have squares in units halved so often. */
    static final int MOST_HALVINGS = 10;

    private static final int OF_SHARE = 3;
    private static final int STATUSES = RowStatus.count();

    private final long[] rows = new long[STATUSES];
    private final long[] counts = new long[STATUSES];
    private final long[] amounts = new long[STATUSES];

    private final int halvings;

    /** Whose timeline they are of. */
    private final long mark;

    /** What was turned with each share of the timeline. */
    private final long[] turned;

    /**
     * What left the hopper with each share, and of that what was laid on the road: {@link #OF_SHARE} numbers each, which are the amount; that
     * times a curve's own uncertainty, in parts; that times how much of an error that grows was there, in parts.
     */
    private final long[] gone;

    private final long[] laid;

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

    /** Rows after the last reading that was counted from which may tell of more that turned. */
    private long untoldAtEnd;

    /**
     * @param halvings how often the unit is halved in which what a count stands for is squared; at most {@link #MOST_HALVINGS}
     * @param mark the {@link Fingerprint} of the timeline
     */
    RowSums(int shares, int halvings, long mark) {
        this.halvings = halvings;
        this.mark = mark;
        turned = new long[shares];
        gone = new long[OF_SHARE * shares];
        laid = new long[OF_SHARE * shares];
    }

    /** Takes a row that isn't counted from. What it may tell of is lost only if no other row follows that is counted from. */
    void skip(RowStatus status, boolean mayTellOfMore) {
        rows[status.code()]++;
        untoldAtEnd += mayTellOfMore ? 1 : 0;
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
        untoldAtEnd = 0;
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
        untoldAtEnd = 0;
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

    /**
     * @param relative the curve's own relative standard uncertainty, in parts of {@link #PARTS}
     * @param grown how much of an error that grows was there, in the same parts; what was calibrated is as uncertain as the rest
     */
    void share(int share, long counted, long amount, boolean onRoad, long relative, long grown) {
        long uncertain = amount * (grown == 0 ? relative : Math.round(relative * (1 - grown / PARTS)));
        turned[share] += counted;
        add(gone, share, amount, uncertain, amount * grown);
        if (onRoad) {
            add(laid, share, amount, uncertain, amount * grown);
        }
    }

    private static void add(long[] to, int share, long amount, long uncertain, long grown) {
        to[OF_SHARE * share] += amount;
        to[OF_SHARE * share + 1] += uncertain;
        to[OF_SHARE * share + 2] += grown;
    }

    /** Many plain rows at once: laid or standing. */
    void takeMany(RowState state, long laidRows, long standing, long counted, long amount, int share, long uncertain) {
        rows[RowStatus.LAID.code()] += laidRows;
        rows[RowStatus.STANDING.code()] += standing;
        counts[RowStatus.LAID.code()] += counted;
        amounts[RowStatus.LAID.code()] += amount;
        turned[share] += counted;
        add(gone, share, amount, uncertain, 0);
        add(laid, share, amount, uncertain, 0);
        lastTime = state.time;
        lastCount = state.count;
        untoldAtEnd = 0;
    }

    /** Within many rows at once, what a count stands for has changed so much, and is this in the last. */
    void change(WideSum squares, long parts) {
        changes.add(squares);
        intoLast = parts;
    }

    /** Whether rows can be taken many at a time: not before one was counted from the first. */
    boolean goesOn() {
        return hasSecond;
    }

    /** What a count stood for in the last row. */
    long intoLast() {
        return intoLast;
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
     * What was turned, as far as the readings tell, in rows that nobody can say of what left the hopper. A row that the next one isn't counted from
     * tells nothing; what turned after the last one that was, is only in the numbers of such rows.
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

    /**
     * What a share adds up to.
     *
     * @param amount milligrams or microliters
     * @param uncertain of them one standard uncertainty of the curve itself
     * @param grown of them what was off by an error that grew, as if by its whole size
     */
    record OfShare(long amount, double uncertain, double grown) {}

    OfShare laid(int share) {
        return of(laid, share);
    }

    OfShare gone(int share) {
        return of(gone, share);
    }

    private static OfShare of(long[] sums, int share) {
        return new OfShare(
                sums[OF_SHARE * share], sums[OF_SHARE * share + 1] / PARTS, sums[OF_SHARE * share + 2] / PARTS);
    }

    long turned(int share) {
        return turned[share];
    }

    long mark() {
        return mark;
    }

    /** The squares of what a count stands for before and after each reading, less each other, in units of a total. */
    BigInteger squares() {
        WideSum all = new WideSum();
        all.add(changes);
        all.addSquare(afterFirst);
        all.addSquare(intoLast);
        return all.value().shiftLeft(2 * (MOST_HALVINGS - halvings));
    }

    boolean hasReading() {
        return hasReading;
    }

    long untoldAtEnd() {
        return untoldAtEnd;
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
                untoldAtEnd = 0;
            }
            lastTime = next.lastTime;
            lastCount = next.lastCount;
        }
        untoldAtEnd += next.untoldAtEnd;
        add(rows, next.rows);
        add(counts, next.counts);
        add(amounts, next.amounts);
        add(turned, next.turned);
        add(gone, next.gone);
        add(laid, next.laid);
        changes.add(next.changes);
    }

    private void beginAs(RowSums next) {
        hasReading = true;
        untoldAtEnd = 0;
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
                        && Arrays.equals(turned, that.turned)
                        && Arrays.equals(gone, that.gone)
                        && Arrays.equals(laid, that.laid)
                        && changes.equals(that.changes)
                        && hasReading == that.hasReading
                        && lastTime == that.lastTime
                        && lastCount == that.lastCount
                        && untoldAtEnd == that.untoldAtEnd
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
