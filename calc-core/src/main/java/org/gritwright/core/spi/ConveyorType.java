package org.gritwright.core.spi;

/**
 * A type of conveyor: what it needs to know about itself and what volume it sweeps per revolution.
 *
 * <p>Implementations are stateless and thread-safe, with a public constructor without parameters where a
 * {@link java.util.ServiceLoader} is to find them. What they return is checked where it is used: a value that is not
 * finite or is negative becomes a named error, not a wrong number. That it is the same whenever asked is for the conformance
 * kit to see.
 *
 * <p>The laws that a type obeys, by the ids under which the conformance kit
 * ({@code org.gritwright.core.conformance.Conformance}) reports their violation:
 *
 * <ul>
 *   <li>{@code stable-identity}: id and SPI level are the same whenever asked, and the level is one of this library's.
 *   <li>{@code described-parameters}: the parameters are the same whenever asked, none is missing and no name occurs
 *       twice, and there are values that the type accepts.
 *   <li>{@code enforced-limits}: values past the limits of a parameter are refused with an
 *       {@link org.gritwright.units.InvalidInputException}. Reading values with
 *       {@link Parameters#get} or {@link Parameters#si} does it.
 *   <li>{@code named-refusals}: accepted parameters give a function, or are refused with an
 *       {@code InvalidInputException}; nothing else is thrown.
 *   <li>{@code finite}: the volume is finite.
 *   <li>{@code not-negative}: the volume is 0 or more, and more than 0 at the largest open area.
 *   <li>{@code rising}: a larger open area never gives a smaller volume; with {@link #meteredByGate()} false, none gives
 *       another volume.
 *   <li>{@code unit-invariant}: the same parameters in other units give the same volume.
 *   <li>{@code deterministic}: the same question gets the same answer, bit for bit, whatever was asked in between, of
 *       another instance, and from other threads.
 *   <li>{@code serializable}: the function survives serialization and answers as before.
 *   <li>{@code plausible-fill}: the limits of the apparent fill are given, and the same whenever asked.
 *   <li>{@code json-round-trip} (in {@code org.gritwright.core.record.JsonConformance}): parameters survive being
 *       written to a document and read again.
 * </ul>
 */
public non-sealed interface ConveyorType extends SpreaderType {
    /**
     * Whether a gate meters the conveyor: a chain or belt carries what the gate lets through, an auger in a trough
     * fills itself.
     *
     * @return true if the swept volume depends on the gate's open area
     */
    boolean meteredByGate();

    /**
     * The swept volume for a set of parameters.
     *
     * @param given values of {@link #parameters()}, already checked against their limits
     * @return the function from open area to swept volume per revolution of the conveyor's drive shaft
     * @throws org.gritwright.units.InvalidInputException if the values don't go together
     */
    SweptVolume sweptVolume(Parameters given);

    /**
     * The range of apparent fill that is usual and possible for this type.
     *
     * @return the limits; {@link FillLimits#COMMON} unless the type knows better
     */
    default FillLimits fillLimits() {
        return FillLimits.COMMON;
    }
}
