package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One field of an object in a document.
 *
 * @param name its name in JSON
 * @param codec how its value is read and written
 * @param getter where the value is in the object
 * @param absent the value where the field is left out; {@code null} if it must be there
 * @param isAbsent whether a value is written by leaving the field out
 * @param <T> the type of the object
 * @param <V> the type of the value
 */
record Field<T, V>(String name, Codec<V> codec, Function<T, V> getter, V absent, Predicate<V> isAbsent) {

    static <T, V> Field<T, V> required(String name, Codec<V> codec, Function<T, V> getter) {
        return new Field<>(name, codec, getter, null, value -> false);
    }

    static <T, V> Field<T, Optional<V>> optional(String name, Codec<V> codec, Function<T, Optional<V>> getter) {
        return new Field<>(name, new OptionalCodec<>(codec), getter, Optional.empty(), Optional::isEmpty);
    }

    static <T, V> Field<T, List<V>> list(String name, Codec<V> item, Function<T, List<V>> getter) {
        return new Field<>(name, Codecs.listOf(item), getter, List.of(), List::isEmpty);
    }

    boolean isRequired() {
        return absent == null;
    }

    /** The same field of a larger object that holds this one's as a part and writes it without a level of its own. */
    <U> Field<U, V> within(Function<U, T> part) {
        return new Field<>(name, codec, part.andThen(getter), absent, isAbsent);
    }

    private record OptionalCodec<V>(Codec<V> codec) implements Codec<Optional<V>> {
        @Override
        public Optional<V> read(JsonNode node, String pointer, Problems problems) {
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
