package org.gritwright.core.solution;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;

/**
 * What to add to a tank: salt, or water, or nothing. Immutable, thread-safe, a value.
 *
 * @param salt salt as it lies, if the tank is too weak; as uncertain as reading, density and assay
 * @param water water, if it is too strong; as uncertain as reading and density
 * @param filled what the tank will hold, at the same temperature
 * @param rest what of the salt doesn't dissolve; its room is not in the volume
 */
public record TankCorrection(
        Optional<Measured<Mass>> salt, Optional<Measured<Volume>> water, Quantity<Volume> filled, Quantity<Mass> rest) {
    /** Checks that all is given. */
    public TankCorrection {
        Require.given(TankCorrection.class, salt, water, filled, rest);
    }
}
