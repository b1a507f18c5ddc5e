package org.gritwright.core.json;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How one component of a record stands in a document. */
public sealed interface Field {
    /** The name of the record's component. */
    String component();

    /**
     * A field for one component of a record.
     *
     * @param name its name in the document
     * @param component the name of the record's component
     * @param codec how its value is read and written
     * @param absent the value that is meant by leaving the field out; {@code null} if it must be there
     * @param isLast whether it is written after the fields of the object that its own is inlined into
     */
    record Plain<V>(
            String name,
            String component,
            Codec<V> codec,
            @Nullable V absent,
            boolean isLast) implements Field {
        private Plain(String name, Codec<V> codec, @Nullable V absent) {
            this(name, name, codec, absent, false);
        }

        /** The same field for a component that has another name than the field. */
        public Plain<V> component(String other) {
            return new Plain<>(name, other, codec, absent, isLast);
        }

        /** The same field, written after the fields of the object that its own is inlined into. */
        public Plain<V> last() {
            return new Plain<>(name, component, codec, absent, true);
        }
    }

    /** A component whose fields stand among those of the record, without a level of their own. */
    record Inlined<V>(String component, ObjectCodec<V> codec) implements Field {}

    /** A component whose codec is that of its type in a {@link CodecBook}. */
    record ByType(String component, boolean isInlined) implements Field {}

    static <V> Plain<V> required(String name, Codec<V> codec) {
        return new Plain<>(name, codec, null);
    }

    /** A list that must be there, be it empty, with the codec of its type in a {@link CodecBook}. */
    static ByType required(String component) {
        return new ByType(component, false);
    }

    /** A field whose absence means a certain value; that value is written by leaving the field out. */
    static <V> Plain<V> withDefault(String name, Codec<V> codec, V absent) {
        return new Plain<>(name, codec, absent);
    }

    static <V> Plain<Optional<V>> optional(String name, Codec<V> codec) {
        return withDefault(name, Codecs.optional(codec), Optional.empty());
    }

    /** A list that is empty where it is left out. */
    static <V> Plain<List<V>> list(String name, Codec<V> item) {
        return withDefault(name, Codecs.listOf(item), List.of());
    }

    static <V> Inlined<V> inlined(String component, ObjectCodec<V> codec) {
        return new Inlined<>(component, codec);
    }

    /** An inlined component with the codec of its type in a {@link CodecBook}. */
    static ByType inlined(String component) {
        return new ByType(component, true);
    }
}
