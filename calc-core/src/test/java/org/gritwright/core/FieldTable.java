package org.gritwright.core;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.gritwright.core.record.Document;

/** Every field of a fleet's day, from its schema, with the values that the example on the page gives them. */
final class FieldTable {

    /**
     * A field.
     *
     * @param object the object that it is in, by its name in the schema
     * @param meaning what it means; empty if nothing says so
     * @param words what can stand there, if it is one of some words
     * @param part the object that it holds, or a list of; empty if it is none
     * @param example its first value in the example; empty if it isn't there
     */
    record Field(
            String object,
            String name,
            boolean isNeeded,
            String meaning,
            List<String> words,
            String part,
            boolean isList,
            String example) {

        private String row() {
            String value = part.isEmpty() ? "`" + example + "`" : "[" + part + "](#" + part + ")";
            return "| `" + name + "` | " + (isNeeded ? "yes" : "") + " | " + meaning + " | "
                    + (isList && !part.isEmpty() ? "list of " : "") + value + " |\n";
        }
    }

    private static final String ROOT = "fleet-day";
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final JsonNode schema;
    private final Map<String, Map<String, String>> examples = new LinkedHashMap<>();
    private final Map<String, List<Field>> objects = new LinkedHashMap<>();

    private FieldTable(JsonNode schema) {
        this.schema = schema;
    }

    static FieldTable of(Page page) throws IOException {
        FieldTable table = new FieldTable(MAPPER.readTree(Document.FLEET_DAY.schema()));
        table.collect(ROOT, MAPPER.readTree(page.code("every field")));
        table.add(ROOT);
        return table;
    }

    List<Field> fields() {
        return objects.values().stream().flatMap(List::stream).toList();
    }

    String text() {
        return objects.entrySet().stream()
                .map(object ->
                        "### " + object.getKey() + "\n\n| field | needed | what it is | example |\n|---|---|---|---|\n"
                                + object.getValue().stream().map(Field::row).collect(Collectors.joining()))
                .collect(Collectors.joining("\n", "\n", "\n"));
    }

    private JsonNode definition(String object) {
        return object.equals(ROOT) ? schema : schema.get("$defs").path(object);
    }

    /** The object that a field holds, or a list of; empty if it is none. */
    private String part(JsonNode type) {
        JsonNode one = type.has("items") ? type.get("items") : type;
        String name = one.path("$ref").asText().replace("#/$defs/", "");
        return definition(name).has("properties") ? name : "";
    }

    private void collect(String object, JsonNode value) {
        JsonNode properties = definition(object).get("properties");
        value.fields().forEachRemaining(field -> {
            examples.computeIfAbsent(object, any -> new LinkedHashMap<>())
                    .putIfAbsent(field.getKey(), field.getValue().toString());
            String part = part(properties.path(field.getKey()));
            if (!part.isEmpty()) {
                Iterable<JsonNode> parts = field.getValue().isArray() ? field.getValue() : List.of(field.getValue());
                parts.forEach(one -> collect(part, one));
            }
        });
    }

    private void add(String object) {
        if (objects.containsKey(object)) {
            return;
        }
        List<Field> fields = new ArrayList<>();
        objects.put(object, fields);
        JsonNode definition = definition(object);
        List<String> needed = texts(definition.get("required"));
        definition.get("properties").fields().forEachRemaining(property -> {
            JsonNode type = property.getValue();
            fields.add(new Field(
                    object,
                    property.getKey(),
                    needed.contains(property.getKey()),
                    type.path("description").asText(),
                    texts(type.path("enum")),
                    part(type),
                    type.has("items"),
                    examples.getOrDefault(object, Map.of()).getOrDefault(property.getKey(), "")));
        });
        fields.stream().map(Field::part).filter(part -> !part.isEmpty()).forEach(this::add);
    }

    private static List<String> texts(JsonNode array) {
        return StreamSupport.stream(array.spliterator(), false)
                .map(JsonNode::asText)
                .toList();
    }
}
