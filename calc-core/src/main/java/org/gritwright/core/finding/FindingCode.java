package org.gritwright.core.finding;

import static org.gritwright.core.finding.Severity.ERROR;
import static org.gritwright.core.finding.Severity.NOTE;
import static org.gritwright.core.finding.Severity.WARNING;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Everything the library can notice. The code is stable; the English sentence is a template over the finding's
 * arguments, so that an embedder can translate it.
 */
public enum FindingCode {
    /** The containers of one catch have tares that differ by more than a factor of two. */
    TARES_UNEQUAL(WARNING, "The empty containers weigh from {lowest} to {highest}: check the tares."),
    /** No container of any catch at a point has a tare. */
    NO_TARE(
            WARNING,
            "All tares at {point} are 0. If the scale was set to zero with the empty containers on it, write that down; if"
                    + " it wasn't, the containers were counted as material.",
            Slot.name("point")),
    /** The scale was not checked with a test weight on the day it was used. */
    SCALE_NOT_CHECKED(NOTE, "Scale {scale} was not checked with a test weight that day.", Slot.SCALE),
    /** The scale's check of the day missed the test weight by more than a division. */
    SCALE_CHECK_MISSED(ERROR, "Scale {scale} showed {reading} for a test weight of {testWeight} that day.", Slot.SCALE),
    /** The caught mass is only a few of the scale's divisions. */
    CAUGHT_MASS_SMALL(NOTE, "The caught mass {caught} is small against the scale's division {division}: catch more."),

    /** The apparent fill is unusual for this type of conveyor. */
    FILL_IMPLAUSIBLE(
            WARNING,
            "The apparent fill {fill} is outside the usual {lowest} to {highest}. Single slips that would make it usual:"
                    + " {slips}.",
            Slot.SLIPS),
    /** The apparent fill can't be: an input is wrong. */
    FILL_IMPOSSIBLE(
            ERROR,
            "The apparent fill {fill} is outside the possible {lowest} to {highest}: an input is wrong. Any one of"
                    + " these would make it usual: {slips}.",
            Slot.SLIPS),
    /** The apparent fill is unlike that of the other trucks of the type with the material. */
    FILL_UNLIKE_FLEET(
            WARNING,
            "The apparent fill {fill} is unlike that of the fleet's {trucks} trucks of this type with this material, whose"
                    + " median is {median}: check the entries."),
    /** What was written down of a truck would fit together if one thing were another. */
    PROBABLE_SLIPS(
            WARNING,
            "The entries don't fit together as they are; with one slip they would. Probably, the most probable first: {slips}.",
            Slot.SLIPS),
    /** Too few pulses were counted for a good ratio. */
    TOO_FEW_PULSES(NOTE, "Only {counted} counted in a catch, fewer than {wanted}: run longer."),
    /** The conveyor's own shaft turned too little for a catch that repeats, however many revolutions a sensor counted. */
    TOO_FEW_REVOLUTIONS(
            NOTE, "Only {counted} in a catch, fewer than {wanted}, in turns of the conveyor shaft: run longer."),
    /** The stated uncertainty of a count by eye is large against the count. */
    COUNT_UNCERTAIN(NOTE, "The count of {counted} is uncertain by {uncertainty}, more than {limit} of it: run longer."),
    /** The catches of one calibration disagree too much. */
    CATCHES_SCATTER(
            ERROR,
            "The catches scatter by {scatter} of their mean, more than {limit}: find out why before trusting them."),
    /** One catch of a calibration is an outlier among the others. */
    OUTLYING_CATCH(
            WARNING,
            "Catch {catch} gives {discharge}, an outlier among the {catches} catches. It is reported and not removed:"
                    + " find out why."),
    /** One of three catches stands apart, though three can hardly tell. */
    OUTLYING_OF_THREE(
            WARNING,
            "Catch {catch} gives {discharge}, while the two others nearly agree. It is reported and not removed: three"
                    + " catches can hardly ever reveal an outlier. Make more.",
            Slot.number("catches")),
    /** With one catch nothing is known about the spread. */
    SINGLE_CATCH(NOTE, "One catch only: nothing is known about the spread. Make three."),
    /** Something that makes the result uncertain is not known, and so not in its uncertainty. */
    UNCERTAINTY_INCOMPLETE(
            NOTE,
            "The stated uncertainty omits {unknown}, which was not recorded; the true uncertainty is larger.",
            Slot.UNKNOWN),
    /** Something that makes the result uncertain was not stated, and a usual value is taken for it. */
    UNCERTAINTY_ASSUMED(
            NOTE,
            "The stated uncertainty takes a usual value for {unknown}, which was not recorded (common practice, no source).",
            Slot.UNKNOWN),
    /** Calibration and verification share a scale whose span nobody tested. */
    SAME_SCALE_BLIND(
            NOTE,
            "Calibration and verification were weighed on scale {scale}: neither would notice a wrong span. Check it with"
                    + " a test weight near the load.",
            Slot.SCALE),
    /** Revolutions were counted while the conveyor was still filling. */
    CONVEYOR_NOT_PRIMED(ERROR, "The conveyor was not primed: revolutions were counted before material fell."),
    /** Mass and count of a catch don't cover the same run-down. */
    COASTING_MISMATCH(
            ERROR,
            "The run-down was {coasting}: mass and count must cover the same window.",
            Slot.term("coasting", Term.CAUGHT_ONLY, Term.COUNTED_ONLY)),

