package org.gritwright.core.fleet.assessment;

/**
 * What has to be done next for a truck, the most urgent first: what is known to be wrong or contradicts itself, then what nobody
 * has checked since something changed, then what can't be told yet, then what is still missing.
 */
public enum NextStep {
    /** The record can't be computed with. */
    FIX_RECORD("Correct what was written down", true),
    /** A finding says that data are wrong: nothing may be built on them. */
    FIND_FAULT("Find the fault, then catch again", true),
    /** The display was set for another calibration point than the catch's. */
    MATCH_DISPLAY("Set gate, material and display for the same calibration point, then catch again", true),
    /** What was written down contradicts itself or is hardly possible. */
    CHECK_ENTRIES("Check the entries that the findings name", true),
    /** A correction is proposed. */
    ENTER_CORRECTION("Enter the correction, read it back, catch again", true),
    /** The road-speed value is wrong. */
    FIX_ROAD_SPEED("Enter the measured road-speed value, drive the course again", true),
    /** The pressure that keeps a boom's rate was set with another liquid. */
    SET_BOOM_PRESSURE("Set the boom's pressure with the liquid that it sprays", true),
    /** Nozzles of a boom give too much or too little: the liquid isn't distributed as it should be, whatever the total is. */
    MEND_NOZZLES("Clean, compare or replace the nozzles that are off", true),
    /** A correction is entered and not yet proven. */
    CONFIRM_CORRECTION("Confirm the correction with an independent catch", true),
    /** The calibration is missing or out of date. */
    CALIBRATE("Calibrate", true),
    /** The last verification catch can't tell. */
    CATCH_MORE("Catch more: the last verification catch can't tell", true),
    /** The nozzles' catch can't tell whether some of them are off. */
    CATCH_NOZZLES("Catch the nozzles for longer, or read more finely: the catch can't tell whether they are off", true),
    /** The calibration is right, but what was asked for isn't delivered. */
    CHECK_DELIVERY("Check start-up, valve and speed limits", true),
    /** What is asked of the truck is more, or less, than its drive holds. */
    FIT_TO_DRIVE("Fit rates, speeds or gate to what the conveyor holds", true),
    /** The range that is known of the drive is from before a change. */
    MEASURE_RANGE("Find out which shaft speeds the conveyor holds", true),
    /** Nobody has proven the calibration. */
    VERIFY("Make a verification catch", true),
    /** Nobody has checked the road speed. */
    CHECK_ROAD_SPEED("Check the road speed over a measured course", false),
    /** Nothing. */
    NOTHING("Nothing to do", false);

    private final String words;
    private final boolean needsAttention;

    NextStep(String words, boolean needsAttention) {
        this.words = words;
        this.needsAttention = needsAttention;
    }

    /**
     * In words.
     *
     * @return an instruction
     */
    public String words() {
        return words;
    }

    /**
     * Whether the truck shouldn't go out before it is done.
     *
     * @return true for all but a road-speed check that is still open
     */
    public boolean needsAttention() {
        return needsAttention;
    }
}
