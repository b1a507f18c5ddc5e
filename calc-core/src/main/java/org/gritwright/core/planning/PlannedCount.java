package org.gritwright.core.planning;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/** How the revolutions of a planned catch will become known. Implementations are immutable values. */
public sealed interface PlannedCount {
    /**
     * How uncertain the count of a catch will be, however long it runs.
     *
     * @return standard uncertainty in revolutions; none where it isn't known
     */
    OptionalDouble uncertaintyRevolutions();

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
            return new Pulses(sensor.pulsesPerRevolution());
        }
        return byEye.<PlannedCount>map(ByEye::new).orElseGet(Timed::new);
    }

    /**
     * Pulses of a sensor. A difference of two counts is within ±1 pulse, triangular, u = 1 ÷ √6 pulse.
     *
     * @param perRevolution pulses per revolution of the sensed shaft, greater than zero
     */
    record Pulses(Quantity<PulsesPerRevolution> perRevolution) implements PlannedCount {
        /**
         * Checks the value.
         *
         * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
         */
        public Pulses {
            Require.positive("pulses per revolution", PulsesPerRevolution.class, perRevolution);
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
     */
    record ByEye(Quantity<RevolutionCount> standardUncertainty) implements PlannedCount {
        /**
         * Checks the value.
         *
         * @throws org.gritwright.units.InvalidInputException if it is negative
         */
        public ByEye {
            Require.notNegative("uncertainty of the count", RevolutionCount.class, standardUncertainty);
        }

        @Override
        public OptionalDouble uncertaintyRevolutions() {
            return OptionalDouble.of(Amounts.si(RevolutionCount.class, standardUncertainty));
        }
    }

    /** A shaft speed or a control setting for a time: nobody knows how uncertain its revolutions are. */
    record Timed() implements PlannedCount {
        @Override
        public OptionalDouble uncertaintyRevolutions() {
            return OptionalDouble.empty();
        }
    }
}
