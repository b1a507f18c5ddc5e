package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;

class PrewetRatesTest {
    private static final Quantity<ApplicationRate> DRY = Amounts.of(400, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<LiquidApplicationRate> LIQUID = Amounts.of(2, SpreadingUnits.US_GALLON_PER_MILE);
    private static final Quantity<BulkDensity> BRINE = Amounts.of(10, SpreadingUnits.POUND_PER_US_GALLON);

    private static <Q extends Quantity<Q>> void assertIs(Quantity<Q> actual, double number, Unit<Q> unit) {
        assertThat(actual.getUnit()).isEqualTo(unit);
        assertThat(actual.getValue().doubleValue()).isCloseTo(number, within(1e-13 * number));
    }

    @Test
    void theLiquidFollowsTheDrySolid() {
        assertIs(
                PrewetRates.liquidRateFromDryRate(DRY, Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON)),
                2,
                SpreadingUnits.US_GALLON_PER_MILE);
        assertIs(PrewetRates.prewetRateFromRates(LIQUID, DRY), 10, SpreadingUnits.US_GALLON_PER_SHORT_TON);
    }

    @Test
    void perLaneAsWell() {
        assertIs(
                PrewetRates.liquidLaneRateFromDryLaneRate(
                        Amounts.of(400, SpreadingUnits.POUND_PER_LANE_MILE),
                        Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON)),
                2,
                SpreadingUnits.US_GALLON_PER_LANE_MILE);
        assertIs(
                PrewetRates.prewetRateFromLaneRates(
                        Amounts.of(2, SpreadingUnits.US_GALLON_PER_LANE_MILE),
                        Amounts.of(400, SpreadingUnits.POUND_PER_LANE_MILE)),
                10,
                SpreadingUnits.US_GALLON_PER_SHORT_TON);
    }

    @Test
    void perTimeAsWell() {
        assertIs(
                PrewetRates.flowFromDischarge(
                        Amounts.of(400, SpreadingUnits.POUND_PER_MINUTE),
                        Amounts.of(10, SpreadingUnits.US_GALLON_PER_SHORT_TON)),
                2,
                SpreadingUnits.US_GALLON_PER_MINUTE);
    }

    @Test
    void totalMassIsDryAndLiquid() {
        assertIs(PrewetRates.totalMass(DRY, LIQUID, BRINE), 420, SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void perAreaAsWell() {
        assertIs(
                PrewetRates.liquidArealRateFromDryArealRate(
                        Amounts.of(14, SpreadingUnits.GRAM_PER_SQUARE_METER),
                        Amounts.of(50, SpreadingUnits.LITER_PER_TONNE)),
                0.7,
                SpreadingUnits.MILLILITER_PER_SQUARE_METER);
        assertIs(
                PrewetRates.prewetRateFromArealRates(
                        Amounts.of(0.7, SpreadingUnits.MILLILITER_PER_SQUARE_METER),
                        Amounts.of(14, SpreadingUnits.GRAM_PER_SQUARE_METER)),
                50,
                SpreadingUnits.LITER_PER_TONNE);
    }

    @Test
    void metricRatesGiveMetricResults() {
        assertIs(
                PrewetRates.liquidRateFromDryRate(
                        Amounts.of(80, SpreadingUnits.KILOGRAM_PER_KILOMETER),
                        Amounts.of(50, SpreadingUnits.LITER_PER_TONNE)),
                4,
                SpreadingUnits.LITER_PER_KILOMETER);
    }
}