    /** The openings are too few for the model's shape to be tested. */
    TOO_FEW_OPENINGS(
            NOTE,
            "The catches are at {openings} gate openings; it takes {wanted} to test {model}. Catch at more openings.",
            Slot.MODEL),
    /** The catches don't follow the model of the discharge curve. */
    MODEL_MISFIT(
            WARNING,
            "The catches at different gate openings don't follow {model}: the chance of a misfit like this is {chance}.",
            Slot.MODEL),
    /** No curve of the model goes through the catches. */
    CURVE_IMPOSSIBLE(
            ERROR,
            "No curve {model} goes through the catches at different gate openings ({reason}): read the openings again.",
            Slot.MODEL,
            Slot.refusal("reason")),
    /** The catches miss the discharge curve by more than catches scatter. */
    CURVE_SCATTER(
            ERROR,
            "The catches at different gate openings miss {model} by {scatter}, more than {limit}: take another model, or"
                    + " find the wrong reading.",
            Slot.MODEL),
    /** One gate opening doesn't fit the others. */
    OPENING_MISFIT(
            ERROR,
            "The catches at gate opening {opening} give {caught} where the other openings give {predicted}: read the"
                    + " opening again, and catch again."),
    /** The fitted curve starts at a gate opening other than zero. */
    DEAD_OPENING_FOUND(
            NOTE,
            "By the curve, discharge starts at a gate opening of {deadOpening}; a line through zero would be wrong."),
    /** A prediction outside the openings at which material was caught. */
    GEOMETRY_ALONE(
            WARNING,
            "Gate opening {opening} is outside the caught {lowest} to {highest}: the prediction is geometry alone. Catch"
                    + " there before relying on it."),
    /** More is asked of a gate than dry grains flow through it. */
    STARVED_GATE(
            WARNING,
            "The flow of {flow} is more than dry grains run through this gate opening on their own, {limit}: the gate"
                    + " may starve the conveyor."),

