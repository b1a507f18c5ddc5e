package org.gritwright.core.telemetry;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.units.check.Require;

/**
 * Puts rows that come late in order before they are evaluated: a row waits until another one is later than it by as much as rows can be
 * late, or until too many wait. Rows that come within that time give the same sums as if they had come in order; one that comes later
 * still is {@link RowStatus#OUT_OF_ORDER}. Two rows of one time stay in the order in which they came. One for each truck and counter, for
 * one thread at a time; its memory is that of the most rows that may wait.
 */
public final class RowQueue implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final int MOST = 1_000_000;

    private final long lateness;
    private final long[] times;
    private final long[] counts;
    private final double[] settings;
    private final int[] slots;
    private final int[] modes;

    private int size;

    /**
     * An empty queue.
     *
     * @param lateness how late a row may come, 0 or more
     * @param most how many rows may wait, 1 to 1 000 000; if more would, the earliest is evaluated
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public RowQueue(Quantity<Time> lateness, int most) {
        this.lateness = (long) Times.millis(Require.notNegative("lateness", Time.class, lateness));
        Require.that(most >= 1 && most <= MOST, "number of rows that wait", "1 to " + MOST, most);
        // One more, which is there for a moment.
        this.times = new long[most + 1];
        this.counts = new long[most + 1];
        this.settings = new double[most + 1];
        this.slots = new int[most + 1];
        this.modes = new int[most + 1];
    }

    /**
     * Takes a row, and evaluates those that have waited long enough.
     *
     * @param time milliseconds since 1970-01-01T00:00Z
     * @param count the reading of the counter
     * @param setting where the gate stands, as in {@link Rows}; NaN if it isn't known
     * @param slot the place of its slot
     * @param mode a {@link RowMode#code()}
     * @param evaluator what evaluates
     * @param state where the truck's rows have got to
     * @param sums what rows are added to
     */
    public void add(
            long time,
            long count,
            double setting,
            int slot,
            int mode,
            RowEvaluator evaluator,
            RowState state,
            RowSums sums) {
        if (!evaluator.isPossible(time)) {
            // A clock that is wrong by years would make every other row due.
            evaluator.step(state, sums, time, count, setting, slot, mode);
            return;
        }
        int place = size;
        while (place > 0 && times[place - 1] > time) {
            place--;
        }
        move(place, place + 1, size - place);
        times[place] = time;
        counts[place] = count;
        settings[place] = setting;
        slots[place] = slot;
        modes[place] = mode;
        size++;
        long newest = times[size - 1];
        int due = 0;
        while (due < size && (times[due] < newest - lateness || size - due == times.length)) {
            due++;
        }
        evaluate(due, evaluator, state, sums);
    }

    /**
     * Evaluates all rows that still wait.
     *
     * @param evaluator what evaluates
     * @param state where the truck's rows have got to
     * @param sums what rows are added to
     */
    public void finish(RowEvaluator evaluator, RowState state, RowSums sums) {
        evaluate(size, evaluator, state, sums);
    }

    private void evaluate(int due, RowEvaluator evaluator, RowState state, RowSums sums) {
        for (int i = 0; i < due; i++) {
            evaluator.step(state, sums, times[i], counts[i], settings[i], slots[i], modes[i]);
        }
        size -= due;
        move(due, 0, size);
    }

    private void move(int from, int to, int rows) {
        if (rows > 0 && from != to) {
            System.arraycopy(times, from, times, to, rows);
            System.arraycopy(counts, from, counts, to, rows);
            System.arraycopy(settings, from, settings, to, rows);
            System.arraycopy(slots, from, slots, to, rows);
            System.arraycopy(modes, from, modes, to, rows);
        }
    }

    /**
     * How many rows wait.
     *
     * @return 0 or more
     */
    public int waiting() {
        return size;
    }
}
