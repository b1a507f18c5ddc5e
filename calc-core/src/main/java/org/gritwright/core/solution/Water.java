package org.gritwright.core.solution;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

/**
 * The density of pure water without air at 101.325 kPa: ρ = a₅·[1 − (t + a₁)²·(t + a₂) ÷ (a₃·(t + a₄))], from 0 °C to 40 °C, after
 * M. Tanaka and others, Recommended table for the density of water between 0 °C and 40 °C based on recent experimental reports,
 * Metrologia 38, 2001 (title from memory). Its own uncertainty, about a part in a million, is nothing here; water from a tap
 * holds something dissolved and is heavier.
 *
 * <p>Not by Kell's equation: one reprint of it has 16.897850·10⁻³ where 16.879850·10⁻³ belongs, which makes water at 20 °C a quarter
 * of a kilogram per cubic meter too light.
 */
public final class Water {
    static final double COLDEST = 0;
    static final double WARMEST = 40;

    private Water() {}

    /**
     * The density of water.
     *
     * @param temperature 0 °C to 40 °C
     * @return mass per volume, in kg/m³
     * @throws org.gritwright.units.InvalidInputException if the temperature is outside
     */
    public static Quantity<BulkDensity> density(Quantity<Temperature> temperature) {
        Objects.requireNonNull(temperature, "temperature");
        return Amounts.of(
                kilogramsPerCubicMeter(Celsius.within("temperature of the water", temperature, COLDEST, WARMEST)),
                SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }

    static double kilogramsPerCubicMeter(double celsius) {
        double fromDensest = celsius - 3.983035;
        return 999.974950 * (1 - fromDensest * fromDensest * (celsius + 301.797) / (522528.9 * (celsius + 69.34881)));
    }
}
