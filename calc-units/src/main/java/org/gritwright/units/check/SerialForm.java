package org.gritwright.units.check;

import java.io.InvalidObjectException;
import java.io.Serializable;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is serialized in place of a public record with optional components, since an {@link Optional} can't be: the values, or
 * {@code null} where there is none. It is read with the record's constructor, which checks them. The record says
 * {@code private Object writeReplace() { return SerialForm.of(this); }}.
 */
public final class SerialForm implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Class<? extends Record> type;

    @SuppressWarnings("serial") // an ArrayList of what a serializable record has
    private final List<@Nullable Object> values = new ArrayList<>();

    private SerialForm(Class<? extends Record> type) {
        this.type = type;
    }

    /**
     * The form of a record.
     *
     * @param record a record of a public type, in a package that its module exports
     * @return what is written in its place
     */
    public static SerialForm of(Record record) {
        SerialForm form = new SerialForm(record.getClass());
        try {
            for (RecordComponent component : form.type.getRecordComponents()) {
                Object value = component.getAccessor().invoke(record);
                if (value instanceof Optional<?> optional) {
                    value = optional.orElse(null);
                } else if (value instanceof OptionalDouble optional) {
                    value = optional.isPresent() ? optional.getAsDouble() : null;
                }
                form.values.add(value);
            }
            return form;
        } catch (ReflectiveOperationException e) {
            throw new IllegalArgumentException(form.type + " is not public", e);
        }
    }

    private Object readResolve() throws InvalidObjectException {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Object[] arguments = new Object[types.length];
        for (int i = 0; i < types.length; i++) {
            Object value = values.get(i);
            arguments[i] = types[i] == Optional.class
                    ? Optional.ofNullable(value)
                    : types[i] != OptionalDouble.class
                            ? value
                            : value == null ? OptionalDouble.empty() : OptionalDouble.of((Double) value);
        }
        try {
            return type.getConstructor(types).newInstance(arguments);
        } catch (ReflectiveOperationException e) {
            InvalidObjectException refused = new InvalidObjectException(type + " can't be made");
            refused.initCause(e);
            throw refused;
        }
    }
}
