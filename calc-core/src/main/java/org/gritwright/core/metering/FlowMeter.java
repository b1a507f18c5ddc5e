package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.spi.TypeRegistry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.VolumePerPulse;

/**
 * A flow meter of some type with its parameters, whose pulses count a liquid. It keeps what the type answered when it was made,
 * and not the type. Immutable, thread-safe; equal when type id and parameters are; serializable as a {@link Spreader} is.
 */
public final class FlowMeter extends Equipment {
    private static final long serialVersionUID = 1L;

    private final FillLimits fillLimits;
    private final PulseOutput output;
    private final double nominal;
    private final double lowest;
    private final double highest;

    private FlowMeter(FlowMeterType type, TypeId id, Map<String, ?> given) {
        super(type, id, given);
        this.fillLimits = Border.given(id, "fill limits", type::fillLimits);
        this.output = Border.same(id, "output", () -> type.output(parameters()), FlowMeter::isSame);
        this.nominal = Amounts.si(VolumePerPulse.class, output.nominal());
        this.lowest = Amounts.si(FlowRate.class, output.lowestFlow());
        this.highest = output.highestFlow()
                .map(flow -> Amounts.si(FlowRate.class, flow))
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** All but the volumes: whether a function answers the same whenever asked is for the conformance kit to see. */
    private static boolean isSame(PulseOutput one, PulseOutput other) {
        return one.nominal().equals(other.nominal())
                && one.lowestFlow().equals(other.lowestFlow())
                && one.highestFlow().equals(other.highestFlow());
    }

    /**
     * A flow meter.
     *
     * @param type its type
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the flow meter
     * @throws InvalidInputException if the type doesn't accept the parameters, or doesn't give a stable id, fill limits and a
     *     stable output; whatever else the type throws is the exception's cause
     */
    public static FlowMeter of(FlowMeterType type, Map<String, ?> given) {
        return new FlowMeter(type, Border.id(type), given);
    }

    /**
     * A flow meter of a registered type, which isn't asked for its id again.
     *
     * @param types the types that are known
     * @param id the id of one of them
     * @param given the type's parameters by name: a quantity, or a list of quantities where the parameter is a list
     * @return the flow meter
     * @throws InvalidInputException if the type is not known, and as for {@link #of(FlowMeterType, Map)}
     */
    public static FlowMeter of(TypeRegistry types, TypeId id, Map<String, ?> given) {
        Objects.requireNonNull(given, "given");
        FlowMeterType type = types.flowMeter(Objects.requireNonNull(id, "id"));
        return Require.naming("flow meter", () -> new FlowMeter(type, id, given));
    }

    /**
     * The type's limits of what is caught per pulse over the nominal volume per pulse.
     *
     * @return the limits
     */
    public FillLimits fillLimits() {
        return fillLimits;
    }

    /**
     * The volume per pulse that the meter is said to have.
     *
     * @return the nominal volume, as the type gives it
     */
    public Quantity<VolumePerPulse> nominal() {
        return output.nominal();
    }

    /**
     * The low-flow cut-off: below it the meter gives no pulses.
     *
     * @return 0 or more
     */
    public Quantity<FlowRate> lowestFlow() {
        return output.lowestFlow();
    }

    /**
     * The highest flow at which the meter's volume per pulse is known.
     *
     * @return the flow; none if the type knows none
     */
    public Optional<Quantity<FlowRate>> highestFlow() {
        return output.highestFlow();
    }

    /**
     * The nominal volume as a number.
     *
     * @return m³ per pulse, more than 0
     */
    public double cubicMetersPerPulse() {
        return nominal;
    }

    /**
     * The volume per pulse at a flow.
     *
     * @param cubicMetersPerSecond the flow, in m³/s
     * @return m³ per pulse, more than 0
     * @throws InvalidInputException if the flow is not within the limits, or the type returns anything else or throws; it names
     *     the type
     */
    public double cubicMetersPerPulse(double cubicMetersPerSecond) {
        boolean isWithin = cubicMetersPerSecond >= lowest && cubicMetersPerSecond <= highest;
        return Border.positive(
                id(),
                "metered volume",
                "m³/pulse",
                output.volume()::cubicMetersPerPulse,
                isWithin ? cubicMetersPerSecond : output.number(cubicMetersPerSecond));
    }

    /**
     * The pulses that come in a second at a flow.
     *
     * @param flow the flow, 0 or more and not above the highest
     * @return pulses per second; 0 below the low-flow cut-off
     * @throws InvalidInputException if the flow is negative or above the highest, or the type returns something impossible or
     *     throws
     */
    public double pulsesPerSecond(Quantity<FlowRate> flow) {
        double cubicMetersPerSecond = Amounts.si(FlowRate.class, Require.notNegative("flow", FlowRate.class, flow));
        return Comparison.isAbove(lowest, cubicMetersPerSecond) ? 0 : pulsesPerSecond(output.number(flow));
    }

    private double pulsesPerSecond(double cubicMetersPerSecond) {
        return cubicMetersPerSecond / cubicMetersPerPulse(cubicMetersPerSecond);
    }

    /**
     * The flow at which so many pulses come in some time.
     *
     * @param pulses the pulses, 0 or more
     * @param time the time, more than 0
     * @return the flow, in the unit system of the nominal volume; of several that give so many pulses the lowest
     * @throws InvalidInputException if a value is out of its range, the pulses are fewer than at the lowest flow or more than at
     *     the highest, or the type returns something impossible or throws
     */
    public Quantity<FlowRate> flow(Quantity<PulseCount> pulses, Quantity<Time> time) {
        double perSecond = Amounts.si(PulseCount.class, Require.notNegative("pulses", PulseCount.class, pulses))
                / Amounts.si(Time.class, Require.positive("time", Time.class, time));
        return Amounts.ofSi(flowOf(perSecond), UnitSymbol.tradeUnit(FlowRate.class, output.nominal()));
    }

    /** By halving: pulses per second never fall as the flow grows. */
    private double flowOf(double pulsesPerSecond) {
        double fewest = pulsesPerSecond(lowest);
        Require.that(
                !Comparison.isAbove(fewest, pulsesPerSecond),
                "pulses per second",
                "at least " + fewest + ", those of the lowest flow, " + Amounts.format(output.lowestFlow()),
                pulsesPerSecond);
        double top = Math.min(highest, Double.MAX_VALUE);
        double below = lowest;
        double above = Math.min(top, Math.max(lowest, pulsesPerSecond * nominal));
        while (pulsesPerSecond(above) < pulsesPerSecond && above < top) {
            below = above;
            above = Math.min(top, 2 * above);
        }
        double most = pulsesPerSecond(above);
        Require.that(
                !Comparison.isAbove(pulsesPerSecond, most),
                "pulses per second",
                "at most " + most + ", those of "
                        + output.highestFlow()
                                .map(flow -> "the highest flow, " + Amounts.format(flow))
                                .orElse("any flow"),
                pulsesPerSecond);
        for (double middle = middle(below, above); below < middle && middle < above; middle = middle(below, above)) {
            if (pulsesPerSecond(middle) < pulsesPerSecond) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return above;
    }

    private static double middle(double below, double above) {
        return below + (above - below) / 2;
    }
}
