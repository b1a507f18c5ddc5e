package org.gritwright.core.telemetry;

import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.Material;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * What a count of the counter stands for, in the whole units of rows: milligrams of grains, microliters of a liquid. Mass per
 * revolution R and P pulses per revolution give R/P per count; of a liquid of density ρ, R/P/ρ.
 */
final class AmountPerCount {
    /** Milligrams in a kilogram. */
    static final double PER_KILOGRAM = 1e6;

    /** Microliters in a cubic meter. */
    static final double PER_CUBIC_METER = 1e9;

    /** What squares of it are summed in 128 bits for. */
    private static final double MOST = 1e9;

    private AmountPerCount() {}

    static double of(CalibrationInForce inForce) {
        return of(
                inForce.kilogramsPerRevolution(),
                inForce.point().metering(),
                inForce.point().material());
    }

    static double of(double kilogramsPerTurn, Metering metering, Material material) {
        double perCount = kilogramsPerTurn / countsPerTurn(metering);
        double whole = material.isLiquid()
                ? perCount / material.kilogramsPerAmount() * PER_CUBIC_METER
                : perCount * PER_KILOGRAM;
        Require.that(
                whole <= MOST,
                "calibration in force",
                "at most 1 t or 1 m³ per pulse",
                () -> whole + (material.isLiquid() ? " µL per pulse" : " mg per pulse"));
        return whole;
    }

    static double countsPerTurn(Metering metering) {
        return metering.feedback()
                .pulsesPerTurn()
                .orElseThrow(() -> new InvalidInputException(
                        "drive feedback",
                        "a sensor whose pulses rows can count",
                        metering.feedback().toString()));
    }
}
