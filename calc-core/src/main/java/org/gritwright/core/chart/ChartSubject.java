package org.gritwright.core.chart;

import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * What a chart is for, so that its title can say so. Immutable, thread-safe, a value.
 *
 * @param truck the truck's name
 * @param material the material's name
 * @param gate where the gate stands; {@link Setting#none()} where there is nothing to set
 */
public record ChartSubject(String truck, String material, Setting gate) {
    /**
     * Checks the texts.
     *
     * @throws org.gritwright.units.InvalidInputException if one is blank
     */
    public ChartSubject {
        Require.given(ChartSubject.class, truck, material, gate);
        Require.text("truck", truck);
        Require.text("material", material);
    }

    /**
     * Truck, material and gate.
     *
     * @return for example "T-12: road salt, gate at 2 in"
     */
    @Override
    public String toString() {
        return truck + ": " + material
                + gate.quantity().map(at -> ", gate at " + gate).orElse("");
    }
}
