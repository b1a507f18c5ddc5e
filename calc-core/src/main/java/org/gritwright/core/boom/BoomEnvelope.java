package org.gritwright.core.boom;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Bound;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.envelope.Span;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.rate.LiquidRates;

/**
 * Between which road speeds and rates a boom lays what it is asked: flow = rate × speed, and the flow has bounds by the nozzles'
 * pressures and by the pump. The twin for liquids of {@link org.gritwright.core.envelope.Envelope}, whose {@link Span} it gives.
 * Where pump and nozzles bound it alike, the nozzles are named. The bounds have no uncertainty: those of catalogs have none.
 * Immutable, thread-safe, a value.
 *
 * @param boom the boom, with one section on or more
 * @param density the density of the liquid
 * @param leastPumpFlow what the pump gives at the least and stays steady, 0 or more
 * @param mostPumpFlow what it gives at the most, greater than zero and not below the least
 */
public record BoomEnvelope(
        Boom boom, Quantity<BulkDensity> density, Quantity<FlowRate> leastPumpFlow, Quantity<FlowRate> mostPumpFlow) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if one is out of its range, all sections are off, or the nozzles have no pressure in common
     */
    public BoomEnvelope {
        Require.given(BoomEnvelope.class, boom, density, leastPumpFlow, mostPumpFlow);
        boom.mostCubicMetersPerSecond(Nozzle.density("density of the liquid", density));
        Require.notNegative("least flow of the pump", FlowRate.class, leastPumpFlow);
        Require.positive("most flow of the pump", FlowRate.class, mostPumpFlow);
        Require.atLeast("most flow of the pump", FlowRate.class, mostPumpFlow, leastPumpFlow);
    }

    /**
     * Between which road speeds a rate holds: v = Q ÷ r. A rate per lane or area is made one per distance by the boom.
     *
     * @param rate volume per distance, greater than zero
     * @return the span, in the rate's unit system; its highest side is below the lowest where no speed holds it
     * @throws InvalidInputException if the rate isn't greater than zero
     */
    public Span<Speed> speedsFor(Quantity<LiquidApplicationRate> rate) {
        Require.positive("rate", LiquidApplicationRate.class, rate);
        return span(UnitSymbol.tradeUnit(Speed.class, rate), Amounts.si(LiquidApplicationRate.class, rate));
    }

    /**
     * Which rates hold at a road speed: r = Q ÷ v.
     *
     * @param speed the road speed, greater than zero
     * @return the span, in the speed's unit system; its highest side is below the lowest where no rate holds
     * @throws InvalidInputException if the speed isn't greater than zero
     */
    public Span<LiquidApplicationRate> ratesAt(Quantity<Speed> speed) {
        Require.positive("road speed", Speed.class, speed);
        return span(UnitSymbol.tradeUnit(LiquidApplicationRate.class, speed), Amounts.si(Speed.class, speed));
    }

    /**
     * What a rate takes at a road speed.
     *
     * @param rate volume per distance, greater than zero
     * @param speed the road speed, greater than zero
     * @return flow, pressure and what each section gives, or what limits
     * @throws InvalidInputException if one isn't greater than zero
     */
    public Spraying at(Quantity<LiquidApplicationRate> rate, Quantity<Speed> speed) {
        Require.positive("rate", LiquidApplicationRate.class, rate);
        Require.positive("road speed", Speed.class, speed);
        Quantity<FlowRate> flow = LiquidRates.flowFromRate(rate, speed);
        double cubicMetersPerSecond = Amounts.si(FlowRate.class, flow);
        if (Comparison.isAbove(cubicMetersPerSecond, most())) {
            return Spraying.limited(flow, upperLimit());
        }
        if (Comparison.isAbove(least(), cubicMetersPerSecond)) {
            return Spraying.limited(flow, lowerLimit());
        }
        return Spraying.held(boom, density, flow);
    }

    private <Q extends Quantity<Q>> Span<Q> span(Unit<Q> unit, double divisor) {
        return new Span<>(
                Optional.of(bound(unit, least() / divisor, lowerLimit())), bound(unit, most() / divisor, upperLimit()));
    }

    private static <Q extends Quantity<Q>> Bound<Q> bound(Unit<Q> unit, double si, Limit limit) {
        return new Bound<>(Measured.once(Amounts.ofSi(si, unit)), limit);
    }

    private double kilogramsPerCubicMeter() {
        return Amounts.si(BulkDensity.class, density);
    }

    private double leastOfNozzles() {
        return boom.leastCubicMetersPerSecond(kilogramsPerCubicMeter());
    }

    private double mostOfNozzles() {
        return boom.mostCubicMetersPerSecond(kilogramsPerCubicMeter());
    }

    private double leastOfPump() {
        return Amounts.si(FlowRate.class, leastPumpFlow);
    }

    private double mostOfPump() {
        return Amounts.si(FlowRate.class, mostPumpFlow);
    }

    private double least() {
        return Math.max(leastOfNozzles(), leastOfPump());
    }

    private double most() {
        return Math.min(mostOfNozzles(), mostOfPump());
    }

    private Limit lowerLimit() {
        return Comparison.isAbove(leastOfPump(), leastOfNozzles())
                ? Limit.LEAST_PUMP_FLOW
                : Limit.LOWEST_NOZZLE_PRESSURE;
    }

    private Limit upperLimit() {
        return Comparison.isAbove(mostOfNozzles(), mostOfPump()) ? Limit.MOST_PUMP_FLOW : Limit.HIGHEST_NOZZLE_PRESSURE;
    }
}
