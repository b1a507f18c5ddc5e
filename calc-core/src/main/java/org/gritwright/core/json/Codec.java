package org.gritwright.core.json;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How one type of value is read from JSON, written to it, and described in a JSON Schema: one definition for all three,
 * so that they can't drift apart.
 *
 * @param <T> the type of value
 */
public interface Codec<T> {
    /**
     * The type of value with its arguments, as reflection prints it ({@link java.lang.reflect.Type#getTypeName}). An
     * {@link ObjectCodec} compares it with the component that a field stands for.
     */
    String type();

    /**
     * Reads a value.
     *
     * @param node what stands there
     * @param pointer where it stands
     * @param problems receives what is wrong
     * @return the value, or {@code null} after adding at least one problem
     */
    @Nullable
    T read(JsonNode node, Pointer pointer, Problems problems);

    /** What is accepted, in words that follow "expected". */
    String expected();

    /** Writes a value. */
    JsonNode write(T value);

    /** Describes the accepted JSON; named definitions go into {@code schema}. */
    JsonNode describe(Schema schema);

    /** The name of a generic type, as reflection prints it. */
    static String typeName(Class<?> raw, String... arguments) {
        return raw.getTypeName() + Stream.of(arguments).collect(Collectors.joining(", ", "<", ">"));
    }
}
