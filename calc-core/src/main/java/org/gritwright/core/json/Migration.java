package org.gritwright.core.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.RejectedDocumentException;

/**
 * How a document of one version becomes one of the next. It only moves and renames what is there: values are checked
 * when the newest version is read, and what is wrong with them is reported at their place in the document as written.
 *
 * <p>The frozen schema of the old version says which fields it had, so a step doesn't have to refuse those that came
 * later.
 */
public record Migration(int minor, JsonNode.ObjectNode schema, Step step) {

    /** What a migration does to a document, in place. */
    public interface Step {
        void apply(JsonNode.ObjectNode root, Migrating migrating);
    }

    /**
     * Declares a migration.
     *
     * @param schema the name of the old version's schema in META-INF/schemas, for example "fleet-day-1"
     * @param minor the last minor version of the old version
     * @param step makes the document one of the next version
     */
    public static Migration from(String schema, int minor, Step step) {
        String file = "/META-INF/schemas/" + schema + ".schema.json";
        try (InputStream in = Migration.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalArgumentException("there is no " + file);
            }
            JsonNode root = JsonText.read(in, DocumentLimits.COMMON, new Problems(DocumentLimits.COMMON));
            return new Migration(minor, (JsonNode.ObjectNode) root, step);
        } catch (IOException e) {
            throw new UncheckedIOException(file, e);
        } catch (RejectedDocumentException e) {
            throw new IllegalArgumentException(file, e);
        }
    }

    public void apply(JsonNode.ObjectNode root, Migrating migrating) {
        step.apply(root, migrating);
    }

    public void removeUnknownFields(JsonNode.ObjectNode root, Problems problems) {
        removeUnknownFields(root, schema, Pointer.ROOT, problems);
    }

    /** Looks at objects, lists and references only, which is where a schema of ours has its fields. */
    private void removeUnknownFields(JsonNode node, JsonNode.ObjectNode form, Pointer pointer, Problems problems) {
        if (form.fields().get("$ref") instanceof JsonNode.TextNode reference) {
            JsonNode.ObjectNode definitions = (JsonNode.ObjectNode) schema.get("$defs");
            String name = reference.text().substring("#/$defs/".length());
            removeUnknownFields(node, (JsonNode.ObjectNode) definitions.get(name), pointer, problems);
        } else if (node instanceof JsonNode.ObjectNode object
                && form.fields().get("properties") instanceof JsonNode.ObjectNode known) {
            for (Map.Entry<String, JsonNode> field : List.copyOf(object.fields().entrySet())) {
                if (known.fields().get(field.getKey()) instanceof JsonNode.ObjectNode part) {
                    removeUnknownFields(field.getValue(), part, pointer.at(field.getKey()), problems);
                } else {
                    problems.unknownField(
                            pointer, field.getKey(), known.fields().keySet());
                    object.fields().remove(field.getKey());
                }
            }
        } else if (node instanceof JsonNode.ArrayNode array
                && form.fields().get("items") instanceof JsonNode.ObjectNode item) {
            for (int i = 0; i < array.items().size(); i++) {
                removeUnknownFields(array.items().get(i), item, pointer.at(i), problems);
            }
        }
    }
}
