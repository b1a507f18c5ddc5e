package org.gritwright.core.fleet.assessment;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.envelope.Envelope;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.verification.Correction;
import org.gritwright.core.verification.StartUp;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What the catches of one calibration point show together, in the order of time: a correction at one says nothing about
 * another.
 *
 * <p>A verification catch says something about the value in force only if it isn't older than that value and the
 * display wasn't set for another point. Others are kept and reported, and prove nothing.
 */
final class PointHistory {
    /** How far an entered value may be from the one it was rounded from where no step is known (common practice, no source). */
    private static final double ROUNDED = 0.01;

    /** How far a new calibration may be from the value before it (common practice, no source). */
    private static final double WEAR = 0.25;

    /** How many days before or after its day a catch may be: preparing a fleet takes weeks (common practice, no source). */
    private static final long LONGEST_DAY = 31;

    /** What is as true of one catch as of all others at the point is said once. */
    private static final Set<FindingCode> OF_ALL_CATCHES = Set.of(
            FindingCode.FILL_IMPLAUSIBLE,
            FindingCode.FILL_IMPOSSIBLE,
            FindingCode.PUMPED_VOLUME_IMPLAUSIBLE,
            FindingCode.PUMPED_VOLUME_IMPOSSIBLE,
            FindingCode.METERED_VOLUME_IMPLAUSIBLE,
            FindingCode.METERED_VOLUME_IMPOSSIBLE,
            FindingCode.CAUGHT_VOLUME_SMALL,
            FindingCode.LIQUID_DENSITY_DIFFERS,
            FindingCode.TOO_FEW_PULSES,
            FindingCode.TOO_FEW_REVOLUTIONS,
            FindingCode.CAUGHT_MASS_SMALL,
            FindingCode.COUNT_UNCERTAIN,
            FindingCode.OIL_COLD,
            FindingCode.HOPPER_NEARLY_EMPTY);

    /** What a limit of the drive may explain. */
    private static final Set<FindingCode> MISSED_BY_LIMIT = Set.of(FindingCode.SHORTFALL, FindingCode.OVERRUN);

    private final CalibrationPoint point;
    private final List<CalibrationInForce> inForce;
    private final Optional<Calibration> calibration;
    private final List<Verification> verifications;
    /** Those that say something about the value in force. */
    private final List<Verification> standing;

    private final List<Finding> outOfPlace = new ArrayList<>();
    private boolean setElsewhere;
    private final Optional<StartUp> startUp;
    private final Optional<VerificationSeries> judged;
    private final List<Finding> contradictions;
    private final Optional<Correction> correction;

    /**
     * Follows one point.
     *
     * @param point the point
     * @param inForce the values in force for it when the day began
     * @param calibration the calibration from its calibration catches, if there are any
     * @param verifications its verification catches in the order of time
     * @param elsewhere for each verification catch, the value in force for another point that the display was set to,
     *     if it was
     * @param tolerance the day's tolerance
     * @param day the day that all this is written down for
     */
    PointHistory(
            CalibrationPoint point,
            List<CalibrationInForce> inForce,
            Optional<Calibration> calibration,
            List<Verification> verifications,
            Function<Verification, Optional<CalibrationInForce>> elsewhere,
            Tolerance tolerance,
            LocalDate day) {
        this.point = point;
        this.inForce = List.copyOf(inForce);
        this.calibration = calibration;
        this.verifications = List.copyOf(verifications);
        List<Verification> standing = new ArrayList<>();
        for (Verification one : this.verifications) {
            Optional<CalibrationInForce> other = elsewhere.apply(one);
            List<Finding> findings =
                    other.map(set -> Mismatch.otherPoint(one, set)).orElseGet(() -> olderThanEntry(one));
            setElsewhere |= other.isPresent();
            outOfPlace.addAll(findings);
            if (findings.isEmpty()) {
                standing.add(one);
            }
        }
        this.standing = List.copyOf(standing);
        unexplainedValue().or(() -> otherSlot(tolerance)).ifPresent(outOfPlace::add);
        if (observations().findAny().isPresent() && observations().allMatch(PointHistory::isWithoutTare)) {
            outOfPlace.add(Mismatch.noTare(point));
        }
        observations()
                .map(Observation::at)
                .filter(at -> Math.abs(ChronoUnit.DAYS.between(day, at.toLocalDate())) > LONGEST_DAY)
                .findFirst()
                .ifPresent(at -> outOfPlace.add(Mismatch.otherDay(at, day)));
        List<VerificationCatch> catches =
                standing.stream().map(Verification::source).toList();
        this.startUp =
                StartUp.isSeparable(catches) ? Optional.of(StartUp.separate(catches, tolerance)) : Optional.empty();
        CorrectionTrail trail = new CorrectionTrail();
        standing.forEach(trail::follow);
        this.judged = trail.judged();
        this.contradictions = new ArrayList<>(trail.contradictions());
        calibration
                .flatMap(c -> trail.alone().flatMap(series -> Agreement.contradiction(c, series, tolerance)))
                .ifPresent(contradictions::add);
        this.correction = trail.correction();
    }

