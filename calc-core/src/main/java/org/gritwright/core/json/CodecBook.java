package org.gritwright.core.json;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;

/**
 * Codecs by the type of value that they are for. A record's fields follow from its components, in their order and with
 * their names: what is {@code Optional} may be left out, and so may an empty list. Only what isn't so is declared. Enums and
 * quantities of one kind need no entry. Immutable: each book is a new one.
 */
public final class CodecBook {
    private final Map<String, Codec<?>> byType;

    private CodecBook(Map<String, Codec<?>> byType) {
        this.byType = byType;
    }

    public static CodecBook of(Codec<?>... codecs) {
        return new CodecBook(Map.of()).with(codecs);
    }

    /** This book and more codecs, which stand in place of those for the same types. */
    public CodecBook with(Codec<?>... codecs) {
        Map<String, Codec<?>> all = new HashMap<>(byType);
        Arrays.stream(codecs).forEach(codec -> all.put(codec.type(), codec));
        return new CodecBook(all);
    }

    /**
     * This book and the codec of a record.
     *
     * @param name the name of its definition in a schema
     * @param declared the fields that don't follow from their components
     */
    public <T extends Record> CodecBook with(String name, Class<T> type, Field... declared) {
        return with(object(name, type, declared));
    }

    /** The codec of a record, see {@link #with(String, Class, Field...)}. */
    public <T extends Record> ObjectCodec<T> object(String name, Class<T> type, Field... declared) {
        Map<String, Field> byComponent =
                Arrays.stream(declared).collect(Collectors.toMap(Field::component, field -> field));
        Field[] fields = Arrays.stream(type.getRecordComponents())
                .map(one -> field(one, Optional.ofNullable(byComponent.remove(one.getName()))))
                .toArray(Field[]::new);
        if (!byComponent.isEmpty()) {
            throw new IllegalArgumentException(type.getName() + " has no components " + byComponent.keySet());
        }
        return ObjectCodec.object(name, type, fields);
    }

    /** The codec of a record of this book. */
    @SuppressWarnings("unchecked") // it is filed under its type
    public <T extends Record> ObjectCodec<T> get(Class<T> type) {
        return (ObjectCodec<T>) codec(type);
    }

    private Field field(RecordComponent component, Optional<Field> declared) {
        String name = component.getName();
        Type type = RecordShape.boxed(component);
        if (declared.isPresent() && !(declared.get() instanceof Field.ByType)) {
            return declared.get();
        }
        if (declared.isPresent() && ((Field.ByType) declared.get()).isInlined()) {
            return Field.inlined(name, (ObjectCodec<?>) codec(type));
        }
        if (isA(Optional.class, type)) {
            return Field.optional(name, codec(argument(type)));
        }
        if (isA(List.class, type)) {
            Codec<?> item = codec(argument(type));
            return declared.isPresent() ? Field.required(name, Codecs.listOf(item)) : Field.list(name, item);
        }
        return Field.required(name, codec(type));
    }

    private static boolean isA(Class<?> raw, Type type) {
        return type instanceof ParameterizedType generic && generic.getRawType() == raw;
    }

    private static Type argument(Type type) {
        return ((ParameterizedType) type).getActualTypeArguments()[0];
    }

    @SuppressWarnings({"unchecked", "rawtypes"}) // the class says that it is an enum, or a kind of quantity
    private Codec<?> codec(Type type) {
        Codec<?> known = byType.get(type.getTypeName());
        if (known == null && type instanceof Class<?> one && one.isEnum()) {
            return Codecs.choice((Class) one);
        }
        if (known == null && isA(Quantity.class, type) && argument(type) instanceof Class<?> kind) {
            return Codecs.quantity((Class) kind);
        }
        return Objects.requireNonNull(known, () -> "there is no codec for " + type.getTypeName());
    }
}
