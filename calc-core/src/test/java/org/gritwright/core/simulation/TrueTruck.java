package org.gritwright.core.simulation;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.observation.Material;

/**
 * A truck whose truth is known, and what is done with it on the day.
 *
 * @param seed from which all of it was drawn
 * @param fill the true part of the swept volume that is discharged as loose material, a ratio
 * @param discharge true kilograms per revolution of the sensed shaft today, for each opening that is used
 * @param openings where the gate stands for each; none where there is nothing to set
 * @param repeatability how catches scatter by themselves, a relative standard deviation
 * @param drift by how much the discharge changed since the value in force was found, a ratio
 * @param valueError by how much the value in force missed the discharge of then, a ratio
 * @param plan what is done on the day
 * @param drive how the conveyor follows the controller
 */
record TrueTruck(
        long seed,
        String id,
        Trade trade,
        Equipment equipment,
        Material material,
        TrueScale scale,
        double fill,
        List<Double> discharge,
        List<Quantity<?>> openings,
        double repeatability,
        double drift,
        double valueError,
        Plan plan,
        Drive drive) {

    /** What tells how far the conveyor turned in a verification catch. */
    enum Reading {
        COUNT,
        DISPLAY,
        BOTH,
        NEITHER;

        boolean isCounted() {
            return this == COUNT || this == BOTH;
        }

        boolean isDisplayed() {
            return this == DISPLAY || this == BOTH;
        }
    }

    /** How tares come about. */
    enum TareHabit {
        /** Every container is weighed empty. */
        WEIGHED,
        /** One was weighed, and its tare is written for all. */
        ONE_FOR_ALL,
        /** The scale is set to zero with the empty container on it, and the tare is written as 0. */
        SCALE_ZEROED
    }

    /**
     * What is done on the day.
     *
     * @param calibrationCatches at each opening; 0 for none
     * @param verificationCatches at each opening
     * @param enters whether the day's calibration is entered before the verification catches
     * @param states whether the repeatability is stated in the document
     * @param readings whether counts are written as two counter readings
     * @param stepped the step of the display's mass, in the truck's unit
     * @param road whether the road speed is checked
     */
    record Plan(
            int calibrationCatches,
            int verificationCatches,
            Reading reading,
            boolean enters,
            boolean states,
            boolean readings,
            double stepped,
            TareHabit tares,
            boolean road) {}

    /**
     * How the conveyor follows the controller.
     *
     * @param lostSeconds of the wanted flow at each start
     * @param cap the greatest part of the wanted flow that it reaches; 1 for all
     */
    record Drive(double lostSeconds, double cap) {}

    TrueTruck with(Plan other) {
        return new TrueTruck(
                seed,
                id,
                trade,
                equipment,
                material,
                scale,
                fill,
                discharge,
                openings,
                repeatability,
                drift,
                valueError,
                other,
                drive);
    }

    TrueTruck drifted(double ratio) {
        return new TrueTruck(
                seed,
                id,
                trade,
                equipment,
                material,
                scale,
                fill,
                discharge,
                openings,
                repeatability,
                ratio,
                valueError,
                plan,
                drive);
    }

    TrueTruck with(Drive other) {
        return new TrueTruck(
                seed,
                id,
                trade,
                equipment,
                material,
                scale,
                fill,
                discharge,
                openings,
                repeatability,
                drift,
                valueError,
                plan,
                other);
    }

    boolean hasSensor() {
        return equipment.pulsesPerRevolution().isPresent();
    }

    int pulsesPerRevolution() {
        return equipment.pulsesPerRevolution().orElse(0);
    }

    /** The value that was in force when the day began, in kilograms per revolution, before a display rounds it. */
    double foundKilogramsPerRevolution(int opening) {
        return discharge.get(opening) / (1 + drift) * (1 + valueError);
    }

    /** Nothing is missing that an uncertainty needs. */
    boolean isComplete() {
        return scale.entry().accuracy().isPresent()
                && (plan.calibrationCatches() >= 3 || plan.states())
                && plan.verificationCatches() > 0
                && plan.reading() != Reading.NEITHER
                && plan.road();
    }
}
