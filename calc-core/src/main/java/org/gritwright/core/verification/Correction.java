package org.gritwright.core.verification;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.measurement.Comparison;
import org.gritwright.units.InvalidInputException;

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

    private final CalibrationFactor asFound;
    private final CalibrationFactor computed;
    private final CalibrationFactor toEnter;
    private final VerificationCatch evidence;
    private final Optional<CalibrationFactor> asLeft;
    private final Optional<VerificationCatch> confirmation;

    private Correction(
            CalibrationFactor asFound,
            CalibrationFactor computed,
            CalibrationFactor toEnter,
            VerificationCatch evidence,
            Optional<CalibrationFactor> asLeft,
            Optional<VerificationCatch> confirmation) {
        this.asFound = asFound;
        this.computed = computed;
        this.toEnter = toEnter;
        this.evidence = evidence;
        this.asLeft = asLeft;
        this.confirmation = confirmation;
    }

    static Correction proposed(
            CalibrationFactor asFound,
            CalibrationFactor computed,
            CalibrationFactor toEnter,
            VerificationCatch evidence) {
        return new Correction(asFound, computed, toEnter, evidence, Optional.empty(), Optional.empty());
    }

    /**
     * The value was entered and the display reads it back.
     *
     * @param readBack what the display holds now
     * @return the correction as left, unconfirmed
     * @throws InvalidInputException if the value needs a sensor that isn't there or is in another unit than the
     *     display's step
     */
    public Correction entered(CalibrationFactor readBack) {
        CalibrationInForce left = evidence.inForce().withFactor(readBack);
        return new Correction(asFound, computed, toEnter, evidence, Optional.of(left.factor()), Optional.empty());
    }

    /**
     * Holds an independent catch against the correction.
     *
     * <p>A catch passes if its calibration error is within the tolerance and none of its findings doubts the data. One
     * without a count proves nothing about a calibration.
     *
     * @param later the verification of a catch made after the value was entered
     * @return the correction, confirmed if the catch passed and unchanged if it didn't
     * @throws InvalidInputException if nothing was entered yet; if the catch was made with another value in force, with
     *     another spreader, material or gate opening, or on an earlier day; or if it is the very catch that the
     *     correction was made from
     */
    public Correction confirmedBy(Verification later) {
        objection(later.source()).ifPresent(objection -> {
            throw objection;
        });
        boolean passed = later.verdict() == Verdict.WITHIN_TOLERANCE
                && later.calibrationError().isPresent()
                && later.findings().stream().noneMatch(f -> f.code().doubtsData());
        return passed
                ? new Correction(asFound, computed, toEnter, evidence, asLeft, Optional.of(later.source()))
                : this;
    }

    /**
     * Whether a catch can be held against the correction, whatever its result.
     *
     * @param later a catch
     * @return true if {@link #confirmedBy} has what it needs
     */
    public boolean isConfirmableBy(VerificationCatch later) {
        return objection(later).isEmpty();
    }

    private Optional<InvalidInputException> objection(VerificationCatch later) {
        if (asLeft.isEmpty()) {
            return Optional.of(
                    new InvalidInputException("corrected calibration", "entered before it is confirmed", "nothing"));
        }
        CalibrationFactor inForce = later.inForce().factor();
        if (!inForce.equals(asLeft.get())) {
            return Optional.of(new InvalidInputException(
                    "calibration in force during the confirming catch",
                    "the value as left, " + asLeft.get(),
                    inForce.toString()));
        }
        if (!later.isComparableWith(evidence)) {
            return Optional.of(new InvalidInputException(
                    "confirming catch",
                    "made with the spreader, material and gate opening of the corrected calibration",
                    "with another"));
        }
        LocalDate madeOn = later.caught().weighedOn();
        LocalDate foundOn = evidence.caught().weighedOn();
        if (madeOn.isBefore(foundOn)) {
            return Optional.of(new InvalidInputException(
                    "day of the confirming catch",
                    "not before that of the catch which the correction was made from, " + foundOn,
                    madeOn.toString()));
        }
        return later.isSameDischarge(evidence)
                ? Optional.of(new InvalidInputException(
                        "confirming catch", "another one than that the correction was made from", "the same catch"))
                : Optional.empty();
    }

    /**
     * The value in force when the catch was made.
     *
     * @return as found
     */
    public CalibrationFactor asFound() {
        return asFound;
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
        return asLeft;
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
        return confirmation;
    }

    /**
     * How far the correction has come.
     *
     * @return the status
     */
    public Status status() {
        if (confirmation.isPresent()) {
            return Status.CONFIRMED;
        }
        return asLeft.isPresent() ? Status.UNCONFIRMED : Status.PROPOSED;
    }

    /**
     * What a person should know.
     *
     * @return whether the value is unconfirmed, and while it is, whether the display holds something else than was to be
     *     entered; a catch that proves the value as left settles both
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        if (status() == Status.UNCONFIRMED && !agrees(asLeft.get())) {
            findings.add(Finding.of(
                    FindingCode.READ_BACK_DIFFERS,
                    Map.of("readBack", asLeft.get().value(), "toEnter", toEnter.value())));
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

    /** What was computed and is to be entered follows from the evidence. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Correction that
                && evidence.equals(that.evidence)
                && asLeft.equals(that.asLeft)
                && confirmation.equals(that.confirmation);
    }

    @Override
    public int hashCode() {
        return Objects.hash(evidence, asLeft, confirmation);
    }

    /**
     * From and to.
     *
     * @return for example "5.2864 lb/rev to 5.23 lb/rev, PROPOSED"
     */
    @Override
    public String toString() {
        return asFound + " to " + asLeft.orElse(toEnter) + ", " + status();
    }
}
