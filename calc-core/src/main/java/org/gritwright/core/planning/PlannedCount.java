package org.gritwright.core.planning;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.MeterPulses;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * How the revolutions of a planned catch will become known. Implementations are immutable values.
 *
 * <p>The gear ratio is that of the drive's feedback: revolutions of the sensed or watched shaft per turn of the conveyor's
 * own drive shaft. A constructor without it is for a sensor on that shaft.
 */
public sealed interface PlannedCount {
    /**
     * How uncertain the count of a catch will be, however long it runs.
     *
     * @return standard uncertainty in revolutions; none where it isn't known
     */
    OptionalDouble uncertaintyRevolutions();

    /**
     * Revolutions of the sensed or watched shaft per turn of the conveyor's own drive shaft.
     *
     * @return the gear ratio, greater than zero
     */
    Quantity<Dimensionless> gearRatio();

    /**
     * The count that a drive allows: its sensor's pulses; without one the count by eye, if its uncertainty is stated; else
     * a setting or a speed for a time.
     *
     * @param feedback the drive's feedback
     * @param byEye the standard uncertainty of a count by eye, if somebody is to count
     * @return the count
     */
    static PlannedCount with(DriveFeedback feedback, Optional<Quantity<RevolutionCount>> byEye) {
        Objects.requireNonNull(feedback, "feedback");
        Objects.requireNonNull(byEye, "byEye");
        if (feedback instanceof ShaftSensor sensor) {
            return new Pulses(sensor.pulsesPerRevolution(), sensor.gearRatio());
        }
        if (feedback instanceof MeterPulses) {
            return new Pulses(Amounts.of(1, SpreadingUnits.PULSE_PER_REVOLUTION), feedback.gearRatio());
        }
        return byEye.<PlannedCount>map(uncertainty -> new ByEye(uncertainty, feedback.gearRatio()))
                .orElseGet(() -> new Timed(feedback.gearRatio()));
    }

    /**
     * Pulses of a sensor. A difference of two counts is within ±1 pulse, triangular, u = 1 ÷ √6 pulse.
     *
     * @param perRevolution pulses per revolution of the sensed shaft, greater than zero
     * @param gearRatio revolutions of the sensed or watched shaft per turn of the conveyor's, greater than zero
     */
    record Pulses(Quantity<PulsesPerRevolution> perRevolution, Quantity<Dimensionless> gearRatio)
            implements PlannedCount {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is not greater than zero
         */
        public Pulses {
            Require.positive("pulses per revolution", PulsesPerRevolution.class, perRevolution);
            Require.positive("gear ratio", Dimensionless.class, gearRatio);
        }

        /**
         * Pulses of a sensor on the conveyor's own drive shaft.
         *
         * @param perRevolution pulses per revolution
         * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
         */
        public Pulses(Quantity<PulsesPerRevolution> perRevolution) {
            this(perRevolution, Amounts.of(1, SpreadingUnits.ONE));
        }

        @Override
        public OptionalDouble uncertaintyRevolutions() {
            double pulses = Amounts.si(PulsesPerRevolution.class, perRevolution);
            return OptionalDouble.of(Distribution.TRIANGULAR.standardUncertainty(1 / pulses));
        }
    }

    /**
     * Revolutions counted by eye.
     *
     * @param standardUncertainty the standard uncertainty of a count, 0 or more
     * @param gearRatio revolutions of the sensed or watched shaft per turn of the conveyor's, greater than zero
     */
    record ByEye(Quantity<RevolutionCount> standardUncertainty, Quantity<Dimensionless> gearRatio)
            implements PlannedCount {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is out of its range
         */
        public ByEye {
            Require.notNegative("uncertainty of the count", RevolutionCount.class, standardUncertainty);
            Require.positive("gear ratio", Dimensionless.class, gearRatio);
        }

        /**
         * Revolutions of the conveyor's own drive shaft.
         *
         * @param standardUncertainty the standard uncertainty of a count
         * @throws org.gritwright.units.InvalidInputException if it is negative
         */
        public ByEye(Quantity<RevolutionCount> standardUncertainty) {
            this(standardUncertainty, Amounts.of(1, SpreadingUnits.ONE));
        }

        @Override
        public OptionalDouble uncertaintyRevolutions() {
            return OptionalDouble.of(Amounts.si(RevolutionCount.class, standardUncertainty));
        }
    }

    /**
     * A shaft speed or a control setting for a time: nobody knows how uncertain its revolutions are.
     *
     * @param gearRatio revolutions of the sensed or watched shaft per turn of the conveyor's, greater than zero
     */
    record Timed(Quantity<Dimensionless> gearRatio) implements PlannedCount {
        /**
         * Checks the value.
         *
         * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
         */
        public Timed {
            Require.positive("gear ratio", Dimensionless.class, gearRatio);
        }

        /** The speed of the conveyor's own drive shaft. */
        public Timed() {
            this(Amounts.of(1, SpreadingUnits.ONE));
        }

        @Override
        public OptionalDouble uncertaintyRevolutions() {
            return OptionalDouble.empty();
        }
    }
}
