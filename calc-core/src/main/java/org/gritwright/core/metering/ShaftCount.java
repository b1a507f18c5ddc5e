package org.gritwright.core.metering;

import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What was counted while material was caught. Implementations are immutable, serializable values.
 *
 * <p>A count of pulses needs the drive's {@link ShaftSensor} to become revolutions, a control setting the table of an
 * {@link OpenLoop} drive; the others need neither.
 */
public sealed interface ShaftCount extends Serializable {
    /**
     * The revolutions of the sensed or watched shaft.
     *
     * @param feedback the drive's feedback
     * @return revolutions, greater than zero
     * @throws InvalidInputException if pulses were counted and the drive has no sensor, a counter didn't move between its
     *     readings, or a control setting is not in the drive's table or one at which its shaft stands still
     */
    double revolutions(DriveFeedback feedback);

    /**
     * Whether pulses were counted, so that the pulses per revolution matter.
     *
     * @return true for pulses and for counter readings
     */
    default boolean isInPulses() {
        return this instanceof Pulses || this instanceof CounterReadings;
    }

    /**
     * How uncertain the count is. Pulses: a difference of two counts is within ±1 pulse, triangular with random phase at
     * both ends and none missed, u = 1 ÷ √6 pulse.
     *
     * @param feedback the drive's feedback
     * @return standard uncertainty in revolutions; none where it isn't known, as for a shaft speed and a time
     * @throws InvalidInputException if pulses were counted and the drive has no sensor
     */
    default OptionalDouble uncertaintyRevolutions(DriveFeedback feedback) {
        return OptionalDouble.empty();
    }

    /**
     * A number of pulses.
     *
     * @param pulses the pulses counted, a whole number greater than zero
     */
    record Pulses(Quantity<PulseCount> pulses) implements ShaftCount {
        /**
         * Checks the count.
         *
         * @throws InvalidInputException if it is not a whole number greater than zero
         */
        public Pulses {
            Require.wholeNumber("counted pulses", PulseCount.class, pulses);
            Require.positive("counted pulses", PulseCount.class, pulses);
        }

        @Override
        public double revolutions(DriveFeedback feedback) {
            double perTurn = feedback.pulsesPerTurn()
                    .orElseThrow(() -> new InvalidInputException(
                            "count",
                            "revolutions or shaft speed × time, as the drive has no pulse sensor",
                            Amounts.format(pulses)));
            return Amounts.si(PulseCount.class, pulses) / perTurn;
        }

        @Override
        public OptionalDouble uncertaintyRevolutions(DriveFeedback feedback) {
            double revolutionsPerPulse = revolutions(feedback) / Amounts.si(PulseCount.class, pulses);
            return OptionalDouble.of(Distribution.TRIANGULAR.standardUncertainty(revolutionsPerPulse));
        }

        /**
         * The pulses.
         *
         * @return for example "356 pulse"
         */
        @Override
        public String toString() {
            return Amounts.format(pulses);
        }
    }

    /**
     * A counter read at start and stop. Two equal readings are readings of a counter that didn't move, 0 pulses; as a count
     * of a catch they are refused, for nothing is caught while the shaft stands still. A counter that went round exactly
     * once reads the same, and can't be told from it.
     *
     * @param start the reading at the start, a whole number
     * @param stop the reading at the stop, a whole number
     * @param modulus where the counter returns to zero, so that it may have rolled over once; none if it can't have
     */
    record CounterReadings(
            Quantity<PulseCount> start, Quantity<PulseCount> stop, Optional<Quantity<PulseCount>> modulus)
            implements ShaftCount {
        /**
         * Checks the readings.
         *
         * @throws InvalidInputException if a reading is not a whole number below the modulus, or the stop is below the start
         *     without a modulus
         */
        public CounterReadings {
            Require.given(CounterReadings.class, start, stop, modulus);
            Require.wholeNumber("counter at the start", PulseCount.class, start);
            Require.wholeNumber("counter at the stop", PulseCount.class, stop);
            if (modulus.isPresent()) {
                Require.wholeNumber("counter modulus", PulseCount.class, modulus.get());
                requireBelow("counter at the start", start, modulus.get());
                requireBelow("counter at the stop", stop, modulus.get());
            }
            boolean isBelow = Amounts.si(PulseCount.class, stop) < Amounts.si(PulseCount.class, start);
            if (isBelow && modulus.isEmpty()) {
                throw new InvalidInputException(
                        "counter at the stop",
                        "at least the start, " + Amounts.format(start) + ", or below it with a stated modulus",
                        Amounts.format(stop));
            }
        }

        private static void requireBelow(String field, Quantity<PulseCount> reading, Quantity<PulseCount> modulus) {
            if (!(Amounts.si(PulseCount.class, reading) < Amounts.si(PulseCount.class, modulus))) {
                throw new InvalidInputException(
                        field, "below the counter's modulus, " + Amounts.format(modulus), Amounts.format(reading));
            }
        }

        /**
         * The pulses between the readings, allowing for at most one roll-over.
         *
         * @return 0 or more; 0 where the counter didn't move
         */
        public Quantity<PulseCount> difference() {
            double difference = Amounts.si(PulseCount.class, stop) - Amounts.si(PulseCount.class, start);
            double rolledOver = difference >= 0 ? 0 : Amounts.si(PulseCount.class, modulus.orElseThrow());
            return Amounts.ofSi(difference + rolledOver, start.getUnit());
        }

        /**
         * The pulses between the readings as the count of a catch.
         *
         * @return the number of pulses, greater than zero
         * @throws InvalidInputException if the counter didn't move
         */
        public Pulses pulses() {
            Quantity<PulseCount> difference = difference();
            if (Amounts.si(PulseCount.class, difference) == 0) {
                throw new InvalidInputException(
                        "counter at the stop",
                        "different from the start, as the counter did not move"
                                + (modulus.isPresent() ? " or went round exactly once" : ""),
                        Amounts.format(stop));
            }
            return new Pulses(difference);
        }

        @Override
        public double revolutions(DriveFeedback feedback) {
            return pulses().revolutions(feedback);
        }

        @Override
        public OptionalDouble uncertaintyRevolutions(DriveFeedback feedback) {
            return pulses().uncertaintyRevolutions(feedback);
        }

        /**
         * Both readings, and the modulus if there is one.
         *
         * @return for example "counter from 9800 pulse to 156 pulse, modulus 10000 pulse"
         */
        @Override
        public String toString() {
            return "counter from " + Amounts.format(start) + " to " + Amounts.format(stop)
                    + modulus.map(one -> ", modulus " + Amounts.format(one)).orElse("");
        }

        /** What is written in its place, as an {@link Optional} can't be. */
        private Object writeReplace() {
            return SerialForm.of(this);
        }
    }

