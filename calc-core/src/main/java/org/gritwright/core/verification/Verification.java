package org.gritwright.core.verification;

import static org.gritwright.core.finding.Argument.name;
import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.core.budget.SharedErrors;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchFindings;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.plausibility.ApparentFill;
import org.gritwright.core.plausibility.GrainFlow;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.uncertainty.NormalizedError;
import org.gritwright.core.uncertainty.WeightedMean;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;

/**
 * What a verification catch shows: the calibration error and, kept apart from it, the delivery error.
 *
 * <ul>
 *   <li>calibration error = indicated ÷ caught − 1: is the calibration right?
 *   <li>delivery error = indicated ÷ expected − 1: start-up, run-down, valve and speed limits. A slow start is not a
 *       wrong calibration. Where nothing was counted or displayed it is caught ÷ expected − 1, and the only error there
 *       is.
 * </ul>
 *
 * <p>Definitions: common practice, no source. Immutable, thread-safe; everything is computed when it is made.
 */
public final class Verification {
    /** Beyond so many times the greatest correction, no wear explains an error (common practice, no source). */
    private static final double GREATEST_DRIFT = 2;

    /** Standard uncertainties of a count, with which a shortfall is shown (common practice, no source). */
    private static final double COVERED = 2;

    private final VerificationCatch source;
    private final Optional<Calibration> calibration;
    private final VerificationLimits limits;
    private final ErrorSums sums;
    private final Judgement judgement;
    private final Optional<Counted> counted;
    private final double caughtKilograms;
    private final double deliveryError;
    private final Optional<ApparentFill> apparentFill;
    private final List<Finding> findings;
    private final Optional<Correction> proposedCorrection;

    /** What is known where something was counted or displayed. */
    private record Counted(double kilogramsPerRevolution, double indicatedKilograms, double error) {}

    Verification(
            VerificationCatch source,
            Tolerance tolerance,
            DecisionRule rule,
            VerificationLimits limits,
            Optional<Calibration> calibration) {
        this.source = source;
        this.caughtKilograms =
                source.observation().kilograms() * limits.catches().allowances().spillageFactor();
        this.counted = source.revolutions().isPresent()
                ? Optional.of(counted(source.revolutions().getAsDouble()))
                : Optional.empty();
        this.deliveryError = believedKilograms() / source.expectedKilograms() - 1;
        this.calibration = Objects.requireNonNull(calibration, "calibration");
        this.limits = limits;
        this.sums = ErrorSums.of(source, allowances().spillageFactor());
        ErrorBudget errors = new ErrorBudget(sums, calibration, allowances());
        Judgement judged = Judgement.of(errors, rule, tolerance, source.caught().total());
        double uncertainty = Amounts.si(Dimensionless.class, judged.expandedUncertainty());
        this.apparentFill = counted.map(known -> ApparentFill.of(
                known.kilogramsPerRevolution(),
                uncertainty / (1 + known.error()),
                // A display counts pulses too.
                source.counted().map(ShaftCount::isInPulses).orElse(true),
                source.point(),
                limits.catches().fill()));
        List<Finding> found = dataFindings(limits);
        found.addAll(errors.findings());
        calibration.flatMap(this::sameScale).ifPresent(found::add);
        Optional<Finding> outlying = counted.filter(
                        known -> isShownBeyond(limits.greatestCorrection(), known, uncertainty))
                .map(known -> isOutOfDate(limits.greatestCorrection(), known, judged)
                        ? Finding.of(FindingCode.VALUE_OUT_OF_DATE, Map.of("error", number(percent(known.error()))))
                        : Finding.of(
                                FindingCode.CORRECTION_TOO_LARGE,
                                Map.of(
                                        "error", number(percent(known.error())),
                                        "limit", number(limits.greatestCorrection()))));
        boolean isCorrectable = !isDoubted(found)
                && calibration.filter(Calibration::isDoubted).isEmpty()
                && outlying.filter(f -> f.code() == FindingCode.CORRECTION_TOO_LARGE)
                        .isEmpty();
        outlying.ifPresent(found::add);
        this.proposedCorrection = counted.filter(known -> isCorrectable)
                .map(known -> correction(known.kilogramsPerRevolution(), Correction.Basis.CATCH, judged));
        boolean forbidden = judged.advice() == Advice.CORRECT && proposedCorrection.isEmpty();
        this.judgement = forbidden || isDoubted(found) ? judged.doubted() : judged;
        found.addAll(errorFindings());
        this.findings = List.copyOf(found);
    }

    private Counted counted(double revolutions) {
        double indicated = revolutions * source.inForce().kilogramsPerRevolution();
        return new Counted(caughtKilograms / revolutions, indicated, indicated / caughtKilograms - 1);
    }

