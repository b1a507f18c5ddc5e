package org.gritwright.examples.fleetmemory;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * All that is kept, as lines of JSON: a first line that says so, a line a document with its text as it is kept, a line for each that
 * stood once, and a last line with their number and the SHA-256 of all before it, so that what was cut off is noticed.
 */
final class ExportLines {
    static final String FORMAT = "gritwright/fleet-memory";

    private static final String VERSION = "1";

    /** A document's text and some more. */
    private static final int LONGEST_LINE = 160 << 20;

    private final Documents documents;

    ExportLines(Documents documents) {
        this.documents = documents;
    }

    /** How much was written. */
    record Written(int standing, int replaced, String sha256) {}

    /** Writes what one moment's database holds. */
    static Written write(Store store, OutputStream out) throws SQLException, BadInputException, IOException {
        MessageDigest digest = Hash.digest();
        int[] counts = new int[2];
        try {
            line(out, digest, Map.of("format", FORMAT), Map.of("formatVersion", VERSION));
            store.reading(() -> {
                store.forEach(kept -> {
                    counts[0]++;
                    line(out, digest, fields(kept), Map.of());
                });
                store.forEachReplaced(one -> {
                    counts[1]++;
                    Map<String, String> fields = fields(one.document());
                    fields.put("replacedBy", one.by());
                    fields.put("why", one.why());
                    line(out, digest, fields, Map.of());
                });
                return counts;
            });
            String sha256 = Hash.hex(digest);
            Map<String, String> numbers = new LinkedHashMap<>();
            numbers.put("documents", String.valueOf(counts[0]));
            numbers.put("replaced", String.valueOf(counts[1]));
            line(out, digest, Map.of("sha256", sha256), numbers);
            return new Written(counts[0], counts[1], sha256);
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Map<String, String> fields(Kept kept) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("kind", kept.kind().word());
        fields.put("identity", kept.identity());
        kept.truck().ifPresent(truck -> fields.put("truck", truck));
        fields.put("day", kept.day());
        fields.put("content", kept.content());
        fields.put("sha256", kept.sha256());
        fields.put("text", kept.text());
        return fields;
    }

    private static void line(
            OutputStream out, MessageDigest digest, Map<String, String> texts, Map<String, String> numbers) {
        StringWriter line = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(line)) {
            json.writeStartObject();
            for (Map.Entry<String, String> one : texts.entrySet()) {
                json.writeStringField(one.getKey(), one.getValue());
            }
            for (Map.Entry<String, String> one : numbers.entrySet()) {
                json.writeNumberField(one.getKey(), Integer.parseInt(one.getValue()));
            }
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be written", e);
        }
        byte[] bytes = line.append('\n').toString().getBytes(StandardCharsets.UTF_8);
        digest.update(bytes);
        try {
            out.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Hands on what an export keeps; whether all of it is there is known at its end. */
    void read(InputStream in, String file, Portions portions) throws IOException, BadInputException {
        MessageDigest digest = Hash.digest();
        Map<String, String> end = Map.of();
        int standing = 0;
        int replaced = 0;
        int number = 0;
        for (Optional<byte[]> line = next(in, file, 1); line.isPresent(); line = next(in, file, number + 1)) {
            number++;
            String from = file + ", line " + number;
            Map<String, String> fields = fields(line.get(), from);
            if (!end.isEmpty()) {
                throw new BadInputException(from + " can't be used: nothing may follow the line that ends an export");
            }
            if (number == 1) {
                first(fields, from);
            } else if (fields.containsKey("documents")) {
                end = fields;
                last(fields, standing, replaced, Hash.hex(digest), from);
            } else if (fields.containsKey("replacedBy")) {
                replaced++;
                portions.add(line.get().length, () -> List.of(replaced(fields, from)));
            } else {
                standing++;
                portions.add(line.get().length, () -> List.of(new Filed(kept(fields, from), from)));
            }
            digest.update(line.get());
        }
        if (end.isEmpty()) {
            throw new BadInputException(file
                    + " can't be used: it was cut off; the line that ends an export is missing after line " + number);
        }
    }

    private Replaced replaced(Map<String, String> fields, String from) throws BadInputException {
        return new Replaced(kept(fields, from), field(fields, "replacedBy", from), field(fields, "why", from));
    }

    private static void first(Map<String, String> fields, String from) throws BadInputException {
        if (!VERSION.equals(field(fields, "formatVersion", from))) {
            throw new BadInputException(from + " can't be used: an export of version " + fields.get("formatVersion")
                    + " needs a newer version of this program");
        }
    }

    private static void last(Map<String, String> fields, int standing, int replaced, String sha256, String from)
            throws BadInputException {
        boolean isWhole = field(fields, "documents", from).equals(String.valueOf(standing))
                && field(fields, "replaced", from).equals(String.valueOf(replaced))
                && field(fields, "sha256", from).equals(sha256);
        if (!isWhole) {
            throw new BadInputException(
                    from + " can't be used: the lines before it aren't those that the program wrote");
        }
    }

    /** The text stays as it was kept, even where this program's library would write it otherwise. */
    private Kept kept(Map<String, String> fields, String from) throws BadInputException {
        String word = field(fields, "kind", from);
        Kind kind = Kind.of(word)
                .orElseThrow(() -> new BadInputException(from + " can't be used: unknown kind \"" + word + "\""));
        String text = field(fields, "text", from);
        Kept said = new Kept(
                kind,
                field(fields, "identity", from),
                Optional.ofNullable(fields.get("truck")),
                field(fields, "day", from),
                field(fields, "content", from),
                field(fields, "sha256", from),
                text);
        if (!said.isWhole()) {
            throw new BadInputException(from + " can't be used: the text of " + said.name()
                    + " isn't the one that its SHA-256 was made of");
        }
        Kept read = documents.read(kind, text, from);
        boolean isOfToday = read.text().equals(text);
        boolean isSame = read.name().equals(said.name())
                && read.truck().equals(said.truck())
                && read.day().equals(said.day())
                && (!isOfToday || read.content().equals(said.content()));
        if (!isSame) {
            throw new BadInputException(
                    from + " can't be used: it says " + said.name() + ", and its text is " + read.name());
        }
        return said;
    }

    private static String field(Map<String, String> fields, String name, String from) throws BadInputException {
        String value = fields.get(name);
        if (value == null) {
            throw new BadInputException(from + " can't be used: \"" + name + "\" is missing");
        }
        return value;
    }

    private static Map<String, String> fields(byte[] line, String from) throws BadInputException {
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxStringLength(LONGEST_LINE)
                        .build())
                .build();
        Map<String, String> fields = new LinkedHashMap<>();
        try (JsonParser json = factory.createParser(line)) {
            boolean isObject = json.nextToken() == JsonToken.START_OBJECT;
            while (isObject && json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                if (!json.nextToken().isScalarValue()) {
                    throw new BadInputException(from + " can't be used: \"" + name + "\" must be a text or a number");
                }
                fields.put(name, json.getText());
            }
            if (!isObject || json.nextToken() != null) {
                throw new BadInputException(from + " can't be used: a line must be one JSON object");
            }
        } catch (IOException e) {
            throw new BadInputException(from + " can't be used: it is no JSON, or was cut off");
        }
        return fields;
    }

    /** A line with its line feed, which a last line may lack. */
    static Optional<byte[]> next(InputStream in, String file, int number) throws IOException, BadInputException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int one = in.read(); one >= 0; one = in.read()) {
            line.write(one);
            if (one == '\n') {
                break;
            }
            if (line.size() > LONGEST_LINE) {
                throw new BadInputException(file + ", line " + number + " can't be used: it is too long");
            }
        }
        return line.size() == 0 ? Optional.empty() : Optional.of(line.toByteArray());
    }
}
