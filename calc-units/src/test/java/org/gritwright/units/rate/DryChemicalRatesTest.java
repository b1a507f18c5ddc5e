package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.samples.Samples.assertRefused;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PrewetRate;
import org.junit.jupiter.api.Test;

class DryChemicalRatesTest {
    /** 10 lb/gal, a quarter of it chemical: 2.5 lb of chemical a gallon. */
    private static final LiquidChemical LIQUID = new LiquidChemical(
            Amounts.of(10, SpreadingUnits.POUND_PER_US_GALLON), Amounts.of(25, SpreadingUnits.PERCENT));

    /** 12 lb/gal, half of it chemical: 6 lb of chemical a gallon. */
    private static final LiquidChemical OTHER =
            new LiquidChemical(Amounts.of(12, SpreadingUnits.POUND_PER_US_GALLON), Amounts.of(0.5, SpreadingUnits.ONE));

    private static final LiquidChemical WATER =
            new LiquidChemical(Amounts.of(1, SpreadingUnits.KILOGRAM_PER_LITER), Amounts.of(0, SpreadingUnits.PERCENT));

    private static final Quantity<Dimensionless> PURITY = Amounts.of(95, SpreadingUnits.PERCENT);
    private static final Quantity<PrewetRate> PREWET = Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON);

    private static <Q extends Quantity<Q>> Quantity<Q> of(double value, Unit<Q> unit) {
        return Amounts.of(value, unit);
    }

    private static <Q extends Quantity<Q>> void assertIs(Quantity<Q> actual, double number, Unit<Q> unit) {
        assertThat(actual.getUnit()).isEqualTo(unit);
        assertThat(actual.getValue().doubleValue()).isCloseTo(number, within(1e-13 * number));
    }

    @Test
    void aGallonBringsItsChemical() {
        assertIs(
                DryChemicalRates.rateFromLiquidRate(of(40, SpreadingUnits.US_GALLON_PER_MILE), LIQUID),
                100,
                SpreadingUnits.POUND_PER_MILE);
        assertIs(
                DryChemicalRates.laneRateFromLiquidLaneRate(of(40, SpreadingUnits.US_GALLON_PER_LANE_MILE), LIQUID),
                100,
                SpreadingUnits.POUND_PER_LANE_MILE);
        assertIs(
                DryChemicalRates.arealRateFromLiquidArealRate(
                        of(0.5, SpreadingUnits.US_GALLON_PER_1000_SQUARE_FEET), LIQUID),
                1.25,
                SpreadingUnits.POUND_PER_1000_SQUARE_FEET);
    }

    @Test
    void aRateOfDryChemicalNeedsItsGallons() {
        assertIs(
                DryChemicalRates.liquidRateFromRate(of(100, SpreadingUnits.POUND_PER_MILE), LIQUID),
                40,
                SpreadingUnits.US_GALLON_PER_MILE);
        assertIs(
                DryChemicalRates.liquidLaneRateFromLaneRate(of(100, SpreadingUnits.POUND_PER_LANE_MILE), LIQUID),
                40,
                SpreadingUnits.US_GALLON_PER_LANE_MILE);
        assertIs(
                DryChemicalRates.liquidArealRateFromArealRate(
                        of(1.25, SpreadingUnits.POUND_PER_1000_SQUARE_FEET), LIQUID),
                0.5,
                SpreadingUnits.US_GALLON_PER_1000_SQUARE_FEET);
    }

    @Test
    void granularMaterialIsAsMuchChemicalAsItIsPure() {
        assertThat(DryChemicalRates.inGranular(of(200, SpreadingUnits.POUND_PER_LANE_MILE), PURITY))
                .isEqualTo(of(190, SpreadingUnits.POUND_PER_LANE_MILE));
    }

    /** 400 lb at 95 % is 380; prewet 400 lb × 10 gal/ton is 2 gal, 5 lb; direct 3 gal of the other is 18 lb. */
    @Test
    void theTotalIsGranularAndPrewetAndDirect() {
        assertIs(
                DryChemicalRates.totalRate(
                        of(400, SpreadingUnits.POUND_PER_MILE),
                        PURITY,
                        PREWET,
                        LIQUID,
                        of(3, SpreadingUnits.US_GALLON_PER_MILE),
                        OTHER),
                403,
                SpreadingUnits.POUND_PER_MILE);
        assertIs(
                DryChemicalRates.totalLaneRate(
                        of(400, SpreadingUnits.POUND_PER_LANE_MILE),
                        PURITY,
                        PREWET,
                        LIQUID,
                        of(3, SpreadingUnits.US_GALLON_PER_LANE_MILE),
                        OTHER),
                403,
                SpreadingUnits.POUND_PER_LANE_MILE);
        assertIs(
                DryChemicalRates.totalArealRate(
                        of(400, SpreadingUnits.POUND_PER_1000_SQUARE_FEET),
                        PURITY,
                        PREWET,
                        LIQUID,
                        of(3, SpreadingUnits.US_GALLON_PER_1000_SQUARE_FEET),
                        OTHER),
                403,
                SpreadingUnits.POUND_PER_1000_SQUARE_FEET);
    }

    @Test
    void waterBringsNone() {
        assertIs(
                DryChemicalRates.totalRate(
                        of(400, SpreadingUnits.POUND_PER_MILE),
                        Amounts.of(100, SpreadingUnits.PERCENT),
                        PREWET,
                        WATER,
                        of(3, SpreadingUnits.US_GALLON_PER_MILE),
                        WATER),
                400,
                SpreadingUnits.POUND_PER_MILE);
        assertRefused(
                "mass fraction of the dry chemical must be greater than 0: 0 %",
                () -> DryChemicalRates.liquidRateFromRate(of(100, SpreadingUnits.POUND_PER_MILE), WATER));
    }

    @Test
    void aSolutionHasADensityAndAPossibleConcentration() {
        Quantity<Dimensionless> quarter = Amounts.of(25, SpreadingUnits.PERCENT);
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> new LiquidChemical(of(0, SpreadingUnits.KILOGRAM_PER_LITER), quarter));
        assertRefused(
                "mass fraction of the dry chemical must be within 0 % to 100 %: 101 %",
                () -> new LiquidChemical(LIQUID.density(), Amounts.of(101, SpreadingUnits.PERCENT)));
        assertRefused(
                "mass fraction of the dry chemical must be within 0 % to 100 %: -0.1",
                () -> new LiquidChemical(LIQUID.density(), Amounts.of(-0.1, SpreadingUnits.ONE)));
    }

    @Test
    void negativeRatesAreNamed() {
        assertRefused(
                "liquid rate must be 0 or more: -1 gal/mi",
                () -> DryChemicalRates.rateFromLiquidRate(of(-1, SpreadingUnits.US_GALLON_PER_MILE), LIQUID));
        assertRefused(
                "liquid lane rate must be 0 or more: -1 gal/lane-mi",
                () -> DryChemicalRates.laneRateFromLiquidLaneRate(
                        of(-1, SpreadingUnits.US_GALLON_PER_LANE_MILE), LIQUID));
        assertRefused(
                "liquid areal rate must be 0 or more: -1 mL/m²",
                () -> DryChemicalRates.arealRateFromLiquidArealRate(
                        of(-1, SpreadingUnits.MILLILITER_PER_SQUARE_METER), LIQUID));
        assertRefused(
                "rate of dry chemical must be 0 or more: -1 lb/mi",
                () -> DryChemicalRates.liquidRateFromRate(of(-1, SpreadingUnits.POUND_PER_MILE), LIQUID));
        assertRefused(
                "lane rate of dry chemical must be 0 or more: -1 lb/lane-mi",
                () -> DryChemicalRates.liquidLaneRateFromLaneRate(of(-1, SpreadingUnits.POUND_PER_LANE_MILE), LIQUID));
        assertRefused(
                "areal rate of dry chemical must be 0 or more: -1 g/m²",
                () -> DryChemicalRates.liquidArealRateFromArealRate(
                        of(-1, SpreadingUnits.GRAM_PER_SQUARE_METER), LIQUID));
        assertRefused(
                "granular rate must be 0 or more: -1 t",
                () -> DryChemicalRates.inGranular(of(-1, SpreadingUnits.TONNE), PURITY));
    }

    @Test
    void whatATotalCannotBeOfIsNamed() {
        assertRefused("granular rate must be 0 or more: -1 lb/mi", () -> total(-1, PURITY, PREWET, 0));
        assertRefused(
                "purity must be within 0 % to 100 %: 101 %",
                () -> total(1, Amounts.of(101, SpreadingUnits.PERCENT), PREWET, 0));
        assertRefused(
                "prewet rate must be 0 or more: -1 L/t",
                () -> total(1, PURITY, Amounts.of(-1, SpreadingUnits.LITER_PER_TONNE), 0));
        assertRefused("liquid rate must be 0 or more: -1 gal/mi", () -> total(1, PURITY, PREWET, -1));
        assertRefused(
                "granular lane rate must be 0 or more: -1 lb/lane-mi",
                () -> DryChemicalRates.totalLaneRate(
                        of(-1, SpreadingUnits.POUND_PER_LANE_MILE),
                        PURITY,
                        PREWET,
                        LIQUID,
                        of(0, SpreadingUnits.US_GALLON_PER_LANE_MILE),
                        LIQUID));
        assertRefused(
                "granular areal rate must be 0 or more: -1 g/m²",
                () -> DryChemicalRates.totalArealRate(
                        of(-1, SpreadingUnits.GRAM_PER_SQUARE_METER),
                        PURITY,
                        PREWET,
                        LIQUID,
                        of(0, SpreadingUnits.MILLILITER_PER_SQUARE_METER),
                        LIQUID));
    }

    private static void total(
            double granular, Quantity<Dimensionless> purity, Quantity<PrewetRate> prewet, double direct) {
        DryChemicalRates.totalRate(
                of(granular, SpreadingUnits.POUND_PER_MILE),
                purity,
                prewet,
                LIQUID,
                of(direct, SpreadingUnits.US_GALLON_PER_MILE),
                LIQUID);
    }
}
