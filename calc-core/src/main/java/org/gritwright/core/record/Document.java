package org.gritwright.core.record;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.fleet.day.FleetDay;

/**
 * A kind of document: a JSON format with a name and a version, read strictly and written in one canonical form.
 *
 * <p>Reading gives back what was written ({@code read(write(d))} equals {@code d}), and writing what was read changes
 * nothing further. Every quantity is a text with its unit. Reading refuses unknown, repeated and missing fields, null,
 * numbers without unit, quantities of another kind, and files past the limits, and lists everything it finds with JSON
 * pointers. Formats keep their name; a new version is read beside the old ones.
 *
 * <p>This package alone needs Jackson (jackson-core 2.15 or any later 2.x) on the class path or module path. Immutable,
 * thread-safe.
 *
 * @param <T> the type of the document
 */
public final class Document<T> {
    private static final String FORMAT = "format";
    private static final String VERSION = "formatVersion";

    /** A fleet's calibration day, the input: format "gritwright/fleet-day", version 1. */
    public static final Document<FleetDay> FLEET_DAY =
            new Document<>("gritwright/fleet-day", 1, FleetDayCodecs.FLEET_DAY);

    /** One truck's calibration record, the result: format "gritwright/calibration-record", version 1. */
    public static final Document<CalibrationRecord> CALIBRATION_RECORD =
            new Document<>("gritwright/calibration-record", 1, CalibrationRecordCodecs.CALIBRATION_RECORD);

    private final String format;
    private final int version;
    private final ObjectCodec<T> codec;

    private Document(String format, int version, ObjectCodec<T> codec) {
        this.format = format;
        this.version = version;
        this.codec = codec;
    }

    /**
     * The format's name.
     *
     * @return for example "gritwright/fleet-day"
     */
    public String format() {
        return format;
    }

    /**
     * The version that is written, the newest that is read.
     *
     * @return the version
     */
    public int version() {
        return version;
    }

    /**
     * Reads a document within the common limits.
     *
     * @param in UTF-8 text; not closed
     * @return the document
     * @throws IOException if the stream can't be read
     * @throws RejectedDocumentException if the document can't be used; it lists everything that is wrong
     */
    public T read(InputStream in) throws IOException, RejectedDocumentException {
        return read(in, DocumentLimits.COMMON);
    }

    /**
     * Reads a document.
     *
     * @param in UTF-8 text; not closed
     * @param limits how large it may be
     * @return the document
     * @throws IOException if the stream can't be read
     * @throws RejectedDocumentException if the document can't be used; it lists everything that is wrong
     */
    public T read(InputStream in, DocumentLimits limits) throws IOException, RejectedDocumentException {
        Problems problems = new Problems(limits.problems());
        JsonNode root = JsonText.read(in, limits, problems);
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        if (root instanceof JsonNode.ObjectNode object) {
            fields.putAll(object.fields());
        } else {
            problems.add(Pointer.ROOT, "an object", root);
            problems.throwIfAny();
        }
        requireHeader(fields.remove(FORMAT), fields.remove(VERSION), problems);
        T document = codec.read(new JsonNode.ObjectNode(fields), Pointer.ROOT, problems);
        problems.throwIfAny();
        return document;
    }

    /** A document of another format or a later version is not read any further: its fields mean something else. */
    private void requireHeader(JsonNode foundFormat, JsonNode foundVersion, Problems problems)
            throws RejectedDocumentException {
        if (!Schema.text(format).equals(foundFormat)) {
            problems.add(Pointer.ROOT.at(FORMAT), "\"" + format + "\"", describe(foundFormat));
        }
        if (!versionNode().equals(foundVersion)) {
            problems.add(Pointer.ROOT.at(VERSION), "the number " + version, describe(foundVersion));
        }
        problems.throwIfAny();
    }

    private static String describe(JsonNode node) {
        return node == null ? "nothing" : node.describe();
    }

    private JsonNode versionNode() {
        return new JsonNode.WordNode(String.valueOf(version));
    }

    /**
     * Writes a document in its canonical form.
     *
     * @param document the document
     * @param out receives UTF-8 text; not closed
     * @throws IOException if the stream can't be written
     */
    public void write(T document, OutputStream out) throws IOException {
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        fields.put(FORMAT, Schema.text(format));
        fields.put(VERSION, versionNode());
        fields.putAll(((JsonNode.ObjectNode) codec.write(document)).fields());
        JsonText.write(new JsonNode.ObjectNode(fields), out);
    }

    /**
     * Writes a document into a text.
     *
     * @param document the document
     * @return the canonical form
     */
    public String toText(T document) {
        return text(out -> write(document, out));
    }

    /**
     * The JSON Schema (draft 2020-12) of the format, made from the same definitions that read and write it. The jar
     * holds it as a file in {@code META-INF/schemas}, named after format and version.
     *
     * @return the schema
     */
    public String schema() {
        Schema schema = new Schema();
        JsonNode.ObjectNode definition = (JsonNode.ObjectNode) codec.definition(schema);
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        properties.put(FORMAT, Schema.object(Map.entry("const", Schema.text(format))));
        properties.put(VERSION, Schema.object(Map.entry("const", versionNode())));
        properties.putAll(((JsonNode.ObjectNode) definition.fields().get("properties")).fields());
        Map<String, JsonNode> root = new LinkedHashMap<>(definition.fields());
        root.put("properties", new JsonNode.ObjectNode(properties));
        root.put(
                "required",
                Schema.array(Stream.concat(
                                Stream.of(Schema.text(FORMAT), Schema.text(VERSION)),
                                ((JsonNode.ArrayNode) definition.fields().get("required")).items().stream())
                        .toList()));
        JsonNode document = schema.document(format + ", version " + version, new JsonNode.ObjectNode(root));
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
