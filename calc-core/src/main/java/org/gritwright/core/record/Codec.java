package org.gritwright.core.record;

import java.util.function.Function;
import org.gritwright.units.InvalidInputException;

/**
 * How one type of value is read from JSON, written to it, and described in a JSON Schema: one definition for all three,
 * so that they can't drift apart.
 *
 * @param <T> the type of value
 */
interface Codec<T> {
    /**
     * Reads a value.
     *
     * @param node what stands there
     * @param pointer where it stands
     * @param problems receives what is wrong
     * @return the value, or {@code null} after adding at least one problem
     */
    T read(JsonNode node, Pointer pointer, Problems problems);

    /** Writes a value. */
    JsonNode write(T value);

    /** Describes the accepted JSON; named definitions go into {@code schema}. */
    JsonNode describe(Schema schema);

    /**
     * Runs a factory and turns its refusal into a problem.
     *
     * @return what the factory made, or {@code null} after adding a problem
     */
    static <V, T> T make(V input, Function<V, T> factory, Pointer pointer, Problems problems) {
        try {
            return factory.apply(input);
        } catch (InvalidInputException e) {
            problems.add(pointer, e.field() + ": " + e.accepted(), e.value());
            return null;
        }
    }
}
