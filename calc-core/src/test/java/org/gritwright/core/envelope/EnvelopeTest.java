package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.KILOMETER_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.LANE;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.POUND_PER_LANE_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargeRate;
import org.junit.jupiter.api.Test;

/** By hand: 6 lb/rev at 5 to 50 rev/min are 30 to 300 lb/min; 300 lb/mi at 20 mi/h are 100 lb/min. */
class EnvelopeTest {
    static final WorkingRange RANGE =
            new WorkingRange(Amounts.of(5, REVOLUTION_PER_MINUTE), Amounts.of(50, REVOLUTION_PER_MINUTE));
    static final Envelope SIX = Envelope.of(
            Measured.of(Amounts.of(6, POUND_PER_REVOLUTION), Amounts.of(0.06, POUND_PER_REVOLUTION), 8), RANGE);
    private static final Quantity<DischargeRate> HUNDRED_POUNDS_A_MINUTE =
            Amounts.of(100 * 0.45359237 / 60, SpreadingUnits.KILOGRAM_PER_SECOND);

    static Quantity<ApplicationRate> rate(double poundsPerMile) {
        return Amounts.of(poundsPerMile, POUND_PER_MILE);
    }

    static Quantity<Speed> speed(double milesPerHour) {
        return Amounts.of(milesPerHour, MILE_PER_HOUR);
    }

    private static double milesPerHour(Bound<Speed> bound) {
        return Amounts.in(bound.value().value(), MILE_PER_HOUR);
    }

    private static double poundsPerMile(Bound<ApplicationRate> bound) {
        return Amounts.in(bound.value().value(), POUND_PER_MILE);
    }

