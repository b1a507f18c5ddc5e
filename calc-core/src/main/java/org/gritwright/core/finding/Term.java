package org.gritwright.core.finding;

import java.util.Locale;

/**
 * Our own words in findings: a stable id and the English for it. With these and the templates of {@link FindingCode} an
 * embedder has all there is to translate.
 */
public enum Term implements Argument {
    /** Whether the calibration is right: indicated ÷ caught − 1. */
    CALIBRATION_ERROR("calibration error"),
    /** Whether as much was laid as expected: indicated ÷ expected − 1. */
    DELIVERY_ERROR("delivery error"),

    /** Of the run-down: in the mass and in the count. */
    IN_BOTH("caught and counted"),
    /** Of the run-down: neither in the mass nor in the count. */
    IN_NEITHER("neither caught nor counted"),
    /** Of the run-down: in the mass only. */
    CAUGHT_ONLY("caught but not counted"),
    /** Of the run-down: in the count only. */
    COUNTED_ONLY("counted but not caught"),

    /** Of a discharge curve: the geometry alone. */
    PROPORTIONAL("k·g(h)"),
    /** Of a discharge curve: the geometry with a dead opening. */
    DEAD_OPENING("k·g(h − h0)"),
    /** Of a discharge curve: a table. */
    TABLE("a rising table"),

    /** What was changed: pump, valve, motor, hoses. */
    HYDRAULIC("hydraulic"),
    /** What was changed: the shaft sensor or its wheel. */
    SENSOR("sensor"),
    /** What was changed: the tires. */
    TIRE("tire"),
    /** What was changed: the material or its supplier. */
    MATERIAL("material"),

    /** Not known: how accurate a scale is. */
    SCALE_ACCURACY("the accuracy of scale " + Term.SUBJECT),
    /** Not known: by how much catches differ that should be alike. */
    SCATTER("the scatter of the catches"),
    /** Not known: the uncertainty of a count. */
    COUNT("the uncertainty of the count"),
    /** Not known: the uncertainty of a run time. */
    RUN_TIME("the uncertainty of the run time"),

    /** What may have been misread: where the gate stands. */
    GATE_SETTING("gate setting"),
    /** What may have been misread: the pulses per revolution of the shaft sensor. */
    PULSES_PER_REVOLUTION("pulses per revolution"),
    /** What may have been misread: the gear ratio. */
    GEAR_RATIO("gear ratio");

    /** Where the name goes of what a term is about. */
    static final String SUBJECT = "{of}";

    private final String words;

    Term(String words) {
        this.words = words;
    }

    /**
     * The term as it stands in documents.
     *
     * @return for example "delivery-error"; stable
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * In English.
     *
     * @return for example "delivery error"; with {@code {of}} where a name goes
     */
    @Override
    public String words() {
        return words;
    }

    /**
     * The same as in documents.
     *
     * @return the id
     */
    @Override
    public String toString() {
        return id();
    }
}
