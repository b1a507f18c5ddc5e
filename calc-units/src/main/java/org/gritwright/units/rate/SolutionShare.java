package org.gritwright.units.rate;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.PrewetRate;

/**
 * How much of a prewetted dose is liquid, as the mass of solution per mass of the <em>total</em> dose: of 20 g/m² at 30 %, 6 g/m² are
 * solution and 14 g/m² dry material. The other way to say it is a {@link PrewetRate}, the <em>volume</em> of liquid per mass of
 * <em>dry</em> material. One becomes the other only with the liquid's density, and no bare percentage is either of them: 30 % of
 * the dry material would be 23.1 % of the total.
 *
 * <p>The parts of a dose are given in the unit of the dose: a mass, or a mass per distance, per lane distance, per area or per
 * time. All formulas are definitions. Immutable, thread-safe, a value.
 *
 * @param ofTotal mass of solution per mass of dry material and solution together, 0 to 100 %; at 100 % only liquid is spread
 */
public record SolutionShare(Quantity<Dimensionless> ofTotal) implements Serializable {

    /**
     * Checks the share.
     *
     * @throws InvalidInputException if it is out of its range
     */
    public SolutionShare {
        Require.given(SolutionShare.class, ofTotal);
        Derived.fraction("solution share", ofTotal);
    }

    /**
     * A share in per cent.
     *
     * @param percent for example 30 for 30 % of the total dose
     * @return the share
     * @throws InvalidInputException if it is out of its range
     */
    public static SolutionShare percent(double percent) {
        return new SolutionShare(Amounts.of(percent, SpreadingUnits.PERCENT));
    }

    /**
     * The share that a prewet rate amounts to: p · ρ ÷ (1 + p · ρ).
     *
     * @param prewetRate volume of liquid per mass of dry material
     * @param density mass per volume of the liquid
     * @return the share in per cent
     * @throws InvalidInputException if the rate is negative, or the density is not greater than zero
     */
    public static SolutionShare fromPrewetRate(Quantity<PrewetRate> prewetRate, Quantity<BulkDensity> density) {
        double solutionPerDryMass =
                Derived.notNegative("prewet rate", PrewetRate.class, prewetRate) * Derived.density(density);
        return new SolutionShare(Amounts.ofSi(solutionPerDryMass / (1 + solutionPerDryMass), SpreadingUnits.PERCENT));
    }

    /**
     * The prewet rate that this share amounts to: s ÷ (1 − s) ÷ ρ.
     *
     * @param density mass per volume of the liquid
     * @return volume of liquid per mass of dry material, in the trade's unit of the density's system
     * @throws InvalidInputException if the density is not greater than zero, or the share is 100 %, where nothing is dry
     */
    public Quantity<PrewetRate> prewetRate(Quantity<BulkDensity> density) {
        double cubicMetersPerKilogramOfSolution = 1 / Derived.density(density);
        return Derived.like(density, PrewetRate.class, share() / dryShare() * cubicMetersPerKilogramOfSolution);
    }

    /**
     * The dry material in a total dose.
     *
     * @param <Q> a mass, or a mass per distance, per lane distance, per area or per time
     * @param total dry material and solution together
     * @return the dry part, in the same unit; of 20 g/m² at 30 % it is 14 g/m²
     * @throws InvalidInputException if the dose is negative or of another kind
     */
    public <Q extends Quantity<Q>> Quantity<Q> dryPart(Quantity<Q> total) {
        double number = dose("total dose", total);
        return Amounts.of(number - number * share(), total.getUnit());
    }

    /**
     * The solution in a total dose, by mass.
     *
     * @param <Q> a mass, or a mass per distance, per lane distance, per area or per time
     * @param total dry material and solution together
     * @return the solution's mass, in the same unit; of 20 g/m² at 30 % it is 6 g/m²
     * @throws InvalidInputException if the dose is negative or of another kind
     */
    public <Q extends Quantity<Q>> Quantity<Q> solutionPart(Quantity<Q> total) {
        return Amounts.of(dose("total dose", total) * share(), total.getUnit());
    }

    /**
     * The total dose of which this is the dry part.
     *
     * @param <Q> a mass, or a mass per distance, per lane distance, per area or per time
     * @param dryPart the dry material
     * @return dry material and solution together, in the same unit
     * @throws InvalidInputException if the part is negative or of another kind, or the share is 100 %, where nothing is dry
     */
    public <Q extends Quantity<Q>> Quantity<Q> totalFromDryPart(Quantity<Q> dryPart) {
        return Amounts.of(dose("dry part", dryPart) / dryShare(), dryPart.getUnit());
    }

    /**
     * The total dose of which this is the solution, by mass.
     *
     * @param <Q> a mass, or a mass per distance, per lane distance, per area or per time
     * @param solutionPart the solution's mass
     * @return dry material and solution together, in the same unit
     * @throws InvalidInputException if the part is negative or of another kind, or the share is 0 %, where nothing is liquid
     */
    public <Q extends Quantity<Q>> Quantity<Q> totalFromSolutionPart(Quantity<Q> solutionPart) {
        double number = dose("solution part", solutionPart);
        if (!(share() > 0)) {
            throw new InvalidInputException(
                    RefusalCode.NOT_POSITIVE, "solution share", "greater than 0", Amounts.format(ofTotal));
        }
        return Amounts.of(number / share(), solutionPart.getUnit());
    }

    private double share() {
        return Derived.fraction("solution share", ofTotal);
    }

    private double dryShare() {
        if (!(share() < 1)) {
            throw new InvalidInputException(
                    RefusalCode.TOO_HIGH, "solution share", "below 100 %", Amounts.format(ofTotal), "100 %");
        }
        return 1 - share();
    }

    private static <Q extends Quantity<Q>> double dose(String field, Quantity<Q> dose) {
        Derived.massLike(field, dose);
        return dose.getValue().doubleValue();
    }
}