    /**
     * Revolutions counted by eye.
     *
     * @param revolutions the revolutions counted, greater than zero
     * @param standardUncertainty the standard uncertainty of the count, 0 or more
     */
    record ByEye(Quantity<RevolutionCount> revolutions, Quantity<RevolutionCount> standardUncertainty)
            implements ShaftCount {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is out of its range
         */
        public ByEye {
            Require.positive("counted revolutions", RevolutionCount.class, revolutions);
            Require.notNegative("uncertainty of the count", RevolutionCount.class, standardUncertainty);
        }

        @Override
        public double revolutions(DriveFeedback feedback) {
            return Amounts.si(RevolutionCount.class, revolutions);
        }

        @Override
        public OptionalDouble uncertaintyRevolutions(DriveFeedback feedback) {
            return OptionalDouble.of(Amounts.si(RevolutionCount.class, standardUncertainty));
        }

        /**
         * Count and uncertainty.
         *
         * @return for example "20 rev by eye, standard uncertainty 0.1 rev"
         */
        @Override
        public String toString() {
            return Amounts.format(revolutions) + " by eye, standard uncertainty " + Amounts.format(standardUncertainty);
        }
    }

    /**
     * A shaft that ran at a known speed for a known time.
     *
     * @param speed the shaft's speed under load, greater than zero
     * @param time the time it ran, greater than zero
     */
    record SpeedTimesTime(Quantity<RotationalSpeed> speed, Quantity<Time> time) implements ShaftCount {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is out of its range
         */
        public SpeedTimesTime {
            Require.positive("shaft speed", RotationalSpeed.class, speed);
            Require.positive("running time", Time.class, time);
        }

        @Override
        public double revolutions(DriveFeedback feedback) {
            return Amounts.si(RotationalSpeed.class, speed) * Amounts.si(Time.class, time);
        }

        /**
         * Speed and time.
         *
         * @return for example "40 rev/min for 30 s"
         */
        @Override
        public String toString() {
            return Amounts.format(speed) + " for " + Amounts.format(time);
        }
    }

    /**
     * A drive without feedback that ran at a control setting for a known time.
     *
     * @param setting the control setting, 0 or more
     * @param time the time it ran, greater than zero
     */
    record SettingTimesTime(Quantity<Dimensionless> setting, Quantity<Time> time) implements ShaftCount {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if one is out of its range
         */
        public SettingTimesTime {
            Require.notNegative("control setting", Dimensionless.class, setting);
            Require.positive("running time", Time.class, time);
        }

        @Override
        public double revolutions(DriveFeedback feedback) {
            if (feedback instanceof OpenLoop openLoop) {
                double revolutions =
                        Amounts.si(RotationalSpeed.class, openLoop.shaftSpeed(setting)) * Amounts.si(Time.class, time);
                Require.that(revolutions > 0, "control setting", "one at which the shaft turns", setting);
                return revolutions;
            }
            throw new InvalidInputException(
                    "count",
                    "in a form that needs no table of control settings, as the drive has none",
                    "control setting " + Amounts.format(setting));
        }

        /**
         * Control setting and time.
         *
         * @return for example "control setting 3 for 60 s"
         */
        @Override
        public String toString() {
            return "control setting " + Amounts.format(setting) + " for " + Amounts.format(time);
        }
    }
}
