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

    /** Of a pump: as much per revolution at all speeds. */
    CONSTANT_VOLUME("a constant volume per revolution"),
    /** Of a pump: a flow that leaks back, whatever the speed. */
    LEAK_FLOW("a constant leak flow"),

    /** What was changed: pump, valve, motor, hoses. */
    HYDRAULIC("hydraulic"),
    /** What was changed: the shaft sensor or its wheel. */
    SENSOR("sensor"),
    /** What was changed: the tires. */
    TIRE("tire"),
    /** What was changed: the material or its supplier. */
    MATERIAL("material"),
    /** What was changed: the gate, its scale or its marks. */
    GATE("gate"),
    /** What was changed: the conveyor: its chain, belt, auger or roller, or its gears. */
    CONVEYOR("conveyor"),

    /** Not known: how accurate a scale is. */
    SCALE_ACCURACY("the accuracy of scale " + Term.SUBJECT),
    /** Not known: how far off the marks of a graduated container may be. */
    CONTAINER_TOLERANCE("the tolerance of container " + Term.SUBJECT),
    /** Not known: by how much catches differ that should be alike. */
    SCATTER("the scatter of the catches"),
    /** Not known: the uncertainty of a count. */
    COUNT("the uncertainty of the count"),
    /** Not known: the uncertainty of a run time. */
    RUN_TIME("the uncertainty of the run time"),

    /** What may have been misread: where the gate stands. */
    GATE_SETTING("gate opening"),
    /** What may have been misread: the pulses per revolution of the shaft sensor. */
    PULSES_PER_REVOLUTION("pulses per revolution"),
    /** What may have been misread: the gear ratio. */
    GEAR_RATIO("gear ratio"),
    /** What may have been misread: the pulses per volume of a flow meter, its K factor. */
    PULSES_PER_VOLUME("pulses per volume"),
    /** What may have been misread: a volume that was caught. */
    CAUGHT_VOLUME("caught volume"),
    /** What may have been misread: a parameter of the conveyor. */
    PARAMETER(Term.SUBJECT),
    /** What may have been misread: how dense the loose material is. */
    DENSITY("loose bulk density"),
    /** What may have been misread: a full container. */
    GROSS_MASS("gross mass of " + Term.SUBJECT),
    /** What may have been misread: all masses of catches. */
    CAUGHT_MASS("caught mass"),
    /** What may have been misread: the empty containers. */
    TARE("tare"),
    /** What may have been misread: how far the shaft turned. */
    REVOLUTIONS("count"),
    /** What may have been mixed up: the ticket of a weighing. */
    TICKET("ticket"),
    /** What may have been misread: the mass on the display. */
    DISPLAYED_MASS("displayed mass"),
    /** What may have been misread: the value with which the display counts. */
    VALUE_IN_FORCE("value in force"),
    /** What may have been misread: what a catch was made for. */
    VERIFICATION("verification"),

    /** What a truck lays by a wrong value: more than is asked for. */
    TOO_MUCH("too much"),
    /** What a truck lays by a wrong value: less than is asked for. */
    TOO_LITTLE("too little"),

    /** How a count may have been written down wrongly: with two neighboring digits in the wrong order. */
    DIGITS_SWAPPED("two digits swapped"),
    /** How a count may have been written down wrongly: with a digit that doesn't belong there. */
    DIGIT_TOO_MANY("a digit too many"),
    /** How a count may have been written down wrongly: without one of its digits. */
    DIGIT_DROPPED("a dropped digit"),
    /** How a count may be wrong, where no slip of a digit explains it. */
    WRONG_READING("a wrong reading or another course"),

    /** From which side commands were reached: from below. */
    RISING("rising"),
    /** From which side commands were reached: from above. */
    FALLING("falling"),

    /** At work: the material on the conveyor. */
    LOAD("the load on the conveyor"),
    /** At work: the engine at the lowest speed it works at. */
    LOWEST_ENGINE_SPEED("the engine at its lowest working speed"),
    /** At work: the spinner. */
    SPINNER("the spinner"),
    /** At work: the prewet pump. */
    PREWET("the prewet pump"),
    /** At work: the plow. */
    PLOW("the plow"),

    /** Where a working range comes from: a person's eye. */
    BY_EYE("by eye"),
    /** Where a working range comes from: the maker. */
    FROM_MAKER("by the maker");

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
