package org.gritwright.core.spi;

/**
 * A type of flow meter that counts a liquid by pulses: what it needs to know about itself and what volume a pulse stands for.
 *
 * <p>Implementations are stateless and thread-safe, with a public constructor without parameters where a
 * {@link java.util.ServiceLoader} is to find them. What they return is checked where it is used.
 *
 * <p>The laws that a type obeys, by the ids under which the conformance kit
 * ({@code org.gritwright.core.conformance.Conformance}) reports their violation:
 *
 * <ul>
 *   <li>{@code stable-identity}, {@code described-parameters}, {@code enforced-limits}, {@code named-refusals},
 *       {@code finite}, {@code unit-invariant}, {@code deterministic}, {@code serializable}, {@code json-round-trip}: as for a
 *       {@link ConveyorType}, with the output, its nominal volume, its limits and its volume for the swept volume.
 *   <li>{@code positive}: at every flow within the limits the volume per pulse is more than 0.
 *   <li>{@code rising}: at a larger flow there are never fewer pulses per second, which are flow ÷ volume per pulse.
 *   <li>{@code settable-limits}: the volume refuses neither the lowest nor the highest flow.
 *   <li>{@code plausible-fill}: the limits of caught over nominal volume per pulse are given, and the same whenever asked.
 * </ul>
 */
public non-sealed interface FlowMeterType extends SpreaderType {
    /**
     * What the pulses of a meter with a set of parameters mean.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return nominal volume per pulse, limits of the flow, and the volume per pulse
     * @throws org.gritwright.units.InvalidInputException if the values don't go together
     */
    PulseOutput output(Parameters given);

    /**
     * The range that is usual and possible for this type of what was caught per pulse over the nominal volume per pulse.
     *
     * @return the limits; {@link FillLimits#FLOW_METER} unless the type knows better
     */
    default FillLimits fillLimits() {
        return FillLimits.FLOW_METER;
    }
}
