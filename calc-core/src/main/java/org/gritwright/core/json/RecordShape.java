package org.gritwright.core.json;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.AccessibleObject;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How a record is taken apart into the values of its fields and made from them: its canonical constructor and accessors,
 * found once.
 */
final class RecordShape {

    /**
     * One field on the wire, of the record itself or of a part that is inlined.
     *
     * @param index where its value is kept while the record is read
     * @param absent the value that is meant by leaving it out; {@code null} if it must be there
     */
    record Slot(
            int index,
            String name,
            Codec<Object> codec,
            @Nullable Object absent,
            boolean last,
            UnaryOperator<Object> getter) {
        boolean isRequired() {
            return absent == null;
        }
    }

    /** Makes the value of a component from the values of the fields, its own being at or after an index. */
    private interface Maker {
        Object make(Object[] values, int from);
    }

    private final Class<?> type;
    private final List<RecordComponent> components;
    private final MethodHandle constructor;
    private final Maker[] makers;
    private final List<Slot> declared = new ArrayList<>();
    private final List<Slot> slots;

    private RecordShape(Class<?> type, List<Field> fields) {
        this.type = type;
        this.components = List.of(type.getRecordComponents());
        this.constructor = constructor();
        this.makers = new Maker[components.size()];
        fields.forEach(this::declare);
        for (int i = 0; i < makers.length; i++) {
            require(makers[i] != null, components.get(i).getName(), "has no field");
        }
        this.slots = Stream.concat(
                        declared.stream().filter(slot -> !slot.last()),
                        declared.stream().filter(Slot::last))
                .toList();
        Set<String> names = new HashSet<>();
        slots.forEach(slot -> require(names.add(slot.name()), slot.name(), "is declared twice"));
    }

    static RecordShape of(Class<?> type, List<Field> fields) {
        return new RecordShape(type, fields);
    }

    /** The fields in the order on the wire. */
    List<Slot> slots() {
        return slots;
    }

    /** How many values there are while the record is read. */
    int size() {
        return slots.size();
    }

    /** Makes the record from the values of its fields, which begin at an index. */
    Object make(Object[] values, int from) {
        Object[] arguments = new Object[makers.length];
        for (int i = 0; i < makers.length; i++) {
            arguments[i] = makers[i].make(values, from);
        }
        return call(constructor, arguments);
    }

    private void declare(Field field) {
        int at = declared.size();
        if (field instanceof Field.Plain<?> plain) {
            int component =
                    component(plain.name(), plain.component(), plain.codec().type());
            declared.add(new Slot(
                    at, plain.name(), untyped(plain.codec()), plain.absent(), plain.isLast(), accessor(component)));
            makers[component] = (values, from) -> values[from + at];
        } else {
            Field.Inlined<?> inlined = (Field.Inlined<?>) field;
            int component = component(
                    inlined.component(), inlined.component(), inlined.codec().type());
            RecordShape part = inlined.codec().shape();
            UnaryOperator<Object> accessor = accessor(component);
            part.declared.forEach(slot -> declared.add(new Slot(
                    at + slot.index(),
                    slot.name(),
                    slot.codec(),
                    slot.absent(),
                    slot.last(),
                    whole -> slot.getter().apply(accessor.apply(whole)))));
            makers[component] = (values, from) -> part.make(values, from + at);
        }
    }

    /** The component that a field stands for. */
    private int component(String field, String name, String codecType) {
        List<String> names = components.stream().map(RecordComponent::getName).toList();
        int index = names.indexOf(name);
        require(index >= 0, field, "stands for \"" + name + "\", which is none of the components " + names);
        String componentType = boxed(components.get(index)).getTypeName();
        require(componentType.equals(codecType), field, "is read as " + codecType + ", but is " + componentType);
        require(makers[index] == null, field, "is the second field for the component \"" + name + "\"");
        return index;
    }

    static Type boxed(RecordComponent component) {
        return component.getType().isPrimitive()
                ? MethodType.methodType(component.getType()).wrap().returnType()
                : component.getGenericType();
    }

    private void require(boolean isSo, String field, String otherwise) {
        if (!isSo) {
            throw new IllegalArgumentException(type.getName() + ": " + field + " " + otherwise);
        }
    }

    /** The types were compared when the field was declared. */
    @SuppressWarnings("unchecked")
    private static Codec<Object> untyped(Codec<?> codec) {
        return (Codec<Object>) codec;
    }

    private MethodHandle constructor() {
        Class<?>[] types = components.stream().map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            Constructor<?> canonical = type.getDeclaredConstructor(types);
            MethodHandle handle = MethodHandles.lookup().unreflectConstructor(opened(canonical));
            return handle.asType(handle.type().generic()).asSpreader(Object[].class, types.length);
        } catch (ReflectiveOperationException e) {
            throw new IllegalArgumentException(type + " can't be made", e);
        }
    }

    private UnaryOperator<Object> accessor(int component) {
        try {
            MethodHandle handle = MethodHandles.lookup()
                    .unreflect(opened(components.get(component).getAccessor()));
            MethodHandle untyped = handle.asType(handle.type().generic()).asSpreader(Object[].class, 1);
            return whole -> call(untyped, new Object[] {whole});
        } catch (IllegalAccessException e) {
            throw new IllegalArgumentException(type + " can't be read", e);
        }
    }

    /** A record that is private to its package is of this module and so can be used. */
    private static <A extends AccessibleObject> A opened(A member) {
        member.setAccessible(true);
        return member;
    }

    private static Object call(MethodHandle handle, Object[] arguments) {
        try {
            return (Object) handle.invokeExact(arguments);
        } catch (RuntimeException | Error e) {
            throw e;
        } catch (Throwable e) {
            throw new IllegalStateException("neither record nor accessor throws a checked exception", e);
        }
    }
}
