package org.gritwright.core.calibration;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * A calibration as a display keeps it: one number in one of a few forms, as entered.
 *
 * <p>All forms say the same thing, mass per revolution R of the sensed shaft: with P pulses per revolution, mass per
 * pulse is R/P, revolutions per mass 1/R and pulses per mass P/R. Of a liquid it is volume instead of mass, and the pulses may be
 * a flow meter's, whose pulses per volume are called its K factor. Immutable, thread-safe, a value: equal when value and
 * unit are.
 *
 * @param value for example 5.23 lb/rev, 19.12 pulse/lb or 1200 pulse/gal; greater than zero
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
     * @param point the calibration point: forms by pulse need the sensor of its drive, forms by volume its liquid's density
     * @param unit the wanted unit, whose kind is one of the forms
     * @return the factor, not rounded
     * @throws InvalidInputException if the discharge is not finite and greater than zero, the unit is not a
     *     calibration's, or the form doesn't go with the drive or the material
     */
    public static CalibrationFactor ofDischarge(double kilogramsPerRevolution, CalibrationPoint point, Unit<?> unit) {
        Objects.requireNonNull(point, "point");
        Require.that(
                kilogramsPerRevolution > 0 && Double.isFinite(kilogramsPerRevolution),
                "discharge per revolution",
                "finite and greater than 0",
                () -> kilogramsPerRevolution + " kg/rev");
        CalibrationFactor one = of(Amounts.of(1, unit));
        double perCount = kilogramsPerRevolution / one.kilogramsPerUnit(point) / one.countsPerRevolution(point);
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
     * @param point the calibration point: forms by pulse need the sensor of its drive, forms by volume its liquid's density
     * @return kilograms per revolution of the sensed shaft, finite and greater than zero
     * @throws InvalidInputException if the form doesn't go with the drive or the material, or the result would not be finite
     */
    public double kilogramsPerRevolution(CalibrationPoint point) {
        return Require.finite(
                "discharge per revolution", perCount() * kilogramsPerUnit(point) * countsPerRevolution(point));
    }

    /** The form was found from the unit's own kind, so the cast can't fail. */
    @SuppressWarnings({"unchecked", "rawtypes"})
    private static double si(Quantity<?> value) {
        return Amounts.si((Class) UnitSymbol.of(value.getUnit()).kind(), (Quantity) value);
    }

    /**
     * The discharge of a granular material per revolution that the factor stands for, whatever the material.
     *
     * @param feedback the drive's feedback; forms by pulse need its sensor
     * @return kilograms per revolution of the sensed shaft, finite and greater than zero
     * @throws InvalidInputException if the form needs a sensor that isn't there or is one by volume, or the result would not be
     *     finite
     */
    public double kilogramsPerRevolution(DriveFeedback feedback) {
        if (form().isByVolume()) {
            throw unfit("by mass, as nobody says how dense a liquid it is for");
        }
        return Require.finite("discharge per revolution", perCount() * countsPerRevolution(feedback));
    }

    /** Mass or volume per revolution or pulse, in SI. */
    private double perCount() {
        double si = si(value);
        return form().isReciprocal() ? 1 / si : si;
    }

    private double countsPerRevolution(CalibrationPoint point) {
        if (!form().isByPulse() && !point.metering().hasShaft()) {
            throw unfit("by pulse, as a flow meter has no shaft");
        }
        return countsPerRevolution(point.metering().feedback());
    }

    private double countsPerRevolution(DriveFeedback feedback) {
        return form().isByPulse()
                ? feedback.pulsesPerTurn().orElseThrow(() -> unfit("by revolution, as the drive has no pulse sensor"))
                : 1;
    }

    /** 1 by mass; by volume the density. */
    private double kilogramsPerUnit(CalibrationPoint point) {
        Material material = point.material();
        if (form().isByVolume() != material.isLiquid()) {
            throw unfit(
                    material.isLiquid()
                            ? "by volume, as " + material.name() + " is a liquid"
                            : "by mass, as " + material.name() + " is granular");
        }
        return material.kilogramsPerAmount();
    }

    private InvalidInputException unfit(String accepted) {
        return new InvalidInputException(
                "calibration", accepted, "in " + UnitSymbol.of(value.getUnit()).symbol());
    }

    /**
     * The factor of another discharge per revolution, in the same form and unit.
     *
     * @param kilogramsPerRevolution the discharge per revolution
     * @param point the calibration point
     * @return the factor, not rounded
     * @throws InvalidInputException as for {@link #ofDischarge}
     */
    public CalibrationFactor withDischarge(double kilogramsPerRevolution, CalibrationPoint point) {
        return ofDischarge(kilogramsPerRevolution, point, value.getUnit());
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
