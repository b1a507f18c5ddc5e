package org.gritwright.core.budget;

import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The uncertainty due to reading the gate: only in what is predicted for a gate that is set by reading, never in the
 * calibration of a gate that stays where it was. The sensitivity is g′(h) ÷ g(h) of the value.
 */
public final class GateReading {

    private GateReading() {}

    /**
     * The component of a budget: half the change of the discharge from one standard uncertainty below the setting to one
     * above it. Where the gate or the curve ends in between, the change to the other side alone.
     *
     * @param reading how far the gate may be from what was read, either way
     * @param setting the setting
     * @param at the same as a number
     * @param discharge kg/rev by opening
     * @param unit the result's unit
     */
    public static Component<DischargePerRevolution> component(
            Quantity<?> reading,
            Setting setting,
            double at,
            DoubleUnaryOperator discharge,
            Unit<DischargePerRevolution> unit) {
        Setting half = Setting.of(reading);
        double halfWidth = half.si();
        if (half.scale() != setting.scale() || !(halfWidth > 0)) {
            throw new InvalidInputException(
                    "reading of the gate", "greater than 0 and on the scale of " + setting, Amounts.format(reading));
        }
        double deviation = Distribution.RECTANGULAR.standardUncertainty(halfWidth);
        double below = atOrNaN(discharge, at - deviation);
        double above = atOrNaN(discharge, at + deviation);
        double here = discharge.applyAsDouble(at);
        double change;
        if (Double.isNaN(below)) {
            change = Double.isNaN(above) ? here : above - here;
        } else {
            change = Double.isNaN(above) ? here - below : (above - below) / 2;
        }
        ComponentKey key = ErrorSource.GATE_READING.key();
        return Component.typeB(
                key,
                ErrorSource.GATE_READING.name(key),
                Distribution.RECTANGULAR,
                half.withSi(deviation).quantity().orElseThrow(),
                Amounts.ofSi(change, unit));
    }

    private static double atOrNaN(DoubleUnaryOperator discharge, double at) {
        try {
            return discharge.applyAsDouble(at);
        } catch (InvalidInputException e) {
            return Double.NaN;
        }
    }
}
