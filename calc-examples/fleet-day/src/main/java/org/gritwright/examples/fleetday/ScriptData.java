package org.gritwright.examples.fleetday;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.lang.reflect.RecordComponent;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** Data for a page's script. */
final class ScriptData {
    private ScriptData() {}

    /** Records, lists, texts, numbers and words as JSON; what is absent is left out. */
    static String json(Object value) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            write(value, out);
        }
        return text.toString();
    }

    private static void write(Object value, JsonGenerator out) throws IOException {
        if (value instanceof Record part) {
            out.writeStartObject();
            for (RecordComponent component : part.getClass().getRecordComponents()) {
                Object held = value(part, component);
                Object given = held instanceof Optional<?> optional ? optional.orElse(null) : held;
                if (given != null) {
                    out.writeFieldName(component.getName());
                    write(given, out);
                }
            }
            out.writeEndObject();
        } else if (value instanceof List<?> list) {
            out.writeStartArray();
            for (Object item : list) {
                write(item, out);
            }
            out.writeEndArray();
        } else if (value instanceof Integer whole) {
            out.writeNumber(whole);
        } else if (value instanceof Double number) {
            out.writeNumber(number);
        } else if (value instanceof Boolean word) {
            out.writeBoolean(word);
        } else {
            out.writeString((String) value);
        }
    }

    private static Object value(Record part, RecordComponent component) {
        try {
            return component.getAccessor().invoke(part);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component.toString(), e);
        }
    }

    /**
     * JSON that can stand in a script element whatever texts it has. What could end the element, or a line in some readers, and
     * everything but ASCII stands only in texts, where each character may be written by its number.
     */
    static String inPage(String json) {
        StringBuilder safe = new StringBuilder(json.length());
        json.chars().forEach(c -> {
            if (c == '<' || c == '>' || c == '&' || c > '~') {
                safe.append("\\u").append(HexFormat.of().toHexDigits((char) c));
            } else {
                safe.append((char) c);
            }
        });
        return safe.toString();
    }
}
