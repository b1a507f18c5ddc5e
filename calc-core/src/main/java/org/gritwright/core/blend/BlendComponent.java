package org.gritwright.core.blend;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * One of the materials of a mix as it lies in the yard. Immutable, thread-safe, a value.
 *
 * @param name its name in the yard
 * @param moisture its moisture, on a stated basis
 * @param purity the chemical's part of the dry mass: the purity of a salt, 0 of sand; 0 to 100 %
 */
public record BlendComponent(String name, Moisture moisture, Measured<Dimensionless> purity) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank or the purity is not 0 to 100 %
     */
    public BlendComponent {
        Require.given(BlendComponent.class, name, moisture, purity);
        Require.text("component of a mix", name);
        Require.within(
                "purity of " + name,
                Dimensionless.class,
                purity.value(),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(100, SpreadingUnits.PERCENT));
    }

    /**
     * A component without chemical, such as sand.
     *
     * @param name its name
     * @param moisture its moisture
     * @return the component
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public static BlendComponent inert(String name, Moisture moisture) {
        return new BlendComponent(name, moisture, exactly(0));
    }

    /**
     * A salt that is taken for pure, where nobody states its purity: the dry chemical is then its dry mass.
     *
     * @param name its name
     * @param moisture its moisture
     * @return the component
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public static BlendComponent pure(String name, Moisture moisture) {
        return new BlendComponent(name, moisture, exactly(100));
    }

    private static Measured<Dimensionless> exactly(double percent) {
        return Measured.of(
                Amounts.of(percent, SpreadingUnits.PERCENT),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }

    /**
     * The dry chemical's part of the mass as it lies, water included.
     *
     * @return dry part × purity, in percent
     */
    public Quantity<Dimensionless> chemicalPart() {
        return Amounts.ofSi(moisture.dryPart() * purityRatio(), SpreadingUnits.PERCENT);
    }

    double purityRatio() {
        return Amounts.si(Dimensionless.class, purity.value());
    }
}
