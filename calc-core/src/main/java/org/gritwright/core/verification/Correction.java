package org.gritwright.core.verification;

import static org.gritwright.core.finding.Argument.number;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * A correction with its history: as found, as computed, as to be entered, as left, and what confirmed it.
 *
 * <p>It is unconfirmed until an independent catch, made with the value as left, passes. Immutable, thread-safe, a
 * value.
 */
public final class Correction {

    /** How far a correction has come. */
    public enum Status {
        /** Computed, not yet entered. */
        PROPOSED,
        /** Entered and read back; no independent catch has passed yet. */
        UNCONFIRMED,
        /** An independent catch has passed. */
        CONFIRMED
    }

    /** How far a display of unknown step may round a value (common practice, no source). */
    private static final double UNKNOWN_ROUNDING = 0.001;

    private final CalibrationFactor computed;
    private final CalibrationFactor toEnter;
    private final Basis basis;
    private final VerificationCatch evidence;
    private final Judgement reason;
    private final Optional<Left> left;
    private final Optional<Proof> proof;

    private Correction(
            CalibrationFactor computed,
            Basis basis,
            VerificationCatch evidence,
            Judgement reason,
            Optional<Left> left,
            Optional<Proof> proof) {
        this.computed = computed;
        this.toEnter = evidence.inForce().displayStep().map(computed::roundedTo).orElse(computed);
        this.basis = basis;
        this.evidence = evidence;
        this.reason = reason;
        this.left = left;
        this.proof = proof;
    }

    /** What the display holds, and since when as far as known. */
    private record Left(CalibrationFactor factor, Optional<LocalDate> on) {}

    /** The independent catch and what it showed. */
    private record Proof(VerificationCatch source, Judgement judgement) {}

    /** What a corrected value was computed from. */
    public enum Basis {
        /** The catch alone. */
        CATCH,
        /** The catch and those before it with the same value in force, together. */
        SEVERAL_CATCHES,
        /** The catch and the calibration before it, each by its weight 1 ÷ u². */
        CATCH_AND_CALIBRATION
    }

    /** What was done to a calibration. */
    public enum Action {
        /** A catch was compared with the value in force. */
        FOUND,
        /** Another value was computed. */
        PROPOSED,
        /** A value was entered and read back. */
        ENTERED,
        /** An independent catch passed with it. */
        CONFIRMED
    }

    /**
     * A step of the history.
     *
     * @param on the day; none where it was not recorded
     * @param action what was done
     * @param value with which value
     * @param why the catch that it was done for, if one was
     */
    public record Step(Optional<LocalDate> on, Action action, CalibrationFactor value, Optional<Judgement> why) {
        /** Checks that nothing is null. */
        public Step {
            Require.given(Step.class, on, action, value, why);
        }
    }

    static Correction proposed(CalibrationFactor computed, Basis basis, VerificationCatch evidence, Judgement reason) {
        return new Correction(computed, basis, evidence, reason, Optional.empty(), Optional.empty());
    }

    /**
     * The value was entered and the display reads it back, on a day that was not recorded.
     *
     * @param readBack what the display holds now
     * @return the correction as left, unconfirmed
     * @throws InvalidInputException if the value needs a sensor that isn't there or is in another unit than the
     *     display's step
     */
    public Correction entered(CalibrationFactor readBack) {
        return entered(readBack, Optional.empty());
    }

    /**
     * The value was entered and the display reads it back.
     *
     * @param readBack what the display holds now
     * @param on the day
     * @return the correction as left, unconfirmed
     * @throws InvalidInputException as for {@link #entered(CalibrationFactor)}, or if the day is before that of the catch
     */
    public Correction entered(CalibrationFactor readBack, LocalDate on) {
        LocalDate found = evidence.caught().measuredOn();
        if (on.isBefore(found)) {
            throw new InvalidInputException(
                    "day of a correction", "not before that of its catch, " + found, on.toString());
        }
        return entered(readBack, Optional.of(on));
    }

