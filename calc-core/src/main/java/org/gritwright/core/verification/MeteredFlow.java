package org.gritwright.core.verification;

import static org.gritwright.core.finding.Argument.number;

import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Volume;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.FlowMeter;
import org.gritwright.core.metering.FlowMetering;
import org.gritwright.core.metering.Pump;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.weighing.CaughtVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;

/** Whether a liquid flowed as fast as its meter or pump is good for, on the average over a run. */
final class MeteredFlow {
    private MeteredFlow() {}

    /**
     * One finding if it did not.
     *
     * @param made the catch; one of a conveyor tells nothing
     */
    static Optional<Finding> outside(VerificationCatch made) {
        double seconds = made.run().seconds();
        if (made.point().metering() instanceof FlowMetering metering && made.caught() instanceof CaughtVolume caught) {
            return outside(metering.meter(), caught.total(), caught.si() / seconds);
        }
        if (made.point().metering() instanceof PumpMetering metering
                && made.observation().revolutions().isPresent()) {
            double turns = made.observation().revolutions().getAsDouble()
                    / Amounts.si(Dimensionless.class, metering.feedback().gearRatio());
            return outside(metering.pump(), turns / seconds);
        }
        return Optional.empty();
    }

    private static Optional<Finding> outside(FlowMeter meter, Quantity<Volume> like, double cubicMetersPerSecond) {
        Quantity<FlowRate> lowest = meter.lowestFlow();
        double highest = meter.highestFlow()
                .map(flow -> Amounts.si(FlowRate.class, flow))
                .orElse(Double.POSITIVE_INFINITY);
        if (!isOutside(Amounts.si(FlowRate.class, lowest), cubicMetersPerSecond, highest)) {
            return Optional.empty();
        }
        Quantity<FlowRate> flow = Amounts.ofSi(cubicMetersPerSecond, UnitSymbol.tradeUnit(FlowRate.class, like));
        return Optional.of(Finding.of(
                FindingCode.FLOW_OUTSIDE_METER,
                Map.of(
                        "flow", number(flow),
                        "limit",
                                number(
                                        cubicMetersPerSecond > highest
                                                ? meter.highestFlow().orElseThrow()
                                                : lowest))));
    }

    private static Optional<Finding> outside(Pump pump, double revolutionsPerSecond) {
        Quantity<RotationalSpeed> lowest = pump.lowestSpeed();
        double highest = pump.highestSpeed()
                .map(speed -> Amounts.si(RotationalSpeed.class, speed))
                .orElse(Double.POSITIVE_INFINITY);
        if (!isOutside(Amounts.si(RotationalSpeed.class, lowest), revolutionsPerSecond, highest)) {
            return Optional.empty();
        }
        Quantity<RotationalSpeed> speed = Amounts.ofSi(revolutionsPerSecond, SpreadingUnits.REVOLUTION_PER_MINUTE);
        return Optional.of(Finding.of(
                FindingCode.SPEED_OUTSIDE_PUMP,
                Map.of(
                        "speed", number(speed),
                        "limit",
                                number(
                                        revolutionsPerSecond > highest
                                                ? pump.highestSpeed().orElseThrow()
                                                : lowest))));
    }

    private static boolean isOutside(double lowest, double value, double highest) {
        return Comparison.isAbove(lowest, value) || Comparison.isAbove(value, highest);
    }
}