    private List<Finding> olderThanEntry(Verification one) {
        boolean older = !inForce.isEmpty()
                && inForce.stream()
                        .allMatch(entry -> entry.since()
                                .filter(since ->
                                        since.isAfter(one.source().observation().at()))
                                .isPresent());
        return older ? Mismatch.older(one, inForce.get(0)) : List.of();
    }

    /** A catch with a value that is listed, of a day before that was entered; on that day it may have been entered again. */
    Optional<Finding> beforeItsValue() {
        return verifications.stream()
                .filter(one -> inForce.stream()
                        .filter(entry ->
                                entry.factor().equals(one.source().inForce().factor()))
                        .flatMap(entry -> entry.since().stream())
                        .anyMatch(since -> since.day().isAfter(at(one).toLocalDate())))
                .flatMap(one -> olderThanEntry(one).stream())
                .findFirst();
    }

    private Stream<Observation> observations() {
        return Stream.concat(
                calibration.stream().flatMap(c -> c.catches().stream()).map(CalibrationCatch::observation),
                verifications.stream().map(one -> one.source().observation()));
    }

    private static boolean isWithoutTare(Observation one) {
        return !one.conditions().scaleZeroed()
                && !one.caught().weighings().isEmpty()
                && one.caught().weighings().stream().allMatch(weighing -> Amounts.si(Mass.class, weighing.tare()) == 0);
    }

    /** The first catch's value is one that was listed, or the day's calibration rounded, if wear explains the change to it. */
    private Optional<Finding> unexplainedValue() {
        if (standing.isEmpty() || inForce.isEmpty()) {
            return Optional.empty();
        }
        Verification first = standing.get(0);
        double shown = first.source().inForce().kilogramsPerRevolution();
        boolean calibrated = calibration
                .map(c -> Amounts.si(
                        DischargePerRevolution.class, c.dischargePerRevolution().value()))
                .filter(value -> isWithin(rounded(first.source().inForce()), shown, value))
                .isPresent();
        boolean explained = inForce.stream()
                .anyMatch(entry -> isWithin(calibrated ? WEAR : ROUNDED, shown, entry.kilogramsPerRevolution()));
        return explained ? Optional.empty() : Optional.of(Mismatch.otherValue(first, inForce.get(0)));
    }

    /** What another slot holds for the same point would lay something else: at most one of them can be right. */
    private Optional<Finding> otherSlot(Tolerance tolerance) {
        if (standing.isEmpty()) {
            return Optional.empty();
        }
        List<CalibrationInForce> inSlots =
                inForce.stream().filter(entry -> entry.slot().isPresent()).toList();
        Verification first = standing.get(0);
        double shown = first.source().inForce().kilogramsPerRevolution();
        return inSlots.stream()
                .filter(one -> inSlots.stream()
                        .anyMatch(other -> !tolerance.acceptsRatio(
                                one.kilogramsPerRevolution() / other.kilogramsPerRevolution() - 1)))
                .max(Comparator.comparingDouble(one -> Math.abs(one.kilogramsPerRevolution() / shown - 1)))
                .map(entry -> Mismatch.otherValue(first, entry));
    }

    private static double rounded(CalibrationInForce entered) {
        return entered.displayStep()
                .map(step -> step.getValue().doubleValue()
                        / entered.factor().value().getValue().doubleValue())
                .orElse(ROUNDED);
    }

    private static boolean isWithin(double limit, double value, double reference) {
        return Math.abs(value / reference - 1) <= limit;
    }

    CalibrationPoint point() {
        return point;
    }

    List<CalibrationInForce> inForce() {
        return inForce;
    }

    Optional<Calibration> calibration() {
        return calibration;
    }

    /** What contradicts itself in the entries, whatever the discharge is. */
    List<Finding> outOfPlace() {
        return outOfPlace;
    }

    Stream<Verification> assessedCatches() {
        return verifications.stream();
    }

    Stream<VerificationCatch> verified() {
        return verifications.stream().map(Verification::source);
    }

    Optional<Correction> correction() {
        return correction;
    }

    /** What the catches with the calibration in force last say together. */
    Optional<VerificationSeries> judged() {
        return judged;
    }

    /** Whether the display was set for another point during one of the catches. */
    boolean isSetElsewhere() {
        return setElsewhere;
    }

    /** The verification catches that say something about the value in force. */
    Stream<VerificationCatch> standing() {
        return standing.stream().map(Verification::source);
    }

    /** The last verification catch that says something about the value in force. */
    Optional<Verification> last() {
        return standing.isEmpty() ? Optional.empty() : Optional.of(standing.get(standing.size() - 1));
    }

    private Optional<OffsetDateTime> lastCalibratedAt() {
        return calibration.flatMap(
                c -> c.catches().stream().map(one -> one.observation().at()).max(Comparator.naturalOrder()));
    }

    private static OffsetDateTime at(Verification verification) {
        return verification.source().observation().at();
    }

