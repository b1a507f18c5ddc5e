package org.gritwright.core.fleet.day;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.solution.Hydrate;
import org.gritwright.core.solution.Salt;
import org.gritwright.core.solution.SaltSupply;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * Salt as it lies in the yard, of which brine is made, as it was written down. Nothing but presence is checked here. Immutable,
 * thread-safe, a value.
 *
 * @param assay how much of it is the salt
 * @param assayUncertainty how uncertain that is (one standard deviation)
 * @param assayed what the assay is a part of; none for sodium chloride, which has no crystal water here
 * @param moisture water beside the crystals ÷ wet mass; none where nobody says, which is taken as 0
 */
public record SaltAtHandEntry(
        Quantity<Dimensionless> assay,
        Quantity<Dimensionless> assayUncertainty,
        Optional<Assayed> assayed,
        Optional<Quantity<Dimensionless>> moisture) {
    /** Of what an assay is told. */
    public enum Assayed {
        /** Salt without crystal water, such as rock salt: its part of the dry mass. */
        NO_CRYSTAL_WATER,
        /** Salt with crystal water, which is counted: pure crystals have 100 %. Part of the dry mass. */
        AS_HYDRATE,
        /** Salt with crystal water, which isn't counted: its part of the mass as it lies, the rest being water. */
        AS_ANHYDROUS
    }

    /** Checks that nothing is null. */
    public SaltAtHandEntry {
        Require.given(SaltAtHandEntry.class, assay, assayUncertainty, assayed, moisture);
    }

    /**
     * The salt to compute with.
     *
     * @param salt which salt
     * @return the supply
     * @throws InvalidInputException if a part is out of its range, the moisture counts twice, or nobody says what the assay of a salt
     *     with crystal water is a part of
     */
    public SaltSupply supply(Salt salt) {
        Objects.requireNonNull(salt, "salt");
        Measured<Dimensionless> part = Measured.of(assay, assayUncertainty, Double.POSITIVE_INFINITY);
        Optional<Hydrate> hydrate = Arrays.stream(Hydrate.values())
                .filter(one -> one.salt() == salt)
                .findFirst();
        Quantity<Dimensionless> wet = moisture.orElse(Amounts.of(0, SpreadingUnits.PERCENT));
        return switch (assayed.or(() -> hydrate.isPresent() ? Optional.empty() : Optional.of(Assayed.NO_CRYSTAL_WATER))
                .orElseThrow(() -> new InvalidInputException(
                        RefusalCode.MISSING,
                        "assayed, what the assay of the salt is a part of,",
                        "given for " + salt.words() + ", which may hold crystal water",
                        "nothing"))) {
            case NO_CRYSTAL_WATER -> SaltSupply.damp(salt, part, wet);
            case AS_HYDRATE ->
                SaltSupply.assayedAsHydrate(
                        hydrate.orElseThrow(() -> new InvalidInputException(
                                "salt with crystal water", "calcium chloride or magnesium chloride", salt.words())),
                        part,
                        wet);
            case AS_ANHYDROUS -> asAnhydrous(salt, part);
        };
    }

    private SaltSupply asAnhydrous(Salt salt, Measured<Dimensionless> part) {
        if (moisture.isPresent()) {
            throw new InvalidInputException(
                    RefusalCode.NOT_ACCEPTED,
                    "moisture of the salt",
                    "left out, as an assay as anhydrous takes all that is not the salt for water",
                    Amounts.format(moisture.get()));
        }
        return SaltSupply.assayedAsAnhydrous(salt, part);
    }
}
