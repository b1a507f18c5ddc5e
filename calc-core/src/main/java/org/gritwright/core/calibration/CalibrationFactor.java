package org.gritwright.core.calibration;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulsesPerRevolution;

/**
 * A calibration as a display keeps it: one number in one of four forms, as entered.
 *
 * <p>All forms say the same thing, mass per revolution R of the sensed shaft: with P pulses per revolution, mass per
 * pulse is R/P, revolutions per mass 1/R and pulses per mass P/R. Immutable, thread-safe, a value: equal when value and
 * unit are.
 *
 * @param value for example 5.23 lb/rev or 19.12 pulse/lb; greater than zero
 */
public record CalibrationFactor(Quantity<?> value) {
    /**
     * Checks the value.
     *
     * @throws InvalidInputException if the value is of another kind, or not finite and greater than zero
     */
    public CalibrationFactor {
        FactorForm.of(value);
        double number = Require.finite("calibration", value.getValue().doubleValue());
        Require.that(number > 0, "calibration", "greater than 0", value);
    }

    /**
     * A factor; its unit says its form.
     *
     * @param value for example 27.24 lb/rev or 2.203 pulse/lb; greater than zero
     * @return the factor
     * @throws InvalidInputException if the value is of another kind, or not finite and greater than zero
     */
    public static CalibrationFactor of(Quantity<?> value) {
        return new CalibrationFactor(value);
    }

    /**
     * Reads a factor.
     *
     * @param text for example "27.24 lb/rev"
     * @return the factor
     * @throws InvalidInputException if the text is not a quantity or not a calibration
     */
    public static CalibrationFactor parse(String text) {
        return of(Amounts.parseAny(text));
    }

    /**
     * The factor that a discharge per revolution has in a unit.
     *
     * @param kilogramsPerRevolution the discharge per revolution of the sensed shaft, greater than zero
     * @param feedback the drive's feedback; forms by pulse need its sensor
     * @param unit the wanted unit, whose kind is one of the four forms
     * @return the factor, not rounded
     * @throws InvalidInputException if the discharge is not finite and greater than zero, the unit is not a
     *     calibration's, or the form needs a sensor that isn't there
     */
    public static CalibrationFactor ofDischarge(double kilogramsPerRevolution, DriveFeedback feedback, Unit<?> unit) {
        Objects.requireNonNull(feedback, "feedback");
        Require.that(
                kilogramsPerRevolution > 0 && Double.isFinite(kilogramsPerRevolution),
                "discharge per revolution",
                "finite and greater than 0",
                () -> kilogramsPerRevolution + " kg/rev");
        CalibrationFactor one = of(Amounts.of(1, unit));
        double perCount = kilogramsPerRevolution / one.countsPerRevolution(feedback);
        double si = one.form().isReciprocal() ? 1 / perCount : perCount;
        return of(Amounts.ofSi(si, unit));
    }

    /**
     * The form.
     *
     * @return the form
     */
    public FactorForm form() {
        return FactorForm.of(value);
    }

    /**
     * The discharge per revolution that the factor stands for.
     *
     * @param feedback the drive's feedback; forms by pulse need its sensor
     * @return kilograms per revolution of the sensed shaft, finite and greater than zero
     * @throws InvalidInputException if the form needs a sensor that isn't there, or the result would not be finite
     */
    public double kilogramsPerRevolution(DriveFeedback feedback) {
        double si = si(value);
        double perCount = form().isReciprocal() ? 1 / si : si;
        return Require.finite("discharge per revolution", perCount * countsPerRevolution(feedback));
    }

    /** The form was found from the unit's own kind, so the cast can't fail. */
    @SuppressWarnings({"unchecked", "rawtypes"})
    private static double si(Quantity<?> value) {
        return Amounts.si((Class) UnitSymbol.of(value.getUnit()).kind(), (Quantity) value);
    }

    private double countsPerRevolution(DriveFeedback feedback) {
        if (!form().isByPulse()) {
            return 1;
        }
        if (feedback instanceof ShaftSensor sensor) {
            return Amounts.si(PulsesPerRevolution.class, sensor.pulsesPerRevolution());
        }
        throw new InvalidInputException(
                "calibration",
                "by revolution, as the drive has no pulse sensor",
                "in " + UnitSymbol.of(value.getUnit()).symbol());
    }

    /**
     * The factor of another discharge per revolution, in the same form and unit.
     *
     * @param kilogramsPerRevolution the discharge per revolution
     * @param feedback the drive's feedback
     * @return the factor, not rounded
     * @throws InvalidInputException as for {@link #ofDischarge}
     */
    public CalibrationFactor withDischarge(double kilogramsPerRevolution, DriveFeedback feedback) {
        return ofDischarge(kilogramsPerRevolution, feedback, value.getUnit());
    }

    /**
     * The factor as a display can hold it.
     *
     * @param resolution the display's step, in the factor's own unit
     * @return the nearest multiple of the resolution, a half rounded up
     * @throws InvalidInputException if the resolution is in another unit, or so coarse that nothing would be left
     */
    @SuppressWarnings({"unchecked", "rawtypes"}) // Rounded compares the units
    public CalibrationFactor roundedTo(Quantity<?> resolution) {
        return of(Rounded.toResolution((Quantity) value, (Quantity) resolution));
    }

    @Override
    public String toString() {
        return Amounts.format(value);
    }
}
