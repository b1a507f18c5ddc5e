package org.gritwright.core.record;

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
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.JsonText;
import org.gritwright.core.json.Migrating;
import org.gritwright.core.json.Migration;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.json.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A kind of document: a JSON format with a name and a version, read strictly and written in one canonical form.
 *
 * <p>Reading gives back what was written ({@code read(write(d))} equals {@code d}), and writing what was read changes
 * nothing further. Every quantity is a text with its unit. Reading refuses unknown, repeated and missing fields, null,
 * numbers without unit, quantities of another kind, and files past the limits, and lists everything it finds with JSON
 * pointers. Formats keep their name. A document of an older version is read as one of the newest; one of a newer version
 * is refused with a problem that says so.
 *
 * <p>A document may begin with {@code "$schema"}, the place of a schema, for whoever types it in an editor. That is read over
 * and not written.
 *
 * <p>This alone needs Jackson (jackson-core 2.15 or any later 2.x) on the class path or module path. Immutable,
 * thread-safe.
 *
 * @param <T> the type of the document
 */
public final class Document<T> {
    /** A fleet's calibration day, the input: format "gritwright/fleet-day", version 2. */
    public static final Document<FleetDay> FLEET_DAY =
            new Document<>("gritwright/fleet-day", 0, FleetDayCodecs.FLEET_DAY, FleetDayMigrations.STEPS);

    /** One truck's calibration record, the result: format "gritwright/calibration-record", version 2. */
    public static final Document<CalibrationRecord> CALIBRATION_RECORD = new Document<>(
            "gritwright/calibration-record",
            0,
            CalibrationRecordCodecs.CALIBRATION_RECORD,
            CalibrationRecordMigrations.STEPS);

    /** The record of one tank of the yard: format "gritwright/tank-record", version 1. */
    public static final Document<TankRecord> TANK_RECORD =
            new Document<>("gritwright/tank-record", 0, TankRecordCodecs.TANK_RECORD, List.of());

    /** An event that no calibration record tells: format "gritwright/fleet-event", version 1. */
    public static final Document<WrittenEvent> FLEET_EVENT =
            new Document<>("gritwright/fleet-event", 0, WrittenEventCodecs.FLEET_EVENT, List.of());

    /** A season's account of piles and trucks: format "gritwright/season-account", version 1. */
    public static final Document<WrittenSeason> SEASON_ACCOUNT =
            new Document<>("gritwright/season-account", 0, WrittenSeasonCodecs.SEASON_ACCOUNT, List.of());

    private static final String FORMAT = "format";
    private static final String VERSION = "formatVersion";
    private static final String MINOR = "formatMinor";

    /** Where editors look for the schema by which they complete what is typed. It says nothing about the document. */
    private static final String SCHEMA = "$schema";

    /** What the words for these fields are filed under. */
    private static final String DOCUMENT = "document";

    private final String name;
    private final int minor;
    private final ObjectCodec<T> codec;
    private final List<Migration> migrations;

    /**
     * Defines a format.
     *
     * @param name its name, which it keeps
     * @param minor the minor version that is written
     * @param codec the object, without the fields that name format and version
     * @param migrations from each earlier version to the next, the oldest first; the version written is one more
     */
    Document(String name, int minor, ObjectCodec<T> codec, List<Migration> migrations) {
        this.name = name;
        this.minor = minor;
        this.codec = codec;
        this.migrations = List.copyOf(migrations);
    }

    /**
     * The format's name.
     *
     * @return for example "gritwright/fleet-day"
     */
    public String format() {
        return name;
    }

    /**
     * The version that is written, the newest that is read. All versions before it are read too.
     *
     * @return the version
     */
    public int version() {
        return migrations.size() + 1;
    }

    /**
     * The minor version that is written, the newest of its version that is read. Minor versions differ by fields that
     * may be left out.
     *
     * @return the minor version; 0 is written by leaving it out
     */
    public int minorVersion() {
        return minor;
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
        return readPlaced(in, limits).document();
    }

