package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.junit.jupiter.api.Test;

class RatesTest {
    private static final Quantity<ApplicationRate> RATE = Amounts.of(240, SpreadingUnits.POUND_PER_MILE);
    private static final Quantity<LaneApplicationRate> LANE_RATE = Amounts.of(240, SpreadingUnits.POUND_PER_LANE_MILE);

    private static <Q extends Quantity<Q>> void assertIs(Quantity<Q> actual, double number, Unit<Q> unit) {
        assertThat(actual.getUnit()).isEqualTo(unit);
        assertThat(actual.getValue().doubleValue()).isCloseTo(number, within(1e-13 * number));
    }

    @Test
    void lanesTreatedInThePassDivideTheRatePerDistance() {
        assertIs(
                Rates.laneRateFromRate(RATE, Amounts.of(2, SpreadingUnits.LANE)),
                120,
                SpreadingUnits.POUND_PER_LANE_MILE);
        assertIs(
                Rates.rateFromLaneRate(LANE_RATE, Amounts.of(2, SpreadingUnits.LANE)),
                480,
                SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void aLaneMayBeTreatedInPart() {
        assertIs(
                Rates.laneRateFromRate(RATE, Amounts.of(1.5, SpreadingUnits.LANE)),
                160,
                SpreadingUnits.POUND_PER_LANE_MILE);
    }

    @Test
    void laneWidthAndTreatedWidthAreNotTheSame() {
        // 240 lb/mi over two 12-ft lanes is 120 lb/lane-mi: half the dose of 240 lb/lane-mi.
        Quantity<?> overTwoLanes = Rates.arealRateFromRate(RATE, Amounts.of(24, SpreadingUnits.FOOT));
        Quantity<?> overOneLane = Rates.arealRateFromLaneRate(LANE_RATE, Amounts.of(12, SpreadingUnits.FOOT_PER_LANE));

        assertThat(overOneLane.getValue().doubleValue())
                .isCloseTo(2 * overTwoLanes.getValue().doubleValue(), within(1e-12));
    }

    @Test
    void perTwoLaneDistanceIsTwiceTheLaneRateOnAnyTruck() {
        assertIs(Rates.laneRateFromTwoLaneRate(RATE), 120, SpreadingUnits.POUND_PER_LANE_MILE);
        assertIs(Rates.twoLaneRateFromLaneRate(LANE_RATE), 480, SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void speedLiesBetweenRateAndDischarge() {
        assertIs(
                Rates.dischargeFromRate(RATE, Amounts.of(25, SpreadingUnits.MILE_PER_HOUR)),
                100,
                SpreadingUnits.POUND_PER_MINUTE);
        assertIs(
                Rates.rateFromDischarge(
                        Amounts.of(100, SpreadingUnits.POUND_PER_MINUTE), Amounts.of(25, SpreadingUnits.MILE_PER_HOUR)),
                240,
                SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void theConveyorTurnsRateTimesSpeedOverDischargePerRevolution() {
        assertIs(
                Rates.shaftSpeedFromRate(
                        RATE,
                        Amounts.of(25, SpreadingUnits.MILE_PER_HOUR),
                        Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION)),
                20,
                SpreadingUnits.REVOLUTION_PER_MINUTE);
        assertIs(
                Rates.rateFromShaftSpeed(
                        Amounts.of(5, SpreadingUnits.POUND_PER_REVOLUTION),
                        Amounts.of(20, SpreadingUnits.REVOLUTION_PER_MINUTE),
                        Amounts.of(25, SpreadingUnits.MILE_PER_HOUR)),
                240,
                SpreadingUnits.POUND_PER_MILE);
    }

    @Test
    void resultsSpeakTheSystemOfTheFirstArgument() {
        Quantity<ApplicationRate> metric = Amounts.of(90, SpreadingUnits.KILOGRAM_PER_KILOMETER);

        assertIs(
                Rates.laneRateFromRate(metric, Amounts.of(2, SpreadingUnits.LANE)),
                45,
                SpreadingUnits.KILOGRAM_PER_LANE_KILOMETER);
        assertIs(
                Rates.arealRateFromRate(metric, Amounts.of(9, SpreadingUnits.METER)),
                10,
                SpreadingUnits.GRAM_PER_SQUARE_METER);
        assertThat(Rates.arealRateFromRate(RATE, Amounts.of(9, SpreadingUnits.METER))
                        .getUnit())
                .isEqualTo(SpreadingUnits.POUND_PER_1000_SQUARE_FEET);
        assertIs(
                Rates.dischargeFromRate(metric, Amounts.of(40, SpreadingUnits.KILOMETER_PER_HOUR)),
                60,
                SpreadingUnits.KILOGRAM_PER_MINUTE);
    }

    @Test
    void aRateOfZeroIsARate() {
        Quantity<ApplicationRate> none = Amounts.of(0, SpreadingUnits.POUND_PER_MILE);

        assertIs(
                Rates.laneRateFromRate(none, Amounts.of(2, SpreadingUnits.LANE)),
                0,
                SpreadingUnits.POUND_PER_LANE_MILE);
        assertIs(
                Rates.dischargeFromRate(none, Amounts.of(25, SpreadingUnits.MILE_PER_HOUR)),
                0,
                SpreadingUnits.POUND_PER_MINUTE);
    }
}
