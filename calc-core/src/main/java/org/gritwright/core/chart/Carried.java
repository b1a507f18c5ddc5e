package org.gritwright.core.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import javax.measure.Quantity;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.RotationalSpeed;

/** What the uncertainty of calibration and shaft speed makes of a result. */
final class Carried {
    private Carried() {}

    /** As uncertain as the discharge that it is a multiple of. */
    static <Q extends Quantity<Q>> Measured<Q> by(Measured<DischargePerRevolution> discharge, Quantity<Q> result) {
        return discharge
                .standardUncertainty()
                .map(u -> Measured.of(
                        result,
                        ofDischarge(discharge, u, result),
                        discharge.degreesOfFreedom().orElseThrow()))
                .orElseGet(() -> Measured.once(result));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> ofDischarge(
            Measured<DischargePerRevolution> discharge,
            Quantity<DischargePerRevolution> uncertainty,
            Quantity<Q> result) {
        double relative = number(uncertainty) / number(discharge.value());
        return Amounts.of(number(result) * relative, result.getUnit());
    }

    /**
     * By both, as far as they are known.
     *
     * @param result of a shaft speed: that speed times something, so that an uncertainty goes the same way
     */
    static <Q extends Quantity<Q>> Measured<Q> by(
            Measured<DischargePerRevolution> discharge,
            Measured<RotationalSpeed> shaftSpeed,
            Function<Quantity<RotationalSpeed>, Quantity<Q>> result) {
        Quantity<Q> value = result.apply(shaftSpeed.value());
        List<Component<Q>> components = new ArrayList<>();
        discharge
                .standardUncertainty()
                .ifPresent(u -> components.add(Component.typeA(
                        "discharge per revolution",
                        u,
                        ofDischarge(discharge, u, value),
                        discharge.degreesOfFreedom().orElseThrow())));
        shaftSpeed
                .standardUncertainty()
                .ifPresent(u -> components.add(Component.typeA(
                        "shaft speed",
                        u,
                        result.apply(u),
                        shaftSpeed.degreesOfFreedom().orElseThrow())));
        return components.isEmpty()
                ? Measured.once(value)
                : Budget.of(value, components).result();
    }

    private static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }
}