    private Correction entered(CalibrationFactor readBack, Optional<LocalDate> on) {
        CalibrationFactor factor = evidence.inForce().withFactor(readBack).factor();
        Optional<Left> entered = Optional.of(new Left(factor, on));
        return new Correction(computed, basis, evidence, reason, entered, Optional.empty());
    }

    /**
     * Compares an independent catch with the correction.
     *
     * <p>A catch passes if its calibration error is within the tolerance and none of its findings doubts the data. One
     * without a count proves nothing about a calibration.
     *
     * @param later the verification of a catch made after the value was entered
     * @return the correction, confirmed if the catch passed and unchanged if it didn't
     * @throws InvalidInputException if nothing was entered yet; if the catch was made with another value in force, at
     *     another calibration point, or before the day of the first catch or of the entry; or if it is the very catch
     *     that the correction was made from
     */
    public Correction confirmedBy(Verification later) {
        return confirmedBy(VerificationSeries.of(List.of(later)));
    }

    /**
     * Compares independent catches, judged together, with the correction.
     *
     * @param later catches made after the value was entered
     * @return the correction, confirmed if the catches pass as a single one would have to
     * @throws InvalidInputException as for {@link #confirmedBy(Verification)}, for any of the catches
     */
    public Correction confirmedBy(VerificationSeries later) {
        for (Verification one : later.verifications()) {
            objection(one.source()).ifPresent(objection -> {
                throw objection;
            });
        }
        Optional<Proof> found = Optional.of(new Proof(later.last().source(), later.judgement()));
        return later.passes() ? new Correction(computed, basis, evidence, reason, left, found) : this;
    }

    /**
     * Whether a catch can be compared with the correction, whatever its result.
     *
     * @param later a catch
     * @return true if {@link #confirmedBy} has what it needs
     */
    public boolean isConfirmableBy(VerificationCatch later) {
        return objection(later).isEmpty();
    }

    private Optional<InvalidInputException> objection(VerificationCatch later) {
        if (left.isEmpty()) {
            return Optional.of(
                    new InvalidInputException("corrected calibration", "entered before it is confirmed", "nothing"));
        }
        CalibrationFactor inForce = later.inForce().factor();
        if (!inForce.equals(left.get().factor())) {
            return Optional.of(new InvalidInputException(
                    "calibration in force during the confirming catch",
                    "the value as left, " + left.get().factor(),
                    inForce.toString()));
        }
        if (!later.isComparableWith(evidence)) {
            return Optional.of(new InvalidInputException(
                    "confirming catch", "made at the calibration point of the corrected calibration", "at another"));
        }
        LocalDate madeOn = later.caught().measuredOn();
        LocalDate foundOn = evidence.caught().measuredOn();
        if (madeOn.isBefore(foundOn)) {
            return Optional.of(new InvalidInputException(
                    "day of the confirming catch",
                    "not before that of the catch that the correction was made from, " + foundOn,
                    madeOn.toString()));
        }
        if (left.get().on().filter(madeOn::isBefore).isPresent()) {
            return Optional.of(new InvalidInputException(
                    "day of the confirming catch",
                    "not before that on which the value was entered, "
                            + left.get().on().get(),
                    madeOn.toString()));
        }
        return later.isSameDischarge(evidence)
                ? Optional.of(new InvalidInputException(
                        "confirming catch",
                        "a different catch from the one that the correction was made from",
                        "the" + " same catch"))
                : Optional.empty();
    }

    /**
     * The value in force when the catch was made.
     *
     * @return as found
     */
    public CalibrationFactor asFound() {
        return evidence.inForce().factor();
    }

    /**
     * The value that the catch calls for.
     *
     * @return not rounded
     */
    public CalibrationFactor computed() {
        return computed;
    }

