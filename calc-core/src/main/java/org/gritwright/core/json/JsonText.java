package org.gritwright.core.json;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PushbackInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.ProblemCode;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.jspecify.annotations.Nullable;

/**
 * The only class that knows Jackson: bytes to {@link JsonNode} and back.
 *
 * <p>It reads tokens, not objects, so that none of data binding's conveniences can turn a missing number into 0.0, take
 * text for a number, or let the last of two equal names win in silence.
 */
public final class JsonText {

    private final JsonParser parser;
    private final DocumentLimits limits;
    private final Problems problems;
    private final Places places;
    private int nodes;

    private JsonText(JsonParser parser, DocumentLimits limits, Problems problems, Places places) {
        this.parser = parser;
        this.limits = limits;
        this.problems = problems;
        this.places = places;
    }

    /** More of something than the limits allow. */
    private static final class TooManyException extends JsonProcessingException {
        private static final long serialVersionUID = 1L;
        private final String accepted;

        TooManyException(String accepted, String found, JsonLocation at) {
            super(found, at);
            this.accepted = accepted;
        }
    }

    /**
     * Reads one document.
     *
     * @param problems receives repeated names; the first value stays
     * @throws RejectedDocumentException if the text is not JSON or is beyond a limit
     */
    public static JsonNode read(InputStream in, DocumentLimits limits, Problems problems)
            throws IOException, RejectedDocumentException {
        JsonFactory factory = JsonFactory.builder()
                .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
                .streamReadConstraints(StreamReadConstraints.builder()
                        .maxNestingDepth(limits.depth())
                        .maxStringLength(limits.textLength())
                        .maxNumberLength(limits.textLength())
                        .build())
                .build();
        byte[] start = in.readNBytes(4);
        if (!mayBeUtf8(start)) {
            problems.add(ProblemCode.NOT_JSON, Pointer.ROOT, "UTF-8", "another encoding");
            throw problems.rejected();
        }
        PushbackInputStream whole = new PushbackInputStream(in, start.length + 1);
        whole.unread(start);
        FollowedStream text = new FollowedStream(whole);
        Places places = new Places();
        problems.follow(text, places);
        try (JsonParser parser = factory.createParser(new BoundedStream(text, limits.bytes()))) {
            parser.nextToken();
            if (parser.currentToken() == null) {
                problems.add(ProblemCode.NOT_JSON, Pointer.ROOT, "a JSON document", "nothing");
                throw problems.rejected();
            }
            JsonNode node = new JsonText(parser, limits, problems, places).node(Pointer.ROOT, null, offset(parser));
            if (parser.nextToken() != null) {
                problems.addAt(
                        offset(parser), ProblemCode.NOT_JSON, Pointer.ROOT, "one JSON document", "more text after it");
            }
            return node;
        } catch (BoundedStream.TooLongException e) {
            problems.add(ProblemCode.TOO_LARGE, Pointer.ROOT, "at most " + limits.bytes() + " bytes", "more");
            throw problems.rejected();
        } catch (StreamConstraintsException e) {
            String most = "at most " + limits.depth() + " levels and " + limits.textLength() + " characters a text";
            problems.addAt(offset(e), ProblemCode.TOO_LARGE, Pointer.ROOT, most, e.getOriginalMessage());
            throw problems.rejected();
        } catch (TooManyException e) {
            problems.addAt(offset(e), ProblemCode.TOO_LARGE, Pointer.ROOT, e.accepted, e.getOriginalMessage());
            throw problems.rejected();
        } catch (JsonProcessingException e) {
            BrokenJson broken = BrokenJson.of(e, text, places);
            problems.addAt(broken.offset(), ProblemCode.NOT_JSON, Pointer.ROOT, "JSON (RFC 8259)", broken.found());
            throw problems.rejected();
        }
    }

    /** JSON starts with characters of ASCII, so that a zero byte or a mark of UTF-16 tells other encodings. */
    private static boolean mayBeUtf8(byte[] start) {
        String bytes = new String(start, StandardCharsets.ISO_8859_1);
        return bytes.indexOf(0) < 0 && !bytes.startsWith("\u00fe\u00ff") && !bytes.startsWith("\u00ff\u00fe");
    }

    private static long offset(JsonParser parser) {
        return parser.currentTokenLocation().getByteOffset();
    }

    private static long offset(JsonProcessingException thrown) {
        return thrown.getLocation() == null ? -1 : thrown.getLocation().getByteOffset();
    }

    /**
     * The value that begins with the current token.
     *
     * @param name the name of the field that it is in, if it is in one
     * @param offset where it begins, with its name
     */
    private JsonNode node(Pointer pointer, @Nullable String name, long offset) throws IOException {
        nodes++;
        if (nodes > limits.nodes()) {
            throw tooMany("at most " + limits.nodes() + " values", "more");
        }
        int number = places.begin(name, offset);
        JsonNode node = node(pointer);
        places.end(number);
        return node;
    }