    /** Less was laid than expected. */
    SHORTFALL(
            WARNING,
            "{delivered} of {expected} expected, a shortfall of {error} or {lostTime} at the target flow; one run can't"
                    + " tell a slow start from a limit."),
    /** More was laid than expected. */
    OVERRUN(WARNING, "{delivered} of {expected} expected, an overrun of {error}."),
    /** The error is outside the caller's tolerance. */
    TOLERANCE_MISSED(
            WARNING,
            "The {which} of {error} is outside the tolerance of {tolerance}: the truck lays {laid} {way}.",
            Slot.term("way", Term.TOO_MUCH, Term.TOO_LITTLE),
            Slot.term("which", Term.CALIBRATION_ERROR, Term.DELIVERY_ERROR)),
    /** The count and the display can't both be right. */
    COUNT_AND_DISPLAY_DISAGREE(
            ERROR,
            "The count times the calibration gives {byCount}, but the display showed {shown}: one of them is wrong."),
    /** Nothing was counted and nothing displayed. */
    OPEN_LOOP(
            NOTE, "Nothing was counted or displayed, so only what was caught can be compared with what was expected."),
    /** The value in force is far off, and an independent calibration agrees with the catch. */
    VALUE_OUT_OF_DATE(
            WARNING,
            "The value in force is off by {error}, and the day's calibration agrees with the catch: the value is out of"
                    + " date."),
    /** The day's calibration and the verification catches contradict each other. */
    CALIBRATION_DISAGREES(
            ERROR,
            "The day's calibration gives {calibrated}, but the verification gives {verified}: at most one is right."
                    + " Find out which."),
    /** The correction would be larger than a correction should be. */
    CORRECTION_TOO_LARGE(
            ERROR, "The calibration error of {error} is beyond {limit}: find the fault before correcting."),
    /** A corrected calibration that no independent catch has proven. */
    CORRECTION_UNCONFIRMED(WARNING, "The corrected calibration is unconfirmed until an independent catch passes."),
    /** Two verification catches with one calibration say different things. */
    CATCHES_DISAGREE(
            ERROR,
            "An earlier catch with this calibration called for a correction, but a later one passes with {error}: find"
                    + " out which is right."),
    /** A catch was made at another setting than the one that the display was set for. */
    DISPLAY_SET_FOR_ANOTHER_SETTING(
            WARNING,
            "The display was set for gate {set}, but the catch of {at} was made at {caught}: it proves neither value.",
            Slot.time("at")),
    /** A catch was made with another material than the one that the display was set for. */
    DISPLAY_SET_FOR_ANOTHER_MATERIAL(
            WARNING,
            "The display was set for {set}, but the catch of {at} was made with {caught}: it proves neither value.",
            Slot.time("at"),
            Slot.name("set"),
            Slot.name("caught")),
    /** A catch was made with a value that nobody entered for its point. */
    OTHER_VALUE_IN_FORCE(
            WARNING,
            "The value in force in the catch of {at} was {caught}, but {listed} is listed for the truck: find out which the"
                    + " display holds.",
            Slot.time("at")),
    /** A catch was made long before or after the day that it is written down for. */
    CATCH_OF_ANOTHER_DAY(
            WARNING,
            "The catch of {at} is far from the day that it is written down for, {day}: check its date.",
            Slot.time("at"),
            Slot.date("day")),
    /** A catch was made before the value in force was entered. */
    CATCH_BEFORE_ENTRY(
            WARNING,
            "The catch of {at} was made before the value in force was entered, {since}: it says nothing about that"
                    + " value.",
            Slot.time("at"),
            Slot.date("since")),
    /** A catch alone in the night that 12 hours would put beside others. */
    CATCH_HALF_A_DAY_OFF(
            WARNING,
            "The catch of {at} was made in the night, but at {instead} it would be next to that of {neighbor}: its time is"
                    + " probably 12 hours off.",
            Slot.time("at"),
            Slot.time("instead"),
            Slot.time("neighbor")),
    /** A catch was made with a value before the calibration that gave it. */
    CATCH_BEFORE_CALIBRATION(
            WARNING,
            "The catch of {at} was made with {value}, which no list has and the calibration catches from {calibrated} on"
                    + " gave: one of the times is wrong.",
            Slot.time("at"),
            Slot.time("calibrated")),
    /** The counter went on from one catch to another that is said to be earlier. */
    COUNTER_RUNS_BACKWARDS(
            WARNING,
            "The counter stood at {reading} after the catch of {first} and before that of {second}: the times run"
                    + " backwards, and one of them is wrong.",
            Slot.time("first"),
            Slot.time("second")),
    /** Two catches of a truck have the same numbers. */
    TICKET_ENTERED_TWICE(
            WARNING,
            "The catches of {first} and {second} have the same masses and the same count: one ticket was probably entered"
                    + " twice.",
            Slot.time("first"),
            Slot.time("second")),
    /** Catches of two trucks have the same numbers. */
    TICKET_OF_TWO_TRUCKS(
            WARNING,
            "The catch of {at} has the same masses and the same count as that of {second} on truck {truck}: one ticket was"
                    + " probably entered twice.",
            Slot.time("at"),
            Slot.time("second"),
            Slot.name("truck")),
    /** What was delivered fits a target rate in another unit. */
    RATE_IN_OTHER_UNIT(
            WARNING,
            "In the catch of {at}, {delivered} fit a target rate of {instead}, not {rate}: the rate's unit was probably"
                    + " mistaken, kilograms per kilometer for pounds per mile or the other way round.",
            Slot.time("at")),
    /** What was delivered fits a run time in minutes and seconds. */
    RUN_TIME_IN_MINUTES(
            WARNING,
            "In the catch of {at}, {delivered} fit a run time of {instead}, not {runTime}: minutes and seconds were"
                    + " probably written as seconds, unless a limit of the drive explains the shortfall.",
            Slot.time("at")),
    /** Two settings are so close that one of them is probably a slip. */
    SETTINGS_NEARLY_THE_SAME(
            WARNING,
            "Gate settings {first} and {second} are almost the same but count as two: if they are meant to be one,"
                    + " write both the same way."),
    /** The display holds something other than the value that was to be entered. */
    READ_BACK_DIFFERS(ERROR, "The display reads back {readBack}, but {toEnter} was to be entered."),
    /** Two run times show mass lost at each start. */
    START_UP_LOSS(WARNING, "Each start loses about {lostMass} or {lostTime}; the steady flow is judged separately."),
    /** Two run times show a steady flow that is off target. */
    STEADY_FLOW_OFF(WARNING, "The steady flow is off the target flow by {error}."),

