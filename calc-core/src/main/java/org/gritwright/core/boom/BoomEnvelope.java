package org.gritwright.core.boom;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.envelope.Limit;
import org.gritwright.core.envelope.LiquidEnvelope;
import org.gritwright.core.envelope.Span;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.gritwright.units.rate.LiquidRates;

/**
 * Between which road speeds and rates a boom lays what it is asked: flow = rate × speed, and the flow has bounds by the nozzles'
 * pressures and by the pump: a {@link LiquidEnvelope} that knows the boom. Where pump and nozzles bound it alike, the nozzles are named. The bounds have no uncertainty: those of catalogs have none.
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
        return flows().speedsFor(rate);
    }

    /**
     * Which rates hold at a road speed: r = Q ÷ v.
     *
     * @param speed the road speed, greater than zero
     * @return the span, in the speed's unit system; its highest side is below the lowest where no rate holds
     * @throws InvalidInputException if the speed isn't greater than zero
     */
    public Span<LiquidApplicationRate> ratesAt(Quantity<Speed> speed) {
        return flows().ratesAt(speed);
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
        Optional<Limit> limit = flows().limitAt(rate, speed);
        Quantity<FlowRate> flow = LiquidRates.flowFromRate(rate, speed);
        return limit.map(met -> Spraying.limited(flow, met)).orElseGet(() -> Spraying.held(boom, density, flow));
    }

    private LiquidEnvelope flows() {
        double kilogramsPerCubicMeter = Amounts.si(BulkDensity.class, density);
        return LiquidEnvelope.ofFlows(
                        bySecond(boom.leastCubicMetersPerSecond(kilogramsPerCubicMeter)),
                        Limit.LOWEST_NOZZLE_PRESSURE,
                        bySecond(boom.mostCubicMetersPerSecond(kilogramsPerCubicMeter)),
                        Limit.HIGHEST_NOZZLE_PRESSURE)
                .and(LiquidEnvelope.ofFlows(leastPumpFlow, Limit.LEAST_PUMP_FLOW, mostPumpFlow, Limit.MOST_PUMP_FLOW));
    }

    private static Quantity<FlowRate> bySecond(double cubicMeters) {
        return Amounts.of(cubicMeters, SpreadingUnits.CUBIC_METER_PER_SECOND);
    }
}