    /** Whether the error exceeds a limit by more than its uncertainty could explain. */
    private static boolean isShownBeyond(Quantity<Dimensionless> limit, Counted known, double uncertainty) {
        double shown = Math.abs(known.error()) - uncertainty;
        return shown > 0 && !new Tolerance(limit).acceptsRatio(shown);
    }

    /** An independent calibration that agrees with the catch says that the value in force is what is wrong. */
    private boolean isOutOfDate(Quantity<Dimensionless> limit, Counted known, Judgement judged) {
        return Math.abs(known.error()) <= GREATEST_DRIFT * Amounts.si(Dimensionless.class, limit)
                && calibration
                        .filter(independent -> !independent.isDoubted())
                        .flatMap(independent -> judged.comparedWith(
                                independent, known.kilogramsPerRevolution(), List.of(source.caught())))
                        .filter(NormalizedError::isAgreement)
                        .isPresent();
    }

    /** A wrong span of a scale that both were weighed on is in both, and in their ratio it cancels. */
    private Optional<Finding> sameScale(Calibration calibration) {
        Caught caught = source.caught();
        if (!calibration.instruments().contains(ErrorSource.spanOf(caught)) || caught.isSpanTested()) {
            return Optional.empty();
        }
        return Optional.of(
                caught.isWeighed()
                        ? Finding.of(FindingCode.SAME_SCALE_BLIND, Map.of("scale", name(caught.instrument())))
                        : Finding.of(FindingCode.SAME_CONTAINER_BLIND, Map.of("container", name(caught.instrument()))));
    }

    private static boolean isDoubted(List<Finding> findings) {
        return findings.stream().anyMatch(f -> f.code().doubtsData());
    }

    /** Whether something was counted or displayed. */
    boolean isCounted() {
        return counted.isPresent();
    }

    Optional<Calibration> calibration() {
        return calibration;
    }

    CatchAllowances allowances() {
        return limits.catches().allowances();
    }

    /** What this catch says about the error. */
    ErrorSums sums() {
        return sums;
    }

    private Correction correction(double kilogramsPerRevolution, Correction.Basis basis) {
        return correction(kilogramsPerRevolution, basis, judgement);
    }

    Correction correction(double kilogramsPerRevolution, Correction.Basis basis, Judgement reason) {
        CalibrationFactor computed = source.inForce().factor().withDischarge(kilogramsPerRevolution, source.point());
        return Correction.proposed(computed, basis, source, reason);
    }

    /**
     * The correction by this catch and an earlier calibration together, each by its weight 1 ÷ u². The span of a scale
     * that both were weighed on is left out of both weights.
     *
     * @param earlier a calibration for the same point, that this catch agrees with
     * @return the correction; none if {@link #proposedCorrection} has none, or the two disagree by more than their
     *     expanded uncertainties: then their mean would be neither
     * @throws InvalidInputException if the calibration is for another point
     */
    public Optional<Correction> correctionCombinedWith(Calibration earlier) {
        if (!earlier.point().equals(source.point())) {
            throw new InvalidInputException(
                    "calibration to combine", "for the catch's point, " + source.point(), "for " + earlier.point());
        }
        if (proposedCorrection.isEmpty()) {
            return Optional.empty();
        }
        Set<ComponentKey> shared = SharedErrors.of(
                earlier.catches().stream().map(CalibrationCatch::caught).toList(), List.of(source.caught()));
        Measured<DischargePerRevolution> before =
                earlier.budget().without(shared).result();
        Measured<DischargePerRevolution> now = judgement.discharge(
                counted.orElseThrow().kilogramsPerRevolution(),
                shared,
                before.value().getUnit());
        return NormalizedError.between(now, before).isAgreement()
                ? Optional.of(correction(
                        Amounts.si(
                                DischargePerRevolution.class,
                                WeightedMean.of(before, now).result().value()),
                        Correction.Basis.CATCH_AND_CALIBRATION))
                : Optional.empty();
    }

