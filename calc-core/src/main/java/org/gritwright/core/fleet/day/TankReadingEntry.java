package org.gritwright.core.fleet.day;

import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.core.solution.Concentration;
import org.gritwright.core.solution.Salometer;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.solution.Solution;
import org.gritwright.core.solution.SpecificGravity;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * One reading of how strong a solution is, as it was written down: by a salometer, by a hydrometer that reads specific gravity, or a
 * share that somebody states. Nothing but presence is checked here. Immutable, thread-safe, a value.
 *
 * @param salometer degrees of a salometer, for sodium chloride only
 * @param specificGravity what a hydrometer reads; with the reference
 * @param reference the temperature of the water that the hydrometer was made for; it stands on it
 * @param concentration the salt's part of the mass, without crystal water
 * @param standardUncertainty how uncertain the reading is (one standard deviation), as the reading is written
 * @param temperature the temperature of the liquid that was read; none if it was the tank's
 */
public record TankReadingEntry(
        Optional<Quantity<Dimensionless>> salometer,
        Optional<Quantity<Dimensionless>> specificGravity,
        Optional<Quantity<Temperature>> reference,
        Optional<Quantity<Dimensionless>> concentration,
        Quantity<Dimensionless> standardUncertainty,
        Optional<Quantity<Temperature>> temperature) {
    /** Checks that nothing is null. */
    public TankReadingEntry {
        Require.given(
                TankReadingEntry.class,
                salometer,
                specificGravity,
                reference,
                concentration,
                standardUncertainty,
                temperature);
    }

    /**
     * By a salometer, at the temperature of the tank.
     *
     * @param degrees the reading
     * @param standardUncertainty its standard uncertainty in degrees
     * @return the reading
     */
    public static TankReadingEntry bySalometer(
            Quantity<Dimensionless> degrees, Quantity<Dimensionless> standardUncertainty) {
        return new TankReadingEntry(
                Optional.of(Objects.requireNonNull(degrees, "degrees")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                standardUncertainty,
                Optional.empty());
    }

    /**
     * By a hydrometer, at the temperature of the tank.
     *
     * @param specificGravity the reading
     * @param reference the temperature of the water that it was made for
     * @param standardUncertainty the standard uncertainty of the reading
     * @return the reading
     */
    public static TankReadingEntry byHydrometer(
            Quantity<Dimensionless> specificGravity,
            Quantity<Temperature> reference,
            Quantity<Dimensionless> standardUncertainty) {
        return new TankReadingEntry(
                Optional.empty(),
                Optional.of(Objects.requireNonNull(specificGravity, "specificGravity")),
                Optional.of(Objects.requireNonNull(reference, "reference")),
                Optional.empty(),
                standardUncertainty,
                Optional.empty());
    }

    /**
     * A share that somebody states.
     *
     * @param concentration the salt's part of the mass
     * @param standardUncertainty its standard uncertainty
     * @return the reading
     */
    public static TankReadingEntry stated(
            Quantity<Dimensionless> concentration, Quantity<Dimensionless> standardUncertainty) {
        return new TankReadingEntry(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Objects.requireNonNull(concentration, "concentration")),
                standardUncertainty,
                Optional.empty());
    }

    /**
     * The solution that the reading is of.
     *
     * @param salt its salt
     * @param ofTank the temperature of the tank, where the reading has none of its own
     * @return the solution
     * @throws InvalidInputException if there isn't exactly one reading, it is no number of its kind, or it can't be
     */
    public Solution solution(Salt salt, Quantity<Temperature> ofTank) {
        Objects.requireNonNull(salt, "salt");
        long readings = Stream.of(salometer, specificGravity, concentration)
                .filter(Optional::isPresent)
                .count();
        Require.that(
                readings == 1,
                "reading of a tank",
                "one of salometer, specificGravity and concentration",
                readings == 0 ? "none" : readings + " of them");
        if (specificGravity.isEmpty() && reference.isPresent()) {
            throw new InvalidInputException(
                    RefusalCode.NOT_ACCEPTED,
                    "reference temperature",
                    "left out, as only a specific gravity has one",
                    Amounts.format(reference.get()));
        }
        Quantity<Temperature> read = temperature.orElse(Objects.requireNonNull(ofTank, "ofTank"));
        if (salometer.isPresent()) {
            Require.that(
                    salt == Salt.SODIUM_CHLORIDE,
                    "salt of a solution that a salometer reads",
                    Salt.SODIUM_CHLORIDE.words(),
                    salt.words());
            return Concentration.bySalometer(
                    new Salometer(
                            bare("degrees of a salometer", salometer.get()),
                            bare("uncertainty of a salometer", standardUncertainty)),
                    read);
        }
        return specificGravity.isPresent()
                ? Concentration.bySpecificGravity(salt, gravity(specificGravity.get()), read)
                : new Solution(salt, stated());
    }

    private SpecificGravity gravity(Quantity<Dimensionless> value) {
        bare("specific gravity", value);
        bare("uncertainty of a specific gravity", standardUncertainty);
        return new SpecificGravity(
                Measured.of(value, standardUncertainty, Double.POSITIVE_INFINITY),
                reference.orElseThrow(() -> new InvalidInputException(
                        RefusalCode.MISSING,
                        "reference temperature of a specific gravity",
                        "given: it stands on the hydrometer",
                        "nothing")));
    }

    private Measured<Dimensionless> stated() {
        Quantity<Dimensionless> share = concentration.orElseThrow();
        in(SpreadingUnits.PERCENT, "a percentage, as the concentration is", "concentration", share);
        in(
                SpreadingUnits.PERCENT,
                "a percentage, as the concentration is",
                "uncertainty of a concentration",
                standardUncertainty);
        return Measured.of(share, standardUncertainty, Double.POSITIVE_INFINITY);
    }

    private static double bare(String field, Quantity<Dimensionless> value) {
        in(SpreadingUnits.ONE, "a bare number and no percentage", field, value);
        return value.getValue().doubleValue();
    }

    private static void in(Unit<?> unit, String accepted, String field, Quantity<Dimensionless> value) {
        Require.that(value.getUnit().equals(unit), field, accepted, () -> Amounts.format(value));
    }
}
