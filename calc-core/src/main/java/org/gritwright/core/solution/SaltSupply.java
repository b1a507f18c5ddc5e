package org.gritwright.core.solution;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * Salt as it lies in the yard, of which a part is the chemical and a part is water. The rest is taken for something that doesn't
 * dissolve and stays behind: what of it does dissolve makes the solution denser, and a hydrometer takes it for salt. Immutable,
 * thread-safe, a value.
 *
 * @param salt the salt
 * @param chemical the salt without crystal water ÷ the mass as it lies, greater than 0 and at most 100 %
 * @param water moisture and crystal water ÷ the mass as it lies, 0 or more; both together are at most 100 %
 */
public record SaltSupply(Salt salt, Measured<Dimensionless> chemical, Quantity<Dimensionless> water) {
    private static final String CHEMICAL = "chemical in the salt";
    private static final String MOISTURE = "moisture of the wet salt";

    /**
     * Checks the parts.
     *
     * @throws InvalidInputException if one is out of its range, or both are more than all
     */
    public SaltSupply {
        Require.given(SaltSupply.class, salt, chemical, water);
        part(CHEMICAL, chemical);
        Require.share("water in the salt", water);
        if (Comparison.isAbove(
                Amounts.si(Dimensionless.class, chemical.value()) + Amounts.si(Dimensionless.class, water), 1)) {
            throw new InvalidInputException(
                    "water in the salt",
                    "such that it and the chemical, " + Amounts.format(chemical.value()) + ", are at most 100 %",
                    Amounts.format(water));
        }
    }

    private static void part(String field, Measured<Dimensionless> part) {
        Require.positive(field, Dimensionless.class, part.value());
        Require.within(
                field,
                Dimensionless.class,
                part.value(),
                Amounts.of(0, SpreadingUnits.PERCENT),
                Amounts.of(100, SpreadingUnits.PERCENT));
    }

    /**
     * Dry salt that is nothing else.
     *
     * @param salt the salt
     * @return the supply
     */
    public static SaltSupply pure(Salt salt) {
        Objects.requireNonNull(salt, "salt");
        Quantity<Dimensionless> all = Amounts.of(100, SpreadingUnits.PERCENT);
        return new SaltSupply(salt, Contributions.exactly(all), Amounts.of(0, SpreadingUnits.PERCENT));
    }

    /**
     * Damp, impure salt without crystal water, such as rock salt.
     *
     * @param salt the salt
     * @param purity the chemical's part of the dry mass
     * @param moistureOfWetMass water ÷ wet mass
     * @return the supply
     * @throws InvalidInputException if a part is out of its range
     */
    public static SaltSupply damp(
            Salt salt, Measured<Dimensionless> purity, Quantity<Dimensionless> moistureOfWetMass) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(purity, "purity");
        Objects.requireNonNull(moistureOfWetMass, "moistureOfWetMass");
        part("purity of the dry salt", purity);
        double dry = dryPart(moistureOfWetMass);
        return new SaltSupply(salt, times(purity, dry), moistureOfWetMass);
    }

    /**
     * Salt with crystal water, of which the assay says how much is the hydrate: pure crystals of CaCl₂·2H₂O have 100 %.
     *
     * @param hydrate the crystals
     * @param assayAsHydrate the hydrate's part of the dry mass
     * @param moistureOfWetMass water beside the crystals ÷ wet mass
     * @return the supply
     * @throws InvalidInputException if a part is out of its range
     */
    public static SaltSupply assayedAsHydrate(
            Hydrate hydrate, Measured<Dimensionless> assayAsHydrate, Quantity<Dimensionless> moistureOfWetMass) {
        Objects.requireNonNull(hydrate, "hydrate");
        Objects.requireNonNull(assayAsHydrate, "assayAsHydrate");
        Objects.requireNonNull(moistureOfWetMass, "moistureOfWetMass");
        part("assay as the hydrate", assayAsHydrate);
        double dry = dryPart(moistureOfWetMass);
        double crystals = dry * Amounts.si(Dimensionless.class, assayAsHydrate.value());
        return new SaltSupply(
                hydrate.salt(),
                times(assayAsHydrate, dry * hydrate.part()),
                Amounts.ofSi(1 - dry + crystals * (1 - hydrate.part()), SpreadingUnits.PERCENT));
    }

    /**
     * Salt of which the assay says how much is the salt without its crystal water, and whose rest is water, such as flakes of 77 % of
     * calcium chloride: pure crystals of CaCl₂·2H₂O have 75.5 %.
     *
     * @param salt the salt
     * @param assayAsAnhydrous the chemical's part of the mass as it lies
     * @return the supply
     * @throws InvalidInputException if the part is out of its range
     */
    public static SaltSupply assayedAsAnhydrous(Salt salt, Measured<Dimensionless> assayAsAnhydrous) {
        Objects.requireNonNull(salt, "salt");
        Objects.requireNonNull(assayAsAnhydrous, "assayAsAnhydrous");
        double chemical = Amounts.si(Dimensionless.class, assayAsAnhydrous.value());
        return new SaltSupply(salt, assayAsAnhydrous, Amounts.ofSi(1 - chemical, SpreadingUnits.PERCENT));
    }

    private static double dryPart(Quantity<Dimensionless> moisture) {
        return 1 - Amounts.si(Dimensionless.class, Require.share(MOISTURE, moisture));
    }

    private static Measured<Dimensionless> times(Measured<Dimensionless> part, double factor) {
        return new Contributions<>(SpreadingUnits.PERCENT)
                .add("assay", Dimensionless.class, part, factor)
                .of(factor * Amounts.si(Dimensionless.class, part.value()));
    }

    double chemicalRatio() {
        return Amounts.si(Dimensionless.class, chemical.value());
    }

    double waterRatio() {
        return Amounts.si(Dimensionless.class, water);
    }

    /** What doesn't dissolve. */
    double restRatio() {
        return Math.max(0, 1 - chemicalRatio() - waterRatio());
    }
}
