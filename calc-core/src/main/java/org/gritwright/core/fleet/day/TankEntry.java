package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.solution.Salt;
import org.gritwright.units.check.Require;

/**
 * A tank of the yard and the liquid in it, as it was written down. Nothing but presence is checked here: what can't be computed is a
 * refusal of this one tank. Immutable, thread-safe, a value.
 *
 * @param name what people know it by, unique among the tanks of a day
 * @param material the name of the liquid in it
 * @param salt the salt of that liquid
 * @param reading a reading of how strong it is
 * @param temperature its temperature
 * @param capacity what the tank holds when it is as full as it may be
 * @param level what is in it
 * @param target the salt's part of the mass that is wanted; none if nobody says
 * @param tolerance how far the part may be from that, either way, in percent of the mass; with the target
 * @param saltAtHand the salt that would be added; none if nobody says
 */
public record TankEntry(
        String name,
        String material,
        Salt salt,
        TankReadingEntry reading,
        Quantity<Temperature> temperature,
        Quantity<Volume> capacity,
        Quantity<Volume> level,
        Optional<Quantity<Dimensionless>> target,
        Optional<Quantity<Dimensionless>> tolerance,
        Optional<SaltAtHandEntry> saltAtHand) {
    /** Checks that nothing is null. */
    public TankEntry {
        Require.given(
                TankEntry.class,
                name,
                material,
                salt,
                reading,
                temperature,
                capacity,
                level,
                target,
                tolerance,
                saltAtHand);
    }
}
