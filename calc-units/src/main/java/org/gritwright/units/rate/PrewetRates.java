package org.gritwright.units.rate;

import javax.measure.Quantity;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;

/**
 * Rates of dry material that is wetted with a liquid on its way out: of the dry material, of the liquid, and of both.
 *
 * <p>The mass in a prewet rate is that of the dry material; the ton of gal/ton is the short ton. A share of the total mass is
 * something else, a {@link SolutionShare}; what all this brings of dry chemical, {@link DryChemicalRates} says. The result is in the
 * trade's unit of the first argument's system. All formulas are definitions. All methods are pure and thread-safe.
 */
public final class PrewetRates {

    private PrewetRates() {}

    /**
     * The liquid per distance: dry rate × prewet rate.
     *
     * @param dryRate mass of dry material per distance
     * @param prewetRate volume of liquid per mass of dry material
     * @return volume per distance
     * @throws InvalidInputException if a rate is negative
     */
    public static Quantity<LiquidApplicationRate> liquidRateFromDryRate(
            Quantity<ApplicationRate> dryRate, Quantity<PrewetRate> prewetRate) {
        return Derived.like(dryRate, LiquidApplicationRate.class, dryRate(dryRate) * prewet(prewetRate));
    }

    /**
     * The liquid per lane distance: dry lane rate × prewet rate.
     *
     * @param dryLaneRate mass of dry material per lane distance
     * @param prewetRate volume of liquid per mass of dry material
     * @return volume per lane distance; 260 lb/lane-mi at 10 gal/ton is 1.3 gal/lane-mi
     * @throws InvalidInputException if a rate is negative
     */
    public static Quantity<LiquidLaneApplicationRate> liquidLaneRateFromDryLaneRate(
            Quantity<LaneApplicationRate> dryLaneRate, Quantity<PrewetRate> prewetRate) {
        return Derived.like(
                dryLaneRate,
                LiquidLaneApplicationRate.class,
                Derived.notNegative("dry lane rate", LaneApplicationRate.class, dryLaneRate) * prewet(prewetRate));
    }

    /**
     * The liquid per area: dry areal rate × prewet rate.
     *
     * @param dryArealRate mass of dry material per area
     * @param prewetRate volume of liquid per mass of dry material
     * @return volume per area; 14 g/m² at 50 L/t is 0.7 mL/m²
     * @throws InvalidInputException if a rate is negative
     */
    public static Quantity<LiquidArealApplicationRate> liquidArealRateFromDryArealRate(
            Quantity<ArealApplicationRate> dryArealRate, Quantity<PrewetRate> prewetRate) {
        return Derived.like(
                dryArealRate,
                LiquidArealApplicationRate.class,
                Derived.notNegative("dry areal rate", ArealApplicationRate.class, dryArealRate) * prewet(prewetRate));
    }

    /**
     * The prewet rate: liquid per distance ÷ dry rate.
     *
     * @param liquidRate volume of liquid per distance
     * @param dryRate mass of dry material per distance
     * @return volume of liquid per mass of dry material
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<PrewetRate> prewetRateFromRates(
            Quantity<LiquidApplicationRate> liquidRate, Quantity<ApplicationRate> dryRate) {
        return Derived.like(
                liquidRate,
                PrewetRate.class,
                liquidRate(liquidRate) / Derived.positive("dry rate", ApplicationRate.class, dryRate));
    }

    /**
     * The prewet rate: liquid per lane distance ÷ dry lane rate.
     *
     * @param liquidLaneRate volume of liquid per lane distance
     * @param dryLaneRate mass of dry material per lane distance
     * @return volume of liquid per mass of dry material
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<PrewetRate> prewetRateFromLaneRates(
            Quantity<LiquidLaneApplicationRate> liquidLaneRate, Quantity<LaneApplicationRate> dryLaneRate) {
        return Derived.like(
                liquidLaneRate,
                PrewetRate.class,
                Derived.notNegative("liquid lane rate", LiquidLaneApplicationRate.class, liquidLaneRate)
                        / Derived.positive("dry lane rate", LaneApplicationRate.class, dryLaneRate));
    }

    /**
     * The prewet rate: liquid per area ÷ dry areal rate.
     *
     * @param liquidArealRate volume of liquid per area
     * @param dryArealRate mass of dry material per area
     * @return volume of liquid per mass of dry material
     * @throws InvalidInputException if the rate is negative, or the other value is not greater than zero
     */
    public static Quantity<PrewetRate> prewetRateFromArealRates(
            Quantity<LiquidArealApplicationRate> liquidArealRate, Quantity<ArealApplicationRate> dryArealRate) {
        return Derived.like(
                liquidArealRate,
                PrewetRate.class,
                Derived.notNegative("liquid areal rate", LiquidArealApplicationRate.class, liquidArealRate)
                        / Derived.positive("dry areal rate", ArealApplicationRate.class, dryArealRate));
    }

    /**
     * The liquid flow that prewets a discharge: discharge × prewet rate.
     *
     * @param discharge mass of dry material per time
     * @param prewetRate volume of liquid per mass of dry material
     * @return volume per time; 125 lb/min at 10 gal/ton is 0.625 gal/min
     * @throws InvalidInputException if a rate is negative
     */
    public static Quantity<FlowRate> flowFromDischarge(
            Quantity<DischargeRate> discharge, Quantity<PrewetRate> prewetRate) {
        return Derived.like(
                discharge,
                FlowRate.class,
                Derived.notNegative("discharge", DischargeRate.class, discharge) * prewet(prewetRate));
    }

    /**
     * The total mass spread per distance, as a rate: dry rate + liquid rate × density of the liquid.
     *
     * @param dryRate mass of dry material per distance
     * @param liquidRate volume of liquid per distance
     * @param density mass per volume of the liquid
     * @return mass per distance
     * @throws InvalidInputException if a rate is negative, or the density is not greater than zero
     */
    public static Quantity<ApplicationRate> totalMass(
            Quantity<ApplicationRate> dryRate,
            Quantity<LiquidApplicationRate> liquidRate,
            Quantity<BulkDensity> density) {
        return Derived.like(
                dryRate, ApplicationRate.class, dryRate(dryRate) + liquidRate(liquidRate) * Derived.density(density));
    }

    private static double dryRate(Quantity<ApplicationRate> dryRate) {
        return Derived.notNegative("dry rate", ApplicationRate.class, dryRate);
    }

    private static double liquidRate(Quantity<LiquidApplicationRate> liquidRate) {
        return Derived.notNegative("liquid rate", LiquidApplicationRate.class, liquidRate);
    }

    private static double prewet(Quantity<PrewetRate> prewet) {
        return Derived.notNegative("prewet rate", PrewetRate.class, prewet);
    }
}
