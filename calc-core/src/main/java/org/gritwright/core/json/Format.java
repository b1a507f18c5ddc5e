package org.gritwright.core.json;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.jspecify.annotations.Nullable;

/**
 * A kind of document: its name, its versions, and how the version that is written looks.
 *
 * <p>A document states its version: {@code "formatVersion": 2}, and {@code "formatMinor": 1} if it is 2.1. A field that
 * may be left out raises the minor version; any other change raises the version itself and comes with a
 * {@link Migration}. What is read: the current version up to its minor version, and all versions before.
 *
 * @param <T> the type of the document
 * @param minor the minor version that is written; 0 is written by leaving it out
 * @param codec the version that is written
 * @param migrations the way to it from version 1, in steps of one version; their number gives the version
 */
public record Format<T>(String name, int minor, ObjectCodec<T> codec, List<Migration> migrations) {
    private static final String FORMAT = "format";
    private static final String VERSION = "formatVersion";
    private static final String MINOR = "formatMinor";

    public Format {
        migrations = List.copyOf(migrations);
    }

    public int version() {
        return migrations.size() + 1;
    }

    public T read(InputStream in, DocumentLimits limits) throws IOException, RejectedDocumentException {
        Problems problems = new Problems(limits.problems());
        JsonNode node = JsonText.read(in, limits, problems);
        if (!(node instanceof JsonNode.ObjectNode root)) {
            problems.add(ProblemCode.WRONG_TYPE, Pointer.ROOT, "an object", node);
            throw problems.rejected();
        }
        migrate(root, takeVersion(root, problems), problems);
        T document = codec.read(root, Pointer.ROOT, problems);
        problems.throwIfAny();
        return Objects.requireNonNull(document, "nothing but problems makes it null");
    }

    private void migrate(JsonNode.ObjectNode root, int from, Problems problems) {
        if (from < version()) {
            migrations.get(from - 1).removeUnknownFields(root, problems);
            Migrating migrating = new Migrating(root, problems);
            migrations.subList(from - 1, migrations.size()).forEach(step -> step.apply(root, migrating));
            problems.translatedBy(migrating::asWritten);
        }
    }

    /**
     * Takes the header off a document and tells its version. A document of another format or a later version is not
     * read any further: its fields mean something else.
     */
    private int takeVersion(JsonNode.ObjectNode root, Problems problems) throws RejectedDocumentException {
        JsonNode format = root.fields().remove(FORMAT);
        boolean isOurs = Schema.text(name).equals(format);
        if (!isOurs) {
            problems.add(
                    format == null ? ProblemCode.MISSING_FIELD : ProblemCode.WRONG_FORMAT,
                    Pointer.ROOT.at(FORMAT),
                    "\"" + name + "\"",
                    describe(format));
        }
        Integer major = number(root, VERSION, null, "a version number, " + version() + " or less", problems);
        Integer lower = number(root, MINOR, 0, "a minor version number", problems);
        if (!isOurs || major == null || lower == null) {
            throw problems.rejected();
        }
        int readable = major < version() ? migrations.get(major - 1).minor() : minor;
        if (major > version() || lower > readable) {
            problems.add(
                    ProblemCode.NEWER_VERSION,
                    Pointer.ROOT.at(major > version() ? VERSION : MINOR),
                    "version " + (major > version() ? text(version(), minor) : text(major, readable)) + " or less",
                    "version " + text(major, lower) + ", which needs a newer version of this library");
            throw problems.rejected();
        }
        return major;
    }

    private static @Nullable Integer number(
            JsonNode.ObjectNode root, String field, @Nullable Integer absent, String expected, Problems problems) {
        JsonNode node = root.fields().remove(field);
        Pointer pointer = Pointer.ROOT.at(field);
        String allowed = absent == null ? "[1-9][0-9]{0,8}" : "0|[1-9][0-9]{0,8}";
        if (node instanceof JsonNode.WordNode word && word.word().matches(allowed)) {
            return Integer.valueOf(word.word());
        }
        if (node != null || absent == null) {
            ProblemCode code = node == null ? ProblemCode.MISSING_FIELD : ProblemCode.WRONG_TYPE;
            problems.add(code, pointer, expected, describe(node));
            return null;
        }
        return absent;
    }

    private static String describe(@Nullable JsonNode node) {
        return node == null ? "nothing" : node.describe();
    }

    private static String text(int major, int minor) {
        return minor == 0 ? String.valueOf(major) : major + "." + minor;
    }

    private static JsonNode number(int value) {
        return new JsonNode.WordNode(String.valueOf(value));
    }

    public void write(T document, OutputStream out) throws IOException {
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        fields.put(FORMAT, Schema.text(name));
        fields.put(VERSION, number(version()));
        if (minor > 0) {
            fields.put(MINOR, number(minor));
        }
        fields.putAll(((JsonNode.ObjectNode) codec.write(document)).fields());
        JsonText.write(new JsonNode.ObjectNode(fields), out);
    }

    public String toText(T document) {
        return text(out -> write(document, out));
    }

    /** The JSON Schema (draft 2020-12) of the version that is written and of all its minor versions. */
    public String schema() {
        Schema schema = new Schema();
        JsonNode.ObjectNode definition = (JsonNode.ObjectNode) codec.definition(schema);
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        properties.put(FORMAT, Schema.object(Map.entry("const", Schema.text(name))));
        properties.put(VERSION, Schema.object(Map.entry("const", number(version()))));
        if (minor > 0) {
            properties.put(
                    MINOR,
                    Schema.object(
                            Map.entry("type", Schema.text("integer")),
                            Map.entry("minimum", number(0)),
                            Map.entry("maximum", number(minor))));
        }
        properties.putAll(((JsonNode.ObjectNode) definition.get("properties")).fields());
        Map<String, JsonNode> root = new LinkedHashMap<>(definition.fields());
        root.put("properties", new JsonNode.ObjectNode(properties));
        root.put(
                "required",
                Schema.array(Stream.concat(
                                Stream.of(Schema.text(FORMAT), Schema.text(VERSION)),
                                ((JsonNode.ArrayNode) definition.get("required")).items().stream())
                        .toList()));
        JsonNode document =
                schema.document(name + ", version " + text(version(), minor), new JsonNode.ObjectNode(root));
        return text(out -> JsonText.write(document, out));
    }

    private interface Writer {
        void write(OutputStream out) throws IOException;
    }

    private static String text(Writer writer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writer.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be written", e);
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
