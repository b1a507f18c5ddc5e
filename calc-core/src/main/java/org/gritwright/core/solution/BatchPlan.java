package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A tank of solution, in amounts that a yard can weigh and measure, and what really comes out of them. Immutable, thread-safe, a
 * value.
 *
 * @param recipe what is made
 * @param wanted how much solution is wanted, greater than zero
 * @param capacity what the tank holds when it is as full as it may be, greater than zero
 * @param massStep the step to which salt can be weighed, greater than zero
 * @param volumeStep the step to which water can be measured, greater than zero
 */
public record BatchPlan(
        Recipe recipe,
        Quantity<Volume> wanted,
        Quantity<Volume> capacity,
        Quantity<Mass> massStep,
        Quantity<Volume> volumeStep) {
    /**
     * Checks the values and that the tank holds what comes out.
     *
     * @throws InvalidInputException if a value is not greater than zero, a step is so coarse that nothing is left, the tank is too
     *     small, or what comes out is beyond what is known or saturated
     */
    public BatchPlan {
        Require.given(BatchPlan.class, recipe, wanted, capacity, massStep, volumeStep);
        Require.positive("volume of the batch", Volume.class, wanted);
        Require.positive("capacity of the tank", Volume.class, capacity);
        Require.positive("step of the mass", Mass.class, massStep);
        Require.positive("step of the volume", Volume.class, volumeStep);
        double saltSteps = saltSteps(recipe, wanted, massStep);
        double waterSteps = waterSteps(recipe, wanted, volumeStep);
        Require.that(saltSteps > 0, "step of the mass", "fine enough for the salt", Amounts.format(massStep));
        Require.that(waterSteps > 0, "step of the volume", "fine enough for the water", Amounts.format(volumeStep));
        Portion made = made(recipe, times(saltSteps, massStep), times(waterSteps, volumeStep));
        Tank.holds(
                capacity,
                "the finished batch",
                made.volume(recipe.temperature(), wanted.getUnit()).value());
    }

    private static double kilograms(Recipe recipe, Quantity<Volume> wanted) {
        return Amounts.si(Volume.class, wanted) * recipe.target().kilogramsPerCubicMeter(recipe.celsius());
    }

    private static double saltSteps(Recipe recipe, Quantity<Volume> wanted, Quantity<Mass> step) {
        return Math.rint(kilograms(recipe, wanted) * recipe.saltPart() / Amounts.si(Mass.class, step));
    }

    private static double waterSteps(Recipe recipe, Quantity<Volume> wanted, Quantity<Volume> step) {
        double cubicMeters =
                kilograms(recipe, wanted) * recipe.waterPart() / Water.kilogramsPerCubicMeter(recipe.celsius());
        return Math.rint(cubicMeters / Amounts.si(Volume.class, step));
    }

    private static <Q extends Quantity<Q>> Quantity<Q> times(double steps, Quantity<Q> step) {
        return Amounts.of(steps * step.getValue().doubleValue(), step.getUnit());
    }

    /** The salt's uncertainty is that of its assay: masses and volumes are taken as they are. */
    private static Portion made(Recipe recipe, Quantity<Mass> salt, Quantity<Volume> water) {
        SaltSupply supply = recipe.supply();
        double kilograms = Amounts.si(Mass.class, salt);
        double chemical = kilograms * supply.chemicalRatio();
        double whole = chemical
                + kilograms * supply.waterRatio()
                + Amounts.si(Volume.class, water) * Water.kilogramsPerCubicMeter(recipe.celsius());
        double share = chemical / whole;
        Solution solution = new Solution(
                supply.salt(),
                new Contributions<>(SpreadingUnits.PERCENT)
                        .add(
                                "chemical in the salt",
                                Dimensionless.class,
                                supply.chemical(),
                                kilograms * (1 - share) / whole)
                        .of(share));
        return new Portion(solution, Amounts.ofSi(whole, salt.getUnit()));
    }

    /**
     * The salt to weigh.
     *
     * @return salt as it lies, in whole steps
     */
    public Quantity<Mass> salt() {
        return times(saltSteps(recipe, wanted, massStep), massStep);
    }

    /**
     * The water to pour in first.
     *
     * @return water, in whole steps
     */
    public Quantity<Volume> water() {
        return times(waterSteps(recipe, wanted, volumeStep), volumeStep);
    }

    /**
     * What comes out of these amounts.
     *
     * @return the solution and its mass, without what doesn't dissolve; as uncertain as the assay
     */
    public Portion result() {
        return made(recipe, salt(), water());
    }

    /**
     * How much that is.
     *
     * @return the volume of what comes out, in the unit of what is wanted
     */
    public Quantity<Volume> volume() {
        return result().volume(recipe.temperature(), wanted.getUnit()).value();
    }

    /**
     * What of the salt doesn't dissolve and has to be cleaned out, though by nobody who climbs in.
     *
     * @return its dry mass, in the unit of the step
     */
    public Quantity<Mass> rest() {
        return Amounts.ofSi(Amounts.si(Mass.class, salt()) * recipe.supply().restRatio(), massStep.getUnit());
    }
}
