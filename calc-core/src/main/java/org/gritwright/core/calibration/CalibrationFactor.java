package org.gritwright.core.calibration;

import java.util.Arrays;
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
 */
public final class CalibrationFactor {
    private final FactorForm form;
    private final Quantity<?> value;

    private CalibrationFactor(FactorForm form, Quantity<?> value) {
        this.form = form;
        this.value = value;
    }

    /**
     * A factor; its unit says its form.
     *
     * @param value for example 5.23 lb/rev or 19.12 pulse/lb; greater than zero
     * @return the factor
     * @throws InvalidInputException if the value is of another kind, or not finite and greater than zero
     */
    public static CalibrationFactor of(Quantity<?> value) {
        Class<?> kind = UnitSymbol.of(value.getUnit()).kind();
        FactorForm form = Arrays.stream(FactorForm.values())
                .filter(f -> f.kind().equals(kind))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException(
                        "calibration",
                        "a mass per revolution or pulse, or revolutions or pulses per mass",
                        Amounts.format(value)));
        double number = Require.finite("calibration", value.getValue().doubleValue());
        if (!(number > 0)) {
            throw new InvalidInputException("calibration", "greater than 0", Amounts.format(value));
        }
        return new CalibrationFactor(form, value);
    }

    /**
     * Reads a factor.
     *
     * @param text for example "5.23 lb/rev"
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
     * @throws InvalidInputException if the discharge is not finite and greater than zero, the unit is none of a
     *     calibration, or the form needs a sensor that isn't there
     */
    public static CalibrationFactor ofDischarge(double kilogramsPerRevolution, DriveFeedback feedback, Unit<?> unit) {
        if (!(kilogramsPerRevolution > 0 && kilogramsPerRevolution <= Double.MAX_VALUE)) {
            throw new InvalidInputException(
                    "discharge per revolution", "finite and greater than 0", kilogramsPerRevolution + " kg/rev");
        }
        CalibrationFactor one = of(Amounts.of(1, unit));
        double perCount = kilogramsPerRevolution / one.countsPerRevolution(feedback);
        double si = one.form.isReciprocal() ? 1 / perCount : perCount;
        return of(Amounts.ofSi(si, unit));
    }

    /**
     * The form.
     *
     * @return the form
     */
    public FactorForm form() {
        return form;
    }

    /**
     * The value as entered.
     *
     * @return the value with its unit
     */
    public Quantity<?> value() {
        return value;
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
        double perCount = form.isReciprocal() ? 1 / si : si;
        return Require.finite("discharge per revolution", perCount * countsPerRevolution(feedback));
    }

    /** The form was found from the unit's own kind, so the cast can't fail. */
    @SuppressWarnings({"unchecked", "rawtypes"})
    private static double si(Quantity<?> value) {
        return Amounts.si((Class) UnitSymbol.of(value.getUnit()).kind(), (Quantity) value);
    }

    private double countsPerRevolution(DriveFeedback feedback) {
        if (!form.isByPulse()) {
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
    public boolean equals(Object other) {
        return other instanceof CalibrationFactor that && value.equals(that.value);
    }

    @Override
    public int hashCode() {
        return Objects.hash(value);
    }

    /**
     * The value as entered.
     *
     * @return for example "5.23 lb/rev"
     */
    @Override
    public String toString() {
        return Amounts.format(value);
    }
}
