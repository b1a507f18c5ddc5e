package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.boom.NozzleCondition;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.assessment.BoomAssessment;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.PointAssessment;
import org.gritwright.core.fleet.assessment.ToDo;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.quantity.PulsesPerDistance;

/**
 * What to do next for a truck, with the exact value where one has to be entered.
 *
 * @param text the instruction
 * @param shortReason why, in a few words; empty where the instruction says it
 * @param reasons why, in sentences
 * @param causes where to look on the truck, in a sentence, or empty
 */
record Instruction(String text, String shortReason, List<String> reasons, String causes) {
    private static final String CHECK_FIRST =
            "Check what was written down; if it is right, find the fault and catch again";

    /** More are told on the truck's sheet. */
    private static final int MOST_NOZZLES = 4;

    /** Those that name entries to look at again. */
    static final Set<FindingCode> OF_ENTRIES = Set.of(
            FindingCode.PROBABLE_SLIPS,
            FindingCode.FILL_IMPLAUSIBLE,
            FindingCode.PUMPED_VOLUME_IMPLAUSIBLE,
            FindingCode.METERED_VOLUME_IMPLAUSIBLE,
            FindingCode.PREWET_BY_OTHER_TON,
            FindingCode.FILL_UNLIKE_FLEET,
            FindingCode.NO_TARE,
            FindingCode.OTHER_VALUE_IN_FORCE,
            FindingCode.CATCH_OF_ANOTHER_DAY,
            FindingCode.CATCH_HALF_A_DAY_OFF,
            FindingCode.CATCH_BEFORE_CALIBRATION,
            FindingCode.COUNTER_RUNS_BACKWARDS,
            FindingCode.COUNTS_OVERLAP,
            FindingCode.TARES_DIFFER,
            FindingCode.TARES_UNEQUAL,
            FindingCode.CATCH_BEFORE_ENTRY,
            FindingCode.RUNS_OVERLAP,
            FindingCode.TICKET_ENTERED_TWICE,
            FindingCode.TICKET_OF_TWO_TRUCKS,
            FindingCode.RATE_IN_OTHER_UNIT,
            FindingCode.RUN_TIME_IN_MINUTES,
            FindingCode.ROAD_RUN_DIFFERS,
            FindingCode.ROAD_RUNS_DISAGREE,
            FindingCode.COURSE_IN_OTHER_UNIT,
            FindingCode.ROAD_SPEED_BY_FACTOR,
            FindingCode.ROAD_PULSES_IMPLAUSIBLE,
            FindingCode.DRIVE_REVERSAL,
            FindingCode.DRIVE_RANGE_DISAGREES,
            FindingCode.STATED_RANGE_OF_OTHER_SHAFT,
            FindingCode.DRIVE_OF_OTHER_SHAFT,
            FindingCode.CATCH_ABOVE_RANGE,
            FindingCode.CATCH_BELOW_RANGE,
            FindingCode.CONTROL_SETTING_DISAGREES,
            FindingCode.CONTROL_SETTING_OFF_SCALE,
            FindingCode.DRIVE_NEVER_TURNED,
            FindingCode.DRIVE_READINGS_APART,
            FindingCode.DRIVE_SPEED_LEAPS);

    /** Those that say where more or less is asked of a truck than its drive holds. */
    private static final Set<FindingCode> OF_DRIVE_LIMITS = Set.of(
            FindingCode.ROUTE_ABOVE_RANGE,
            FindingCode.ROUTE_BELOW_RANGE,
            FindingCode.ROUTE_BEYOND_MEASURED,
            FindingCode.ROUTE_OUTSIDE_METER,
            FindingCode.LIMIT_EXPLAINS_SHORTFALL,
            FindingCode.LIMIT_EXPLAINS_OVERRUN,
            FindingCode.LIMIT_EXPLAINS_PART);

    Instruction(String text, String shortReason, List<String> reasons) {
        this(text, shortReason, reasons, "");
    }

    static Instruction of(TruckAssessment truck) {
        return truck.toDo().isEmpty()
                ? because(NextStep.NOTHING.words(), Stream.of())
                : of(truck, truck.toDo().get(0));
    }

