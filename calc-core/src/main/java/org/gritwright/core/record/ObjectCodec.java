package org.gritwright.core.record;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * An object with a fixed set of fields: an unknown field is a problem, and so is a required one that is missing.
 *
 * @param name the name of its definition in a schema
 * @param fields its fields, in the order in which they are written
 * @param factory makes the object from the values of its fields
 * @param <T> the type of the object
 */
record ObjectCodec<T>(String name, List<Field<T, ?>> fields, Function<ObjectCodec.Values<T>, T> factory)
        implements Codec<T> {

    /** The values of an object's fields while it is read: one place a field, found by the field itself. */
    static final class Values<T> {
        private final List<Field<T, ?>> fields;
        private final Object[] values;

        Values(List<Field<T, ?>> fields) {
            this.fields = fields;
            this.values = new Object[fields.size()];
        }

        /** The value of a field; the field's own type was put in. */
        @SuppressWarnings("unchecked")
        <V> V get(Field<T, V> field) {
            return (V) values[fields.indexOf(field)];
        }

        private void put(Field<T, ?> field, Object value) {
            values[fields.indexOf(field)] = value;
        }
    }

    @Override
    public T read(JsonNode node, Pointer pointer, Problems problems) {
        if (!(node instanceof JsonNode.ObjectNode object)) {
            problems.add(pointer, "an object", node);
            return null;
        }
        Map<String, JsonNode> given = object.fields();
        Values<T> values = new Values<>(fields);
        boolean complete = true;
        int known = 0;
        for (Field<T, ?> field : fields) {
            JsonNode part = given.get(field.name());
            known += part == null ? 0 : 1;
            complete &= read(field, part, pointer, problems, values);
        }
        if (known < given.size()) {
            complete = false;
            reportUnknown(given.keySet(), pointer, problems);
        }
        return complete ? Codec.make(values, factory, pointer, problems) : null;
    }

    private void reportUnknown(Set<String> given, Pointer pointer, Problems problems) {
        List<String> known = fields.stream().map(Field::name).toList();
        for (String name : given) {
            if (!known.contains(name)) {
                problems.add(pointer.at(name), "one of the fields " + String.join(", ", known), "\"" + name + "\"");
            }
        }
    }

    private static <T, V> boolean read(
            Field<T, V> field, JsonNode node, Pointer pointer, Problems problems, Values<T> values) {
        V value = field.absent();
        if (node != null) {
            value = field.codec().read(node, pointer.at(field.name()), problems);
        } else if (field.isRequired()) {
            problems.add(pointer.at(field.name()), "a value", "nothing");
        }
        values.put(field, value);
        return value != null;
    }

    @Override
    public JsonNode write(T value) {
        Map<String, JsonNode> written = new LinkedHashMap<>();
        fields.forEach(field -> field.write(value, written));
        return new JsonNode.ObjectNode(written);
    }

    @Override
    public JsonNode describe(Schema schema) {
        return schema.reference(name, () -> definition(schema));
    }

    JsonNode definition(Schema schema) {
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        fields.forEach(field -> properties.put(field.name(), field.codec().describe(schema)));
        List<JsonNode> required = fields.stream()
                .filter(Field::isRequired)
                .map(field -> Schema.text(field.name()))
                .toList();
        return Schema.object(
                Map.entry("type", Schema.text("object")),
                Map.entry("properties", new JsonNode.ObjectNode(properties)),
                Map.entry("required", Schema.array(required)),
                Map.entry("additionalProperties", new JsonNode.WordNode("false")));
    }
}
