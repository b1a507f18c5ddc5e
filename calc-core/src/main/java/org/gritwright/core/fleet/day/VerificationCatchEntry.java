package org.gritwright.core.fleet.day;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.units.check.Require;

/**
 * A verification catch as it was written down.
 *
 * @param entry what every catch has
 * @param inForce the value that the display held during the catch
 * @param slot the slot that the display worked with; none if nobody says
 * @param target the target rate
 * @param testSpeed the road speed fed to the truck
 * @param runTime the run time, if that was set
 * @param testDistance the test distance, if that was set
 * @param indicated the mass or, of a liquid, the volume that the display showed
 * @param indicatedStep the step in which the display shows it
 */
public record VerificationCatchEntry(
        CatchEntry entry,
        Quantity<?> inForce,
        Optional<String> slot,
        TargetEntry target,
        Quantity<Speed> testSpeed,
        Optional<Quantity<Time>> runTime,
        Optional<Quantity<Length>> testDistance,
        Optional<Quantity<?>> indicated,
        Optional<Quantity<?>> indicatedStep) {
    /** Checks that nothing is null. */
    public VerificationCatchEntry {
        Require.given(
                VerificationCatchEntry.class,
                entry,
                inForce,
                slot,
                target,
                testSpeed,
                runTime,
                testDistance,
                indicated,
                indicatedStep);
    }
}
