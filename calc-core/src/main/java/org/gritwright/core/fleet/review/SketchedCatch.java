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
 * @param made what no slip changes
 * @param kilograms what was caught
 * @param counted revolutions counted; none if nothing was
 * @param shownKilograms what the display showed; none if nothing
 * @param heldKilograms kilograms per revolution of the value in force; 0 for a calibration catch
 * @param expectedKilograms what the run should have laid; 0 for a calibration catch
 * @param looseKilograms what a revolution would discharge if it were as dense as loose material
 */
record SketchedCatch(
        Made made,
        double kilograms,
        OptionalDouble counted,
        OptionalDouble shownKilograms,
        double heldKilograms,
        double expectedKilograms,
        double looseKilograms) {
    /** Of a count whose uncertainty nobody knows, in revolutions. */
    private static final double UNKNOWN_COUNT = 0.5;

    /**
     * A catch as it was made, with what follows from that: many slips are tried on it.
     *
     * @param place which of the day's calibration points it was made at
     * @param source the catch as it was written down
     * @param verification what a verification catch was made with
     * @param kilograms what was caught
     * @param roundingKilograms the standard uncertainty of what was caught by the scale's rounding
     * @param isTareMissing whether only tares of 0 were written down of containers that may weigh something
     * @param pulsesPerTurn pulses per revolution; none where no sensor counts
     * @param countVariance the relative variance of the count, as it was written down; none if nothing was counted
     */
    record Made(
            int place,
            Observation source,
            Optional<VerificationCatch> verification,
            double kilograms,
            double roundingKilograms,
            boolean isTareMissing,
            OptionalDouble pulsesPerTurn,
            OptionalDouble countVariance) {
        private static Made of(int place, Observation source, Optional<VerificationCatch> verification) {
            return new Made(
                    place,
                    source,
                    verification,
                    source.kilograms(),
                    source.roundingKilograms(),
                    isTareMissing(source),
                    source.point().metering().feedback().pulsesPerTurn(),
                    source.counted().isPresent() ? OptionalDouble.of(countVariance(source)) : OptionalDouble.empty());
        }

        private static boolean isTareMissing(Observation source) {
            List<Weighing> weighings = source.caught().weighings();
            return !source.conditions().scaleZeroed()
                    && !weighings.isEmpty()
                    && weighings.stream().allMatch(one -> Amounts.si(Mass.class, one.tare()) == 0);
        }

        private static double countVariance(Observation source) {
            return square(source.uncertaintyRevolutions().orElse(UNKNOWN_COUNT)
                    / source.revolutions().orElseThrow());
        }
    }

    static SketchedCatch of(int place, Observation calibration) {
        return new SketchedCatch(
                Made.of(place, calibration, Optional.empty()),
                calibration.kilograms(),
                calibration.revolutions(),
                OptionalDouble.empty(),
                0,
                0,
                loose(calibration.point()));
    }

    static SketchedCatch of(int place, VerificationCatch one) {
        return new SketchedCatch(
                Made.of(place, one.observation(), Optional.of(one)),
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
        return new SketchedCatch(made, mass, count, shown, held, expected, loose);
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

    int place() {
        return made.place();
    }

    Observation source() {
        return made.source();
    }

    Optional<VerificationCatch> verification() {
        return made.verification();
    }

    CalibrationPoint point() {
        return source().point();
    }

    OffsetDateTime at() {
        return source().at();
    }

    List<Weighing> weighings() {
        return source().caught().weighings();
    }

    boolean isVerification() {
        return verification().isPresent();
    }

    boolean isInPulses() {
        return source().counted().filter(ShaftCount::isInPulses).isPresent();
    }

    boolean isTareMissing() {
        return made.isTareMissing();
    }

    /** Whether no slip with the mass is tried. */
    boolean isAsWeighed() {
        return kilograms == made.kilograms();
    }

    /** One pulse, in revolutions; a whole turn where no sensor counts. */
    double pulse() {
        return 1 / made.pulsesPerTurn().orElse(1);
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
        return square(made.roundingKilograms() / kilograms);
    }

    /** The relative variance of the revolutions; a count is as uncertain, relative to itself, as it was written down. */
    double turnsVariance() {
        return counted.isPresent() ? made.countVariance().orElseThrow() : displayVariance();
    }

    /** The relative variance of what the display tells. */
    double displayVariance() {
        double step = verification().orElseThrow().stepKilograms();
        double pulse = made.pulsesPerTurn().isPresent() ? pulse() : 0;
        double shown = shownKilograms.orElseThrow();
        return square(step / shown) / 12 + square(pulse * heldKilograms / shown) / 3;
    }

    private static double square(double number) {
        return number * number;
    }
}
