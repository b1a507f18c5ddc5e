package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How a solution is made of salt as it lies and of water. Masses add, volumes don't: all goes by mass, and volumes of water and of
 * brine follow at one temperature. Immutable, thread-safe, a value.
 *
 * @param target the solution that is wanted
 * @param supply the salt that it is made of
 * @param temperature of the water and of the finished solution when their volumes are read, 0 °C to 40 °C
 */
public record Recipe(Solution target, SaltSupply supply, Quantity<Temperature> temperature) {
    /**
     * Checks that such a solution is known and can be made.
     *
     * @throws InvalidInputException if the supply is another salt, the target's density isn't known (beyond saturation, where that
     *     is known, it never is), or the salt brings more water than the solution holds
     */
    public Recipe {
        Require.given(Recipe.class, target, supply, temperature);
        sameSalt(target.salt(), supply);
        Celsius.within("temperature of the water", temperature, Water.COLDEST, Water.WARMEST);
        target.celsius(temperature);
        Require.positive(
                Solution.field(target.salt()),
                Dimensionless.class,
                target.share().value());
        weakerThan(supply, target);
    }

    static void sameSalt(Salt salt, SaltSupply supply) {
        Require.that(
                supply.salt() == salt,
                "salt supply",
                salt.words(),
                supply.salt().words());
    }

    /** What is stronger would need water taken away. */
    static void weakerThan(SaltSupply supply, Solution target) {
        double strongest = supply.chemicalRatio() / (supply.chemicalRatio() + supply.waterRatio());
        if (!(target.ratio() < strongest)) {
            throw new InvalidInputException(
                    Solution.field(target.salt()),
                    "below what the salt makes with its own water, "
                            + Amounts.format(Amounts.ofSi(strongest, SpreadingUnits.PERCENT)),
                    Amounts.format(target.share().value()));
        }
    }

    double celsius() {
        return Celsius.of("temperature", temperature);
    }

    /** Mass of salt as it lies per mass of solution. */
    double saltPart() {
        return target.ratio() / supply.chemicalRatio();
    }

    /** Mass of water that is poured in per mass of solution. */
    double waterPart() {
        return 1 - target.ratio() - saltPart() * supply.waterRatio();
    }

    /**
     * Salt per volume of water that is poured in.
     *
     * @return as uncertain as strength and assay
     */
    public SaltPerWater saltPerWater() {
        double water = Water.kilogramsPerCubicMeter(celsius());
        double chemical = supply.chemicalRatio();
        double ratio = target.ratio();
        // salt ÷ water = w ÷ (c − w·(c + m)), with the chemical c and the water m of the salt
        double below = chemical - ratio * (chemical + supply.waterRatio());
        return new SaltPerWater(new Contributions<>(SpreadingUnits.KILOGRAM_PER_CUBIC_METER)
                .add(
                        Solution.field(target.salt()),
                        Dimensionless.class,
                        target.share(),
                        water * chemical / (below * below))
                .add(
                        "chemical in the salt",
                        Dimensionless.class,
                        supply.chemical(),
                        -water * ratio * (1 - ratio) / (below * below))
                .of(water * ratio / below));
    }

    /**
     * Salt per volume of finished brine.
     *
     * @return as uncertain as density, strength and assay
     */
    public SaltPerBrine saltPerBrine() {
        double celsius = celsius();
        double density = target.kilogramsPerCubicMeter(celsius);
        double salt = saltPart() * density;
        return new SaltPerBrine(new Contributions<>(SpreadingUnits.KILOGRAM_PER_CUBIC_METER)
                .limits("published densities", saltPart() * target.limit(celsius))
                .add(
                        Solution.field(target.salt()),
                        Dimensionless.class,
                        target.share(),
                        (density + target.ratio() * target.slope(celsius)) / supply.chemicalRatio())
                .add("chemical in the salt", Dimensionless.class, supply.chemical(), -salt / supply.chemicalRatio())
                .of(salt));
    }

    /**
     * Water per volume of finished brine, which is below 1.
     *
     * @return volume of the water that is poured in ÷ volume of the brine, in percent
     */
    public Quantity<Dimensionless> waterPerBrine() {
        double celsius = celsius();
        return Amounts.ofSi(
                waterPart() * target.kilogramsPerCubicMeter(celsius) / Water.kilogramsPerCubicMeter(celsius),
                SpreadingUnits.PERCENT);
    }
}
