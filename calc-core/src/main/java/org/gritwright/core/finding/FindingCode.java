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
 * arguments, so that an embedder can translate it. The templates stand in {@code findings.properties} beside this class, by
 * the codes' ids.
 */
public enum FindingCode {
    /** The containers of one catch have tares that differ by more than a factor of two. */
    TARES_UNEQUAL(WARNING),
    /** One container has tares that differ by more than a factor of three from catch to catch. */
    TARES_DIFFER(WARNING, Slot.name("container"), Slot.time("first"), Slot.time("second")),
    /** No container of any catch at a point has a tare. */
    NO_TARE(WARNING, Slot.name("point")),
    /** The scale was not checked with a test weight on the day it was used. */
    SCALE_NOT_CHECKED(NOTE, Slot.SCALE),
    /** The scale's check of the day missed the test weight by more than a division. */
    SCALE_CHECK_MISSED(ERROR, Slot.SCALE),
    /** The caught mass is only a few of the scale's divisions. */
    CAUGHT_MASS_SMALL(NOTE),
    /** The caught volume is only a few of the container's divisions. */
    CAUGHT_VOLUME_SMALL(NOTE),
    /** A pump delivers an unusual part of its displacement. */
    PUMPED_VOLUME_IMPLAUSIBLE(WARNING, Slot.SLIPS),
    /** A pump delivers a part of its displacement that can't be. */
    PUMPED_VOLUME_IMPOSSIBLE(ERROR, Slot.SLIPS),
    /** A flow meter's pulse stands for an unusual part of the volume that it is rated for. */
    METERED_VOLUME_IMPLAUSIBLE(WARNING, Slot.SLIPS),
    /** A flow meter's pulse stands for a part of its rated volume that can't be. */
    METERED_VOLUME_IMPOSSIBLE(ERROR, Slot.SLIPS),
    /** A liquid flowed slower or faster than the flow meter is good for. */
    FLOW_OUTSIDE_METER(WARNING),
    /** A pump turned slower or faster than its volume is known for. */
    SPEED_OUTSIDE_PUMP(WARNING),
    /** Grains and the liquid that wets them lay together more or less dry chemical than the tolerance allows. */
    PREWET_TOTAL_OFF(WARNING, Slot.name("truck")),
    /** The liquid is so small a part of the dry chemical that the total says nothing about it. */
    PREWET_SMALL_PART(NOTE, Slot.name("truck")),
    /** What was delivered fits a prewet rate by another ton. */
    PREWET_BY_OTHER_TON(WARNING, Slot.time("at")),
    /** A weighed liquid became a volume by a density that isn't the material's. */
    LIQUID_DENSITY_DIFFERS(ERROR, Slot.MATERIAL),

    /** A row of pans across the road doesn't cover the lane. */
    PANS_SHORT_OF_LANE(WARNING),
    /** The outermost pan of a row caught much: the pattern is wider than the row. */
    PATTERN_BEYOND_PANS(WARNING),
    /** One pan of a row caught other than its neighbors. */
    PAN_STANDS_OUT(WARNING),
    /** Few pans lie within the treated width. */
    FEW_PANS(NOTE),
    /** The pans account for much less or more than was asked of the truck. */
    PAN_RECOVERY_OFF(WARNING),

    /** A nozzle of a boom gives other than the others. */
    NOZZLE_OFF_AVERAGE(WARNING, Slot.name("section"), Slot.name("nozzle")),
    /** A nozzle of a boom gives other than a new one. */
    NOZZLE_OFF_NEW(WARNING, Slot.name("section"), Slot.name("nozzle")),
    /** What a nozzle gave is too near to a limit, or too roughly measured, to tell. */
    NOZZLE_UNDECIDED(NOTE, Slot.name("section"), Slot.name("nozzle")),
    /** No more than half of a boom's nozzles agree with each other. */
    NOZZLES_DISAGREE(WARNING),
    /** All nozzles together give other than rate and speed need. */
    BOOM_RATE_OFF(WARNING),
    /** A boom whose rate is kept by pressure was set up with a liquid of another density. */
    BOOM_LIQUID_CHANGED(WARNING),
    /** Which of several liquids runs through a boom whose rate is kept by pressure isn't known. */
    BOOM_LIQUID_UNCLEAR(NOTE, Slot.name("first"), Slot.name("second")),
    /** A solution holds more of its salt than the eutectic. */
    SOLUTION_BEYOND_EUTECTIC(WARNING),
    /** On which side of the eutectic a solution is can't be told. */
    EUTECTIC_SIDE_UNDECIDED(WARNING),
    /** The solution in a tank has another density than is stated of the liquid. */
    TANK_DENSITY_DIFFERS(WARNING, Slot.name("tank"), Slot.MATERIAL),
    /** The solution in a tank is shown to be weaker or stronger than is wanted. */
    TANK_OFF_TARGET(WARNING, Slot.name("tank")),

