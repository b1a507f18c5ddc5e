package org.gritwright.core.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.units.InvalidInputException;
import org.jspecify.annotations.Nullable;

/**
 * A record as an object with a fixed set of fields: an unknown field is a problem, and so is a required one that is
 * missing. It is declared as a table with one line for each field, in the order in which the fields are written:
 *
 * <pre>{@code
 * object("scale-check", ScaleCheck.class,
 *         required("on", DATE),
 *         required("testWeight", MASS),
 *         required("reading", MASS));
 * }</pre>
 *
 * <p>A line stands for the component of its name, or for the one that it states. Names and types are compared when the
 * codec is made, so a renamed, missing or misplaced component is an error then and never a changed document.
 *
 * @param <T> the type of the record
 */
public final class ObjectCodec<T> implements Codec<T> {
    private final String name;
    private final Class<T> type;
    private final RecordShape shape;
    private final Making<T> making;
    private final Function<T, Object> taking;

    /** What a whole must keep that no part of it knows, such as that one part names another that is there. */
    @FunctionalInterface
    public interface Check<T> {
        /** Adds what is wrong with a value that was read at a place. */
        void check(T value, Pointer pointer, Problems problems);
    }

    /** Makes a value of the record that is written, or says why that can't be. */
    private interface Making<T> {
        @Nullable
        T make(Object written, Pointer pointer, Problems problems);
    }

    private ObjectCodec(String name, Class<T> type, RecordShape shape, Making<T> making, Function<T, Object> taking) {
        this.name = name;
        this.type = type;
        this.shape = shape;
        this.making = making;
        this.taking = taking;
    }

    /**
     * Declares how a record is written.
     *
     * @param name the name of its definition in a schema
     * @param type the record
     * @param fields a line for each component, in the order on the wire
     * @throws IllegalArgumentException if fields and components don't match; the message names the field
     */
    public static <T extends Record> ObjectCodec<T> object(String name, Class<T> type, Field... fields) {
        return new ObjectCodec<>(
                name,
                type,
                RecordShape.of(type, List.of(fields)),
                (written, pointer, problems) -> type.cast(written),
                value -> value);
    }

    /** The same codec, which looks at each whole that was read. */
    public ObjectCodec<T> checked(Check<T> check) {
        Making<T> checked = (written, pointer, problems) -> {
            T made = making.make(written, pointer, problems);
            if (made != null) {
                check.check(made, pointer, problems);
            }
            return made;
        };
        return new ObjectCodec<>(name, type, shape, checked, taking);
    }

    /**
     * The codec of a value that is written as this record.
     *
     * @param other the type of the value
     * @param read makes the value; {@code null} where a {@link #checked check} has told why that can't be
     * @param write takes it apart
     */
    public <U> ObjectCodec<U> as(Class<U> other, Function<T, @Nullable U> read, Function<U, T> write) {
        Making<U> mapped = (written, pointer, problems) -> {
            T made = making.make(written, pointer, problems);
            return made == null ? null : read.apply(made);
        };
        return new ObjectCodec<>(name, other, shape, mapped, value -> taking.apply(write.apply(value)));
    }

    RecordShape shape() {
        return shape;
    }

    @Override
    public String type() {
        return type.getTypeName();
    }

    @Override
    public @Nullable T read(JsonNode node, Pointer pointer, Problems problems) {
        if (!(node instanceof JsonNode.ObjectNode object)) {
            problems.add(ProblemCode.WRONG_TYPE, pointer, expected(), node);
            return null;
        }
        Map<String, JsonNode> given = object.fields();
        Object[] values = new Object[shape.size()];
        boolean complete = true;
        int known = 0;
        for (RecordShape.Slot slot : shape.slots()) {
            JsonNode part = given.get(slot.name());
            known += part == null ? 0 : 1;
            Object value = slot.absent();
            if (part != null) {
                value = slot.codec().read(part, pointer.at(slot.name()), problems);
            } else if (slot.isRequired()) {
                problems.missing(pointer.at(slot.name()), slot.codec().expected());
            }
            values[slot.index()] = value;
            complete &= value != null;
        }
        if (known < given.size()) {
            List<String> names =
                    shape.slots().stream().map(RecordShape.Slot::name).toList();
            given.keySet().stream()
                    .filter(field -> !names.contains(field))
                    .forEach(field -> problems.unknownField(pointer, field, names));
            return null;
        }
        return complete ? make(values, pointer, problems) : null;
    }

    private @Nullable T make(Object[] values, Pointer pointer, Problems problems) {
        try {
            return making.make(shape.make(values, 0), pointer, problems);
        } catch (InvalidInputException e) {
            problems.refused(pointer, e);
            return null;
        }
    }

    @Override
    public String expected() {
        return Codecs.AN_OBJECT;
    }

    @Override
    public JsonNode write(T value) {
        Map<String, JsonNode> written = new LinkedHashMap<>();
        Object taken = taking.apply(value);
        for (RecordShape.Slot slot : shape.slots()) {
            Object part = slot.getter().apply(taken);
            if (!Objects.equals(slot.absent(), part)) {
                written.put(slot.name(), slot.codec().write(part));
            }
        }
        return new JsonNode.ObjectNode(written);
    }

    @Override
    public JsonNode describe(Schema schema) {
        return schema.reference(name, () -> definition(schema));
    }

    public JsonNode definition(Schema schema) {
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        shape.slots()
                .forEach(slot -> properties.put(
                        slot.name(),
                        schema.field(name, slot.name(), slot.codec().describe(schema))));
        List<String> required = shape.slots().stream()
                .filter(RecordShape.Slot::isRequired)
                .map(RecordShape.Slot::name)
                .toList();
        return Schema.closed(properties, required);
    }
}
