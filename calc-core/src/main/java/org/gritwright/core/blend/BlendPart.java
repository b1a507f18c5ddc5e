package org.gritwright.core.blend;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * So much of a component, by mass as it lies, water included. Immutable, thread-safe, a value.
 *
 * @param component the component
 * @param mass its mass, greater than zero
 */
public record BlendPart(BlendComponent component, Measured<Mass> mass) {
    /**
     * Checks the mass.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public BlendPart {
        Require.given(BlendPart.class, component, mass);
        Require.positive("mass of " + component.name(), Mass.class, mass.value());
    }

    /**
     * A weighed part of unknown uncertainty.
     *
     * @param component the component
     * @param mass its mass as it lies
     * @return the part
     * @throws org.gritwright.units.InvalidInputException if the mass is not greater than zero
     */
    public static BlendPart byMass(BlendComponent component, Quantity<Mass> mass) {
        return new BlendPart(component, Measured.once(mass));
    }

    /**
     * A part by volume, such as loader buckets, with its loose bulk density as it lies: damp sand takes more room than dry.
     *
     * @param component the component
     * @param volume the loose volume, greater than zero
     * @param looseBulkDensity mass per loose volume, water and voids included, greater than zero
     * @return the part, its relative uncertainty that of both together; unknown if one is. Its degrees of freedom are the fewer
     * @throws org.gritwright.units.InvalidInputException if a value is not greater than zero
     */
    public static BlendPart byVolume(
            BlendComponent component, Measured<Volume> volume, Measured<BulkDensity> looseBulkDensity) {
        Objects.requireNonNull(component, "component");
        Objects.requireNonNull(volume, "volume");
        Objects.requireNonNull(looseBulkDensity, "looseBulkDensity");
        Require.positive("volume of " + component.name(), Volume.class, volume.value());
        Require.positive("loose bulk density of " + component.name(), BulkDensity.class, looseBulkDensity.value());
        double kilograms =
                Amounts.si(Volume.class, volume.value()) * Amounts.si(BulkDensity.class, looseBulkDensity.value());
        Unit<Mass> unit = UnitSymbol.tradeUnit(Mass.class, looseBulkDensity.value());
        Quantity<Mass> mass = Amounts.ofSi(kilograms, unit);
        if (volume.standardUncertainty().isEmpty()
                || looseBulkDensity.standardUncertainty().isEmpty()) {
            return byMass(component, mass);
        }
        double uncertainty = kilograms * Math.hypot(relative(volume), relative(looseBulkDensity));
        double degrees = Math.min(
                volume.degreesOfFreedom().orElseThrow(),
                looseBulkDensity.degreesOfFreedom().orElseThrow());
        return new BlendPart(component, Measured.of(mass, Amounts.ofSi(uncertainty, unit), degrees));
    }

    private static double relative(Measured<?> measured) {
        return measured.standardUncertainty().orElseThrow().getValue().doubleValue()
                / measured.value().getValue().doubleValue();
    }

    double kilograms() {
        return Amounts.si(Mass.class, mass.value());
    }

    double dryKilograms() {
        return kilograms() * component.moisture().dryPart();
    }

    double chemicalKilograms() {
        return dryKilograms() * component.purityRatio();
    }
}
