package org.gritwright.units.rate;

import static org.gritwright.units.samples.Samples.assertRefused;
import static org.gritwright.units.samples.Samples.foreign;
import static org.gritwright.units.samples.Samples.wrongKind;

import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidArealApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

/** Every argument of every conversion, negative or nought where it may not be. */
class RateErrorsTest {
    private static <Q extends Quantity<Q>> Quantity<Q> of(double value, Unit<Q> unit) {
        return Amounts.of(value, unit);
    }

    private static final Quantity<ApplicationRate> RATE = of(1, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<ApplicationRate> NO_RATE = of(-1, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<LaneApplicationRate> LANE_RATE = of(1, SpreadingUnits.POUND_PER_LANE_MILE);
    private static final Quantity<LaneApplicationRate> NO_LANE_RATE = of(-1, SpreadingUnits.POUND_PER_LANE_MILE);
    private static final Quantity<ArealApplicationRate> AREAL = of(1, SpreadingUnits.GRAM_PER_SQUARE_METER);
    private static final Quantity<ArealApplicationRate> NO_AREAL = of(-1, SpreadingUnits.GRAM_PER_SQUARE_METER);
    private static final Quantity<DischargeRate> DISCHARGE = of(1, SpreadingUnits.POUND_PER_MINUTE);
    private static final Quantity<DischargeRate> NO_DISCHARGE = of(-1, SpreadingUnits.POUND_PER_MINUTE);
    private static final Quantity<DischargePerRevolution> PER_TURN = of(1, SpreadingUnits.POUND_PER_REVOLUTION);
    private static final Quantity<DischargePerRevolution> NO_PER_TURN = of(0, SpreadingUnits.POUND_PER_REVOLUTION);
    private static final Quantity<RotationalSpeed> TURNING = of(1, SpreadingUnits.REVOLUTION_PER_MINUTE);
    private static final Quantity<RotationalSpeed> NO_TURNING = of(-1, SpreadingUnits.REVOLUTION_PER_MINUTE);
    private static final Quantity<LiquidApplicationRate> LIQUID = of(1, SpreadingUnits.US_GALLON_PER_MILE);
    private static final Quantity<LiquidApplicationRate> NO_LIQUID = of(-1, SpreadingUnits.US_GALLON_PER_MILE);
    private static final Quantity<LiquidLaneApplicationRate> LIQUID_LANE =
            of(1, SpreadingUnits.US_GALLON_PER_LANE_MILE);
    private static final Quantity<LiquidLaneApplicationRate> NO_LIQUID_LANE =
            of(-1, SpreadingUnits.US_GALLON_PER_LANE_MILE);
    private static final Quantity<LiquidArealApplicationRate> LIQUID_AREAL =
            of(1, SpreadingUnits.MILLILITER_PER_SQUARE_METER);
    private static final Quantity<LiquidArealApplicationRate> NO_LIQUID_AREAL =
            of(-1, SpreadingUnits.MILLILITER_PER_SQUARE_METER);
    private static final Quantity<FlowRate> FLOW = of(1, SpreadingUnits.US_GALLON_PER_MINUTE);
    private static final Quantity<FlowRate> NO_FLOW = of(-1, SpreadingUnits.US_GALLON_PER_MINUTE);
    private static final Quantity<PrewetRate> PREWET = of(1, SpreadingUnits.US_GALLON_PER_SHORT_TON);
    private static final Quantity<PrewetRate> NO_PREWET = of(-1, SpreadingUnits.US_GALLON_PER_SHORT_TON);
    private static final Quantity<BulkDensity> DENSITY = of(1, SpreadingUnits.KILOGRAM_PER_LITER);
    private static final Quantity<BulkDensity> NO_DENSITY = of(0, SpreadingUnits.KILOGRAM_PER_LITER);
    private static final Quantity<LaneCount> LANE = of(1, SpreadingUnits.LANE);
    private static final Quantity<LaneCount> NO_LANE = of(0, SpreadingUnits.LANE);
    private static final Quantity<LaneWidth> LANE_WIDTH = of(12, SpreadingUnits.FOOT_PER_LANE);
    private static final Quantity<LaneWidth> NO_LANE_WIDTH = of(0, SpreadingUnits.FOOT_PER_LANE);
    private static final Quantity<Length> WIDTH = of(12, SpreadingUnits.FOOT);
    private static final Quantity<Length> NO_WIDTH = of(0, SpreadingUnits.FOOT);
    private static final Quantity<Speed> SPEED = of(30, SpreadingUnits.MILE_PER_HOUR);
    private static final Quantity<Speed> NO_SPEED = of(0, SpreadingUnits.MILE_PER_HOUR);

    @Test
    void ofGranularRatesAreNamed() {
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> Rates.laneRateFromRate(NO_RATE, LANE));
        assertRefused("lanes treated must be greater than 0: 0 lane", () -> Rates.laneRateFromRate(RATE, NO_LANE));
        assertRefused("lane rate must be 0 or more: -1 lb/lane-mi", () -> Rates.rateFromLaneRate(NO_LANE_RATE, LANE));
        assertRefused("lanes treated must be greater than 0: 0 lane", () -> Rates.rateFromLaneRate(LANE_RATE, NO_LANE));
        assertRefused(
                "lane rate must be 0 or more: -1 lb/lane-mi",
                () -> Rates.arealRateFromLaneRate(NO_LANE_RATE, LANE_WIDTH));
        assertRefused(
                "lane width must be greater than 0: 0 ft/lane",
                () -> Rates.arealRateFromLaneRate(LANE_RATE, NO_LANE_WIDTH));
        assertRefused("areal rate must be 0 or more: -1 g/m²", () -> Rates.laneRateFromArealRate(NO_AREAL, LANE_WIDTH));
        assertRefused(
                "lane width must be greater than 0: 0 ft/lane",
                () -> Rates.laneRateFromArealRate(AREAL, NO_LANE_WIDTH));
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> Rates.arealRateFromRate(NO_RATE, WIDTH));
        assertRefused("treated width must be greater than 0: 0 ft", () -> Rates.arealRateFromRate(RATE, NO_WIDTH));
        assertRefused("areal rate must be 0 or more: -1 g/m²", () -> Rates.rateFromArealRate(NO_AREAL, WIDTH));
        assertRefused("treated width must be greater than 0: 0 ft", () -> Rates.rateFromArealRate(AREAL, NO_WIDTH));
        assertRefused(
                "rate per two-lane distance must be 0 or more: -1 lb/mi", () -> Rates.laneRateFromTwoLaneRate(NO_RATE));
        assertRefused("lane rate must be 0 or more: -1 lb/lane-mi", () -> Rates.twoLaneRateFromLaneRate(NO_LANE_RATE));
    }

