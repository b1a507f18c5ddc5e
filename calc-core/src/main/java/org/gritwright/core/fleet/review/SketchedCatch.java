package org.gritwright.core.fleet.review;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.quantity.Mass;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.core.weighing.Weighing;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A catch as the numbers that a slip would change.
 *
 * @param place which of the day's calibration points it was made at
 * @param source the catch as it was written down
 * @param verification what a verification catch was made with
 * @param kilograms what was caught
 * @param counted revolutions counted; none if nothing was
 * @param shownKilograms what the display showed; none if nothing
 * @param heldKilograms kilograms per revolution of the value in force; 0 for a calibration catch
 * @param expectedKilograms what the run should have laid; 0 for a calibration catch
 * @param looseKilograms what a revolution would discharge if it were as dense as loose material
 */
record SketchedCatch(
        int place,
        Observation source,
        Optional<VerificationCatch> verification,
        double kilograms,
        OptionalDouble counted,
        OptionalDouble shownKilograms,
        double heldKilograms,
        double expectedKilograms,
        double looseKilograms) {
    /** Of a count whose uncertainty nobody knows, in revolutions. */
    private static final double UNKNOWN_COUNT = 0.5;

    static SketchedCatch of(int place, Observation calibration) {
        return new SketchedCatch(
                place,
                calibration,
                Optional.empty(),
                calibration.kilograms(),
                calibration.revolutions(),
                OptionalDouble.empty(),
                0,
                0,
                loose(calibration.point()));
    }

    static SketchedCatch of(int place, VerificationCatch one) {
        return new SketchedCatch(
                place,
                one.observation(),
                Optional.of(one),
                one.observation().kilograms(),
                one.observation().revolutions(),
                one.indicated().isPresent() ? OptionalDouble.of(one.shownKilograms()) : OptionalDouble.empty(),
                one.inForce().kilogramsPerRevolution(),
                one.expectedKilograms(),
                loose(one.point()));
    }

    static double loose(CalibrationPoint point) {
        return Amounts.si(BulkDensity.class, point.material().looseBulkDensity())
                * point.metering().sweptCubicMetersPerRevolution(point.setting());
    }

    private SketchedCatch with(
            double mass, OptionalDouble count, OptionalDouble shown, double held, double expected, double loose) {
        return new SketchedCatch(place, source, verification, mass, count, shown, held, expected, loose);
    }

    SketchedCatch withKilograms(double other) {
        return with(other, counted, shownKilograms, heldKilograms, expectedKilograms, looseKilograms);
    }

    SketchedCatch withCounted(OptionalDouble other) {
        return with(kilograms, other, shownKilograms, heldKilograms, expectedKilograms, looseKilograms);
    }

    SketchedCatch withShown(double other) {
        return with(kilograms, counted, OptionalDouble.of(other), heldKilograms, expectedKilograms, looseKilograms);
    }

    SketchedCatch withHeld(double other) {
        return with(kilograms, counted, shownKilograms, other, expectedKilograms, looseKilograms);
    }

    SketchedCatch withLoose(double other) {
        return with(kilograms, counted, shownKilograms, heldKilograms, expectedKilograms, other);
    }

    CalibrationPoint point() {
        return source.point();
    }

    OffsetDateTime at() {
        return source.at();
    }

    List<Weighing> weighings() {
        return source.caught().weighings();
    }

    boolean isVerification() {
        return verification.isPresent();
    }

    boolean isInPulses() {
        return source.counted().filter(ShaftCount::isInPulses).isPresent();
    }

    boolean isTareMissing() {
        return !source.conditions().scaleZeroed()
                && !weighings().isEmpty()
                && weighings().stream().allMatch(one -> Amounts.si(Mass.class, one.tare()) == 0);
    }

    /** One pulse, in revolutions; a whole turn where no sensor counts. */
    double pulse() {
        return 1 / point().metering().feedback().pulsesPerTurn().orElse(1);
    }

    /** Counted, or else displayed. */
    OptionalDouble revolutions() {
        return counted.isPresent() ? counted : displayed();
    }

    OptionalDouble displayed() {
        return shownKilograms.isPresent()
                ? OptionalDouble.of(shownKilograms.getAsDouble() / heldKilograms)
                : OptionalDouble.empty();
    }

    /** The relative variance of what was caught by the scale's rounding. */
    double massVariance() {
        return square(source.roundingKilograms() / kilograms);
    }

    /** The relative variance of the revolutions; a count is as uncertain, relative to itself, as it was written down. */
    double turnsVariance() {
        return counted.isPresent()
                ? square(source.uncertaintyRevolutions().orElse(UNKNOWN_COUNT)
                        / source.revolutions().orElseThrow())
                : displayVariance();
    }

    /** The relative variance of what the display tells. */
    double displayVariance() {
        VerificationCatch made = verification.orElseThrow();
        double pulse = point().metering().feedback().pulsesPerTurn().isPresent() ? pulse() : 0;
        double shown = shownKilograms.orElseThrow();
        return square(made.stepKilograms() / shown) / 12 + square(pulse * heldKilograms / shown) / 3;
    }

    private static double square(double number) {
        return number * number;
    }
}