    /**
     * The value to enter.
     *
     * @return rounded to the display's step, where one is known
     */
    public CalibrationFactor toEnter() {
        return toEnter;
    }

    /**
     * The value that the display reads back.
     *
     * @return as left; none before it was entered
     */
    public Optional<CalibrationFactor> asLeft() {
        return left.map(Left::factor);
    }

    /**
     * The catch that the correction was made from.
     *
     * @return the evidence
     */
    public VerificationCatch evidence() {
        return evidence;
    }

    /**
     * The independent catch that passed.
     *
     * @return the confirming catch; none before
     */
    public Optional<VerificationCatch> confirmation() {
        return proof.map(Proof::source);
    }

    /**
     * What the corrected value was computed from.
     *
     * @return the catch alone, or together with the calibration before it
     */
    public Basis basis() {
        return basis;
    }

    /**
     * Why the calibration was to be corrected.
     *
     * @return what the catch said about the value as found
     */
    public Judgement reason() {
        return reason;
    }

    /**
     * The history so far: what was done when, with which value, and why.
     *
     * @return the steps in their order
     */
    public List<Step> history() {
        List<Step> steps = new ArrayList<>();
        Optional<LocalDate> found = Optional.of(evidence.caught().measuredOn());
        steps.add(new Step(found, Action.FOUND, asFound(), Optional.of(reason)));
        steps.add(new Step(found, Action.PROPOSED, toEnter, Optional.of(reason)));
        left.ifPresent(l -> steps.add(new Step(l.on(), Action.ENTERED, l.factor(), Optional.empty())));
        proof.ifPresent(p -> steps.add(new Step(
                Optional.of(p.source().caught().measuredOn()),
                Action.CONFIRMED,
                left.orElseThrow().factor(),
                Optional.of(p.judgement()))));
        return List.copyOf(steps);
    }

    /**
     * How far the correction has come.
     *
     * @return the status
     */
    public Status status() {
        if (proof.isPresent()) {
            return Status.CONFIRMED;
        }
        return left.isPresent() ? Status.UNCONFIRMED : Status.PROPOSED;
    }

    /**
     * What a person should know.
     *
     * @return whether the value is unconfirmed, and while it is, whether the display holds something else than was to be
     *     entered; a catch that proves the value as left settles both
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        if (status() == Status.UNCONFIRMED && !agrees(left.get().factor())) {
            findings.add(Finding.of(
                    FindingCode.READ_BACK_DIFFERS,
                    Map.of("readBack", number(left.get().factor().value()), "toEnter", number(toEnter.value()))));
        }
        if (status() == Status.UNCONFIRMED) {
            findings.add(Finding.of(FindingCode.CORRECTION_UNCONFIRMED));
        }
        return List.copyOf(findings);
    }

    /** Without a known step the display rounds as it likes. */
    private boolean agrees(CalibrationFactor readBack) {
        if (evidence.inForce().displayStep().isPresent()) {
            return readBack.equals(toEnter);
        }
        double read = evidence.inForce().withFactor(readBack).kilogramsPerRevolution();
        double wanted = evidence.inForce().withFactor(toEnter).kilogramsPerRevolution();
        return !Comparison.isAbove(Math.abs(read / wanted - 1), UNKNOWN_ROUNDING);
    }

    /** What is to be entered follows from what was computed. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Correction that
                && computed.equals(that.computed)
                && basis == that.basis
                && evidence.equals(that.evidence)
                && reason.equals(that.reason)
                && left.equals(that.left)
                && proof.equals(that.proof);
    }

    @Override
    public int hashCode() {
        return Objects.hash(computed, basis, evidence, reason, left, proof);
    }

    /**
     * From and to.
     *
     * @return for example "27.24 lb/rev to 26.8 lb/rev, PROPOSED"
     */
    @Override
    public String toString() {
        return asFound() + " to " + asLeft().orElse(toEnter) + ", " + status();
    }
}
