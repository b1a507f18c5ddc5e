package org.gritwright.core.simulation;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerDistance;

/** The units that a truck's documents are written in. */
@SuppressWarnings("ImmutableEnumChecker") // units never change
enum Trade {
    US(
            SpreadingUnits.POUND,
            SpreadingUnits.INCH,
            SpreadingUnits.MILE,
            SpreadingUnits.POUND_PER_REVOLUTION,
            SpreadingUnits.POUND_PER_MILE,
            SpreadingUnits.MILE_PER_HOUR,
            SpreadingUnits.POUND_PER_CUBIC_FOOT,
            SpreadingUnits.PULSE_PER_MILE),
    METRIC(
            SpreadingUnits.KILOGRAM,
            SpreadingUnits.CENTIMETER,
            SpreadingUnits.KILOMETER,
            SpreadingUnits.KILOGRAM_PER_REVOLUTION,
            SpreadingUnits.KILOGRAM_PER_KILOMETER,
            SpreadingUnits.KILOMETER_PER_HOUR,
            SpreadingUnits.KILOGRAM_PER_CUBIC_METER,
            SpreadingUnits.PULSE_PER_KILOMETER);

    final Unit<Mass> mass;
    final Unit<Length> opening;
    final Unit<Length> distance;
    final Unit<DischargePerRevolution> discharge;
    final Unit<ApplicationRate> rate;
    final Unit<Speed> speed;
    final Unit<BulkDensity> density;
    final Unit<PulsesPerDistance> road;

    Trade(
            Unit<Mass> mass,
            Unit<Length> opening,
            Unit<Length> distance,
            Unit<DischargePerRevolution> discharge,
            Unit<ApplicationRate> rate,
            Unit<Speed> speed,
            Unit<BulkDensity> density,
            Unit<PulsesPerDistance> road) {
        this.mass = mass;
        this.opening = opening;
        this.distance = distance;
        this.discharge = discharge;
        this.rate = rate;
        this.speed = speed;
        this.density = density;
        this.road = road;
    }

    /** So many kilograms in the trade's unit. */
    double ofKilograms(double kilograms) {
        return kilograms / Amounts.si(Mass.class, Amounts.of(1, mass));
    }

    /** A number as a person writes it, to a step, without the last digits of a computer. */
    static double written(double number, double step) {
        double steps = Math.rint(number / step);
        double perUnit = Math.rint(1 / step);
        return Math.abs(perUnit * step - 1) < 1e-9 ? steps / perUnit : steps * step;
    }

    static <Q extends Quantity<Q>> Quantity<Q> written(double number, double step, Unit<Q> unit) {
        return Amounts.of(written(number, step), unit);
    }

    /** A step of three to four digits for a number: 0.01 for 24.95. */
    static double displayStep(double number) {
        return Math.pow(10, Math.floor(Math.log10(number)) - 3);
    }
}
