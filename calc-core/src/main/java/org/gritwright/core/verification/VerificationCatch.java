package org.gritwright.core.verification;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A catch made to check a calibration: what was caught and counted, the calibration in force, the run, and what was displayed.
 *
 * <p>A displayed mass belongs to the calibration that was in force when it was displayed, and is turned into
 * revolutions with it once. So the corrected discharge per revolution is caught ÷ revolutions, whatever the display
 * holds later, and the same catch never corrects twice. Immutable, thread-safe, a value.
 *
 * @param observation the catch
 * @param inForce the calibration in force during the catch, at the catch's point
 * @param run the test run
 * @param indicated what the display showed, if anything
 */
public record VerificationCatch(
        Observation observation, CalibrationInForce inForce, TestRun run, Optional<IndicatedAmount> indicated) {
    /**
     * Checks that the calibration in force is for the catch's point, and that rate and display go with the material.
     *
     * @throws InvalidInputException if it is for another, or a mass stands where a volume belongs or the other way round
     */
    public VerificationCatch {
        Require.given(VerificationCatch.class, observation, inForce, run, indicated);
        if (!inForce.point().equals(observation.point())) {
            throw new InvalidInputException(
                    "calibration in force", "for the catch's point, " + observation.point(), "for " + inForce.point());
        }
        Material material = observation.point().material();
        run.kilogramsPerMeter(material);
        indicated.filter(one -> one.isVolume() != material.isLiquid()).ifPresent(one -> {
            throw new InvalidInputException(
                    "indicated amount",
                    material.isLiquid()
                            ? "a volume, as " + material.name() + " is a liquid"
                            : "a mass, as " + material.name() + " is granular",
                    Amounts.format(one.shown()));
        });
    }

    /**
     * A catch for which nothing was displayed; add what was with {@link #indicated(Quantity, Quantity)}.
     *
     * @param observation the catch
     * @param inForce the calibration in force
     * @param run the test run
     * @return the catch
     * @throws InvalidInputException if the calibration in force is for another point
     */
    public static VerificationCatch of(Observation observation, CalibrationInForce inForce, TestRun run) {
        return new VerificationCatch(observation, inForce, run, Optional.empty());
    }

    /**
     * The same catch with what the display showed.
     *
     * @param <Q> mass or, of a liquid, volume
     * @param shown the amount shown
     * @param resolution the display's step
     * @return the catch
     * @throws InvalidInputException if it isn't a mass or, of a liquid, a volume
     */
    public <Q extends Quantity<Q>> VerificationCatch indicated(Quantity<Q> shown, Quantity<Q> resolution) {
        return indicated(new IndicatedAmount(shown, resolution));
    }

    /**
     * The same catch with what the display showed.
     *
     * @param shown amount and step
     * @return the catch
     */
    public VerificationCatch indicated(IndicatedAmount shown) {
        return new VerificationCatch(observation, inForce, run, Optional.of(shown));
    }

    /**
     * The calibration point.
     *
     * @return material, metering and setting
     */
    public CalibrationPoint point() {
        return observation.point();
    }

    /**
     * What was caught.
     *
     * @return the amount
     */
    public Caught caught() {
        return observation.caught();
    }

    /**
     * What was counted.
     *
     * @return the count; none if nothing was counted
     */
    public Optional<ShaftCount> counted() {
        return observation.counted();
    }

    /**
     * The revolutions of the sensed shaft: counted, or else the displayed mass by the calibration in force.
     *
     * @return revolutions, greater than zero; none if nothing was counted or displayed
     */
    public OptionalDouble revolutions() {
        if (counted().isPresent()) {
            return observation.revolutions();
        }
        return indicated.isPresent()
                ? OptionalDouble.of(shownKilograms() / inForce.kilogramsPerRevolution())
                : OptionalDouble.empty();
    }

    /**
     * What was displayed, as a mass.
     *
     * @return kilograms; of a liquid at its stated density
     * @throws java.util.NoSuchElementException if nothing was displayed
     */
    public double shownKilograms() {
        return kilograms(indicated.orElseThrow().shown());
    }

    /**
     * The display's step, as a mass.
     *
     * @return kilograms; of a liquid at its stated density
     * @throws java.util.NoSuchElementException if nothing was displayed
     */
    public double stepKilograms() {
        return kilograms(indicated.orElseThrow().resolution());
    }

    private double kilograms(Quantity<?> displayed) {
        return IndicatedAmount.si(displayed) * point().material().kilogramsPerAmount();
    }

    /**
     * What should have been laid.
     *
     * @return kilograms; of a liquid at its stated density
     */
    public double expectedKilograms() {
        return run.expectedKilograms(point().material());
    }

    /** What the display adds up with each pulse; 0 where no sensor counts. */
    double kilogramsPerPulse() {
        OptionalDouble pulses = point().metering().feedback().pulsesPerTurn();
        return pulses.isPresent() ? inForce.kilogramsPerRevolution() / pulses.getAsDouble() : 0;
    }

    /** How far a displayed mass may be off because the display computes with more digits of its value than it shows. */
    double hiddenKilograms() {
        double step = inForce.displayStep()
                .map(one -> one.getValue().doubleValue()
                        / inForce.factor().value().getValue().doubleValue())
                .orElse(0.0);
        return step / 2 * shownKilograms();
    }

    /** Whether both were made at one point, whatever calibration was in force. */
    boolean isComparableWith(VerificationCatch evidence) {
        return point().equals(evidence.point());
    }

    /** What catches of one discharge have in common, as numbers: those that differ here are no one discharge. */
    record Numbers(
            double expectedKilograms,
            LocalDate weighedOn,
            String scale,
            List<Double> readings,
            OptionalDouble counted) {}

    Numbers numbers() {
        return new Numbers(
                expectedKilograms(),
                caught().measuredOn(),
                caught().instrument(),
                caught().readingsSi(),
                observation.revolutions());
    }

    /**
     * Whether this is the discharge of another catch, one with a count or a displayed mass, whatever calibration they
     * are compared with. Without a count the displayed mass tells: as it was, or as another calibration would have
     * shown the same revolutions.
     *
     * @param evidence another catch
     * @return true if both are one discharge, written down twice
     */
    public boolean isSameDischarge(VerificationCatch evidence) {
        if (!run.equals(evidence.run)
                || !caught().equals(evidence.caught())
                || !counted().equals(evidence.counted())) {
            return false;
        }
        if (counted().isPresent() || indicated.equals(evidence.indicated)) {
            return true;
        }
        return indicated.isPresent()
                && Math.abs(revolutions().orElseThrow() - evidence.revolutions().orElseThrow())
                        <= stepKilograms() / inForce.kilogramsPerRevolution();
    }

    /**
     * Assesses the catch by simple acceptance within the common limits.
     *
     * @param tolerance the caller's tolerance
     * @return the verification
     */
    public Verification assess(Tolerance tolerance) {
        return assess(tolerance, DecisionRule.SIMPLE, VerificationLimits.COMMON, Optional.empty());
    }

    /**
     * Assesses the catch.
     *
     * @param tolerance the caller's tolerance
     * @param rule how an uncertain error is compared with it
     * @param limits thresholds beyond which a verification is flagged, and allowances
     * @param calibration the calibration catches behind the value in force, or others at the same calibration point:
     *     this catch is assumed to scatter as they do, and a finding of theirs that doubts the data forbids a
     *     correction
     * @return the verification
     */
    public Verification assess(
            Tolerance tolerance, DecisionRule rule, VerificationLimits limits, Optional<Calibration> calibration) {
        return new Verification(this, tolerance, rule, limits, calibration);
    }
}
