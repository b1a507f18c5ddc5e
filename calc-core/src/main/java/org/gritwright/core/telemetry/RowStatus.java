package org.gritwright.core.telemetry;

import java.util.List;
import java.util.Locale;
import org.gritwright.units.InvalidInputException;

/**
 * What became of a row. A row that isn't counted holds 0, and its status decides; what it may have turned is kept in
 * {@link RowSums#unattributed()} as far as its readings tell.
 */
public enum RowStatus {
    /** Counted, by the controller: laid on the road. */
    LAID(0, true, true),
    /** Nothing turned since the row before. */
    STANDING(1, true, true),
    /** Counted, the conveyor set by hand: laid on the road. */
    LAID_BY_HAND(2, true, true),
    /** Counted, a moment of more asked for by hand: laid on the road. */
    BLAST(3, true, true),
    /** Counted, emptied in the yard: it left the hopper, not for the road. */
    UNLOADED(4, true, false),
    /** Counted while spreading was switched off: it left the hopper, not on purpose. */
    PASSED(5, true, false),
    /** Turned with nothing to discharge; the row holds 0. */
    TURNED_EMPTY(6, true, false),
    /** The first reading: there is nothing to count from. */
    FIRST(7, false, false),
    /** A reading that can't be: negative, at or above where the counter rolls over, or greater than can be reckoned with exactly. */
    IMPOSSIBLE_READING(8, false, false),
    /** Earlier than the row before: out of order, or the clock went back. The row before stays what the next is counted from. */
    OUT_OF_ORDER(9, false, false),
    /** The same time and reading as the row before. */
    DUPLICATE(10, false, false),
    /** A lower reading of a counter that doesn't roll over, or couldn't have in the time: it was reset, or its controller restarted. */
    RESTARTED(11, false, false),
    /** A lower reading that rolling over and a restart explain alike. */
    ROLLED_OVER_OR_RESTARTED(12, false, false),
    /** More than the shaft can turn in the time. */
    LEAP(13, false, false),
    /** Too long since the row before: nobody knows how it ran meanwhile, and a counter may have rolled over unseen. */
    GAP(14, false, false),
    /** No calibration was in force in that slot at that time. */
    NO_CALIBRATION(15, false, false),
    /** A calibration was in force, but for other settings. */
    NO_SUCH_SETTING(16, false, false),
    /** The slot isn't one that the evaluator knows. */
    UNKNOWN_SLOT(17, false, false),
    /** The mode isn't one of {@link RowMode}. */
    UNKNOWN_MODE(18, false, false),
    /** A time before or after those that rows can have: a clock that was wrong by days or years. */
    IMPOSSIBLE_TIME(19, false, false);

    private static final List<RowStatus> BY_CODE = List.of(values());

    private final byte code;
    private final boolean counted;
    private final boolean onRoad;

    RowStatus(int code, boolean counted, boolean onRoad) {
        this.code = (byte) code;
        this.counted = counted;
        this.onRoad = onRoad;
    }

    /**
     * The number in a column of statuses.
     *
     * @return 0 to 19, the same in every version
     */
    public byte code() {
        return code;
    }

    /**
     * Whether the row's turns are counted as what they were.
     *
     * @return false if nobody can say what left the hopper
     */
    public boolean isCounted() {
        return counted;
    }

    /**
     * Whether what the row holds was laid on the road.
     *
     * @return true for what was laid, and for a truck that stood
     */
    public boolean isOnRoad() {
        return onRoad;
    }

    /**
     * The status in words.
     *
     * @return for example "laid by hand"
     */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Whether the next row is counted from the row before this one, as if this one weren't there. */
    boolean isPassedOver() {
        return this == OUT_OF_ORDER || this == DUPLICATE || this == IMPOSSIBLE_READING || this == IMPOSSIBLE_TIME;
    }

    /**
     * The status with a number.
     *
     * @param code a number from a column of statuses
     * @return the status
     * @throws InvalidInputException if there is none with it
     */
    public static RowStatus of(int code) {
        if (code < 0 || code >= BY_CODE.size()) {
            throw new InvalidInputException("row status", "0 to " + (BY_CODE.size() - 1), String.valueOf(code));
        }
        return BY_CODE.get(code);
    }

    /**
     * How many there are.
     *
     * @return one more than the greatest code
     */
    static int count() {
        return BY_CODE.size();
    }
}
