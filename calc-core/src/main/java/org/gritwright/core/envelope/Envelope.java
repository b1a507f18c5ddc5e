package org.gritwright.core.envelope;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.rate.Rates;

/**
 * Between which road speeds and rates a calibrated spreader does what it is asked: flow = rate × speed = discharge per revolution ×
 * shaft speed, and the shaft has a slowest and a fastest steady speed. The discharge per revolution and the range must be those of
 * the same shaft. Immutable, thread-safe, a value.
 *
 * @param discharge the discharge per revolution of the sensed or watched shaft, greater than zero
 * @param range its steady speeds
 * @param greatestFlow what runs through the gate at the most, if that is known
 * @param pumpLimit how fast the shaft turns where all of the pump's oil drives it, at the engine speed at work, if that is known
 * @param below what the controller does when less is asked for than the slowest steady speed gives
 */
public record Envelope(
        Measured<DischargePerRevolution> discharge,
        WorkingRange range,
        Optional<Quantity<DischargeRate>> greatestFlow,
        Optional<Quantity<RotationalSpeed>> pumpLimit,
        BelowRange below) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if discharge, flow or the shaft speed by the pump isn't greater than zero
     */
    public Envelope {
        Require.given(Envelope.class, discharge, range, greatestFlow, pumpLimit, below);
        Require.positive("discharge per revolution", DischargePerRevolution.class, discharge.value());
        greatestFlow.ifPresent(flow -> Require.positive("greatest flow", DischargeRate.class, flow));
        pumpLimit.ifPresent(speed -> Require.positive("shaft speed by the pump", RotationalSpeed.class, speed));
    }

    /**
     * The envelope of a controller that keeps the slowest steady speed, with nothing known of how fast grains run through the gate.
     *
     * @param discharge the discharge per revolution
     * @param range the steady speeds of the same shaft
     * @return the envelope
     */
    public static Envelope of(Measured<DischargePerRevolution> discharge, WorkingRange range) {
        return new Envelope(discharge, range, Optional.empty(), Optional.empty(), BelowRange.KEEPS_SLOWEST);
    }

    /**
     * The same where no more than a flow runs through the gate.
     *
     * @param flow the greatest flow, such as that of {@link org.gritwright.core.plausibility.GrainFlow}
     * @return the envelope
     */
    public Envelope withGreatestFlow(Quantity<DischargeRate> flow) {
        return new Envelope(discharge, range, Optional.of(Objects.requireNonNull(flow, "flow")), pumpLimit, below);
    }

    /**
     * The same at an engine speed at which the pump turns the shaft no faster than stated.
     *
     * @param shaftSpeed the fastest shaft by the pump, such as that of {@link org.gritwright.core.range.OilSupply}
     * @return the envelope
     */
    public Envelope withPumpLimit(Quantity<RotationalSpeed> shaftSpeed) {
        return new Envelope(
                discharge, range, greatestFlow, Optional.of(Objects.requireNonNull(shaftSpeed, "shaftSpeed")), below);
    }

    /**
     * The same with a controller that does something else when less is asked for than the slowest steady speed gives.
     *
     * @param otherwise what it does
     * @return the envelope
     */
    public Envelope with(BelowRange otherwise) {
        return new Envelope(discharge, range, greatestFlow, pumpLimit, otherwise);
    }

    /**
     * Between which road speeds a rate holds: v = m · n ÷ r.
     *
     * @param rate the rate, greater than zero
     * @return the span, in the rate's unit system
     * @throws org.gritwright.units.InvalidInputException if it isn't
     */
    public Span<Speed> speedsFor(Quantity<ApplicationRate> rate) {
        Require.positive("rate", ApplicationRate.class, rate);
        return span(UnitSymbol.tradeUnit(Speed.class, rate), Amounts.si(ApplicationRate.class, rate));
    }

    /**
     * Between which road speeds a rate per lane holds on so many lanes at once.
     *
     * @param rate the rate on each lane, greater than zero
     * @param lanes how many lanes are treated at once, greater than zero
     * @return the span, in the rate's unit system
     * @throws org.gritwright.units.InvalidInputException if one isn't
     */
    public Span<Speed> speedsFor(Quantity<LaneApplicationRate> rate, Quantity<LaneCount> lanes) {
        return speedsFor(Rates.rateFromLaneRate(rate, lanes));
    }

    /**
     * Which rates hold at a road speed: r = m · n ÷ v.
     *
     * @param speed the road speed, greater than zero
     * @return the span, in the speed's unit system
     * @throws org.gritwright.units.InvalidInputException if it isn't
     */
    public Span<ApplicationRate> ratesAt(Quantity<Speed> speed) {
        Require.positive("road speed", Speed.class, speed);
        return span(UnitSymbol.tradeUnit(ApplicationRate.class, speed), Amounts.si(Speed.class, speed));
    }

    /** The flows that bound the envelope, over a rate or a speed. */
    private <Q extends Quantity<Q>> Span<Q> span(Unit<Q> unit, double divisor) {
        Span<DischargeRate> flows = new Span<>(
                leastFlow() > 0 ? Optional.of(bound(leastFlow(), Limit.SLOWEST_STEADY_SHAFT)) : Optional.empty(),
                bound(mostFlow(), upperLimit()));
        return flows.over(divisor, DischargeRate.class, unit);
    }

    private Bound<DischargeRate> bound(double flow, Limit limit) {
        Unit<DischargeRate> unit = SpreadingUnits.KILOGRAM_PER_SECOND;
        // How fast grains run is a rule of thumb, without an uncertainty.
        return new Bound<>(
                limit == Limit.GRAIN_FLOW
                        ? Measured.once(Amounts.of(flow, unit))
                        : Proportional.value(
                                discharge, DischargePerRevolution.class, si -> flow * si / perRevolution(), unit),
                limit);
    }

    /**
     * The shaft speed that a rate asks for at a road speed: n = r · v ÷ m.
     *
     * @param rate the rate, 0 or more
     * @param speed the road speed, 0 or more
     * @return the steady speed of the sensed or watched shaft, in revolutions per minute, whether the drive holds it or not
     * @throws org.gritwright.units.InvalidInputException if one is negative
     */
    public Quantity<RotationalSpeed> shaftSpeed(Quantity<ApplicationRate> rate, Quantity<Speed> speed) {
        return Amounts.ofSi(asked(rate, speed) / perRevolution(), SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    /**
     * What a rate comes to at a road speed.
     *
     * @param rate the rate, greater than zero
     * @param speed the road speed, greater than zero
     * @return what is put down, and why it isn't what was asked for
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public Delivered deliveredAt(Quantity<ApplicationRate> rate, Quantity<Speed> speed) {
        Require.positive("rate", ApplicationRate.class, rate);
        Require.positive("road speed", Speed.class, speed);
        double asked = asked(rate, speed);
        Optional<Limit> limit = limit(asked);
        double share = limit.isPresent() ? compiled().flow(asked) / asked : 1;
        return new Delivered(
                rate,
                limit.isPresent()
                        ? Amounts.ofSi(share * Amounts.si(ApplicationRate.class, rate), rate.getUnit())
                        : rate,
                shaftSpeed(rate, speed),
                limit,
                Amounts.ofSi(share, SpreadingUnits.PERCENT));
    }

    private static double asked(Quantity<ApplicationRate> rate, Quantity<Speed> speed) {
        return Amounts.si(ApplicationRate.class, Require.notNegative("rate", ApplicationRate.class, rate))
                * Amounts.si(Speed.class, Require.notNegative("road speed", Speed.class, speed));
    }

    /** The side that is met first where grains run more slowly than even the slowest shaft asks for is that of the grains. */
    private Optional<Limit> limit(double asked) {
        if (Comparison.isAbove(asked, mostFlow())) {
            return Optional.of(upperLimit());
        }
        return Comparison.isAbove(leastFlow(), asked) ? Optional.of(Limit.SLOWEST_STEADY_SHAFT) : Optional.empty();
    }

    /**
     * What is put down over a drive cycle by a truck whose controller follows the speed at once. How a start or a slow valve adds to
     * that is not in it.
     *
     * @param rate the rate, 0 or more
     * @param cycle the road speed over time; nothing is asked for at a stand
     * @return the masses, in the rate's unit
     * @throws org.gritwright.units.InvalidInputException if the rate is negative
     */
    public Driven over(Quantity<ApplicationRate> rate, DriveCycle cycle) {
        double kilogramsPerMeter =
                Amounts.si(ApplicationRate.class, Require.notNegative("rate", ApplicationRate.class, rate));
        FlowOverTime sums = new FlowOverTime(compiled());
        for (int i = 1; i < cycle.points().size(); i++) {
            DriveCycle.Point from = cycle.points().get(i - 1);
            DriveCycle.Point to = cycle.points().get(i);
            sums.add(
                    kilogramsPerMeter * from.metersPerSecond(),
                    kilogramsPerMeter * to.metersPerSecond(),
                    to.seconds() - from.seconds());
        }
        Unit<Mass> unit = UnitSymbol.tradeUnit(Mass.class, rate);
        return new Driven(
                Amounts.ofSi(sums.asked(), unit),
                Amounts.ofSi(sums.asked() - sums.under() + sums.over(), unit),
                Amounts.ofSi(sums.under(), unit),
                Amounts.ofSi(sums.over(), unit),
                Amounts.of(sums.beyond(), SpreadingUnits.SECOND));
    }

    /**
     * The same as plain numbers, for charts and rows of data.
     *
     * @return a compiled evaluator
     */
    public CompiledEnvelope compiled() {
        return new CompiledEnvelope(leastFlow(), mostFlow(), below == BelowRange.KEEPS_SLOWEST);
    }

    private double perRevolution() {
        return Amounts.si(DischargePerRevolution.class, discharge.value());
    }

    private double leastFlow() {
        return perRevolution() * Amounts.si(RotationalSpeed.class, range.lowest());
    }

    private double fastestFlow() {
        return perRevolution() * Amounts.si(RotationalSpeed.class, range.highest());
    }

    /** By the oil that the pump gives. */
    private double pumpFlow() {
        return pumpLimit
                .map(speed -> perRevolution() * Amounts.si(RotationalSpeed.class, speed))
                .orElse(Double.POSITIVE_INFINITY);
    }

    private double shaftFlow() {
        return Math.min(fastestFlow(), pumpFlow());
    }

    private double mostFlow() {
        return Math.min(shaftFlow(), grainFlow());
    }

    private double grainFlow() {
        return greatestFlow.map(flow -> Amounts.si(DischargeRate.class, flow)).orElse(Double.POSITIVE_INFINITY);
    }

    private Limit upperLimit() {
        if (grainFlow() < shaftFlow()) {
            return Limit.GRAIN_FLOW;
        }
        return pumpFlow() < fastestFlow() ? Limit.ENGINE_SPEED : Limit.FASTEST_SHAFT;
    }
}
