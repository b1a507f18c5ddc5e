package org.gritwright.core.json;

import java.util.List;
import java.util.Map;
import java.util.Objects;

/** A parsed JSON value with nothing lost and nothing converted: numbers stay text until a codec asks for one. */
public sealed interface JsonNode {

    /** What stands there, short enough for a message. */
    String describe();

    record ObjectNode(Map<String, JsonNode> fields) implements JsonNode {
        /** What is in a field that must be there. */
        public JsonNode get(String field) {
            return Objects.requireNonNull(fields.get(field), field);
        }

        @Override
        public String describe() {
            return "an object";
        }
    }

    record ArrayNode(List<JsonNode> items) implements JsonNode {
        @Override
        public String describe() {
            return "an array";
        }
    }

    record TextNode(String text) implements JsonNode {
        @Override
        public String describe() {
            return "\"" + shortened(text) + "\"";
        }
    }

    /** A number, true, false or null, as written. */
    record WordNode(String word) implements JsonNode {
        @Override
        public String describe() {
            return shortened(word);
        }
    }

    private static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "…";
    }
}
