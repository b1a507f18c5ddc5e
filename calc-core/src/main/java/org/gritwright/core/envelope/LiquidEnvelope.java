package org.gritwright.core.envelope;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.curve.SlipCurve;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.quantity.LiquidLaneApplicationRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;
import org.gritwright.units.rate.LiquidRates;

/**
 * Between which road speeds and rates a liquid is laid as asked: flow = rate × speed, and the flow has bounds, such as a pump's. The twin
 * of {@link Envelope}, by volume. Immutable, thread-safe, a value.
 *
 * @param flows from which flow to which: none below 0, the highest greater than zero
 */
public record LiquidEnvelope(Span<FlowRate> flows) {
    /**
     * Checks the flows.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public LiquidEnvelope {
        Require.given(LiquidEnvelope.class, flows);
        flows.lowest()
                .ifPresent(bound -> Require.notNegative(
                        "least flow", FlowRate.class, bound.value().value()));
        Require.positive("most flow", FlowRate.class, flows.highest().value().value());
    }

    /**
     * The envelope of a calibrated pump that gives as much per revolution at all its steady speeds.
     *
     * @param volume the volume per revolution of the sensed or watched shaft, greater than zero
     * @param range the steady speeds of the same shaft
     * @return the envelope, as uncertain as the volume
     * @throws org.gritwright.units.InvalidInputException if the volume isn't greater than zero
     */
    public static LiquidEnvelope ofPump(Measured<VolumePerRevolution> volume, WorkingRange range) {
        Objects.requireNonNull(volume, "volume");
        Objects.requireNonNull(range, "range");
        Require.positive("volume per revolution", VolumePerRevolution.class, volume.value());
        return pumped(lowest(range).map(speed -> flow(volume, speed)), flow(volume, range.highest()));
    }

    /**
     * The envelope of a pump that leaks, or not, as its catches at several shaft speeds say.
     *
     * @param curve the volume per revolution over the speed of the sensed or watched shaft
     * @param range the steady speeds of the same shaft, within those of the catches
     * @return the envelope, each side as uncertain as the volume per revolution at its speed
     * @throws org.gritwright.units.InvalidInputException if a speed is outside those of the catches
     */
    public static LiquidEnvelope ofPump(SlipCurve curve, WorkingRange range) {
        Objects.requireNonNull(curve, "curve");
        Objects.requireNonNull(range, "range");
        return pumped(
                lowest(range).map(speed -> flow(curve.volumePerRevolution(speed), speed)),
                flow(curve.volumePerRevolution(range.highest()), range.highest()));
    }

    private static Optional<Quantity<RotationalSpeed>> lowest(WorkingRange range) {
        return Optional.of(range.lowest()).filter(speed -> Amounts.si(RotationalSpeed.class, speed) > 0);
    }

    private static Measured<FlowRate> flow(Measured<VolumePerRevolution> volume, Quantity<RotationalSpeed> speed) {
        double revolutionsPerSecond = Amounts.si(RotationalSpeed.class, speed);
        return Proportional.value(
                volume,
                VolumePerRevolution.class,
                si -> si * revolutionsPerSecond,
                UnitSymbol.tradeUnit(FlowRate.class, volume.value()));
    }

    private static LiquidEnvelope pumped(Optional<Measured<FlowRate>> least, Measured<FlowRate> most) {
        return new LiquidEnvelope(new Span<>(
                least.map(flow -> new Bound<>(flow, Limit.LEAST_PUMP_FLOW)), new Bound<>(most, Limit.MOST_PUMP_FLOW)));
    }

    /**
     * The envelope of flows without uncertainty, such as those of a catalog.
     *
     * @param least the least flow, 0 or more
     * @param low why it can't be less
     * @param most the most flow, greater than zero
     * @param high why it can't be more
     * @return the envelope
     * @throws org.gritwright.units.InvalidInputException if a flow is out of its range
     */
    public static LiquidEnvelope ofFlows(Quantity<FlowRate> least, Limit low, Quantity<FlowRate> most, Limit high) {
        return new LiquidEnvelope(new Span<>(
                Optional.of(new Bound<>(Measured.once(least), low)), new Bound<>(Measured.once(most), high)));
    }

    /**
     * The flows that a flow meter counts rightly, whatever moves them.
     *
     * @param meter the flow meter
     * @return the envelope; none of a meter that knows no highest flow, since what bounds it then is another part
     */
    public static Optional<LiquidEnvelope> ofMeter(FlowMeter meter) {
        return meter.highestFlow().map(most -> new LiquidEnvelope(new Span<>(least(meter), most(most))));
    }

    private static Optional<Bound<FlowRate>> least(FlowMeter meter) {
        return Optional.of(meter.lowestFlow())
                .filter(flow -> Amounts.si(FlowRate.class, flow) > 0)
                .map(flow -> new Bound<>(Measured.once(flow), Limit.LEAST_METER_FLOW));
    }

    private static Bound<FlowRate> most(Quantity<FlowRate> flow) {
        return new Bound<>(Measured.once(flow), Limit.MOST_METER_FLOW);
    }

