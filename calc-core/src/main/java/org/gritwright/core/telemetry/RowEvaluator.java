package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.IntFunction;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.jspecify.annotations.Nullable;

/**
 * Rows of a counter to what left the hopper: compiled once from a {@link Timeline}, then plain arrays, so that it can be sent to a worker
 * that has none of the types behind the calibrations. It throws nothing for a row and allocates nothing; a row that can't be
 * counted holds 0 and has a {@link RowStatus} that says why. Immutable, thread-safe, serializable.
 *
 * <p>With c milligrams (of a liquid microliters) a count and readings N, a row holds round(c·N) − round(c·N before), where N rolls over as the
 * counter does: rows evaluated alike telescope to the rounded whole, and rounding doesn't accumulate; where the counter rolls over, c times
 * the count at which it does is rounded to a whole number. A row is evaluated with what is in force at its own time, in its own slot, at its own
 * setting.
 *
 * <p>Rows come in the order of time. One that is earlier than the one before is left out ({@link RowStatus#OUT_OF_ORDER}); every other one
 * whose reading is possible is what the next is counted from, so that nothing is counted twice and what can't be counted once is lost once.
 */
public final class RowEvaluator implements Serializable {
    private static final long serialVersionUID = 1L;

    /** 2⁵¹: amounts are reckoned exactly below it. */
    private static final double MOST_AMOUNT = 2.251799813685248e15;

    /** What a count stands for is kept in so many bits where it is squared: long sums of squares then don't overflow in a block. */
    private static final int PARTS_BITS = 25;

    private final List<String> slots;
    private final boolean ofLiquids;
    private final long earliest;
    private final long latest;
    private final long width;
    private final long highestReading;
    private final double longest;
    private final double perMilli;
    private final double clockStep;
    private final double restart;
    private final boolean hasWays;

    /** What sums of this timeline have too. */
    private final long mark;

    /** Changes of what a count stands for are squared in parts of a unit halved so often. */
    private final int halvings;

    private final Share[] shares;

    /** By slot, in the order of time. */
    private final HeldArrays[][] held;

    RowEvaluator(
            List<String> slots,
            boolean ofLiquids,
            long earliest,
            long latest,
            Counter counter,
            HeldArrays[][] held,
            Share[] shares) {
        this.slots = List.copyOf(slots);
        this.ofLiquids = ofLiquids;
        this.earliest = earliest;
        this.latest = latest;
        this.held = held;
        this.shares = shares;
        this.width = counter.rollsOverAt()
                .map(at -> (long) Amounts.si(PulseCount.class, at))
                .orElse(0L);
        this.perMilli = counter.fastest() / 1000;
        this.clockStep = Times.millis(counter.clockStep());
        this.restart = Times.millis(counter.shortestRestart());
        double wrap = counter.shortestWrap()
                .map(time -> Amounts.si(Time.class, time) * 1000 - clockStep)
                .orElse(Double.POSITIVE_INFINITY);
        this.longest = Math.min(Times.millis(counter.longestGap()), wrap);
        Require.that(
                longest > 0,
                "count at which the counter rolls over",
                "one that takes longer to count, at the fastest, than a step of the rows' clock, "
                        + counter.clockStep(),
                () -> width + " pulse");
        double most = mostPerCount(held);
        this.highestReading = highestReading(most, width);
        this.halvings = Math.min(RowSums.MOST_HALVINGS, PARTS_BITS - 1 - Math.getExponent(most));
        this.hasWays = hasWays(held);
        this.mark = mark();
    }

    private long mark() {
        Fingerprint all = new Fingerprint().add(ofLiquids ? 1 : 0).add(halvings);
        slots.forEach(all::add);
        for (HeldArrays[] ofSlot : held) {
            for (HeldArrays one : ofSlot) {
                one.addTo(all);
            }
            all.add(ofSlot.length);
        }
        for (Share share : shares) {
            share.addTo(all);
        }
        return all.value();
    }