    /** The road-speed value in force is outside the tolerance. */
    ROAD_SPEED_OFF(
            WARNING,
            "The road-speed value {inForce} is off by {error}; measured {measured}. The truck lays {effect} {way}.",
            Slot.term("way", Term.TOO_MUCH, Term.TOO_LITTLE)),
    /** One run over the course differs from the others. */
    ROAD_RUN_DIFFERS(
            WARNING,
            "Run {run} over the course counted {pulses}, but by the other runs it would be about {others}: probably"
                    + " {mistake}.",
            Slot.term("mistake", Term.DIGITS_SWAPPED, Term.DIGIT_TOO_MANY, Term.DIGIT_DROPPED, Term.WRONG_READING)),
    /** The runs over the course differ, and none of them alone. */
    ROAD_RUNS_DISAGREE(
            WARNING,
            "The runs over the course disagree, from {lowest} to {highest}, and nobody can tell which is right: check the"
                    + " entries, or drive the course again."),
    /** The runs would agree with the value in force if the course were in another unit. */
    COURSE_IN_OTHER_UNIT(
            WARNING,
            "The course was probably {instead}, not {course}, or the road-speed value {inForce} is in another unit: the"
                    + " runs miss it by a factor of {factor}."),
    /** The runs would agree with the value in force but for a factor that a slip makes. */
    ROAD_SPEED_BY_FACTOR(
            WARNING,
            "The runs give {measured} where {inForce} is in force, a factor of {factor}: look for a slip in course, pulses"
                    + " or value before entering anything."),
    /** No tire and sensor make so many or so few pulses. */
    ROAD_PULSES_IMPLAUSIBLE(
            WARNING,
            "The runs give one pulse every {distance}, outside the plausible {lowest} to {highest}: check course and"
                    + " pulses."),
    /** Nobody has checked the road-speed value. */
    ROAD_SPEED_NOT_CHECKED(NOTE, "The road-speed value was not checked."),
    /** The tires were changed after the road-speed value was last checked. */
    ROAD_SPEED_BEFORE_CHANGE(
            WARNING,
            "The road-speed value was not checked since the tires were changed on {changed}.",
            Slot.date("changed")),
    /** The calibration was made for an earlier season. */
    CALIBRATION_BEFORE_SEASON(
            WARNING,
            "The calibration of {calibrated} is older than the season that starts {season}.",
            Slot.date("calibrated"),
            Slot.date("season")),
    /** Something that the calibration depends on was changed after it. */
    CALIBRATION_BEFORE_CHANGE(
            WARNING,
            "The calibration of {calibrated} is older than the {change} change of {changed}.",
            Slot.date("calibrated"),
            Slot.term("change", Term.HYDRAULIC, Term.SENSOR, Term.TIRE, Term.MATERIAL),
            Slot.date("changed"));

    private final Severity severity;
    private final String template;

    @SuppressWarnings("ImmutableEnumChecker") // a copy that nobody can change
    private final List<Slot> slots;

    /** Takes those places of the template for numbers that no slot is given for. */
    FindingCode(Severity severity, String template, Slot... others) {
        this.severity = severity;
        this.template = template;
        Map<String, Slot> byName = new TreeMap<>();
        Finding.PLACE
                .matcher(template)
                .results()
                .map(place -> place.group(1))
                .forEach(name -> byName.put(name, Slot.number(name)));
        Stream.of(others).forEach(slot -> byName.put(slot.name(), slot));
        this.slots = List.copyOf(byName.values());
    }

    /**
     * How much it matters.
     *
     * @return the severity
     */
    public Severity severity() {
        return severity;
    }

    /**
     * Whether it says that the data are wrong, so that no correction may be built on them. All errors do but those of the
     * correction itself.
     *
     * @return true if no correction is proposed while it stands
     */
    public boolean doubtsData() {
        return severity == ERROR && this != CORRECTION_TOO_LARGE && this != READ_BACK_DIFFERS;
    }

    /**
     * The code as it stands in documents.
     *
     * @return for example "fill-impossible"; stable
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The arguments that a finding of this code has, all of them and no others.
     *
     * @return their names and kinds, in the order of the names
     */
    public List<Slot> slots() {
        return slots;
    }

    /**
     * The English sentence with {@code {name}} where an argument of the finding goes.
     *
     * @return the template
     */
    public String template() {
        return template;
    }
}