    /**
     * The same where a flow meter counts what is laid: on each side the tighter bound.
     *
     * @param meter the flow meter, with a highest flow or without
     * @return the envelope; its highest flow is below its lowest where nothing holds
     */
    public LiquidEnvelope within(FlowMeter meter) {
        return and(new LiquidEnvelope(new Span<>(
                least(meter), meter.highestFlow().map(LiquidEnvelope::most).orElse(flows.highest()))));
    }

    /**
     * The same where another part has bounds of its own: on each side the tighter one. Where both bound it alike, this one's is named.
     *
     * @param other the other part's
     * @return the envelope; its highest flow is below its lowest where nothing holds
     */
    public LiquidEnvelope and(LiquidEnvelope other) {
        Optional<Bound<FlowRate>> theirs = other.flows.lowest();
        Optional<Bound<FlowRate>> lowest =
                theirs.filter(bound -> Comparison.isAbove(si(bound), least())).or(flows::lowest);
        return new LiquidEnvelope(
                new Span<>(lowest, Comparison.isAbove(most(), other.most()) ? other.flows.highest() : flows.highest()));
    }

    /**
     * Between which road speeds a rate holds: v = Q ÷ r.
     *
     * @param rate volume per distance, greater than zero
     * @return the span, in the rate's unit system; its highest side is below the lowest where no speed holds it
     * @throws org.gritwright.units.InvalidInputException if the rate isn't greater than zero
     */
    public Span<Speed> speedsFor(Quantity<LiquidApplicationRate> rate) {
        Require.positive("rate", LiquidApplicationRate.class, rate);
        return flows.over(
                Amounts.si(LiquidApplicationRate.class, rate), FlowRate.class, UnitSymbol.tradeUnit(Speed.class, rate));
    }

    /**
     * Between which road speeds a rate per lane holds on so many lanes at once.
     *
     * @param rate the rate on each lane, greater than zero
     * @param lanes how many lanes are treated at once, greater than zero
     * @return the span, in the rate's unit system
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public Span<Speed> speedsFor(Quantity<LiquidLaneApplicationRate> rate, Quantity<LaneCount> lanes) {
        return speedsFor(LiquidRates.rateFromLaneRate(rate, lanes));
    }

    /**
     * Which rates hold at a road speed: r = Q ÷ v.
     *
     * @param speed the road speed, greater than zero
     * @return the span, in the speed's unit system; its highest side is below the lowest where no rate holds
     * @throws org.gritwright.units.InvalidInputException if the speed isn't greater than zero
     */
    public Span<LiquidApplicationRate> ratesAt(Quantity<Speed> speed) {
        Require.positive("road speed", Speed.class, speed);
        return flows.over(
                Amounts.si(Speed.class, speed),
                FlowRate.class,
                UnitSymbol.tradeUnit(LiquidApplicationRate.class, speed));
    }

    /**
     * Which rates per lane hold at a road speed on so many lanes at once.
     *
     * @param speed the road speed, greater than zero
     * @param lanes how many lanes are treated at once, greater than zero
     * @return the span, in the speed's unit system
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public Span<LiquidLaneApplicationRate> ratesAt(Quantity<Speed> speed, Quantity<LaneCount> lanes) {
        Require.positive("road speed", Speed.class, speed);
        Require.positive("lanes", LaneCount.class, lanes);
        return flows.over(
                Amounts.si(Speed.class, speed) * Amounts.si(LaneCount.class, lanes),
                FlowRate.class,
                UnitSymbol.tradeUnit(LiquidLaneApplicationRate.class, speed));
    }

    /**
     * Why a rate doesn't hold at a road speed.
     *
     * @param rate volume per distance, greater than zero
     * @param speed the road speed, greater than zero
     * @return the limit that is met; none where the rate holds
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public Optional<Limit> limitAt(Quantity<LiquidApplicationRate> rate, Quantity<Speed> speed) {
        Require.positive("rate", LiquidApplicationRate.class, rate);
        Require.positive("road speed", Speed.class, speed);
        double asked = Amounts.si(FlowRate.class, LiquidRates.flowFromRate(rate, speed));
        if (Comparison.isAbove(asked, most())) {
            return Optional.of(flows.highest().limit());
        }
        return flows.lowest()
                .filter(bound -> Comparison.isAbove(si(bound), asked))
                .map(Bound::limit);
    }

    /**
     * The same as plain numbers, for charts and rows of data: m³/s where that speaks of kg/s, and m³ per meter where of kg/m.
     *
     * @param below what the controller does where less is asked for than the least flow
     * @return a compiled evaluator
     */
    public CompiledEnvelope compiled(BelowRange below) {
        return new CompiledEnvelope(
                least(), most(), Objects.requireNonNull(below, "below") == BelowRange.KEEPS_SLOWEST);
    }

    private double least() {
        return flows.lowest().map(LiquidEnvelope::si).orElse(0.0);
    }

    private double most() {
        return si(flows.highest());
    }

    private static double si(Bound<FlowRate> bound) {
        return Amounts.si(FlowRate.class, bound.value().value());
    }
}
