package org.gritwright.core.conformance;

import java.util.Locale;

/** The laws that conveyor and gate types obey. The ids are those that the SPI's Javadoc names; they are stable. */
public enum Law {
    /** Id and SPI level are the same whenever asked, and the level is one of this library's. */
    STABLE_IDENTITY(true, true),
    /** Parameters are the same whenever asked, none is missing, no name occurs twice, and some values are accepted. */
    DESCRIBED_PARAMETERS(true, true),
    /** Values past a parameter's limits are refused. */
    ENFORCED_LIMITS(true, true),
    /** Accepted parameters give an answer or a named refusal, nothing else. */
    NAMED_REFUSALS(true, true),
    /** Volumes and areas are finite. */
    FINITE(true, true),
    /** Volumes and areas are 0 or more, and more than 0 at the largest opening. */
    NOT_NEGATIVE(true, true),
    /** More opening never gives less; a conveyor that no gate meters always gives the same. */
    RISING(true, true),
    /** The same parameters in other units give the same answer. */
    UNIT_INVARIANT(true, true),
    /** The same question gets the same answer, whatever was asked in between and from whatever thread. */
    DETERMINISTIC(true, true),
    /** The function survives serialization. */
    SERIALIZABLE(true, true),
    /** The limits of the apparent fill are given, and the same whenever asked. */
    PLAUSIBLE_FILL(true, false),
    /** The declared limits and the closed position can be set: the gate itself refuses none of them. */
    SETTABLE_LIMITS(false, true),
    /** At the declared closed position, and below it, nothing is open. */
    CLOSED_IS_ZERO(false, true),
    /** Parameters survive being written to a document and read again; checked where documents are known. */
    JSON_ROUND_TRIP(true, true);

    private final boolean bindsConveyors;
    private final boolean bindsGates;

    Law(boolean bindsConveyors, boolean bindsGates) {
        this.bindsConveyors = bindsConveyors;
        this.bindsGates = bindsGates;
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
}
