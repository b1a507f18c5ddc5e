package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.VolumePerPulse;

/**
 * What the pulses of a flow meter mean: its nominal volume per pulse, from which to which flow it is known, and the volume per
 * pulse there. Below the lowest flow, the low-flow cut-off, a meter gives no pulses. Immutable, thread-safe.
 *
 * @param nominal the volume per pulse that the meter is said to have; catches are plausible or not by this
 * @param lowestFlow the lowest flow that gives pulses, 0 or more
 * @param highestFlow the highest flow at which the volume is known, greater than 0 and not below the lowest; none if the type
 *     knows none
 * @param volume the volume per pulse as a function of the flow
 */
public record PulseOutput(
        Quantity<VolumePerPulse> nominal,
        Quantity<FlowRate> lowestFlow,
        Optional<Quantity<FlowRate>> highestFlow,
        MeteredVolume volume)
        implements Serializable {
    /**
     * Checks nominal volume and limits.
     *
     * @throws org.gritwright.units.InvalidInputException if the nominal volume is not greater than zero, or the limits are
     *     negative or the wrong way round
     */
    public PulseOutput {
        Require.given(PulseOutput.class, nominal, lowestFlow, highestFlow, volume);
        nominal = Limits.copy(Require.positive("nominal volume per pulse", VolumePerPulse.class, nominal));
        Limits<FlowRate> limits = limits(lowestFlow, highestFlow);
        lowestFlow = limits.lowest();
        highestFlow = limits.highest();
    }

    /**
     * A meter of the same volume per pulse at any flow.
     *
     * @param nominal the volume per pulse
     * @return the output, without limits
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public static PulseOutput constant(Quantity<VolumePerPulse> nominal) {
        double cubicMetersPerPulse = Amounts.si(
                VolumePerPulse.class, Require.positive("nominal volume per pulse", VolumePerPulse.class, nominal));
        return of(nominal, cubicMetersPerSecond -> cubicMetersPerPulse);
    }

    /**
     * A meter whose volume per pulse is known at any flow.
     *
     * @param nominal the volume per pulse that it is said to have
     * @param volume the volume per pulse as a function of the flow in m³/s
     * @return the output, without limits
     * @throws org.gritwright.units.InvalidInputException if the nominal volume is not greater than zero
     */
    public static PulseOutput of(Quantity<VolumePerPulse> nominal, MeteredVolume volume) {
        return new PulseOutput(nominal, Amounts.of(0, SpreadingUnits.LITER_PER_MINUTE), Optional.empty(), volume);
    }

    /**
     * The same output, known from a flow on.
     *
     * @param lowest the low-flow cut-off, 0 or more
     * @return the output
     * @throws org.gritwright.units.InvalidInputException if the flow is negative or above the highest
     */
    public PulseOutput from(Quantity<FlowRate> lowest) {
        return new PulseOutput(nominal, lowest, highestFlow, volume);
    }

    /**
     * The same output, known between two flows only.
     *
     * @param lowest the low-flow cut-off, 0 or more
     * @param highest the highest flow, greater than 0 and not below the lowest
     * @return the output
     * @throws org.gritwright.units.InvalidInputException if the flows are negative or the wrong way round
     */
    public PulseOutput within(Quantity<FlowRate> lowest, Quantity<FlowRate> highest) {
        return new PulseOutput(nominal, lowest, Optional.of(highest), volume);
    }

    /**
     * A flow as the number that {@link #volume()} takes.
     *
     * @param flow a flow within the limits
     * @return m³/s; never outside the limits, not even by the rounding of a unit's conversion
     * @throws org.gritwright.units.InvalidInputException if the flow is not within the limits
     */
    public double number(Quantity<FlowRate> flow) {
        return limits(lowestFlow, highestFlow).number(flow);
    }

    /**
     * A number within the limits, or off them by no more than rounding, brought within.
     *
     * @param cubicMetersPerSecond a flow, in m³/s
     * @return the number, never outside the limits
     * @throws org.gritwright.units.InvalidInputException if it is farther outside than by rounding, or not finite
     */
    public double number(double cubicMetersPerSecond) {
        return limits(lowestFlow, highestFlow).number(cubicMetersPerSecond);
    }

    private static Limits<FlowRate> limits(Quantity<FlowRate> lowest, Optional<Quantity<FlowRate>> highest) {
        return new Limits<>("flow", FlowRate.class, lowest, highest);
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }

    /**
     * Nominal volume per pulse and limits.
     *
     * @return for example "0.8 mL/pulse from 2 L/min to 200 L/min"
     */
    @Override
    public String toString() {
        return Amounts.format(nominal) + " " + limits(lowestFlow, highestFlow);
    }
}
