package org.gritwright.core.spi;

/**
 * A type of pump that doses a liquid by the turns of its shaft: what it needs to know about itself and what volume it gives per
 * revolution.
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
 *       {@link ConveyorType}, with the output, its displacement, its limits and its volume for the swept volume.
 *   <li>{@code positive}: at every speed within the limits the volume per revolution is more than 0. A pump that gives nothing
 *       near rest has its lowest speed above that.
 *   <li>{@code rising}: at a higher speed the flow, which is speed × volume per revolution, is never smaller.
 *   <li>{@code settable-limits}: the volume refuses neither the lowest nor the highest speed.
 *   <li>{@code plausible-fill}: the limits of the volumetric efficiency are given, and the same whenever asked.
 * </ul>
 */
public non-sealed interface PumpType extends SpreaderType {
    /**
     * What a pump with a set of parameters gives.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return displacement, limits of the shaft's speed, and the volume per revolution
     * @throws org.gritwright.units.InvalidInputException if the values don't go together
     */
    PumpOutput output(Parameters given);

    /**
     * The range of volumetric efficiency that is usual and possible for this type: the volume that a revolution really gave over
     * the displacement. Slip, which grows with pressure and wear, makes it smaller than 1.
     *
     * @return the limits; {@link FillLimits#PUMP} unless the type knows better
     */
    default FillLimits fillLimits() {
        return FillLimits.PUMP;
    }
}
