package org.gritwright.core.record;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One field of an object in a document: its name, how its value is read and written, where the value is in the object,
 * and what is meant by leaving it out. A field equals itself only: it is the key to its value while an object is read.
 *
 * @param <T> the type of the object
 * @param <V> the type of the value
 */
final class Field<T, V> {
    private final String name;
    private final Codec<V> codec;
    private final Function<T, V> getter;
    private final V absent;
    private final Predicate<V> isAbsent;

    /**
     * Makes a field.
     *
     * @param absent the value where the field is left out; {@code null} if it must be there
     * @param isAbsent whether a value is written by leaving the field out
     */
    Field(String name, Codec<V> codec, Function<T, V> getter, V absent, Predicate<V> isAbsent) {
        this.name = name;
        this.codec = codec;
        this.getter = getter;
        this.absent = absent;
        this.isAbsent = isAbsent;
    }

    static <T, V> Field<T, V> required(String name, Codec<V> codec, Function<T, V> getter) {
        return new Field<>(name, codec, getter, null, value -> false);
    }

    static <T, V> Field<T, Optional<V>> optional(String name, Codec<V> codec, Function<T, Optional<V>> getter) {
        return new Field<>(name, new OptionalCodec<>(codec), getter, Optional.empty(), Optional::isEmpty);
    }

    static <T, V> Field<T, List<V>> list(String name, Codec<V> item, Function<T, List<V>> getter) {
        return new Field<>(name, Codecs.listOf(item), getter, List.of(), List::isEmpty);
    }

    String name() {
        return name;
    }

    Codec<V> codec() {
        return codec;
    }

    V absent() {
        return absent;
    }

    boolean isRequired() {
        return absent == null;
    }

    /** Writes the field of an object, or nothing where leaving it out says the same. */
    void write(T object, Map<String, JsonNode> written) {
        V value = getter.apply(object);
        if (!isAbsent.test(value)) {
            written.put(name, codec.write(value));
        }
    }

    /** The same field of a larger object that holds this one's as a part and writes it without a level of its own. */
    <U> Field<U, V> within(Function<U, T> part) {
        return new Field<>(name, codec, part.andThen(getter), absent, isAbsent);
    }

    private record OptionalCodec<V>(Codec<V> codec) implements Codec<Optional<V>> {
        @Override
        public Optional<V> read(JsonNode node, Pointer pointer, Problems problems) {
            V value = codec.read(node, pointer, problems);
            return value == null ? null : Optional.of(value);
        }

        @Override
        public JsonNode write(Optional<V> value) {
            return codec.write(value.orElseThrow());
        }

        @Override
        public JsonNode describe(Schema schema) {
            return codec.describe(schema);
        }
    }
}