    /** The apparent fill is unusual for this type of conveyor. */
    FILL_IMPLAUSIBLE(WARNING, Slot.SLIPS),
    /** The apparent fill can't be: an input is wrong. */
    FILL_IMPOSSIBLE(ERROR, Slot.SLIPS),
    /** The apparent fill is unlike that of the other trucks of the type with the material. */
    FILL_UNLIKE_FLEET(WARNING),
    /** What was written down of a truck would fit together if one thing were another. */
    PROBABLE_SLIPS(WARNING, Slot.SLIPS),
    /** Too few pulses were counted for a good ratio. */
    TOO_FEW_PULSES(NOTE),
    /** The conveyor's own shaft turned too little for a catch that repeats, however many revolutions a sensor counted. */
    TOO_FEW_REVOLUTIONS(NOTE),
    /** The stated uncertainty of a count by eye is large against the count. */
    COUNT_UNCERTAIN(NOTE),
    /** The catches of one calibration disagree too much. */
    CATCHES_SCATTER(ERROR),
    /** One catch of a calibration is an outlier among the others. */
    OUTLYING_CATCH(WARNING),
    /** One of three catches stands apart, though three can hardly tell. */
    OUTLYING_OF_THREE(WARNING, Slot.number("catches")),
    /** With one catch nothing is known about the spread. */
    SINGLE_CATCH(NOTE),
    /** Something that makes the result uncertain is not known, and so not in its uncertainty. */
    UNCERTAINTY_INCOMPLETE(NOTE, Slot.UNKNOWN),
    /** Something that makes the result uncertain was not stated, and a usual value is taken for it. */
    UNCERTAINTY_ASSUMED(NOTE, Slot.UNKNOWN),
    /** Calibration and verification share a scale whose span nobody tested. */
    SAME_SCALE_BLIND(NOTE, Slot.SCALE),
    /** Calibration and verification share a graduated container of unknown tolerance. */
    SAME_CONTAINER_BLIND(NOTE, Slot.CONTAINER),
    /** Revolutions were counted while the conveyor was still filling. */
    CONVEYOR_NOT_PRIMED(ERROR),
    /** Mass and count of a catch don't cover the same run-down. */
    COASTING_MISMATCH(ERROR, Slot.term("coasting", Term.CAUGHT_ONLY, Term.COUNTED_ONLY)),
    /** The hydraulic oil was cold in a catch. */
    OIL_COLD(NOTE),
    /** The hopper was nearly empty in a catch. */
    HOPPER_NEARLY_EMPTY(NOTE),

    /** The openings are too few for the model's shape to be tested. */
    TOO_FEW_OPENINGS(NOTE, Slot.MODEL),
    /** The catches don't follow the model of the discharge curve. */
    MODEL_MISFIT(WARNING, Slot.MODEL),
    /** No curve of the model goes through the catches. */
    CURVE_IMPOSSIBLE(ERROR, Slot.MODEL, Slot.refusal("reason")),
    /** The catches miss the discharge curve by more than catches scatter. */
    CURVE_SCATTER(ERROR, Slot.MODEL),
    /** One gate opening doesn't fit the others. */
    OPENING_MISFIT(ERROR),
    /** The fitted curve starts at a gate opening other than zero. */
    DEAD_OPENING_FOUND(NOTE),
    /** A prediction outside the openings at which material was caught. */
    GEOMETRY_ALONE(WARNING),
    /** The shaft speeds of a pump's catches are too few, or too near each other, to tell a leak. */
    LEAK_UNTESTED(NOTE),
    /** A pump gives less per revolution the slower it turns. */
    LEAK_FOUND(NOTE),
    /** The catches at several shaft speeds don't follow the model of a pump. */
    SPEED_MISFIT(WARNING, Slot.term("model", Term.CONSTANT_VOLUME, Term.LEAK_FLOW)),
    /** More is asked of a gate than dry grains flow through it. */
    STARVED_GATE(WARNING),