    /** One of the things that a truck has to have done. */
    static Instruction of(TruckAssessment truck, ToDo toDo) {
        String words = toDo.step().words() + elsewhere(truck, toDo);
        Optional<PointAssessment> point = toDo.point()
                .flatMap(wanted -> truck.points().stream()
                        .filter(one -> one.point().equals(wanted))
                        .findFirst());
        return switch (toDo.step()) {
            case FIX_RECORD ->
                new Instruction(
                        words,
                        truck.refusals().get(0).sentence(),
                        truck.refusals().stream()
                                .map(refusal -> "Nothing could be computed: " + Words.ended(refusal.sentence()))
                                .toList());
            case FIND_FAULT ->
                because(
                                isOfEntries(truck) ? CHECK_FIRST : words,
                                truck.findings().stream()
                                        .filter(f -> f.severity() == Severity.ERROR
                                                || f.code() == FindingCode.PROBABLE_SLIPS))
                        .withCausesOf(truck.findings(), truck.truck().spreader().isForLiquids());
            case MATCH_DISPLAY ->
                because(
                        words,
                        withCode(
                                truck,
                                FindingCode.DISPLAY_SET_FOR_ANOTHER_SETTING,
                                FindingCode.DISPLAY_SET_FOR_ANOTHER_MATERIAL,
                                FindingCode.CATCH_BEFORE_ENTRY));
            case CHECK_ENTRIES -> because(words, truck.findings().stream().filter(f -> OF_ENTRIES.contains(f.code())));
            case ENTER_CORRECTION ->
                because(
                        enter(truck, point.flatMap(PointAssessment::correction).orElseThrow())
                                + ", read it back, catch again",
                        withCode(truck, FindingCode.TOLERANCE_MISSED));
            case CONFIRM_CORRECTION ->
                because(
                        "Confirm "
                                + point.flatMap(PointAssessment::correction)
                                        .flatMap(Correction::asLeft)
                                        .orElseThrow()
                                + elsewhere(truck, toDo) + " with an independent catch",
                        withCode(truck, FindingCode.CORRECTION_UNCONFIRMED));
            case CATCH_MORE -> catchMore(point.flatMap(PointAssessment::judged).orElseThrow(), elsewhere(truck, toDo));
            case FIX_ROAD_SPEED ->
                because(
                        enter(truck.roadSpeed().orElseThrow()) + ", drive the course again",
                        withCode(truck, FindingCode.ROAD_SPEED_OFF));
            case SET_BOOM_PRESSURE -> because(words, withCode(truck, FindingCode.BOOM_LIQUID_CHANGED));
            case MEND_NOZZLES -> mendNozzles(truck, words);
            case CATCH_NOZZLES ->
                new Instruction(
                        words.replace('\'', '’'),
                        nozzles(truck, NozzleCondition.UNDECIDED),
                        withCode(truck, FindingCode.NOZZLE_UNDECIDED)
                                .limit(MOST_NOZZLES)
                                .map(Finding::sentence)
                                .toList());
            case CALIBRATE ->
                because(
                        words,
                        withCode(
                                truck,
                                FindingCode.CALIBRATION_BEFORE_SEASON,
                                FindingCode.CALIBRATION_BEFORE_CHANGE,
                                FindingCode.ROUTE_NOT_CALIBRATED));
            case CHECK_DELIVERY ->
                because(
                                words,
                                point.flatMap(PointAssessment::startUp).isPresent()
                                        ? withCode(truck, FindingCode.START_UP_LOSS, FindingCode.STEADY_FLOW_OFF)
                                        : withCode(
                                                truck,
                                                FindingCode.SHORTFALL,
                                                FindingCode.OVERRUN,
                                                FindingCode.DRIVE_RANGE_NARROWER))
                        .withCausesOf(truck.findings(), truck.truck().spreader().isForLiquids());
            case FIT_TO_DRIVE ->
                because(
                        RouteAdvice.of(truck).orElse(words),
                        truck.findings().stream().filter(f -> OF_DRIVE_LIMITS.contains(f.code())));
            case MEASURE_RANGE -> because(words, withCode(truck, FindingCode.DRIVE_RANGE_BEFORE_CHANGE));
            case VERIFY -> because(seeThatDisplayHolds(truck) + words, withCode(truck, FindingCode.CATCH_BEFORE_ENTRY));
            case CHECK_ROAD_SPEED, NOTHING -> because(words, Stream.of());
        };
    }

    private static Instruction mendNozzles(TruckAssessment truck, String words) {
        String off = nozzles(truck, NozzleCondition.HIGH, NozzleCondition.LOW);
        return new Instruction(
                words,
                off.isEmpty() ? "they disagree" : off,
                withCode(truck, FindingCode.NOZZLE_OFF_AVERAGE, FindingCode.NOZZLES_DISAGREE)
                        .limit(MOST_NOZZLES)
                        .map(Finding::sentence)
                        .toList());
    }

    /** Which ones, section and number. */
    private static String nozzles(TruckAssessment truck, NozzleCondition... conditions) {
        Set<NozzleCondition> wanted = Set.of(conditions);
        List<String> found = truck.boom().flatMap(BoomAssessment::nozzles).stream()
                .flatMap(review -> review.comparisons().stream())
                .filter(one -> wanted.contains(one.condition()))
                .map(one -> one.nozzle().section() + " " + one.nozzle().nozzle())
                .toList();
        return found.stream().limit(MOST_NOZZLES).collect(Collectors.joining(", "))
                + (found.size() > MOST_NOZZLES ? " and " + (found.size() - MOST_NOZZLES) + " more" : "");
    }

    /** An entry that may be a slip is no place to send somebody to. */
    private static boolean isOfEntries(TruckAssessment truck) {
        return truck.findings().stream()
                .anyMatch(f -> f.code() == FindingCode.PROBABLE_SLIPS || OF_ENTRIES.contains(f.code()));
    }

