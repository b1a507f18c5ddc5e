package org.gritwright.core.spi;

/**
 * A type of gate: what cross-section an opening leaves above the conveyor.
 *
 * <p>Implementations are stateless and thread-safe, with a public constructor without parameters where a
 * {@link java.util.ServiceLoader} is to find them. What they return is checked where it is used.
 *
 * <p>The laws that a type obeys, by the ids under which the conformance kit
 * ({@code org.gritwright.core.conformance.Conformance}) reports their violation:
 *
 * <ul>
 *   <li>{@code stable-identity}, {@code described-parameters}, {@code enforced-limits}, {@code named-refusals},
 *       {@code finite}, {@code not-negative}, {@code unit-invariant}, {@code deterministic}, {@code serializable},
 *       {@code json-round-trip}: as for a {@link ConveyorType}, with the shape and its open area for the volume.
 *   <li>{@code rising}: a larger opening never leaves a smaller area.
 *   <li>{@code settable-limits}: the declared limits and the closed position can be set; the area refuses none of them. A
 *       percentage reaches it as a ratio, 0.08 for 8 %.
 *   <li>{@code closed-is-zero}: at the declared closed position, and below it, the area is 0.
 * </ul>
 */
public non-sealed interface GateType extends SpreaderType {
    /**
     * What a set of parameters leaves open, and how far it can be set.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return the shape: adjustable, fixed, or none at all
     * @throws org.gritwright.units.InvalidInputException if the values don't go together
     */
    GateShape shape(Parameters given);
}
