package org.gritwright.core.fleet.day;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A field of an entry that may hold numbers.
 *
 * @param name what documents call it
 * @param accessor of the record
 */
record EnteredField(String name, Method accessor) {
    /** Their fields stand in the document on the level of the whole. */
    private static final Set<String> INLINED = Set.of("entry", "target", "spreader", "containers");

    /** Fields that documents call otherwise. */
    private static final Map<String, String> IN_DOCUMENTS = Map.of("rate", "targetRate", "laneRate", "targetLaneRate");

    /** What a type is made of never changes, and to ask it anew for every entry of a fleet costs as much as to check it. */
    private static final ClassValue<List<EnteredField>> FIELDS = new ClassValue<>() {
        @Override
        protected List<EnteredField> computeValue(Class<?> type) {
            return Stream.of(type.getRecordComponents())
                    .filter(component -> mayHoldNumbers(component.getGenericType()))
                    .map(EnteredField::of)
                    .toList();
        }
    };

    /** Those of a record, in its own order. */
    static List<EnteredField> of(Class<? extends Record> type) {
        return FIELDS.get(type);
    }

    private static EnteredField of(RecordComponent component) {
        return new EnteredField(
                IN_DOCUMENTS.getOrDefault(component.getName(), component.getName()), component.getAccessor());
    }

    /** A date, a word or a choice can't. */
    private static boolean mayHoldNumbers(Type type) {
        if (type instanceof ParameterizedType of) {
            boolean holder = of.getRawType() == Optional.class || of.getRawType() == List.class;
            return !holder || mayHoldNumbers(of.getActualTypeArguments()[0]);
        }
        return !(type instanceof Class<?> plain) || plain.isInterface() || Record.class.isAssignableFrom(plain);
    }

    Object value(Record entry) {
        try {
            return Objects.requireNonNull(accessor.invoke(entry), name);
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException(accessor.toString(), e);
        }
    }

    /** Where a value stands, seen from the entry. */
    String place(Object value) {
        return value instanceof Record && INLINED.contains(name) ? "" : "/" + name;
    }
}
