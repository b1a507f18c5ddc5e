package org.gritwright.units.rate;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;

/**
 * Rates stated as dry chemical: how much of it a rate of liquid or of granular material brings, and which rate of liquid brings a
 * stated one. Guidelines may state rates of liquid so, as mass of dry chemical instead of volume of solution.
 *
 * <p>The result is in the trade's unit of the first argument's system. All formulas are definitions. All methods are pure and
 * thread-safe.
 */
public final class DryChemicalRates {

    private DryChemicalRates() {}

    /**
     * The dry chemical in granular material: rate × purity.
     *
     * @param <Q> a mass, or a mass per distance, per lane distance, per area or per time
     * @param granularRate mass of the granular material as it is spread
     * @param purity mass of dry chemical per mass of that material, 0 to 100 %: less moisture, sand and insolubles
     * @return the dry chemical, in the same unit
     * @throws InvalidInputException if the rate is negative or of another kind, or the purity is out of its range
     */
    public static <Q extends Quantity<Q>> Quantity<Q> inGranular(
            Quantity<Q> granularRate, Quantity<Dimensionless> purity) {
        Derived.massLike("granular rate", granularRate);
        return Amounts.of(granularRate.getValue().doubleValue() * purity(purity), granularRate.getUnit());
    }

    /**
     * The dry chemical per distance that a liquid brings: liquid rate × density × concentration.
     *
     * @param liquidRate volume of liquid per distance
     * @param liquid the liquid
     * @return mass of dry chemical per distance
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<ApplicationRate> rateFromLiquidRate(
            Quantity<LiquidApplicationRate> liquidRate, LiquidChemical liquid) {
        return Derived.like(
                liquidRate,
                ApplicationRate.class,
                liquidRate(liquidRate) * given("liquid", liquid).kilogramsOfChemicalPerCubicMeter());
    }

    /**
     * The dry chemical per lane distance that a liquid brings: liquid lane rate × density × concentration.
     *
     * @param liquidLaneRate volume of liquid per lane distance
     * @param liquid the liquid
     * @return mass of dry chemical per lane distance
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<LaneApplicationRate> laneRateFromLiquidLaneRate(
            Quantity<LiquidLaneApplicationRate> liquidLaneRate, LiquidChemical liquid) {
        return Derived.like(
                liquidLaneRate,
                LaneApplicationRate.class,
                liquidLaneRate(liquidLaneRate) * given("liquid", liquid).kilogramsOfChemicalPerCubicMeter());
    }

    /**
     * The dry chemical per area that a liquid brings: liquid areal rate × density × concentration.
     *
     * @param liquidArealRate volume of liquid per area
     * @param liquid the liquid
     * @return mass of dry chemical per area
     * @throws InvalidInputException if the rate is negative
     */
    public static Quantity<ArealApplicationRate> arealRateFromLiquidArealRate(
            Quantity<LiquidArealApplicationRate> liquidArealRate, LiquidChemical liquid) {
        return Derived.like(
                liquidArealRate,
                ArealApplicationRate.class,
                liquidArealRate(liquidArealRate) * given("liquid", liquid).kilogramsOfChemicalPerCubicMeter());
    }

    /**
     * The liquid per distance that brings a rate of dry chemical: rate ÷ (density × concentration).
     *
     * @param rate mass of dry chemical per distance
     * @param liquid the liquid
     * @return volume of liquid per distance
     * @throws InvalidInputException if the rate is negative, or there is no chemical in the liquid
     */
    public static Quantity<LiquidApplicationRate> liquidRateFromRate(
            Quantity<ApplicationRate> rate, LiquidChemical liquid) {
        return Derived.like(
                rate,
                LiquidApplicationRate.class,
                Derived.notNegative("rate of dry chemical", ApplicationRate.class, rate) / chemicalOf(liquid));
    }

    /**
     * The liquid per lane distance that brings a lane rate of dry chemical: rate ÷ (density × concentration).
     *
     * @param laneRate mass of dry chemical per lane distance
     * @param liquid the liquid
     * @return volume of liquid per lane distance
     * @throws InvalidInputException if the rate is negative, or there is no chemical in the liquid
     */
    public static Quantity<LiquidLaneApplicationRate> liquidLaneRateFromLaneRate(
            Quantity<LaneApplicationRate> laneRate, LiquidChemical liquid) {
        return Derived.like(
                laneRate,
                LiquidLaneApplicationRate.class,
                Derived.notNegative("lane rate of dry chemical", LaneApplicationRate.class, laneRate)
                        / chemicalOf(liquid));
    }

    /**
     * The liquid per area that brings an areal rate of dry chemical: rate ÷ (density × concentration).
     *
     * @param arealRate mass of dry chemical per area
     * @param liquid the liquid
     * @return volume of liquid per area
     * @throws InvalidInputException if the rate is negative, or there is no chemical in the liquid
     */
    public static Quantity<LiquidArealApplicationRate> liquidArealRateFromArealRate(
            Quantity<ArealApplicationRate> arealRate, LiquidChemical liquid) {
        return Derived.like(
                arealRate,
                LiquidArealApplicationRate.class,
                Derived.notNegative("areal rate of dry chemical", ArealApplicationRate.class, arealRate)
                        / chemicalOf(liquid));
    }

