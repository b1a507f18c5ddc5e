package org.gritwright.core.conformance;

import java.util.Locale;

/** The laws that types of conveyors, gates, pumps and flow meters obey. The ids are those that the SPI's Javadoc names; they are stable. */
public enum Law {
    /** Id and SPI level are the same whenever asked, and the level is one of this library's. */
    STABLE_IDENTITY(true, true, true),
    /** Parameters are the same whenever asked, none is missing, no name occurs twice, and some values are accepted. */
    DESCRIBED_PARAMETERS(true, true, true),
    /** Values past a parameter's limits are refused. */
    ENFORCED_LIMITS(true, true, true),
    /** Accepted parameters give an answer or a named refusal, nothing else. */
    NAMED_REFUSALS(true, true, true),
    /** Volumes and areas are finite. */
    FINITE(true, true, true),
    /** Volumes and areas are 0 or more, and more than 0 at the largest opening. */
    NOT_NEGATIVE(true, true, false),
    /** Volumes per revolution of a pump and per pulse of a flow meter are more than 0. */
    POSITIVE(false, false, true),
    /**
     * More opening never gives less, and a conveyor that no gate meters always gives the same; a higher speed never gives less flow,
     * and more flow never fewer pulses per second.
     */
    RISING(true, true, true),
    /** The same parameters in other units give the same answer. */
    UNIT_INVARIANT(true, true, true),
    /** The same question gets the same answer, whatever was asked in between and from whatever thread. */
    DETERMINISTIC(true, true, true),
    /** The function survives serialization. */
    SERIALIZABLE(true, true, true),
    /** The limits of the apparent fill, or of what stands for it, are given, and the same whenever asked. */
    PLAUSIBLE_FILL(true, false, true),
    /** The declared limits, and a gate's closed position, can be set: the function itself refuses none of them. */
    SETTABLE_LIMITS(false, true, true),
    /** At the declared closed position, and below it, nothing is open. */
    CLOSED_IS_ZERO(false, true, false),
    /** Parameters survive being written to a document and read again; checked where documents are known. */
    JSON_ROUND_TRIP(true, true, true);

    private final boolean bindsConveyors;
    private final boolean bindsGates;
    private final boolean bindsLiquidTypes;

    Law(boolean bindsConveyors, boolean bindsGates, boolean bindsLiquidTypes) {
        this.bindsConveyors = bindsConveyors;
        this.bindsGates = bindsGates;
        this.bindsLiquidTypes = bindsLiquidTypes;
    }

    /**
     * The id.
     *
     * @return for example "closed-is-zero"
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * Whether it binds conveyor types.
     *
     * @return true if it does
     */
    public boolean bindsConveyors() {
        return bindsConveyors;
    }

    /**
     * Whether it binds gate types.
     *
     * @return true if it does
     */
    public boolean bindsGates() {
        return bindsGates;
    }

    /**
     * Whether it binds pump types.
     *
     * @return true if it does
     */
    public boolean bindsPumps() {
        return bindsLiquidTypes;
    }

    /**
     * Whether it binds flow-meter types.
     *
     * @return true if it does
     */
    public boolean bindsFlowMeters() {
        return bindsLiquidTypes;
    }
}