    private static double mostPerCount(HeldArrays[][] held) {
        double most = 0;
        for (HeldArrays[] ofSlot : held) {
            for (HeldArrays one : ofSlot) {
                most = Math.max(most, one.mostPerCount());
            }
        }
        return most;
    }

    private static long highestReading(double mostPerCount, long width) {
        double most = Math.min(MOST_AMOUNT, MOST_AMOUNT / mostPerCount);
        Require.that(
                width <= most,
                "count at which the counter rolls over",
                "at most " + (long) most + " pulse with these calibrations",
                width + " pulse");
        return width > 0 ? width - 1 : (long) most;
    }

    private static boolean hasWays(HeldArrays[][] held) {
        for (HeldArrays[] ofSlot : held) {
            for (HeldArrays one : ofSlot) {
                for (Drift drift : one.drifts()) {
                    if (drift != null && drift.onset() != Onset.Gradually.WITH_TIME) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /**
     * Compiles a timeline.
     *
     * @param timeline what was in force when, and what it was off by
     * @param counter the counter whose readings the rows have
     * @param from the earliest time that a row can have
     * @param until the latest; a clock that was wrong by years is told by that
     * @return the evaluator
     * @throws InvalidInputException if the times are in the wrong order, something in force can't be counted with, an error would grow
     *     with what a first pass has to count ({@link #firstPass}), or the counter
     *     rolls over so late that amounts can't be reckoned exactly, or within a step of the rows' clock
     */
    public static RowEvaluator compile(Timeline timeline, Counter counter, Instant from, Instant until) {
        return new Compiler(timeline, counter, from, until).compile(Compiler.Ways.REFUSED);
    }

    /**
     * Compiles the first of two passes: what an error grew with, turns or amounts, is counted, and that error isn't corrected yet.
     *
     * @param timeline what was in force when, and what it was off by
     * @param counter the counter whose readings the rows have
     * @param from the earliest time that a row can have
     * @param until the latest
     * @return the evaluator of the first pass
     * @throws InvalidInputException as for the plain form, but for a first pass
     */
    public static RowEvaluator firstPass(Timeline timeline, Counter counter, Instant from, Instant until) {
        return new Compiler(timeline, counter, from, until).compile(Compiler.Ways.COUNTED);
    }

    /**
     * Compiles the second of two passes.
     *
     * @param timeline what was in force when, and what it was off by
     * @param counter the counter whose readings the rows have
     * @param from the earliest time that a row can have
     * @param until the latest
     * @param counted what the first pass counted, over all rows of the truck
     * @return the evaluator of the second pass; parts of a truck are then evaluated one after the other with one state. A row that turns on after
     *     all that the first pass counted was turned holds what it does with the whole error, and sums with it have no total
     * @throws InvalidInputException as for the plain form, or if what was counted isn't from a first pass of this timeline
     */
    public static RowEvaluator secondPass(
            Timeline timeline, Counter counter, Instant from, Instant until, RowSums counted) {
        Objects.requireNonNull(counted, "counted");
        Require.that(
                firstPass(timeline, counter, from, until).isOwn(counted),
                "what the first pass counted",
                "of the same timeline",
                "of another");
        return new Compiler(timeline, counter, from, until).compile(Compiler.Ways.known(counted));
    }

    /**
     * The slots, or where nobody names slots the materials, by their place in a column of slots.
     *
     * @return the names
     */
    public List<String> slots() {
        return slots;
    }

    /**
     * Whether rows hold microliters of a liquid and not milligrams.
     *
     * @return true for liquids
     */
    public boolean isOfLiquids() {
        return ofLiquids;
    }

    /**
     * Where a truck's rows begin.
     *
     * @return a state without a reading
     */
    public RowState start() {
        return new RowState(hasWays ? shares.length : 0);
    }

    /**
     * Sums without rows.
     *
     * @return sums for this evaluator
     */
    public RowSums sums() {
        return new RowSums(shares.length, halvings, mark);
    }

    /**
     * Evaluates rows.
     *
     * @param rows the rows
     * @param from the first of them
     * @param to the one after the last of them
     * @param state where the truck's rows have got to; afterwards where they have got to then
     * @param sums what they are added to
     * @param amounts gets what each row holds, at the row's place
     * @param statuses gets the {@link RowStatus#code()} of each row, at the row's place
     * @throws InvalidInputException if a column of results is shorter than the rows, there is no column of slots and more than one slot, or
     *     state or sums are of an evaluator of another timeline
     * @throws IndexOutOfBoundsException if there are no such rows
     */
    public void evaluate(Rows rows, int from, int to, RowState state, RowSums sums, long[] amounts, byte[] statuses) {
        rows.requireRange(from, to);
        if (rows.slots().length == 0 && slots.size() > 1 && rows.size() > 0) {
            throw new InvalidInputException(
                    "column of slots", "there, as the rows may be of several slots, " + slots, "none");
        }
        Require.that(amounts.length >= to, "column of amounts", "as long as the rows, " + to, amounts.length);
        Require.that(statuses.length >= to, "column of statuses", "as long as the rows, " + to, statuses.length);
        adopt(state, sums);
        int row = from;
        while (row < to) {
            row = plain(rows, row, to, state, sums, amounts, statuses);
            if (row < to) {
                statuses[row] = step(
                                state,
                                sums,
                                rows.times()[row],
                                rows.counts()[row],
                                rows.setting(row),
                                rows.slot(row),
                                rows.mode(row))
                        .code();
                amounts[row] = state.amount;
                row++;
            }
        }
    }

    /** Rows that go on with what the one before them had and about which nothing is odd; ends at the first other one. */
    private int plain(Rows rows, int from, int to, RowState state, RowSums sums, long[] amounts, byte[] statuses) {
        HeldArrays current = state.held;
        boolean goesOn = current != null
                && state.hasReading
                && sums.goesOn()
                && current.drift(state.place) == null
                && (rows.slots().length > 0 || state.slot == 0);
        if (!goesOn) {
            return from;
        }
        RowRun run = run(rows, from, state, sums, Objects.requireNonNull(current));
        int row = run == null ? from : run.fill(rows, from, to, amounts, statuses);
        if (run != null && row > from) {
            state.time = rows.times()[row - 1];
            state.count = rows.counts()[row - 1];
            state.amount = amounts[row - 1];
            run.add(state, sums, current, row - from);
        }
        return row;
    }

    private @Nullable RowRun run(Rows rows, int from, RowState state, RowSums sums, HeldArrays current) {
        if (current.isCurve() && rows.settings().length > 0) {
            return new CurveRows(limits(current), state, current, partsPerUnit(), sums.intoLast());
        }
        boolean same = Double.doubleToRawLongBits(rows.setting(from)) == Double.doubleToRawLongBits(state.setting);
        return same && sums.intoLast() == state.partsPerCount ? new PlainRows(limits(current), state) : null;
    }

    private double partsPerUnit() {
        return Math.scalb(1.0, halvings);
    }

    private RowRun.Limits limits(HeldArrays current) {
        return new RowRun.Limits(
                Math.max(current.from(), earliest),
                Math.min(current.until() - 1, latest),
                longest,
                perMilli,
                (long) (perMilli * clockStep + 1),
                highestReading);
    }

    /**
     * Evaluates one row, of whatever source; what it holds is then {@link RowState#amount()}.
     *
     * @param state where the truck's rows have got to
     * @param sums what it is added to
     * @param time milliseconds since 1970-01-01T00:00Z
     * @param count the reading of the counter
     * @param setting where the gate stands, as in {@link Rows}; NaN if it isn't known
     * @param slot the place of its slot
     * @param mode a {@link RowMode#code()}
     * @return what became of it
     * @throws InvalidInputException if state or sums are of an evaluator of another timeline
     */
    public RowStatus step(RowState state, RowSums sums, long time, long count, double setting, int slot, int mode) {
        if (state.owner != this || !isOwn(sums)) {
            adopt(state, sums);
        }
        state.amount = 0;
        if (!isPossible(time)) {
            return skipped(sums, RowStatus.IMPOSSIBLE_TIME, true);
        }
        if (count < 0 || count > highestReading) {
            return skipped(sums, RowStatus.IMPOSSIBLE_READING, true);
        }
        if (!state.hasReading) {
            state.hasReading = true;
            read(state, time, count);
            sums.first(state, setting, slot, mode);
            return RowStatus.FIRST;
        }
        long passed = time - state.time;
        if (passed < 0) {
            // A reading that is higher isn't of a row that came late: the clock was wrong before, or is now.
            return skipped(sums, RowStatus.OUT_OF_ORDER, count > state.count);
        }
        if (passed == 0 && count == state.count) {
            return skipped(sums, RowStatus.DUPLICATE, false);
        }
        sums.before(state);
        long before = state.count;
        RowStatus doubt = doubt(before, count, passed);
        if (doubt != null) {
            return uncounted(state, sums, doubt, time, count, atLeast(doubt, before, count));
        }
        long counted = count < before ? count - before + width : count - before;
        if (mode < 0 || mode >= RowMode.count()) {
            return uncounted(state, sums, RowStatus.UNKNOWN_MODE, time, count, counted);
        }
        RowStatus missing = find(state, time, setting, slot);
        RowStatus status = counted == 0 ? RowStatus.STANDING : RowMode.of(mode).counted();
        if (missing != null && counted > 0 && status != RowStatus.TURNED_EMPTY) {
            return uncounted(state, sums, missing, time, count, counted);
        }
        return counted(state, sums, status, missing == null, time, count, counted);
    }

    boolean isPossible(long time) {
        return time >= earliest && time <= latest;
    }

    /** Forgets what another evaluator found, which may no longer be in force. */
    private void adopt(RowState state, RowSums sums) {
        requireOwn(sums);
        Require.that(
                state.ways.length == (hasWays ? shares.length : 0),
                "state",
                "one that this evaluator, or one of the same timeline, started",
                "another evaluator's");
        if (state.owner != this) {
            state.owner = this;
            state.held = null;
        }
    }

    private boolean isOwn(RowSums sums) {
        return sums.mark() == mark;
    }

    private void requireOwn(RowSums sums) {
        Require.that(isOwn(sums), "sums", "of this evaluator, or of one of the same timeline", "another evaluator's");
    }

    private static RowStatus skipped(RowSums sums, RowStatus status, boolean mayTellOfMore) {
        sums.skip(status, mayTellOfMore);
        return status;
    }

    private static void read(RowState state, long time, long count) {
        state.time = time;
        state.count = count;
    }

    private static RowStatus uncounted(
            RowState state, RowSums sums, RowStatus status, long time, long count, long atLeast) {
        read(state, time, count);
        state.parts = 0;
        sums.take(state, status, atLeast);
        return status;
    }

    /** Why what was turned since the row before can't be known; nothing if it can. */
    private @Nullable RowStatus doubt(long before, long count, long passed) {
        if (passed > longest) {
            return RowStatus.GAP;
        }
        double most = perMilli * (passed + clockStep) + 1;
        if (count >= before) {
            return count - before > most ? RowStatus.LEAP : null;
        }
        if (width == 0 || count - before + width > most) {
            return RowStatus.RESTARTED;
        }
        return passed + clockStep >= restart && count <= perMilli * (passed + clockStep - restart) + 1
                ? RowStatus.ROLLED_OVER_OR_RESTARTED
                : null;
    }

    /** What was turned as far as the readings tell. */
    private static long atLeast(RowStatus doubt, long before, long count) {
        return doubt == RowStatus.LEAP || (doubt == RowStatus.GAP && count >= before) ? count - before : count;
    }

    /** Finds what the row is evaluated with, if it isn't what the row before was. */
    private @Nullable RowStatus find(RowState state, long time, double setting, int slot) {
        HeldArrays last = state.held;
        boolean same = last != null
                && slot == state.slot
                && last.holds(time)
                && Double.doubleToRawLongBits(setting) == Double.doubleToRawLongBits(state.setting);
        if (!same) {
            state.held = null;
            state.place = HeldArrays.NONE;
            if (slot < 0 || slot >= held.length) {
                return RowStatus.UNKNOWN_SLOT;
            }
            HeldArrays now = at(held[slot], time);
            if (now == null) {
                return RowStatus.NO_CALIBRATION;
            }
            if (now.place(setting) == HeldArrays.NONE) {
                return RowStatus.NO_SUCH_SETTING;
            }
            state.slot = slot;
            state.use(now, setting, partsPerUnit());
        }
        return null;
    }

    private static @Nullable HeldArrays at(HeldArrays[] ofSlot, long time) {
        int low = 0;
        int high = ofSlot.length - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            if (time < ofSlot[middle].from()) {
                high = middle - 1;
            } else if (time >= ofSlot[middle].until()) {
                low = middle + 1;
            } else {
                return ofSlot[middle].isNothing() ? null : ofSlot[middle];
            }
        }
        return null;
    }

    private RowStatus counted(
            RowState state, RowSums sums, RowStatus status, boolean found, long time, long count, long counted) {
        HeldArrays with = state.held;
        if (found && with != null && status != RowStatus.TURNED_EMPTY) {
            state.amount = amount(state, with, time, count, counted);
            int share = with.share(state.place);
            long relative = with.relativeParts(state.place, state.setting);
            sums.share(share, counted, state.amount, status.isOnRoad(), relative, state.grown);
            state.parts = state.partsPerCount;
        } else {
            state.parts = 0;
        }
        read(state, time, count);
        sums.take(state, status, counted);
        return status;
    }

    private long amount(RowState state, HeldArrays with, long time, long count, long counted) {
        Drift drift = with.drift(state.place);
        double perCount = state.perCount;
        state.grown = 0;
        if (drift != null && drift.onset() != Onset.Gradually.WITH_TIME) {
            int share = with.share(state.place);
            double unit = drift.onset() == Onset.Gradually.WITH_TURNS ? 1 : perCount;
            double before = state.ways[share];
            double after = before + unit * counted;
            state.ways[share] = after;
            state.grown = drift.grown(before / 2 + after / 2);
            double scale = perCount / unit;
            return (long) Math.rint(scale * drift.trueUpTo(after)) - (long) Math.rint(scale * drift.trueUpTo(before));
        }
        if (drift != null) {
            double middle = state.time / 2.0 + time / 2.0;
            perCount *= drift.trueAt(middle);
            state.grown = drift.grown(middle);
        }
        return whole(perCount, state.count, count);
    }

    /** Differences of rounded wholes, as in {@link PlainRows}; where it rolled over, by way of the whole at which it does. */
    private long whole(double perCount, long before, long count) {
        long now = (long) Math.rint(perCount * count);
        long then = (long) Math.rint(perCount * before);
        return count >= before ? now - then : (long) Math.rint(perCount * width) - then + now;
    }

    /**
     * Explains what a row would become.
     *
     * @param state where the truck's rows have got to; it stays as it is
     * @param time milliseconds since 1970-01-01T00:00Z
     * @param count the reading of the counter
     * @param setting where the gate stands, as in {@link Rows}; NaN if it isn't known
     * @param slot the place of its slot
     * @param mode a {@link RowMode#code()}
     * @return its steps, and what it would hold
     */
    public RowExplanation explain(RowState state, long time, long count, double setting, int slot, int mode) {
        RowState after = state.copy();
        RowStatus status = step(after, sums(), time, count, setting, slot, mode);
        String with = after.held == null ? "nothing" : shares[after.held.share(after.place)].what();
        return new Explainer(ofLiquids, width).explain(state, after, status, time, count, with);
    }

    /**
     * What the rows of a truck laid on the road, with its uncertainty. Rows that can't be counted aren't in it: a total of 0 may mean that no
     * row could be. How many there are, and why, is in {@link RowSums#rows}.
     *
     * @param sums what the rows add up to
     * @return the total
     * @throws InvalidInputException if they are of an evaluator of another timeline, or more was turned in a second pass than the first
     *     counted
     */
    public AppliedTotal total(RowSums sums) {
        return total(sums, sums.laid(), sums::laid);
    }

    /**
     * What left the hopper in the rows of a truck, on the road or not, with its uncertainty.
     *
     * @param sums what they add up to
     * @return the total
     * @throws InvalidInputException if they are of an evaluator of another timeline, or more was turned in a second pass than the first
     *     counted
     */
    public AppliedTotal left(RowSums sums) {
        return total(sums, sums.left(), sums::gone);
    }

    /** Rows before which more may have turned than their readings tell, and those at the end of which nothing is counted any more. */
    long untold(RowSums sums) {
        return sums.untoldAtEnd()
                + sums.rows(RowStatus.RESTARTED)
                + sums.rows(RowStatus.ROLLED_OVER_OR_RESTARTED)
                + (width > 0 ? sums.rows(RowStatus.GAP) : 0);
    }

    /** What was off by an error that grew is off by its part of that, and by the rest of what was calibrated. */
    private AppliedTotal total(RowSums sums, long amount, IntFunction<RowSums.OfShare> ofShare) {
        requireOwn(sums);
        Map<String, Double> sensitivities = new TreeMap<>();
        for (int i = 0; i < shares.length; i++) {
            Share share = shares[i];
            long turned = sums.turned(i);
            Require.that(
                    turned <= share.mostTurned(),
                    "turned with " + share.what(),
                    "at most what the first pass counted of it, " + share.mostTurned() + " pulse",
                    () -> turned + " pulse");
            RowSums.OfShare of = ofShare.apply(i);
            for (int j = 0; j < share.errors().length; j++) {
                sensitivities.merge(share.errors()[j], (of.amount() - of.grown()) * share.relatives()[j], Double::sum);
            }
            if (!share.curve().isEmpty()) {
                sensitivities.merge(share.curve(), of.uncertain(), Double::sum);
            }
            if (!share.grown().isEmpty()) {
                sensitivities.merge(share.grown(), of.grown() * share.relative(), Double::sum);
            }
        }
        Map<String, Long> whole = new TreeMap<>();
        sensitivities.forEach((id, size) -> whole.put(id, Math.round(size)));
        return new AppliedTotal(ofLiquids, amount, whole, sums.squares());
    }

    /**
     * Two parts of one truck's rows that follow each other: what one pass over both would have given, bit for bit. Associative.
     *
     * @param part what the earlier rows add up to
     * @param next what the later ones do, evaluated from a state without a reading or counted on from the earlier ones' last
     * @return what they add up to together
     * @throws InvalidInputException if the later ones begin before the earlier ones end, or were counted on from other rows, or an
     *     error that grows with turns or amount would need to know what came before
     */
    public RowSums merged(RowSums part, RowSums next) {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(next, "next");
        requireOwn(part);
        requireOwn(next);
        Require.that(
                !hasWays || next.isCountedOn() || !part.hasReading(),
                "part that follows",
                "counted on from the earlier rows' state, as an error grows with what they turned",
                "evaluated by itself");
        RowSums merged = sums();
        merged.append(part, this);
        merged.append(next, this);
        return merged;
    }
}