    /** Less was laid than expected. */
    SHORTFALL(WARNING),
    /** More was laid than expected. */
    OVERRUN(WARNING),
    /** The error is outside the caller's tolerance. */
    TOLERANCE_MISSED(
            WARNING,
            Slot.term("way", Term.TOO_MUCH, Term.TOO_LITTLE),
            Slot.term("which", Term.CALIBRATION_ERROR, Term.DELIVERY_ERROR)),
    /** The count and the display can't both be right. */
    COUNT_AND_DISPLAY_DISAGREE(ERROR),
    /** Nothing was counted and nothing displayed. */
    OPEN_LOOP(NOTE),
    /** The value in force is far off, and an independent calibration agrees with the catch. */
    VALUE_OUT_OF_DATE(WARNING),
    /** The day's calibration and the verification catches contradict each other. */
    CALIBRATION_DISAGREES(ERROR),
    /** The correction would be larger than a correction should be. */
    CORRECTION_TOO_LARGE(ERROR),
    /** A corrected calibration that no independent catch has proven. */
    CORRECTION_UNCONFIRMED(WARNING),
    /** Two verification catches with one calibration say different things. */
    CATCHES_DISAGREE(ERROR),
    /** A catch was made at another setting than the one that the display was set for. */
    DISPLAY_SET_FOR_ANOTHER_SETTING(WARNING, Slot.time("at")),
    /** A catch was made with another material than the one that the display was set for. */
    DISPLAY_SET_FOR_ANOTHER_MATERIAL(WARNING, Slot.time("at"), Slot.name("set"), Slot.name("caught")),
    /** A catch was made with a value that nobody entered for its point. */
    OTHER_VALUE_IN_FORCE(WARNING, Slot.time("at")),
    /** A catch was made long before or after the day that it is written down for. */
    CATCH_OF_ANOTHER_DAY(WARNING, Slot.time("at"), Slot.date("day")),
    /** A catch was made before the value in force was entered. */
    CATCH_BEFORE_ENTRY(WARNING, Slot.time("at"), Slot.date("since")),
    /** A catch alone in the night that 12 hours would put beside others. */
    CATCH_HALF_A_DAY_OFF(WARNING, Slot.time("at"), Slot.time("instead"), Slot.time("neighbor")),
    /** A catch was made with a value before the calibration that gave it. */
    CATCH_BEFORE_CALIBRATION(WARNING, Slot.time("at"), Slot.time("calibrated")),
    /** The counter went on from one catch to another that is said to be earlier. */
    COUNTER_RUNS_BACKWARDS(WARNING, Slot.time("first"), Slot.time("second")),
    /** A catch begins at a counter reading that another had already passed. */
    COUNTS_OVERLAP(WARNING, Slot.time("first"), Slot.time("second")),
    /** Two catches are nearer in time than their runs lasted. */
    RUNS_OVERLAP(WARNING, Slot.time("first"), Slot.time("second")),
    /** Two catches of a truck have the same numbers. */
    TICKET_ENTERED_TWICE(WARNING, Slot.time("first"), Slot.time("second")),
    /** Catches of two trucks have the same numbers. */
    TICKET_OF_TWO_TRUCKS(WARNING, Slot.time("at"), Slot.time("second"), Slot.name("truck")),
    /** What was delivered fits a target rate in another unit. */
    RATE_IN_OTHER_UNIT(WARNING, Slot.time("at")),
    /** What was delivered fits a run time in minutes and seconds. */
    RUN_TIME_IN_MINUTES(WARNING, Slot.time("at")),
    /** Two settings are so close that one of them is probably a slip. */
    SETTINGS_NEARLY_THE_SAME(WARNING),
    /** The display holds something other than the value that was to be entered. */
    READ_BACK_DIFFERS(ERROR),
    /** Two run times show mass lost at each start. */
    START_UP_LOSS(WARNING),
    /** Two run times show a steady flow that is off target. */
    STEADY_FLOW_OFF(WARNING),