    private List<Finding> dataFindings(VerificationLimits limits) {
        List<Finding> found = new ArrayList<>();
        apparentFill.flatMap(ApparentFill::finding).ifPresent(found::add);
        found.addAll(CatchFindings.ofAmount(source.observation(), limits.catches()));
        found.addAll(CatchFindings.ofConditions(List.of(source.observation().conditions())));
        source.counted()
                .ifPresent(c -> found.addAll(
                        CatchFindings.ofCount(c, source.point().metering().feedback(), limits.catches())));
        if (source.counted().isPresent() && source.indicated().isPresent()) {
            double difference = Math.abs(believedKilograms() - source.shownKilograms());
            // Count and display may differ by the display's step, by what it hides of its value, and by the pulse at
            // either end
            // or three times the eye's standard error.
            double explained = source.stepKilograms()
                    + source.hiddenKilograms()
                    + (source.counted().get().isInPulses()
                            ? source.kilogramsPerPulse()
                            : 3
                                    * source.observation()
                                            .uncertaintyRevolutions()
                                            .orElse(0)
                                    * source.inForce().kilogramsPerRevolution());
            if (Comparison.isAbove(difference, explained, source.shownKilograms())) {
                found.add(Finding.of(
                        FindingCode.COUNT_AND_DISPLAY_DISAGREE,
                        Map.of(
                                "byCount",
                                number(indicated().orElseThrow()),
                                "shown",
                                number(source.indicated().get().shown()))));
            }
        }
        if (counted.isEmpty()) {
            found.add(Finding.of(FindingCode.OPEN_LOOP));
        }
        GrainFlow.USUAL.starved(source.point(), targetFlow()).ifPresent(found::add);
        MeteredFlow.outside(source).ifPresent(found::add);
        return found;
    }

    private Quantity<DischargeRate> targetFlow() {
        Unit<DischargeRate> unit =
                UnitSymbol.tradeUnit(DischargeRate.class, source.caught().total());
        return Amounts.ofSi(source.run().kilogramsPerSecond(source.point().material()), unit);
    }

    private List<Finding> errorFindings() {
        List<Finding> found = new ArrayList<>();
        Tolerance tolerance = tolerance();
        if (verdict() == Verdict.OUTSIDE_TOLERANCE) {
            // What is caught against what the truck believes to lay, or against what was asked for where it believes
            // nothing.
            double laid = counted.map(known -> 1 / (1 + known.error()) - 1).orElse(deliveryError);
            found.add(Finding.of(
                    FindingCode.TOLERANCE_MISSED,
                    Map.of(
                            "error", number(calibrationError().orElseGet(this::deliveryError)),
                            "laid", number(percent(Math.abs(laid))),
                            "way", laid > 0 ? Term.TOO_MUCH : Term.TOO_LITTLE,
                            "tolerance", number(tolerance.limit()),
                            "which", counted.isPresent() ? Term.CALIBRATION_ERROR : Term.DELIVERY_ERROR)));
        }
        // As the count resolves it: a shortfall of one pulse may be none.
        double shown = Math.max(0, Math.abs(deliveryError) - COVERED * sums.ofCounting() * (1 + deliveryError));
        if (!tolerance.acceptsRatio(shown)) {
            Map<String, Argument> about = new LinkedHashMap<>();
            about.put("delivered", number(amount(believedKilograms())));
            about.put("expected", number(expected()));
            about.put("error", number(percent(Math.abs(deliveryError))));
            equivalentLostTime().ifPresent(time -> about.put("lostTime", number(time)));
            found.add(Finding.of(deliveryError < 0 ? FindingCode.SHORTFALL : FindingCode.OVERRUN, about));
        }
        return found;
    }

    /** What the truck believes it laid; where it believes nothing, what was caught. */
    private double believedKilograms() {
        return counted.map(Counted::indicatedKilograms).orElse(caughtKilograms);
    }

    private Quantity<?> amount(double kilograms) {
        return source.observation().amount(kilograms);
    }

    private Quantity<Mass> mass(double kilograms) {
        return Amounts.ofSi(kilograms, source.observation().massUnit());
    }

