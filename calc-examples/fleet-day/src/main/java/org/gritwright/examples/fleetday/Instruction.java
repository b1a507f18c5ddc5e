package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.InForceEntry;
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
 */
record Instruction(String text, String shortReason, List<String> reasons) {

    static Instruction of(TruckAssessment truck) {
        String words = truck.nextStep().words();
        return switch (truck.nextStep()) {
            case MEND_RECORD -> {
                String refusal = truck.refusal().orElseThrow();
                yield new Instruction(words, refusal, List.of("Nothing could be computed: " + refusal + "."));
            }
            case FIND_FAULT -> because(words, truck.findings().stream().filter(f -> f.severity() == Severity.ERROR));
            case ENTER_CORRECTION ->
                because(
                        enter(truck, truck.correction().orElseThrow()) + ", read it back, catch again",
                        withCode(truck, FindingCode.TOLERANCE_MISSED));
            case CONFIRM_CORRECTION ->
                because(
                        "Confirm "
                                + truck.correction().flatMap(Correction::asLeft).orElseThrow()
                                + " with an independent catch",
                        withCode(truck, FindingCode.CORRECTION_UNCONFIRMED));
            case CATCH_MORE -> catchMore(truck.undecided().orElseThrow());
            case MEND_ROAD_SPEED ->
                because(
                        enter(truck.roadSpeed().orElseThrow()) + ", drive the course again",
                        withCode(truck, FindingCode.ROAD_SPEED_OFF));
            case CALIBRATE ->
                because(
                        words,
                        withCode(truck, FindingCode.CALIBRATION_BEFORE_SEASON, FindingCode.CALIBRATION_BEFORE_CHANGE));
            case CHECK_DELIVERY ->
                because(
                        words,
                        !truck.startUps().isEmpty()
                                ? withCode(truck, FindingCode.START_UP_LOSS, FindingCode.STEADY_FLOW_OFF)
                                : withCode(truck, FindingCode.SHORTFALL, FindingCode.OVERRUN));
            case VERIFY -> because(seeThatDisplayHolds(truck) + words, Stream.of());
            case CHECK_ROAD_SPEED, NOTHING -> because(words, Stream.of());
        };
    }

    /** How much more, in whole catches like the last; where no number of them would do, what is to blame. */
    private static Instruction catchMore(VerificationSeries series) {
        Judgement judgement = series.judgement();
        String error = (series.verifications().size() == 1 ? "By this catch" : "By these catches") + " the error is "
                + Figures.errorWithin(judgement) + ": " + judgement.verdict().words() + ", "
                + Figures.chanceWithin(judgement) + ".";
        return judgement
                .further()
                .map(further -> new Instruction(
                        "Catch " + Figures.text(further.mass(), 3) + " more with the same value in the display, in "
                                + Words.count(further.catches(), "catch", "catches") + " like the last",
                        "can't tell yet",
                        List.of(error)))
                .orElseGet(() -> new Instruction(
                        "Weigh or count better: 50 more catches like the last could not tell",
                        judgement.blame().map(worst -> "to blame: " + worst).orElse("the error is too near the limit"),
                        List.of(error)));
    }

    private static Instruction because(String text, Stream<Finding> findings) {
        List<Finding> all = findings.toList();
        return new Instruction(
                text,
                all.stream()
                        .map(f -> f.code().id().replace('-', ' '))
                        .distinct()
                        .collect(Collectors.joining(", ")),
                all.stream().map(Finding::sentence).toList());
    }

    private static Stream<Finding> withCode(TruckAssessment truck, FindingCode... codes) {
        Set<FindingCode> wanted = Set.of(codes);
        return truck.findings().stream().filter(f -> wanted.contains(f.code()));
    }

    /** Names the old value too, so that a display with several slots is changed in the right one. */
    private static String enter(TruckAssessment truck, Correction correction) {
        CalibrationInForce inForce = correction.evidence().inForce();
        return "Enter " + Amounts.format(correction.toEnter().value())
                + (hasSeveralMaterials(truck) ? " for " + inForce.material().name() : "")
                + " in place of " + Amounts.format(correction.asFound().value());
    }

    private static boolean hasSeveralMaterials(TruckAssessment truck) {
        return truck.verifications().stream()
                        .map(v -> v.source().inForce().material())
                        .distinct()
                        .count()
                > 1;
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
        String values = truck.calibrations().stream()
                .map(calibration -> toEnter(truck, calibration))
                .collect(Collectors.joining(", "));
        return values.isEmpty() ? "" : "See that the display holds " + values + ", then: ";
    }

    private static String toEnter(TruckAssessment truck, Calibration calibration) {
        String value = truck.truck()
                .inForce()
                .flatMap(InForceEntry::displayStep)
                .map(step -> calibration.entered(step).factor().toString())
                .orElseGet(
                        () -> Figures.text(calibration.dischargePerRevolution().value(), Figures.DIGITS));
        return truck.calibrations().size() == 1
                ? value
                : value + " for " + calibration.material().name()
                        + calibration
                                .opening()
                                .map(o -> " at " + Amounts.format(o))
                                .orElse("");
    }
}