    /** The road-speed value in force is outside the tolerance. */
    ROAD_SPEED_OFF(WARNING, Slot.term("way", Term.TOO_MUCH, Term.TOO_LITTLE)),
    /** One run over the course differs from the others. */
    ROAD_RUN_DIFFERS(
            WARNING,
            Slot.term("mistake", Term.DIGITS_SWAPPED, Term.DIGIT_TOO_MANY, Term.DIGIT_DROPPED, Term.WRONG_READING)),
    /** The runs over the course differ, and none of them alone. */
    ROAD_RUNS_DISAGREE(WARNING),
    /** The runs would agree with the value in force if the course were in another unit. */
    COURSE_IN_OTHER_UNIT(WARNING),
    /** The runs would agree with the value in force but for a factor that a slip makes. */
    ROAD_SPEED_BY_FACTOR(WARNING),
    /** No tire and sensor make so many or so few pulses. */
    ROAD_PULSES_IMPLAUSIBLE(WARNING),
    /** Nobody has checked the road-speed value. */
    ROAD_SPEED_NOT_CHECKED(NOTE),
    /** The tires were changed after the road-speed value was last checked. */
    ROAD_SPEED_BEFORE_CHANGE(WARNING, Slot.date("changed")),
    /** The calibration was made for an earlier season. */
    CALIBRATION_BEFORE_SEASON(WARNING, Slot.date("calibrated"), Slot.date("season")),
    /** Something that the calibration depends on was changed after it. */
    CALIBRATION_BEFORE_CHANGE(
            WARNING,
            Slot.date("calibrated"),
            Slot.term("change", Term.HYDRAULIC, Term.SENSOR, Term.TIRE, Term.MATERIAL, Term.GATE, Term.CONVEYOR),
            Slot.date("changed")),

    /** The shaft turned at few commands in a direction. */
    DRIVE_POINTS_FEW(NOTE, Slot.DIRECTION),
    /** Commands are left to try between the last at rest and the first at which the shaft turned. */
    DRIVE_THRESHOLD_OPEN(NOTE, Slot.DIRECTION),
    /** The shaft turned slower at a higher command, by more than readings scatter. */
    DRIVE_REVERSAL(WARNING, Slot.DIRECTION),
    /** Two speeds at one command are so far apart that one is probably a slip. */
    DRIVE_READINGS_APART(WARNING),
    /** The speed leaps at the last command that was measured, as it does nowhere else. */
    DRIVE_SPEED_LEAPS(WARNING, Slot.DIRECTION),
    /** The shaft doesn't turn steadily at a command. */
    DRIVE_JERKY(WARNING, Slot.DIRECTION),
    /** The drive was measured in one direction only. */
    DRIVE_ONE_DIRECTION(NOTE, Slot.DIRECTION),
    /** No command was measured twice, so nothing is known of how speeds scatter. */
    DRIVE_NOT_REPEATED(NOTE),
    /** The speed at one command moves with the temperature of the oil. */
    DRIVE_OIL_DRIFT(WARNING),
    /** The drive was not measured as it works. */
    DRIVE_NOT_AS_AT_WORK(WARNING, Slot.WORK),
    /** Nobody says whether the drive was measured as it works. */
    DRIVE_CONDITIONS_NOT_SAID(NOTE, Slot.WORK),
    /** The drive holds a narrower range of speeds than when it was last measured. */
    DRIVE_RANGE_NARROWER(WARNING),
    /** The measured range of speeds is another one than that which somebody states. */
    DRIVE_RANGE_DISAGREES(WARNING, Slot.term("source", Term.BY_EYE, Term.FROM_MAKER)),
    /** Something that the range of speeds depends on was changed after the day that the range is of. */
    DRIVE_RANGE_BEFORE_CHANGE(WARNING, Slot.term("change", Term.HYDRAULIC, Term.SENSOR), Slot.date("changed")),
    /** The measured range and a stated one are as far apart as the gear ratio makes two shafts. */
    STATED_RANGE_OF_OTHER_SHAFT(WARNING),
    /** A catch fits the range of speeds only if that is the conveyor shaft's. */
    DRIVE_OF_OTHER_SHAFT(WARNING, Slot.time("at")),
    /** The shaft stood still at every command that was measured, and turned in a catch. */
    DRIVE_NEVER_TURNED(WARNING, Slot.time("at")),
    /** The shaft turned faster in a catch than the drive is said to. */
    CATCH_ABOVE_RANGE(WARNING, Slot.time("at")),
    /** The shaft turned slower in a catch than the drive holds steadily. */
    CATCH_BELOW_RANGE(WARNING, Slot.time("at")),
    /** The table of control settings has another speed than was measured at the same command. */
    CONTROL_SETTING_DISAGREES(WARNING),
    /** The table of control settings has one that the drive can't be given. */
    CONTROL_SETTING_OFF_SCALE(WARNING),
    /** A limit of the drive explains that less was laid than expected. */
    LIMIT_EXPLAINS_SHORTFALL(WARNING, Slot.time("at")),
    /** A limit of the drive explains that more was laid than expected. */
    LIMIT_EXPLAINS_OVERRUN(WARNING, Slot.time("at")),
    /** A limit of the drive explains only a part of what was laid too little or too much. */
    LIMIT_EXPLAINS_PART(WARNING, Slot.time("at")),