    private JsonNode node(Pointer pointer) throws IOException {
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return object(pointer);
        }
        if (token == JsonToken.START_ARRAY) {
            return array(pointer);
        }
        return token == JsonToken.VALUE_STRING
                ? new JsonNode.TextNode(parser.getText())
                : new JsonNode.WordNode(parser.getText());
    }

    private TooManyException tooMany(String accepted, String found) {
        return new TooManyException(accepted, found, parser.currentTokenLocation());
    }

    private JsonNode object(Pointer pointer) throws IOException {
        Map<String, JsonNode> fields = new LinkedHashMap<>(4);
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.getText();
            if (name.length() > limits.nameLength()) {
                throw tooMany("at most " + limits.nameLength() + " characters a name", "a name of " + name.length());
            }
            long offset = offset(parser);
            parser.nextToken();
            Pointer at = pointer.at(name);
            JsonNode value = node(at, name, offset);
            if (fields.putIfAbsent(name, value) != null) {
                problems.addAt(offset, ProblemCode.REPEATED_NAME, at, "each name once", "\"" + name + "\" again");
            }
        }
        return new JsonNode.ObjectNode(fields);
    }

    private JsonNode array(Pointer pointer) throws IOException {
        List<JsonNode> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(node(pointer.at(items.size()), null, offset(parser)));
        }
        return new JsonNode.ArrayNode(items);
    }

    /**
     * Proves that what is written can be read within limits.
     *
     * @throws InvalidInputException if there are more values, or longer texts or names
     */
    public static void requireReadable(JsonNode node, DocumentLimits limits) {
        int nodes = nodes(node, limits);
        if (nodes > limits.nodes()) {
            throw tooLarge("at most " + limits.nodes() + " values", nodes + " values");
        }
    }

    private static int nodes(JsonNode node, DocumentLimits limits) {
        int nodes = 1;
        if (node instanceof JsonNode.ObjectNode object) {
            for (Map.Entry<String, JsonNode> field : object.fields().entrySet()) {
                requireLength("name", limits.nameLength(), field.getKey());
                nodes += nodes(field.getValue(), limits);
            }
        } else if (node instanceof JsonNode.ArrayNode array) {
            for (JsonNode item : array.items()) {
                nodes += nodes(item, limits);
            }
        } else if (node instanceof JsonNode.TextNode text) {
            requireLength("text", limits.textLength(), text.text());
        }
        return nodes;
    }

    private static void requireLength(String what, int most, String text) {
        if (text.length() > most) {
            throw tooLarge("of at most " + most + " characters a " + what, "a " + what + " of " + text.length());
        }
    }

    private static InvalidInputException tooLarge(String accepted, String found) {
        return new InvalidInputException(RefusalCode.TOO_HIGH, "document", accepted, found);
    }

    /** Writes one document in UTF-8 with a fixed layout, ending with a line feed; leaves the stream open. */
    public static void write(JsonNode node, OutputStream out) throws IOException {
        try (JsonGenerator generator = generator(out)) {
            generator.setPrettyPrinter(new Layout());
            write(node, generator);
            generator.writeRaw('\n');
        }
    }

    /** Writes one document in UTF-8 into one line, without a line feed; leaves the stream open. */
    public static void writeLine(JsonNode node, OutputStream out) throws IOException {
        try (JsonGenerator generator = generator(out)) {
            write(node, generator);
        }
    }

    private static JsonGenerator generator(OutputStream out) throws IOException {
        return JsonFactory.builder()
                .disable(StreamWriteFeature.AUTO_CLOSE_TARGET)
                .build()
                .createGenerator(out, JsonEncoding.UTF8);
    }

    private static void write(JsonNode node, JsonGenerator generator) throws IOException {
        if (node instanceof JsonNode.ObjectNode object) {
            generator.writeStartObject();
            for (Map.Entry<String, JsonNode> field : object.fields().entrySet()) {
                generator.writeFieldName(field.getKey());
                write(field.getValue(), generator);
            }
            generator.writeEndObject();
        } else if (node instanceof JsonNode.ArrayNode array) {
            generator.writeStartArray();
            for (JsonNode item : array.items()) {
                write(item, generator);
            }
            generator.writeEndArray();
        } else if (node instanceof JsonNode.TextNode text) {
            generator.writeString(text.text());
        } else {
            generator.writeRawValue(((JsonNode.WordNode) node).word());
        }
    }

    /** Two spaces per level, line feeds on every system, "name": value. */
    private static final class Layout extends DefaultPrettyPrinter {
        private static final long serialVersionUID = 1L;

        Layout() {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            indentArraysWith(indenter);
            indentObjectsWith(indenter);
        }

        @Override
        public DefaultPrettyPrinter createInstance() {
            return new Layout();
        }

        @Override
        public void writeObjectFieldValueSeparator(JsonGenerator generator) throws IOException {
            generator.writeRaw(": ");
        }
    }
}
