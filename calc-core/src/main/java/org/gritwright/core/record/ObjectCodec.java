package org.gritwright.core.record;

import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

    /** The values of an object's fields while it is read. */
    static final class Values<T> {
        private final Map<Field<T, ?>, Object> values = new IdentityHashMap<>();

        /** The value of a field; the field's own type was put in. */
        @SuppressWarnings("unchecked")
        <V> V get(Field<T, V> field) {
            return (V) values.get(field);
        }
    }

    @Override
    public T read(JsonNode node, String pointer, Problems problems) {
        if (!(node instanceof JsonNode.ObjectNode object)) {
            problems.add(pointer, "an object", node);
            return null;
        }
        Map<String, JsonNode> given = object.fields();
        Values<T> values = new Values<>();
        boolean complete = true;
        for (Field<T, ?> field : fields) {
            complete &= read(field, given.get(field.name()), pointer, problems, values);
        }
        for (String name : given.keySet()) {
            if (fields.stream().noneMatch(f -> f.name().equals(name))) {
                String known = String.join(", ", fields.stream().map(Field::name).toList());
                problems.add(Problems.at(pointer, name), "one of the fields " + known, "\"" + name + "\"");
                complete = false;
            }
        }
        return complete ? Codec.make(values, factory, pointer, problems) : null;
    }

    private static <T, V> boolean read(
            Field<T, V> field, JsonNode node, String pointer, Problems problems, Values<T> values) {
        V value = field.absent();
        String at = Problems.at(pointer, field.name());
        if (node != null) {
            value = field.codec().read(node, at, problems);
        } else if (field.isRequired()) {
            problems.add(at, "a value", "nothing");
        }
        values.values.put(field, value);
        return value != null;
    }

    @Override
    public JsonNode write(T value) {
        Map<String, JsonNode> written = new LinkedHashMap<>();
        fields.forEach(field -> write(field, value, written));
        return new JsonNode.ObjectNode(written);
    }

    private static <T, V> void write(Field<T, V> field, T value, Map<String, JsonNode> written) {
        V part = field.getter().apply(value);
        if (!field.isAbsent().test(part)) {
            written.put(field.name(), field.codec().write(part));
        }
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