    /** A route asks for a faster shaft than the drive holds, at every calibrated setting. */
    ROUTE_ABOVE_RANGE(WARNING, Slot.name("route"), Slot.name("point")),
    /** A route asks for a slower shaft than the drive holds steadily, at every calibrated setting. */
    ROUTE_BELOW_RANGE(WARNING, Slot.name("route"), Slot.name("point")),
    /** A route asks for a shaft speed at which the drive was not measured. */
    ROUTE_BEYOND_MEASURED(WARNING, Slot.name("route"), Slot.name("point")),
    /** A route can be done at one calibrated setting and not at another. */
    ROUTE_NEEDS_SETTING(NOTE, Slot.name("route"), Slot.name("point"), Slot.name("otherPoint")),
    /** A route asks for a flow that the flow meter or pump isn't good for. */
    ROUTE_OUTSIDE_METER(WARNING, Slot.name("route")),
    /** A route's material isn't calibrated on the truck. */
    ROUTE_NOT_CALIBRATED(WARNING, Slot.name("route"), Slot.name("material")),
    /** Nobody knows which speeds the drive of a truck on a route holds. */
    ROUTE_RANGE_NOT_KNOWN(NOTE, Slot.name("route")),

    /** A plan runs the shaft at a speed that the truck's drive doesn't hold. */
    PLAN_SPEED_OUTSIDE_RANGE(WARNING),
    /** A plan has another range of speeds than the truck's drive. */
    PLAN_RANGE_DISAGREES(WARNING),

    /** A delivery ticket's mass would be like those of the others if it were in another unit. */
    TICKET_IN_OTHER_UNIT(WARNING, Slot.name("ticket"), Slot.name("pile")),
    /** What a truck drew in some days would be like other draws if it were in another unit. */
    DRAW_IN_OTHER_UNIT(WARNING, Slot.name("truck"), Slot.name("pile"), Slot.date("from")),
    /** What was weighed and what the truck indicated of the same loads would be alike if one were in another unit. */
    LOADS_IN_OTHER_UNIT(WARNING, Slot.name("truck"), Slot.date("from")),
    /** Trucks say that they took far more from a pile than was ever there. */
    PILE_OVERDRAWN(WARNING, Slot.name("pile")),
    /** A truck of a season's account drew nothing. */
    TRUCK_WITHOUT_DRAWS(WARNING, Slot.name("truck")),
    /** More of a truck's loads was weighed than it drew. */
    LOADS_BEYOND_DRAWS(WARNING, Slot.name("truck")),
    /** A number is left out among tickets that are numbered in a row. */
    TICKET_MISSING(WARNING, Slot.name("ticket"), Slot.name("before"), Slot.name("after"), Slot.name("pile"));

    private final Severity severity;
    private final String template;

    @SuppressWarnings("ImmutableEnumChecker") // a copy that nobody can change
    private final List<Slot> slots;

    /** Takes those places of the template for numbers that no slot is given for. */
    FindingCode(Severity severity, Slot... others) {
        this.severity = severity;
        this.template = Sentences.of(id());
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
