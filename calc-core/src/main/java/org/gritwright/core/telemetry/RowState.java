package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Where a truck's rows have got to: the last reading, and what it was evaluated with. One for each truck and counter, for one thread at
 * a time; some 150 bytes and 8 for each value of the timeline, however many rows there are. Make it with {@link RowEvaluator#start()},
 * and give it to one evaluation after the other. Another evaluator may go on from it, such as one that knows a value entered since.
 */
public final class RowState implements Serializable {
    private static final long serialVersionUID = 1L;

    boolean hasReading;
    long time;
    long count;

    /** What a count stood for in the row before, in parts; 0 if it wasn't counted. */
    long parts;

    /** What the row held that was evaluated last. */
    long amount;

    /** How much of an error that grows was there in it, in parts. */
    transient long grown;

    /** Whose what follows is: another evaluator finds it anew, and so does this one where the state was sent to. */
    transient @Nullable RowEvaluator owner;

    /** What the next row is probably evaluated with too. */
    transient @Nullable HeldArrays held;

    transient int slot;
    transient double setting;
    transient int place;
    transient double perCount;
    transient long partsPerCount;

    /** What was turned, or left the hopper, on the way of each drift; empty if there is none. */
    final double[] ways;

    RowState(int shares) {
        ways = new double[shares];
    }

    /**
     * What the row that was evaluated last holds.
     *
     * @return whole milligrams, of a liquid microliters
     */
    public long amount() {
        return amount;
    }

    /**
     * A copy that goes its own way.
     *
     * @return a state like this one
     */
    public RowState copy() {
        RowState copy = new RowState(ways.length);
        copy.hasReading = hasReading;
        copy.time = time;
        copy.count = count;
        copy.parts = parts;
        copy.amount = amount;
        copy.owner = owner;
        copy.slot = slot;
        copy.setting = setting;
        copy.held = held;
        copy.place = place;
        copy.perCount = perCount;
        copy.partsPerCount = partsPerCount;
        System.arraycopy(ways, 0, copy.ways, 0, ways.length);
        return copy;
    }

    /** The next rows are evaluated with this, at a setting that it has. */
    void use(HeldArrays now, double at, double partsPerUnit) {
        held = now;
        setting = at;
        place = now.place(at);
        perCount = now.perCount(place, at);
        partsPerCount = RowRun.whole(partsPerUnit, perCount);
    }

    @Override
    public String toString() {
        return hasReading ? count + " pulse at " + time + " ms, ways " + Arrays.toString(ways) : "no reading";
    }
}