    private static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }

    /**
     * The catch.
     *
     * @return the catch that was assessed
     */
    public VerificationCatch source() {
        return source;
    }

    /**
     * The tolerance it was compared with.
     *
     * @return the caller's tolerance
     */
    public Tolerance tolerance() {
        return judgement.tolerance();
    }

    /**
     * The error, its uncertainty, and what they say about the tolerance.
     *
     * @return the judgement on the calibration error; on the delivery error where there is no other
     */
    public Judgement judgement() {
        return judgement;
    }

    /**
     * The expected amount.
     *
     * @return target rate × test distance, in the unit of what was caught: a mass or, of a liquid, a volume
     */
    public Quantity<?> expected() {
        return IndicatedAmount.like(source.caught().total(), source.run().expectedAmount());
    }

    /**
     * The indicated amount.
     *
     * @return revolutions × the calibration in force, in the unit of what was caught; none if nothing was counted or displayed
     */
    public Optional<Quantity<?>> indicated() {
        return counted.map(known -> amount(known.indicatedKilograms()));
    }

    /**
     * The expected mass.
     *
     * @return target rate × test distance, in the unit of the caught mass; of a liquid at its stated density
     */
    public Quantity<Mass> expectedMass() {
        return mass(source.expectedKilograms());
    }

    /**
     * The indicated mass.
     *
     * @return revolutions × the calibration in force, in the unit of the caught mass; none if nothing was counted or
     *     displayed; of a liquid at its stated density
     */
    public Optional<Quantity<Mass>> indicatedMass() {
        return counted.map(known -> mass(known.indicatedKilograms()));
    }

    /**
     * The calibration error, indicated ÷ caught − 1.
     *
     * @return the error in percent; none if nothing was counted or displayed
     */
    public Optional<Quantity<Dimensionless>> calibrationError() {
        return counted.map(known -> percent(known.error()));
    }

    /**
     * The delivery error, indicated ÷ expected − 1; caught ÷ expected − 1 where nothing was counted or displayed.
     *
     * @return the error in percent; negative is a shortfall, positive an overrun
     */
    public Quantity<Dimensionless> deliveryError() {
        return percent(deliveryError);
    }

    /**
     * The time for which the target mass flow would have had to be missing to make the shortfall. One run can't tell
     * whether it was: see {@link StartUp}.
     *
     * @return shortfall ÷ target mass flow; none without a shortfall
     */
    public Optional<Quantity<Time>> equivalentLostTime() {
        double shortfall = source.expectedKilograms() - believedKilograms();
        return shortfall > 0
                ? Optional.of(Amounts.ofSi(
                        shortfall
                                / source.run().kilogramsPerSecond(source.point().material()),
                        SpreadingUnits.SECOND))
                : Optional.empty();
    }

    /**
     * The rate that was really delivered, caught ÷ test distance.
     *
     * @return the rate, in the unit of the target rate
     */
    public Quantity<?> deliveredRate() {
        return Amounts.ofSi(
                caughtKilograms
                        / source.point().material().kilogramsPerAmount()
                        / source.run().meters(),
                source.run().targetRate().getUnit());
    }

    /**
     * The mass per distance that was really delivered.
     *
     * @return caught ÷ test distance, in the unit of the target rate; of a liquid at its stated density, in lb/mi or kg/km
     */
    public Quantity<ApplicationRate> deliveredMassRate() {
        return Amounts.ofSi(
                caughtKilograms / source.run().meters(), source.run().massRateUnit());
    }

    /**
     * What this catch alone says the discharge per revolution is.
     *
     * @param unit the wanted unit
     * @return caught ÷ revolutions; none if nothing was counted or displayed
     */
    public Optional<Quantity<DischargePerRevolution>> dischargePerRevolution(Unit<DischargePerRevolution> unit) {
        return counted.map(known -> Amounts.ofSi(known.kilogramsPerRevolution(), unit));
    }

    /**
     * The apparent fill of this catch.
     *
     * @return the fill; none if nothing was counted or displayed
     */
    public Optional<ApparentFill> apparentFill() {
        return apparentFill;
    }

    /**
     * The verdict on the calibration error; on the delivery error where there is no other.
     *
     * @return the verdict by the decision rule
     */
    public Verdict verdict() {
        return judgement.verdict();
    }

    /**
     * Whether a finding doubts the data.
     *
     * @return true if one does: then the catch proves nothing and corrects nothing
     */
    public boolean isDoubted() {
        return isDoubted(findings);
    }

    /**
     * Whether the catch proves the calibration in force.
     *
     * @return true if something was counted or displayed, the calibration error is within the tolerance, and no finding
     *     doubts the data
     */
    public boolean passes() {
        return isCounted() && verdict() == Verdict.WITHIN_TOLERANCE && !isDoubted();
    }

    /**
     * The calibration that this catch calls for, caught ÷ revolutions. Whether to enter it is another matter: see {@link
     * Judgement#advice}.
     *
     * @return the correction; none if nothing was counted or displayed, while a finding doubts the data, or beyond the
     *     greatest correction
     */
    public Optional<Correction> proposedCorrection() {
        return proposedCorrection;
    }

    /**
     * What a person should know.
     *
     * @return the findings, possibly none
     */
    public List<Finding> findings() {
        return findings;
    }

    /** Everything else follows from these. */
    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof Verification that
                        && source.equals(that.source)
                        && tolerance().equals(that.tolerance())
                        && judgement.rule().equals(that.judgement.rule())
                        && limits.equals(that.limits)
                        && calibration.equals(that.calibration));
    }

    @Override
    public int hashCode() {
        return Objects.hash(source, tolerance(), judgement.rule(), limits, calibration);
    }
}
