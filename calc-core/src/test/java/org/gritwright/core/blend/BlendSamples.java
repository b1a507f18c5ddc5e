package org.gritwright.core.blend;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** An invented yard of sand and salt. */
final class BlendSamples {
    private BlendSamples() {}

    static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    /** Known to a standard uncertainty, with infinite degrees of freedom. */
    static Measured<Dimensionless> percent(double percent, double uncertainty) {
        return Measured.of(percent(percent), percent(uncertainty), Double.POSITIVE_INFINITY);
    }

    static Quantity<Mass> kilograms(double kilograms) {
        return Amounts.of(kilograms, SpreadingUnits.KILOGRAM);
    }

    static Measured<Mass> kilograms(double kilograms, double uncertainty) {
        return Measured.of(kilograms(kilograms), kilograms(uncertainty), Double.POSITIVE_INFINITY);
    }

    static Moisture wet(double percent, double halfWidth) {
        return new Moisture(percent(percent), percent(halfWidth), Moisture.Basis.WET_MASS);
    }

    static Moisture dryBasis(double percent) {
        return new Moisture(percent(percent), percent(0), Moisture.Basis.DRY_MASS);
    }

    static final BlendComponent DRY_SAND = BlendComponent.inert("sand", wet(0, 0));
    static final BlendComponent DRY_SALT = BlendComponent.pure("salt", wet(0, 0));

    /** 5 % of its wet mass is water; 95 % of its dry mass is sodium chloride. */
    static final BlendComponent SALT = new BlendComponent("salt", wet(5, 0), percent(95, 0));

    static Blend blend(BlendComponent sand, double sandKilograms, BlendComponent salt, double saltKilograms) {
        return Blend.of(
                new BlendPart(sand, kilograms(sandKilograms, 0)), new BlendPart(salt, kilograms(saltKilograms, 0)));
    }

    static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    static double number(Measured<?> measured) {
        return number(measured.value());
    }

    static double uncertainty(Measured<?> measured) {
        return number(measured.standardUncertainty().orElseThrow());
    }
}