    private Instruction withCausesOf(List<Finding> findings, boolean isLiquid) {
        return new Instruction(
                text, shortReason, reasons, Causes.sentence(findings, isLiquid).orElse(""));
    }

    /** Where a truck has several calibration points, the one that is meant. */
    private static String elsewhere(TruckAssessment truck, ToDo toDo) {
        return truck.points().size() > 1
                ? toDo.point().map(point -> " (" + point + ")").orElse("")
                : "";
    }

    /** How much more, in whole catches like the last; where no number of them would do, what is the main cause. */
    private static Instruction catchMore(VerificationSeries series, String where) {
        Judgement judgement = series.judgement();
        String error = "By the " + Words.catches(series) + " the error is "
                + Figures.errorWithin(judgement) + ": " + judgement.verdict().words() + ", "
                + Figures.chanceWithin(judgement) + ".";
        return judgement
                .further()
                .map(further -> new Instruction(
                        "Catch " + Figures.text(further.amount(), 3) + " more with the same value in the display, in "
                                + Words.count(further.catches(), "catch", "catches") + " like the last" + where,
                        "can't tell yet",
                        List.of(error)))
                .orElseGet(() -> new Instruction(
                        "Weigh or count better: 50 more catches like the last could not tell" + where,
                        judgement
                                .mainCause()
                                .map(cause -> "main cause: " + cause.name())
                                .orElse("the error is too near the limit"),
                        List.of(error)));
    }

    private static Instruction because(String text, Stream<Finding> findings) {
        List<Finding> all = findings.toList();
        return new Instruction(
                text,
                all.stream()
                        .flatMap(f -> mostProbableSlip(f).stream())
                        .findFirst()
                        .orElseGet(() -> all.stream()
                                .map(f -> f.code().id().replace('-', ' '))
                                .distinct()
                                .collect(Collectors.joining(", "))),
                all.stream().map(Finding::sentence).toList());
    }

    /** Where to look first, for example "gate opening ÷ 10 (2 in)?": it says more than that something doesn't fit. */
    private static Optional<String> mostProbableSlip(Finding finding) {
        return finding.code() == FindingCode.PROBABLE_SLIPS
                        && finding.arguments().get("slips") instanceof Argument.Several slips
                ? slips.items().stream().findFirst().map(slip -> slip.words() + "?")
                : Optional.empty();
    }

    private static Stream<Finding> withCode(TruckAssessment truck, FindingCode... codes) {
        Set<FindingCode> wanted = Set.of(codes);
        return truck.findings().stream().filter(f -> wanted.contains(f.code()));
    }

    /** Names slot, material, gate opening and the old value, so that the right one is changed. */
    private static String enter(TruckAssessment truck, Correction correction) {
        CalibrationPoint point = correction.evidence().point();
        Optional<String> slot = truck.points().stream()
                .filter(one -> one.point().equals(point))
                .flatMap(one -> one.inForce().stream())
                .flatMap(entry -> entry.slot().stream())
                .findFirst();
        return "Enter " + Amounts.format(correction.toEnter().value())
                + " for " + point
                + slot.map(name -> " in slot " + name).orElse("")
                + " in place of " + Amounts.format(correction.asFound().value());
    }

    /** Whole pulses where the display holds whole pulses. */
    private static String enter(RoadSpeedCheck check) {
        Quantity<PulsesPerDistance> inForce = check.inForce();
        Quantity<PulsesPerDistance> measured = check.measured().value();
        double held = inForce.getValue().doubleValue();
        String toEnter = held == Math.rint(held) && held >= 100
                ? Amounts.format(Rounded.toResolution(measured, Amounts.of(1, inForce.getUnit())))
                : Figures.text(measured, 5);
        return "Enter " + toEnter + " in place of " + Amounts.format(inForce);
    }

    /** What the day's calibration catches found, if the display may not hold it yet. */
    private static String seeThatDisplayHolds(TruckAssessment truck) {
        String values = calibrations(truck).stream()
                .map(calibration -> toEnter(truck, calibration))
                .collect(Collectors.joining(", "));
        return values.isEmpty() ? "" : "Make sure the display holds " + values + ", then: ";
    }

    private static List<Calibration> calibrations(TruckAssessment truck) {
        return truck.points().stream()
                .flatMap(point -> point.calibration().stream())
                .toList();
    }

    private static String toEnter(TruckAssessment truck, Calibration calibration) {
        String value = truck.truck().inForce().stream()
                .flatMap(entry -> entry.displayStep().stream())
                .findFirst()
                .map(step -> calibration.entered(step).factor().toString())
                .orElseGet(() -> Figures.text(
                        Metered.found(
                                truck,
                                calibration.point(),
                                calibration.dischargePerRevolution().value()),
                        Figures.DIGITS));
        return calibrations(truck).size() == 1 ? value : value + " for " + calibration.point();
    }
}