    /** A calibration made after the last verification catch is as yet unproven. */
    MassProof massProof() {
        boolean calibratedSince = last().isEmpty()
                || lastCalibratedAt()
                        .filter(at -> at.isAfter(at(last().orElseThrow())))
                        .isPresent();
        if (calibratedSince) {
            return MassProof.NOT_CHECKED;
        }
        Verification verification = last().get();
        boolean open = correction.isPresent() && correction.get().status() != Correction.Status.CONFIRMED;
        boolean counted = verification.calibrationError().isPresent();
        Verdict verdict = judged().orElseThrow().judgement().verdict();
        if (verdict == Verdict.OUTSIDE_TOLERANCE || open || (counted && verification.isDoubted())) {
            return MassProof.NOT_PROVEN;
        }
        if (verdict != Verdict.WITHIN_TOLERANCE || ToDoList.isDoubtful(currentFindings())) {
            return MassProof.UNDECIDED;
        }
        return counted ? MassProof.PROVEN : MassProof.DELIVERY_ONLY;
    }

    /** The day on which the value in the display was last made new: by a calibration or an entered correction. */
    Optional<LocalDate> renewedOn() {
        Optional<LocalDate> corrected =
                correction.flatMap(Correction::asLeft).flatMap(left -> last()).map(one -> at(one).toLocalDate());
        return corrected.or(() -> lastCalibratedAt().map(OffsetDateTime::toLocalDate));
    }

    /**
     * What the display holds for this point once the day is over, as far as the catches show: the value of the last catch that
     * counts, since the first catch in a row that showed it, or what was in force when the day began.
     */
    List<CalibrationInForce> held() {
        if (last().isEmpty()) {
            return inForce;
        }
        Set<CalibrationFactor> known =
                inForce.stream().map(CalibrationInForce::factor).collect(Collectors.toSet());
        boolean unchanged = standing.stream()
                .allMatch(one -> known.contains(one.source().inForce().factor()));
        if (unchanged) {
            return inForce;
        }
        CalibrationInForce shown = last().get().source().inForce();
        int first = standing.size() - 1;
        while (first > 0 && standing.get(first - 1).source().inForce().factor().equals(shown.factor())) {
            first--;
        }
        CalibrationInForce now = shown.since(Since.of(at(standing.get(first))));
        // With several slots for one point nobody can tell which of them was overwritten.
        return inForce.size() > 1
                ? Stream.concat(inForce.stream(), Stream.of(now)).toList()
                : List.of(inForce.stream()
                        .flatMap(entry -> entry.slot().stream())
                        .findFirst()
                        .map(now::inSlot)
                        .orElse(now));
    }

    /** Everything noticed. */
    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        Set<FindingCode> said = EnumSet.noneOf(FindingCode.class);
        Stream.concat(
                        calibration.stream().flatMap(c -> c.findings().stream()),
                        verifications.stream().flatMap(v -> v.findings().stream()))
                .filter(one -> !OF_ALL_CATCHES.contains(one.code()) || said.add(one.code()))
                .forEach(findings::add);
        addFollowing(findings);
        return findings;
    }

    /** What still stands: an earlier catch that a later one has settled is history. */
    List<Finding> currentFindings() {
        List<Finding> findings = new ArrayList<>();
        calibration.ifPresent(c -> findings.addAll(c.findings()));
        last().ifPresent(v -> findings.addAll(v.findings()));
        addFollowing(findings);
        return findings;
    }

    private void addFollowing(List<Finding> findings) {
        findings.addAll(outOfPlace);
        findings.addAll(contradictions);
        correction.ifPresent(c -> findings.addAll(c.findings()));
        startUp.ifPresent(s -> findings.addAll(s.findings()));
    }

    /** The discharge as it is best known: by the day's calibration, or else by the value that is in the display or is to be. */
    Optional<Measured<DischargePerRevolution>> bestKnown() {
        Optional<CalibrationFactor> left = correction
                .map(c -> c.asLeft().orElseGet(c::toEnter))
                .or(() -> held().stream().reduce((earlier, later) -> later).map(CalibrationInForce::factor));
        return calibration
                .map(Calibration::dischargePerRevolution)
                .or(() -> left.map(value -> Measured.once(Amounts.ofSi(
                        value.kilogramsPerRevolution(point),
                        UnitSymbol.tradeUnit(DischargePerRevolution.class, value.value())))));
    }

    /**
     * The point as it is shown to the world.
     *
     * @param range the steady speeds of the shaft, if they are known
     * @param limits what limits of the drive explain
     */
    PointAssessment assessed(MassProof proof, Optional<WorkingRange> range, DriveLimits limits) {
        List<Finding> findings = new ArrayList<>(findings());
        for (Verification one : verifications) {
            limits.of(one).map(DriveLimits.Explained::finding).ifPresent(findings::add);
            if (limits.isExplained(one)) {
                // It says that nobody can tell why, which isn't so any more.
                one.findings().stream()
                        .filter(found -> MISSED_BY_LIMIT.contains(found.code()))
                        .forEach(findings::remove);
            }
        }
        return new PointAssessment(
                point,
                inForce,
                calibration,
                verifications,
                judged,
                correction,
                startUp,
                proof,
                held(),
                range.flatMap(speeds -> bestKnown().map(discharge -> Envelope.of(discharge, speeds))),
                findings);
    }
}