    @Test
    void aRateHoldsBetweenTheSpeedsThatTheShaftsLimitsGive() {
        Span<Speed> speeds = SIX.speedsFor(rate(300));

        assertThat(milesPerHour(speeds.lowest().orElseThrow())).isCloseTo(6, within(1e-12));
        assertThat(milesPerHour(speeds.highest())).isCloseTo(60, within(1e-11));
        assertThat(speeds.lowest().orElseThrow().limit()).isEqualTo(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(speeds.highest().limit()).isEqualTo(Limit.FASTEST_SHAFT);
        assertThat(speeds).hasToString("6 mi/h to 60 mi/h");
    }

    @Test
    void atASpeedTheRatesHoldThatTheShaftsLimitsGive() {
        Span<ApplicationRate> rates = SIX.ratesAt(speed(30));

        assertThat(poundsPerMile(rates.lowest().orElseThrow())).isCloseTo(60, within(1e-11));
        assertThat(poundsPerMile(rates.highest())).isCloseTo(600, within(1e-10));
    }

    @Test
    void bothSidesAreAsUncertainAsTheCalibration() {
        Measured<Speed> highest = SIX.speedsFor(rate(300)).highest().value();

        assertThat(Amounts.in(highest.standardUncertainty().orElseThrow(), MILE_PER_HOUR))
                .isCloseTo(0.6, within(1e-11));
        assertThat(highest.degreesOfFreedom()).hasValue(8);
        assertThat(Envelope.of(Measured.once(Amounts.of(6, POUND_PER_REVOLUTION)), RANGE)
                        .speedsFor(rate(300))
                        .highest()
                        .value()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void twoLanesAtARatePerLaneAreTwiceTheRate() {
        assertThat(SIX.speedsFor(Amounts.of(150, POUND_PER_LANE_MILE), Amounts.of(2, LANE)))
                .isEqualTo(SIX.speedsFor(rate(300)));
    }

    @Test
    void resultsAreInTheUnitSystemOfWhatWasAsked() {
        assertThat(SIX.speedsFor(Amounts.of(80, KILOGRAM_PER_KILOMETER))
                        .highest()
                        .value()
                        .value()
                        .getUnit())
                .isEqualTo(KILOMETER_PER_HOUR);
        assertThat(SIX.ratesAt(Amounts.of(40, KILOMETER_PER_HOUR))
                        .highest()
                        .value()
                        .value()
                        .getUnit())
                .isEqualTo(KILOGRAM_PER_KILOMETER);
    }

    @Test
    void aShaftThatTurnsAsSlowlyAsYouLikeHasNoLowerLimit() {
        Envelope envelope = Envelope.of(
                SIX.discharge(),
                new WorkingRange(Amounts.of(0, REVOLUTION_PER_MINUTE), Amounts.of(50, REVOLUTION_PER_MINUTE)));

        assertThat(envelope.speedsFor(rate(300)).lowest()).isEmpty();
        assertThat(envelope.speedsFor(rate(300))).hasToString("up to 60 mi/h");
        assertThat(envelope.deliveredAt(rate(1), speed(1)).limit()).isEmpty();
    }

    @Test
    void aTruckThatIsAskedForTooMuchPutsDownWhatTheDriveGives() {
        Delivered delivered = SIX.deliveredAt(rate(300), speed(75));

        assertThat(Amounts.in(delivered.shaftSpeed(), REVOLUTION_PER_MINUTE)).isCloseTo(62.5, within(1e-11));
        assertThat(Amounts.in(delivered.delivered(), POUND_PER_MILE)).isCloseTo(240, within(1e-11));
        assertThat(Amounts.in(delivered.share(), SpreadingUnits.PERCENT)).isCloseTo(80, within(1e-11));
        assertThat(delivered.limit()).contains(Limit.FASTEST_SHAFT);
        assertThat(delivered.asked()).isEqualTo(rate(300));
    }

    @Test
    void aTruckThatIsAskedForTooLittleGoesOnAtItsSlowestOrStops() {
        Delivered goesOn = SIX.deliveredAt(rate(300), speed(3));
        Delivered stops = SIX.with(BelowRange.STOPS).deliveredAt(rate(300), speed(3));

        assertThat(Amounts.in(goesOn.delivered(), POUND_PER_MILE)).isCloseTo(600, within(1e-10));
        assertThat(Amounts.in(stops.delivered(), POUND_PER_MILE)).isZero();
        assertThat(goesOn.limit()).isEqualTo(stops.limit()).contains(Limit.SLOWEST_STEADY_SHAFT);
    }

    @Test
    void withinTheRangeExactlyWhatWasAskedForIsPutDown() {
        Delivered delivered = SIX.deliveredAt(rate(300), speed(20));

        assertThat(delivered.delivered()).isEqualTo(rate(300));
        assertThat(delivered.limit()).isEmpty();
        assertThat(Amounts.in(delivered.share(), SpreadingUnits.PERCENT)).isEqualTo(100);
        assertThat(Amounts.in(SIX.shaftSpeed(rate(300), speed(20)), REVOLUTION_PER_MINUTE))
                .isCloseTo(100 / 6.0, within(1e-12));
    }

    @Test
    void atALowEngineSpeedThePumpIsTheLimit() {
        // 25 rev/min of 6 lb are 150 lb/min, which is 300 lb/mi at 30 mi/h.
        Envelope idling = SIX.withPumpLimit(Amounts.of(25, REVOLUTION_PER_MINUTE));
        Bound<Speed> highest = idling.speedsFor(rate(300)).highest();

        assertThat(milesPerHour(highest)).isCloseTo(30, within(1e-11));
        assertThat(highest.limit()).isEqualTo(Limit.ENGINE_SPEED);
        assertThat(highest.value().degreesOfFreedom()).hasValue(8);
        Delivered fast = idling.deliveredAt(rate(300), speed(60));
        assertThat(Amounts.in(fast.share(), SpreadingUnits.PERCENT)).isCloseTo(50, within(1e-11));
        assertThat(fast.limit()).contains(Limit.ENGINE_SPEED);
        assertThat(idling.withGreatestFlow(HUNDRED_POUNDS_A_MINUTE)
                        .speedsFor(rate(300))
                        .highest()
                        .limit())
                .isEqualTo(Limit.GRAIN_FLOW);
        assertThat(SIX.withGreatestFlow(HUNDRED_POUNDS_A_MINUTE)
                        .withPumpLimit(Amounts.of(10, REVOLUTION_PER_MINUTE))
                        .with(BelowRange.STOPS)
                        .speedsFor(rate(300))
                        .highest()
                        .limit())
                .isEqualTo(Limit.ENGINE_SPEED);
        assertThat(idling.with(BelowRange.STOPS).pumpLimit()).isEqualTo(idling.pumpLimit());
    }

    @Test
    void whereTwoLimitsMeetItIsTheShafts() {
        Envelope both =
                SIX.withGreatestFlow(Amounts.ofSi(SIX.compiled().greatestFlow(), SpreadingUnits.KILOGRAM_PER_SECOND));

        assertThat(both.speedsFor(rate(300)).highest().limit()).isEqualTo(Limit.FASTEST_SHAFT);
    }

    @Test
    void whatIsJustHeldIsHeld() {
        CompiledEnvelope stopping = new CompiledEnvelope(1, 10, false);

        assertThat(stopping.flow(1)).isEqualTo(1);
        assertThat(stopping.flow(10)).isEqualTo(10);
        FlowOverTime sums = new FlowOverTime(stopping);
        sums.add(1, 1, 5);
        sums.add(10, 10, 5);
        assertThat(sums.beyond()).isZero();
        assertThat(sums.under()).isZero();
        assertThat(sums.over()).isZero();
        assertThat(sums.asked()).isEqualTo(55);
    }

    @Test
    void aPumpThatGivesMoreThanTheValveLetsThroughIsNoLimit() {
        Envelope revving = SIX.withPumpLimit(Amounts.of(50, REVOLUTION_PER_MINUTE));

        assertThat(revving.speedsFor(rate(300)).highest())
                .isEqualTo(SIX.speedsFor(rate(300)).highest());
        assertRefused(
                "shaft speed by the pump must be greater than 0: 0 rev/min",
                () -> SIX.withPumpLimit(Amounts.of(0, REVOLUTION_PER_MINUTE)));
    }

    @Test
    void grainsThatRunMoreSlowlyThanTheShaftTurnsAreTheLimit() {
        Envelope envelope = SIX.withGreatestFlow(HUNDRED_POUNDS_A_MINUTE);
        Bound<Speed> highest = envelope.speedsFor(rate(300)).highest();

        assertThat(highest.limit()).isEqualTo(Limit.GRAIN_FLOW);
        assertThat(milesPerHour(highest)).isCloseTo(20, within(1e-11));
        assertThat(highest.value().standardUncertainty()).isEmpty();
        assertThat(envelope.deliveredAt(rate(300), speed(40)).limit()).contains(Limit.GRAIN_FLOW);
        assertThat(Amounts.in(envelope.deliveredAt(rate(300), speed(40)).delivered(), POUND_PER_MILE))
                .isCloseTo(150, within(1e-10));
    }

    @Test
    void grainsThatRunFasterThanTheShaftTurnsAreNoLimit() {
        Envelope envelope = SIX.withGreatestFlow(Amounts.of(10, SpreadingUnits.KILOGRAM_PER_SECOND));

        assertThat(envelope.speedsFor(rate(300))).isEqualTo(SIX.speedsFor(rate(300)));
    }

    @Test
    void whereGrainsRunMoreSlowlyThanTheSlowestShaftNothingHolds() {
        Envelope envelope = SIX.withGreatestFlow(Amounts.of(0.1, SpreadingUnits.KILOGRAM_PER_SECOND));
        Span<Speed> speeds = envelope.speedsFor(rate(300));

        assertThat(milesPerHour(speeds.highest()))
                .isLessThan(milesPerHour(speeds.lowest().orElseThrow()));
        assertThat(envelope.deliveredAt(rate(300), speed(20)).limit()).contains(Limit.GRAIN_FLOW);
        assertThat(envelope.deliveredAt(rate(300), speed(1)).limit()).contains(Limit.SLOWEST_STEADY_SHAFT);
        assertThat(envelope.compiled().flow(0.05)).isEqualTo(0.1);
        assertThat(envelope.with(BelowRange.STOPS).compiled().flow(0.2)).isZero();
    }

    @Test
    void whatCantBeIsRefused() {
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> SIX.speedsFor(rate(0)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> SIX.ratesAt(speed(0)));
        assertRefused("rate must be greater than 0: 0 lb/mi", () -> SIX.deliveredAt(rate(0), speed(1)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> SIX.deliveredAt(rate(1), speed(0)));
        assertRefused("rate must be 0 or more: -1 lb/mi", () -> SIX.shaftSpeed(rate(-1), speed(1)));
        assertRefused("road speed must be 0 or more: -1 mi/h", () -> SIX.shaftSpeed(rate(1), speed(-1)));
        assertRefused(
                "discharge per revolution must be greater than 0: 0 lb/rev",
                () -> Envelope.of(Measured.once(Amounts.of(0, POUND_PER_REVOLUTION)), RANGE));
        assertRefused(
                "greatest flow must be greater than 0: 0 kg/s",
                () -> SIX.withGreatestFlow(Amounts.of(0, SpreadingUnits.KILOGRAM_PER_SECOND)));
    }

    @Test
    void limitsHaveWords() {
        assertThat(Limit.FASTEST_SHAFT.words()).isEqualTo("the drive turns the shaft no faster");
        assertThat(Limit.SLOWEST_STEADY_SHAFT.words()).isEqualTo("the shaft can't turn more slowly and stay steady");
        assertThat(Limit.GRAIN_FLOW.words()).isEqualTo("the grains run no faster through the gate");
    }
}