    /**
     * Reads a document, and remembers where in the text everything stood, for what turns out only when it is computed with.
     *
     * @param in UTF-8 text; not closed
     * @param limits how large it may be
     * @return the document and its places
     * @throws IOException if the stream can't be read
     * @throws RejectedDocumentException if the document can't be used; it lists everything that is wrong
     */
    public PlacedDocument<T> readPlaced(InputStream in, DocumentLimits limits)
            throws IOException, RejectedDocumentException {
        Problems problems = new Problems(limits);
        JsonNode node = JsonText.read(in, limits, problems);
        if (!(node instanceof JsonNode.ObjectNode root)) {
            problems.add(ProblemCode.WRONG_TYPE, Pointer.ROOT, codec.expected(), node);
            throw problems.rejected();
        }
        problems.about(pointer -> Trucks.at(root, pointer));
        migrate(root, takeVersion(root, problems), problems);
        T document = codec.read(root, Pointer.ROOT, problems);
        problems.throwIfAny();
        return new PlacedDocument<>(Objects.requireNonNull(document, "nothing but problems makes it null"), problems);
    }

    /**
     * Writes a document in its canonical form.
     *
     * @param document the document
     * @param out receives UTF-8 text; not closed
     * @throws IOException if the stream can't be written
     * @throws org.gritwright.units.InvalidInputException if it is larger than the common limits allow it to be when it is read;
     *     then nothing was written
     */
    public void write(T document, OutputStream out) throws IOException {
        write(document, out, DocumentLimits.COMMON);
    }

    /**
     * Writes a document in its canonical form.
     *
     * @param document the document
     * @param out receives UTF-8 text; not closed
     * @param limits those within which it will be read
     * @throws IOException if the stream can't be written
     * @throws org.gritwright.units.InvalidInputException if it has more values, or longer texts or names; then nothing was
     *     written
     */
    public void write(T document, OutputStream out, DocumentLimits limits) throws IOException {
        JsonText.write(node(document, limits), out);
    }

    private JsonNode node(T document, DocumentLimits limits) {
        Map<String, JsonNode> fields = new LinkedHashMap<>();
        fields.put(FORMAT, Schema.text(name));
        fields.put(VERSION, number(version()));
        if (minor > 0) {
            fields.put(MINOR, number(minor));
        }
        fields.putAll(((JsonNode.ObjectNode) codec.write(document)).fields());
        JsonNode whole = new JsonNode.ObjectNode(fields);
        JsonText.requireReadable(whole, limits);
        return whole;
    }

    /**
     * Writes a document into a text.
     *
     * @param document the document
     * @return the canonical form
     * @throws org.gritwright.units.InvalidInputException as for {@link #write}
     */
    public String toText(T document) {
        return text(out -> write(document, out));
    }

    /**
     * Writes a document into one line, for files with a document in each of their lines.
     *
     * @param document the document
     * @return the canonical form but for its layout, without a line feed
     * @throws org.gritwright.units.InvalidInputException as for {@link #write}
     */
    public String toLine(T document) {
        return text(out -> JsonText.writeLine(node(document, DocumentLimits.COMMON), out));
    }

    /**
     * The JSON Schema (draft 2020-12) of the format, made from the same definitions that read and write it. The jar
     * holds it as a file in {@code META-INF/schemas}, named after format and version.
     *
     * @return the schema
     */
    public String schema() {
        Schema schema = new Schema(FieldWords.read());
        JsonNode.ObjectNode definition = (JsonNode.ObjectNode) codec.definition(schema);
        Map<String, JsonNode> properties = new LinkedHashMap<>();
        properties.put(SCHEMA, schema.field(DOCUMENT, SCHEMA, Codecs.TEXT.describe(schema)));
        properties.put(FORMAT, schema.field(DOCUMENT, FORMAT, Schema.object(Map.entry("const", Schema.text(name)))));
        properties.put(VERSION, schema.field(DOCUMENT, VERSION, Schema.object(Map.entry("const", number(version())))));
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

    private void migrate(JsonNode.ObjectNode root, int from, Problems problems) {
        if (from < version()) {
            migrations.get(from - 1).removeUnknownFields(root, problems);
            Migrating migrating = new Migrating(root, problems);
            migrations.subList(from - 1, migrations.size()).forEach(step -> step.apply(root, migrating));
            problems.translatedBy(migrating::asWritten);
        }
    }

    private int takeVersion(JsonNode.ObjectNode root, Problems problems) throws RejectedDocumentException {
        JsonNode schema = root.fields().remove(SCHEMA);
        if (schema != null) {
            Codecs.TEXT.read(schema, Pointer.ROOT.at(SCHEMA), problems);
        }
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
                    "version " + text(Math.min(major, version()), readable) + " or less",
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