    @Test
    void ofDischargesAreNamed() {
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> Rates.dischargeFromRate(NO_RATE, SPEED));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> Rates.dischargeFromRate(RATE, NO_SPEED));
        assertRefused("discharge must be 0 or more: -1 lb/min", () -> Rates.rateFromDischarge(NO_DISCHARGE, SPEED));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> Rates.rateFromDischarge(DISCHARGE, NO_SPEED));
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> Rates.shaftSpeedFromRate(NO_RATE, SPEED, PER_TURN));
        assertRefused(
                "road speed must be greater than 0: 0 mi/h", () -> Rates.shaftSpeedFromRate(RATE, NO_SPEED, PER_TURN));
        assertRefused(
                "discharge per revolution must be greater than 0: 0 lb/rev",
                () -> Rates.shaftSpeedFromRate(RATE, SPEED, NO_PER_TURN));
        assertRefused(
                "discharge per revolution must be greater than 0: 0 lb/rev",
                () -> Rates.rateFromShaftSpeed(NO_PER_TURN, TURNING, SPEED));
        assertRefused(
                "shaft speed must be 0 or more: -1 rev/min",
                () -> Rates.rateFromShaftSpeed(PER_TURN, NO_TURNING, SPEED));
        assertRefused(
                "road speed must be greater than 0: 0 mi/h",
                () -> Rates.rateFromShaftSpeed(PER_TURN, TURNING, NO_SPEED));
    }

    @Test
    void ofLiquidRatesAreNamed() {
        assertRefused("rate must be 0 or more: -1 gal/mi", () -> LiquidRates.laneRateFromRate(NO_LIQUID, LANE));
        assertRefused(
                "lanes treated must be greater than 0: 0 lane", () -> LiquidRates.laneRateFromRate(LIQUID, NO_LANE));
        assertRefused(
                "lane rate must be 0 or more: -1 gal/lane-mi",
                () -> LiquidRates.rateFromLaneRate(NO_LIQUID_LANE, LANE));
        assertRefused(
                "lanes treated must be greater than 0: 0 lane",
                () -> LiquidRates.rateFromLaneRate(LIQUID_LANE, NO_LANE));
        assertRefused(
                "lane rate must be 0 or more: -1 gal/lane-mi",
                () -> LiquidRates.arealRateFromLaneRate(NO_LIQUID_LANE, LANE_WIDTH));
        assertRefused(
                "lane width must be greater than 0: 0 ft/lane",
                () -> LiquidRates.arealRateFromLaneRate(LIQUID_LANE, NO_LANE_WIDTH));
        assertRefused(
                "areal rate must be 0 or more: -1 mL/m²",
                () -> LiquidRates.laneRateFromArealRate(NO_LIQUID_AREAL, LANE_WIDTH));
        assertRefused(
                "lane width must be greater than 0: 0 ft/lane",
                () -> LiquidRates.laneRateFromArealRate(LIQUID_AREAL, NO_LANE_WIDTH));
        assertRefused("rate must be 0 or more: -1 gal/mi", () -> LiquidRates.arealRateFromRate(NO_LIQUID, WIDTH));
        assertRefused(
                "treated width must be greater than 0: 0 ft", () -> LiquidRates.arealRateFromRate(LIQUID, NO_WIDTH));
        assertRefused(
                "areal rate must be 0 or more: -1 mL/m²", () -> LiquidRates.rateFromArealRate(NO_LIQUID_AREAL, WIDTH));
        assertRefused(
                "treated width must be greater than 0: 0 ft",
                () -> LiquidRates.rateFromArealRate(LIQUID_AREAL, NO_WIDTH));
        assertRefused(
                "rate per two-lane distance must be 0 or more: -1 gal/mi",
                () -> LiquidRates.laneRateFromTwoLaneRate(NO_LIQUID));
        assertRefused(
                "lane rate must be 0 or more: -1 gal/lane-mi",
                () -> LiquidRates.twoLaneRateFromLaneRate(NO_LIQUID_LANE));
        assertRefused("rate must be 0 or more: -1 gal/mi", () -> LiquidRates.flowFromRate(NO_LIQUID, SPEED));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> LiquidRates.flowFromRate(LIQUID, NO_SPEED));
        assertRefused("flow must be 0 or more: -1 gal/min", () -> LiquidRates.rateFromFlow(NO_FLOW, SPEED));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> LiquidRates.rateFromFlow(FLOW, NO_SPEED));
    }

    @Test
    void ofPrewetRatesAreNamed() {
        assertRefused("dry rate must be 0 or more: -1 lb/mi", () -> PrewetRates.liquidRateFromDryRate(NO_RATE, PREWET));
        assertRefused(
                "prewet rate must be 0 or more: -1 gal/ton", () -> PrewetRates.liquidRateFromDryRate(RATE, NO_PREWET));
        assertRefused(
                "dry lane rate must be 0 or more: -1 lb/lane-mi",
                () -> PrewetRates.liquidLaneRateFromDryLaneRate(NO_LANE_RATE, PREWET));
        assertRefused(
                "prewet rate must be 0 or more: -1 gal/ton",
                () -> PrewetRates.liquidLaneRateFromDryLaneRate(LANE_RATE, NO_PREWET));
        assertRefused(
                "liquid rate must be 0 or more: -1 gal/mi", () -> PrewetRates.prewetRateFromRates(NO_LIQUID, RATE));
        assertRefused(
                "dry rate must be greater than 0: 0 lb/mi",
                () -> PrewetRates.prewetRateFromRates(LIQUID, of(0, SpreadingUnits.POUND_PER_MILE)));
        assertRefused(
                "liquid lane rate must be 0 or more: -1 gal/lane-mi",
                () -> PrewetRates.prewetRateFromLaneRates(NO_LIQUID_LANE, LANE_RATE));
        assertRefused(
                "dry lane rate must be greater than 0: 0 lb/lane-mi",
                () -> PrewetRates.prewetRateFromLaneRates(LIQUID_LANE, of(0, SpreadingUnits.POUND_PER_LANE_MILE)));
        assertRefused(
                "dry areal rate must be 0 or more: -1 g/m²",
                () -> PrewetRates.liquidArealRateFromDryArealRate(NO_AREAL, PREWET));
        assertRefused(
                "prewet rate must be 0 or more: -1 gal/ton",
                () -> PrewetRates.liquidArealRateFromDryArealRate(AREAL, NO_PREWET));
        assertRefused(
                "liquid areal rate must be 0 or more: -1 mL/m²",
                () -> PrewetRates.prewetRateFromArealRates(NO_LIQUID_AREAL, AREAL));
        assertRefused(
                "dry areal rate must be greater than 0: 0 g/m²",
                () -> PrewetRates.prewetRateFromArealRates(LIQUID_AREAL, of(0, SpreadingUnits.GRAM_PER_SQUARE_METER)));
        assertRefused(
                "discharge must be 0 or more: -1 lb/min", () -> PrewetRates.flowFromDischarge(NO_DISCHARGE, PREWET));
        assertRefused(
                "prewet rate must be 0 or more: -1 gal/ton", () -> PrewetRates.flowFromDischarge(DISCHARGE, NO_PREWET));
    }

    @Test
    void ofTotalsAreNamed() {
        assertRefused("dry rate must be 0 or more: -1 lb/mi", () -> PrewetRates.totalMass(NO_RATE, LIQUID, DENSITY));
        assertRefused(
                "liquid rate must be 0 or more: -1 gal/mi", () -> PrewetRates.totalMass(RATE, NO_LIQUID, DENSITY));
        assertRefused(
                "density of the liquid must be greater than 0: 0 kg/L",
                () -> PrewetRates.totalMass(RATE, LIQUID, NO_DENSITY));
    }

    @Test
    void anotherKindThroughARawTypeIsNamed() {
        assertRefused(
                "rate must be a finite application rate: 1 lb/lane-mi",
                () -> Rates.laneRateFromRate(wrongKind(LANE_RATE), LANE));
        assertRefused(
                "treated width must be a finite length: 12 ft/lane",
                () -> Rates.arealRateFromRate(RATE, wrongKind(LANE_WIDTH)));
        assertRefused(
                "lane width must be a finite lane width: 12 ft",
                () -> Rates.arealRateFromLaneRate(LANE_RATE, wrongKind(WIDTH)));
    }

    @Test
    void aForeignQuantityThatIsNotFiniteIsNamed() {
        assertRefused(
                "rate must be a finite application rate: NaN in \"lb/mi\"",
                () -> Rates.laneRateFromRate(foreign(Double.NaN, SpreadingUnits.POUND_PER_MILE), LANE));
        assertRefused(
                "road speed must be a finite speed: Infinity in \"mi/h\"",
                () -> Rates.dischargeFromRate(RATE, foreign(Double.POSITIVE_INFINITY, SpreadingUnits.MILE_PER_HOUR)));
    }

    @Test
    void aResultBeyondAllNumbersIsRefused() {
        assertRefused(
                "value must be finite: Infinity in \"lb/lane-mi\"",
                () -> Rates.laneRateFromRate(
                        of(1e300, SpreadingUnits.POUND_PER_MILE), of(1e-300, SpreadingUnits.LANE)));
    }
}
