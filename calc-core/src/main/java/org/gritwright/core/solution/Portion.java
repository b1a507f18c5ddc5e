package org.gritwright.core.solution;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * So much of a solution, by mass. Immutable, thread-safe, a value.
 *
 * @param solution the solution
 * @param mass its mass, greater than zero
 */
public record Portion(Solution solution, Quantity<Mass> mass) {
    /**
     * Checks the mass.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public Portion {
        Require.given(Portion.class, solution, mass);
        Require.positive("mass of the solution", Mass.class, mass);
    }

    /**
     * A portion by its volume.
     *
     * @param solution the solution
     * @param volume its volume, greater than zero
     * @param temperature its temperature
     * @return volume × density, in the trade's unit of mass beside the volume's
     * @throws org.gritwright.units.InvalidInputException if the volume is not greater than zero, or the density not known
     */
    public static Portion ofVolume(Solution solution, Quantity<Volume> volume, Quantity<Temperature> temperature) {
        Objects.requireNonNull(volume, "volume");
        Objects.requireNonNull(temperature, "temperature");
        Objects.requireNonNull(solution, "solution");
        Require.positive("volume of the solution", Volume.class, volume);
        double kilograms =
                Amounts.si(Volume.class, volume) * solution.kilogramsPerCubicMeter(solution.celsius(temperature));
        Unit<Mass> unit = UnitSymbol.tradeUnit(Mass.class, volume);
        return new Portion(solution, Amounts.ofSi(kilograms, unit));
    }

    double kilograms() {
        return Amounts.si(Mass.class, mass);
    }

    double saltKilograms() {
        return kilograms() * solution.ratio();
    }

    /**
     * The salt in it, without crystal water.
     *
     * @return mass × share, in the unit of the mass
     */
    public Quantity<Mass> chemical() {
        return Amounts.ofSi(saltKilograms(), mass.getUnit());
    }

    /**
     * The water in it.
     *
     * @return mass less salt, in the unit of the mass
     */
    public Quantity<Mass> water() {
        return Amounts.ofSi(kilograms() - saltKilograms(), mass.getUnit());
    }

    /**
     * Its volume.
     *
     * @param temperature its temperature
     * @param unit the unit that is wanted
     * @return mass ÷ density, as uncertain as the density; the mass is taken as exact
     * @throws org.gritwright.units.InvalidInputException if the density isn't known
     */
    public Measured<Volume> volume(Quantity<Temperature> temperature, Unit<Volume> unit) {
        Objects.requireNonNull(unit, "unit");
        Measured<BulkDensity> density = solution.density(temperature);
        double kilogramsPerCubicMeter = Amounts.in(density.value(), SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
        double cubicMeters = kilograms() / kilogramsPerCubicMeter;
        return new Contributions<>(unit)
                .add("density", BulkDensity.class, density, -cubicMeters / kilogramsPerCubicMeter)
                .of(cubicMeters);
    }
}
