package org.gritwright.core.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.curve.SlipSamples.rpm;
import static org.gritwright.units.SpreadingUnits.LANE;
import static org.gritwright.units.SpreadingUnits.LITER_PER_PULSE;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_US_GALLON;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_LANE_MILE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MILE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.US_GALLON_PER_REVOLUTION;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.curve.SlipCurve;
import org.gritwright.core.curve.SlipModel;
import org.gritwright.core.curve.SlipSamples;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiquidEnvelopeTest {
    /** 0.05 gal/rev, known to 2 %. */
    private static final Measured<VolumePerRevolution> VOLUME = Measured.of(volume(0.05), volume(0.001), 7);

    /** 5 to 20 gal/min. */
    private static final LiquidEnvelope PUMP = LiquidEnvelope.ofPump(VOLUME, range(100, 400));

    private static Quantity<VolumePerRevolution> volume(double gallons) {
        return Amounts.of(gallons, US_GALLON_PER_REVOLUTION);
    }

    private static WorkingRange range(double lowest, double highest) {
        return new WorkingRange(rpm(lowest), rpm(highest));
    }

    private static Quantity<FlowRate> flow(double gallonsPerMinute) {
        return Amounts.of(gallonsPerMinute, US_GALLON_PER_MINUTE);
    }

    private static LiquidEnvelope flows(double least, double most) {
        return LiquidEnvelope.ofFlows(
                flow(least), Limit.LOWEST_NOZZLE_PRESSURE, flow(most), Limit.HIGHEST_NOZZLE_PRESSURE);
    }

    private static Quantity<LiquidApplicationRate> rate(double gallonsPerMile) {
        return Amounts.of(gallonsPerMile, US_GALLON_PER_MILE);
    }

    private static Quantity<Speed> mph(double speed) {
        return Amounts.of(speed, MILE_PER_HOUR);
    }

    /** 30 gal/mi at 10 mi/h are 5 gal/min. */
    @Test
    void aPumpHoldsARateBetweenTwoSpeeds() {
        Span<Speed> speeds = PUMP.speedsFor(rate(30));
        Bound<Speed> lowest = speeds.lowest().orElseThrow();

        assertThat(Amounts.in(lowest.value().value(), MILE_PER_HOUR)).isCloseTo(10, within(1e-12));
        assertThat(Amounts.in(speeds.highest().value().value(), MILE_PER_HOUR)).isCloseTo(40, within(1e-12));
        assertThat(lowest.limit()).isEqualTo(Limit.LEAST_PUMP_FLOW);
        assertThat(speeds.highest().limit()).isEqualTo(Limit.MOST_PUMP_FLOW);
        assertThat(speeds).hasToString("10 mi/h to 40 mi/h");
        // as uncertain as the volume, 2 %
        assertThat(Amounts.in(lowest.value().standardUncertainty().orElseThrow(), MILE_PER_HOUR))
                .isCloseTo(0.2, within(1e-12));
        assertThat(speeds.highest().value().degreesOfFreedom()).hasValue(7);
        assertThat(PUMP.speedsFor(Amounts.of(15, US_GALLON_PER_LANE_MILE), Amounts.of(2, LANE)))
                .hasToString("10 mi/h to 40 mi/h");
    }

    @Test
    void atASpeedItHoldsRates() {
        assertThat(PUMP.ratesAt(mph(20))).hasToString("15 gal/mi to 60 gal/mi");
        assertThat(PUMP.ratesAt(mph(20), Amounts.of(2, LANE))).hasToString("7.5 gal/lane-mi to 30 gal/lane-mi");
    }

    @Test
    void beyondItALimitIsMet() {
        assertThat(PUMP.limitAt(rate(30), mph(10))).isEmpty();
        assertThat(PUMP.limitAt(rate(30), mph(40))).isEmpty();
        assertThat(PUMP.limitAt(rate(30), mph(9.999))).contains(Limit.LEAST_PUMP_FLOW);
        assertThat(PUMP.limitAt(rate(30), mph(40.001))).contains(Limit.MOST_PUMP_FLOW);
    }

    @Test
    void aShaftThatTurnsAsSlowlyAsOneLikesHasNoLowerLimit() {
        LiquidEnvelope pump = LiquidEnvelope.ofPump(VOLUME, range(0, 400));

        assertThat(pump.speedsFor(rate(30))).hasToString("up to 40 mi/h");
        assertThat(pump.limitAt(rate(30), mph(0.001))).isEmpty();
        assertThat(pump.compiled(BelowRange.STOPS).leastFlow()).isZero();
    }

    /** A pump that leaks gives 3 gal/min at 100 rev/min and 18 at 400, not in proportion to its speed. */
    @Test
    void aLeakNarrowsWhatAPumpHolds() {
        SlipCurve curve = SlipCurve.chosenByTest(SlipSamples.pairs(SlipSamples::leaking, 100, 400));
        LiquidEnvelope pump = LiquidEnvelope.ofPump(curve, range(100, 400));

        assertThat(curve.model()).isEqualTo(SlipModel.LEAK);
        assertThat(pump.speedsFor(rate(30))).hasToString("6 mi/h to 36 mi/h");
        assertThat(LiquidEnvelope.ofPump(curve, range(0.04 * 5000, 400)).speedsFor(rate(30)))
                .hasToString("16 mi/h to 36 mi/h");
        double relative = Amounts.si(
                        VolumePerRevolution.class,
                        curve.volumePerRevolution(rpm(400))
                                .standardUncertainty()
                                .orElseThrow())
                / Amounts.si(
                        VolumePerRevolution.class,
                        curve.volumePerRevolution(rpm(400)).value());
        assertThat(Amounts.in(
                        pump.speedsFor(rate(30))
                                .highest()
                                .value()
                                .standardUncertainty()
                                .orElseThrow(),
                        MILE_PER_HOUR))
                .isCloseTo(relative * 36, within(1e-9));
        assertRefused(
                "shaft speed must be within those of the catches, 100 rev/min to 400 rev/min: 401 rev/min",
                () -> LiquidEnvelope.ofPump(curve, range(100, 401)));
    }

    @Test
    void ofTwoPartsTheTighterBounds() {
        assertThat(PUMP.and(flows(6, 30)).flows().toString()).isEqualTo("6 gal/min to 20 gal/min");
        assertThat(PUMP.and(flows(6, 30)).limitAt(rate(30), mph(11))).contains(Limit.LOWEST_NOZZLE_PRESSURE);
        assertThat(PUMP.and(flows(0, 15)).limitAt(rate(30), mph(31))).contains(Limit.HIGHEST_NOZZLE_PRESSURE);
        assertThat(PUMP.and(flows(5, 20))).isEqualTo(PUMP);
        LiquidEnvelope open = LiquidEnvelope.ofPump(VOLUME, range(0, 400));
        assertThat(open.and(flows(0, 30))).isEqualTo(open);
        assertThat(open.and(open)).isEqualTo(open);
        assertThat(open.and(PUMP)).isEqualTo(PUMP);
        assertThat(PUMP.and(open)).isEqualTo(PUMP);
    }

    @Test
    void compiledItSpeaksOfCubicMeters() {
        CompiledEnvelope plain = PUMP.compiled(BelowRange.KEEPS_SLOWEST);
        double gallonPerMinute = Amounts.si(FlowRate.class, flow(1));

        assertThat(plain.flow(gallonPerMinute)).isCloseTo(5 * gallonPerMinute, within(1e-15));
        assertThat(plain.flow(30 * gallonPerMinute)).isCloseTo(20 * gallonPerMinute, within(1e-15));
        assertThat(PUMP.compiled(BelowRange.STOPS).flow(gallonPerMinute)).isZero();
    }

    @Test
    void whatCannotBeIsRefused() {
        assertRefused(
                "volume per revolution must be greater than 0: 0 gal/rev",
                () -> LiquidEnvelope.ofPump(Measured.once(volume(0)), range(100, 400)));
        assertRefused("least flow must be 0 or more: -1 gal/min", () -> flows(-1, 10));
        assertRefused("most flow must be greater than 0: 0 gal/min", () -> flows(0, 0));
        assertRefused("rate must be greater than 0: 0 gal/mi", () -> PUMP.speedsFor(rate(0)));
        assertRefused("rate must be greater than 0: 0 gal/mi", () -> PUMP.limitAt(rate(0), mph(20)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> PUMP.limitAt(rate(30), mph(0)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> PUMP.ratesAt(mph(0)));
        assertRefused("road speed must be greater than 0: 0 mi/h", () -> PUMP.ratesAt(mph(0), Amounts.of(2, LANE)));
        assertRefused("lanes must be greater than 0: 0 lane", () -> PUMP.ratesAt(mph(20), Amounts.of(0, LANE)));
        // Nothing between: said, not refused, as for a boom that a pump is too small for.
        LiquidEnvelope none = PUMP.and(flows(25, 30));
        assertThat(none.limitAt(rate(30), mph(20))).contains(Limit.LOWEST_NOZZLE_PRESSURE);
        assertThat(new LiquidEnvelope(new Span<>(Optional.empty(), PUMP.flows().highest()))
                        .flows()
                        .lowest())
                .isEmpty();
    }

    private static FlowMeter meter(Optional<String> lowest, Optional<String> highest) {
        Map<String, Object> given = new HashMap<>();
        given.put("kFactor", Amounts.of(1200, PULSE_PER_US_GALLON));
        lowest.ifPresent(flow -> given.put("lowFlowCutoff", Amounts.parseAny(flow)));
        highest.ifPresent(flow -> given.put("highestFlow", Amounts.parseAny(flow)));
        return FlowMeter.of(BuiltInTypes.registry(), TypeId.of("k-factor", 1), given);
    }

    /** 30 gal/mi at 16 mi/h are 8 gal/min. */
    @Test
    void aMeterCountsRightlyBetweenTwoFlows() {
        LiquidEnvelope metered = LiquidEnvelope.ofMeter(meter(Optional.of("8 gal/min"), Optional.of("15 gal/min")))
                .orElseThrow();
        assertThat(metered.speedsFor(rate(30))).hasToString("16 mi/h to 30 mi/h");
        assertThat(metered.limitAt(rate(30), mph(15.999))).contains(Limit.LEAST_METER_FLOW);
        assertThat(metered.limitAt(rate(30), mph(16))).isEmpty();
        assertThat(metered.limitAt(rate(30), mph(30))).isEmpty();
        assertThat(metered.limitAt(rate(30), mph(30.001))).contains(Limit.MOST_METER_FLOW);
    }

    @Test
    void aMeterNarrowsWhatAPumpHolds() {
        LiquidEnvelope both = PUMP.within(meter(Optional.of("8 gal/min"), Optional.of("15 gal/min")));
        assertThat(both.speedsFor(rate(30))).hasToString("16 mi/h to 30 mi/h");
        assertThat(both.limitAt(rate(30), mph(12))).contains(Limit.LEAST_METER_FLOW);
        assertThat(both.limitAt(rate(30), mph(35))).contains(Limit.MOST_METER_FLOW);

        LiquidEnvelope wider = PUMP.within(meter(Optional.of("1 gal/min"), Optional.of("60 gal/min")));
        assertThat(wider).isEqualTo(PUMP);

        LiquidEnvelope nothing = PUMP.within(meter(Optional.of("25 gal/min"), Optional.of("60 gal/min")));
        assertThat(nothing.speedsFor(rate(30))).hasToString("50 mi/h to 40 mi/h");
    }

    /** A meter of another type, of which nobody knows up to which flow it is right. */
    private record OpenMeter(Quantity<FlowRate> lowest) implements FlowMeterType {
        @Override
        public TypeId id() {
            return TypeId.of("example.org/open", 1);
        }

        @Override
        public int spiLevel() {
            return Spi.LEVEL;
        }

        @Override
        public List<Parameter<?>> parameters() {
            return List.of();
        }

        @Override
        public PulseOutput output(Parameters given) {
            return PulseOutput.constant(Amounts.of(1, LITER_PER_PULSE)).from(lowest);
        }
    }

    @Test
    void aMeterWithoutAHighestFlowBoundsFromBelowOnly() {
        FlowMeter open = FlowMeter.of(new OpenMeter(flow(8)), Map.of());
        assertThat(LiquidEnvelope.ofMeter(open)).isEmpty();
        LiquidEnvelope both = PUMP.within(open);
        assertThat(both.speedsFor(rate(30))).hasToString("16 mi/h to 40 mi/h");
        assertThat(both.flows().highest().limit()).isEqualTo(Limit.MOST_PUMP_FLOW);
        assertThat(PUMP.within(FlowMeter.of(new OpenMeter(flow(0)), Map.of()))).isEqualTo(PUMP);
        assertThat(LiquidEnvelope.ofMeter(meter(Optional.empty(), Optional.of("15 gal/min")))
                        .orElseThrow()
                        .flows()
                        .lowest())
                .isEmpty();
    }

    /** What plans and routes ask of a meter and what a chart shows are the same flows, to the last digit of a limit. */
    @ParameterizedTest
    @CsvSource({"7.999, false", "8, true", "8.001, true", "14.999, true", "15, true", "15.001, false", "0.001, false"})
    void anEnvelopeHoldsWhatItsMeteringIsGoodFor(double gallonsPerMinute, boolean good) {
        FlowMeter meter = meter(Optional.of("8 gal/min"), Optional.of("15 gal/min"));
        double cubicMetersPerSecond = Amounts.si(FlowRate.class, flow(gallonsPerMinute));

        assertThat(new FlowMetering(meter).isGoodFor(cubicMetersPerSecond, 0)).contains(good);
        // 60 gal/mi at as many mi/h
        assertThat(LiquidEnvelope.ofMeter(meter)
                        .orElseThrow()
                        .limitAt(rate(60), mph(gallonsPerMinute))
                        .isEmpty())
                .isEqualTo(good);
    }
}
