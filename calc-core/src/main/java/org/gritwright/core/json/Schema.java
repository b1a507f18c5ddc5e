package org.gritwright.core.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Builds a JSON Schema (draft 2020-12) with named definitions. */
public final class Schema {
    private static final String DIALECT = "https://json-schema.org/draft/2020-12/schema";

    private final Map<String, JsonNode> definitions = new TreeMap<>();
    private final Words words;

    /** What fields mean. */
    public interface Words {
        /** What a field of an object means, if there are words for it. */
        Optional<String> of(String object, String field);
    }

    public Schema(Words words) {
        this.words = words;
    }

    /**
     * The description of a field with what it means.
     *
     * @param object the name of the object's definition
     * @param type what is accepted there
     */
    public JsonNode field(String object, String field, JsonNode type) {
        return words.of(object, field)
                .<JsonNode>map(meaning -> {
                    Map<String, JsonNode> described = new LinkedHashMap<>();
                    described.put("description", text(meaning));
                    described.putAll(((JsonNode.ObjectNode) type).fields());
                    return new JsonNode.ObjectNode(described);
                })
                .orElse(type);
    }

    /** A reference to a definition, which is made when it is asked for first. */
    public JsonNode reference(String name, Supplier<JsonNode> definition) {
        if (!definitions.containsKey(name)) {
            definitions.put(name, new JsonNode.WordNode("true")); // a place holder while the definition is made
            definitions.put(name, definition.get());
        }
        return object(Map.entry("$ref", text("#/$defs/" + name)));
    }

    public JsonNode document(String title, JsonNode root) {
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        fields.put("$schema", text(DIALECT));
        fields.put("title", text(title));
        fields.putAll(((JsonNode.ObjectNode) root).fields());
        fields.put("$defs", new JsonNode.ObjectNode(definitions));
        return new JsonNode.ObjectNode(fields);
    }

    public static JsonNode text(String text) {
        return new JsonNode.TextNode(text);
    }

    public static JsonNode array(List<JsonNode> items) {
        return new JsonNode.ArrayNode(items);
    }

    @SafeVarargs
    public static JsonNode object(Map.Entry<String, JsonNode>... fields) {
        Map<String, JsonNode> ordered = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> field : fields) {
            ordered.put(field.getKey(), field.getValue());
        }
        return new JsonNode.ObjectNode(ordered);
    }

    /** An object with a fixed set of fields. */
    public static JsonNode closed(Map<String, JsonNode> properties, List<String> required) {
        return object(
                Map.entry("type", text("object")),
                Map.entry("properties", new JsonNode.ObjectNode(properties)),
                Map.entry("required", array(required.stream().map(Schema::text).toList())),
                Map.entry("additionalProperties", new JsonNode.WordNode("false")));
    }

    /** A text that is not blank and not long. */
    static JsonNode nameOf(int longest) {
        return object(
                Map.entry("type", text("string")),
                Map.entry("description", text("a text that is not blank, of at most " + longest + " characters")),
                Map.entry("pattern", text(".*\\S.*")),
                Map.entry("maxLength", new JsonNode.WordNode(String.valueOf(longest))));
    }

    /** A text of some form. */
    static JsonNode textOf(String description, String pattern) {
        return object(
                Map.entry("type", text("string")),
                Map.entry("description", text(description)),
                Map.entry("pattern", text(pattern)));
    }
}
