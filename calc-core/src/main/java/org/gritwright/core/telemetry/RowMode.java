package org.gritwright.core.telemetry;

import java.util.List;

/** What the controls were set to in a row: whether what left the hopper was meant for the road. */
public enum RowMode {
    /** The controller doses by road speed. */
    AUTOMATIC(0, RowStatus.LAID),
    /** The driver sets the conveyor by hand. */
    MANUAL(1, RowStatus.LAID_BY_HAND),
    /** The driver asks for more for a moment, at a crossing for example. */
    BLAST(2, RowStatus.BLAST),
    /** The hopper is emptied in the yard: it leaves the hopper, and isn't laid. */
    UNLOADING(3, RowStatus.UNLOADED),
    /** Spreading is switched off; what turns nevertheless isn't laid on purpose. */
    PASS(4, RowStatus.PASSED),
    /** The hopper is empty or the material bridges: the conveyor turns, and nothing leaves. */
    EMPTY(5, RowStatus.TURNED_EMPTY);

    private static final List<RowMode> BY_CODE = List.of(values());

    private final int code;
    private final RowStatus counted;

    RowMode(int code, RowStatus counted) {
        this.code = code;
        this.counted = counted;
    }

    /**
     * The number in a column of modes.
     *
     * @return 0 to 5, the same in every version
     */
    public int code() {
        return code;
    }

    static int count() {
        return BY_CODE.size();
    }

    static RowMode of(int code) {
        return BY_CODE.get(code);
    }

    /**
     * The status of a row in which it turned.
     *
     * @return the status
     */
    RowStatus counted() {
        return counted;
    }
}