    /**
     * All dry chemical per distance: that of granular material, of the liquid that prewets it, and of liquid spread beside it.
     * What isn't there has a rate of 0; both liquids may be the same.
     *
     * @param granularRate mass of granular material per distance, dry as it leaves the hopper
     * @param purity mass of dry chemical per mass of that material, 0 to 100 %
     * @param prewetRate volume of liquid per mass of granular material
     * @param prewetLiquid the liquid that prewets
     * @param directRate volume of liquid per distance that is spread beside the granular material
     * @param directLiquid that liquid
     * @return mass of dry chemical per distance
     * @throws InvalidInputException if a rate is negative, or the purity is out of its range
     */
    public static Quantity<ApplicationRate> totalRate(
            Quantity<ApplicationRate> granularRate,
            Quantity<Dimensionless> purity,
            Quantity<PrewetRate> prewetRate,
            LiquidChemical prewetLiquid,
            Quantity<LiquidApplicationRate> directRate,
            LiquidChemical directLiquid) {
        return Derived.like(
                granularRate,
                ApplicationRate.class,
                total(
                        Derived.notNegative("granular rate", ApplicationRate.class, granularRate),
                        purity,
                        prewetRate,
                        prewetLiquid,
                        liquidRate(directRate),
                        directLiquid));
    }

    /**
     * All dry chemical per lane distance: that of granular material, of the liquid that prewets it, and of liquid spread beside it.
     * What isn't there has a rate of 0; both liquids may be the same.
     *
     * @param granularLaneRate mass of granular material per lane distance, dry as it leaves the hopper
     * @param purity mass of dry chemical per mass of that material, 0 to 100 %
     * @param prewetRate volume of liquid per mass of granular material
     * @param prewetLiquid the liquid that prewets
     * @param directLaneRate volume of liquid per lane distance that is spread beside the granular material
     * @param directLiquid that liquid
     * @return mass of dry chemical per lane distance
     * @throws InvalidInputException if a rate is negative, or the purity is out of its range
     */
    public static Quantity<LaneApplicationRate> totalLaneRate(
            Quantity<LaneApplicationRate> granularLaneRate,
            Quantity<Dimensionless> purity,
            Quantity<PrewetRate> prewetRate,
            LiquidChemical prewetLiquid,
            Quantity<LiquidLaneApplicationRate> directLaneRate,
            LiquidChemical directLiquid) {
        return Derived.like(
                granularLaneRate,
                LaneApplicationRate.class,
                total(
                        Derived.notNegative("granular lane rate", LaneApplicationRate.class, granularLaneRate),
                        purity,
                        prewetRate,
                        prewetLiquid,
                        liquidLaneRate(directLaneRate),
                        directLiquid));
    }

    /**
     * All dry chemical per area: that of granular material, of the liquid that prewets it, and of liquid spread beside it. What
     * isn't there has a rate of 0; both liquids may be the same.
     *
     * @param granularArealRate mass of granular material per area, dry as it leaves the hopper
     * @param purity mass of dry chemical per mass of that material, 0 to 100 %
     * @param prewetRate volume of liquid per mass of granular material
     * @param prewetLiquid the liquid that prewets
     * @param directArealRate volume of liquid per area that is spread beside the granular material
     * @param directLiquid that liquid
     * @return mass of dry chemical per area
     * @throws InvalidInputException if a rate is negative, or the purity is out of its range
     */
    public static Quantity<ArealApplicationRate> totalArealRate(
            Quantity<ArealApplicationRate> granularArealRate,
            Quantity<Dimensionless> purity,
            Quantity<PrewetRate> prewetRate,
            LiquidChemical prewetLiquid,
            Quantity<LiquidArealApplicationRate> directArealRate,
            LiquidChemical directLiquid) {
        return Derived.like(
                granularArealRate,
                ArealApplicationRate.class,
                total(
                        Derived.notNegative("granular areal rate", ArealApplicationRate.class, granularArealRate),
                        purity,
                        prewetRate,
                        prewetLiquid,
                        liquidArealRate(directArealRate),
                        directLiquid));
    }

    /** The sum per distance, lane distance or area alike: granular in kg, direct in m³, each per the same. */
    private static double total(
            double granular,
            Quantity<Dimensionless> purity,
            Quantity<PrewetRate> prewetRate,
            LiquidChemical prewetLiquid,
            double direct,
            LiquidChemical directLiquid) {
        return granular * purity(purity)
                + granular
                        * Derived.notNegative("prewet rate", PrewetRate.class, prewetRate)
                        * given("prewet liquid", prewetLiquid).kilogramsOfChemicalPerCubicMeter()
                + direct * given("direct liquid", directLiquid).kilogramsOfChemicalPerCubicMeter();
    }

    private static double chemicalOf(LiquidChemical liquid) {
        double kilogramsPerCubicMeter = given("liquid", liquid).kilogramsOfChemicalPerCubicMeter();
        if (!(kilogramsPerCubicMeter > 0)) {
            throw new InvalidInputException(
                    RefusalCode.NOT_POSITIVE,
                    "mass fraction of the dry chemical",
                    "greater than 0",
                    Amounts.format(liquid.concentration()));
        }
        return kilogramsPerCubicMeter;
    }

    private static LiquidChemical given(String field, LiquidChemical liquid) {
        return Objects.requireNonNull(liquid, field);
    }

    private static double purity(Quantity<Dimensionless> purity) {
        return Derived.fraction("purity", purity);
    }

    private static double liquidRate(Quantity<LiquidApplicationRate> liquidRate) {
        return Derived.notNegative("liquid rate", LiquidApplicationRate.class, liquidRate);
    }

    private static double liquidLaneRate(Quantity<LiquidLaneApplicationRate> liquidLaneRate) {
        return Derived.notNegative("liquid lane rate", LiquidLaneApplicationRate.class, liquidLaneRate);
    }

    private static double liquidArealRate(Quantity<LiquidArealApplicationRate> liquidArealRate) {
        return Derived.notNegative("liquid areal rate", LiquidArealApplicationRate.class, liquidArealRate);
    }
}
