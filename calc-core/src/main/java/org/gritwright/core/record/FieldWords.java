package org.gritwright.core.record;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import org.gritwright.core.json.Schema;

/** What fields mean, from {@code fields.properties} beside this class: for schemas, and for who types a document. */
final class FieldWords {
    private static final String FILE = "fields.properties";

    private FieldWords() {}

    /** The words, read each time: a schema is asked for rarely. */
    static Schema.Words read() {
        Properties words = new Properties();
        try (Reader file = new InputStreamReader(
                Objects.requireNonNull(FieldWords.class.getResourceAsStream(FILE), FILE), StandardCharsets.UTF_8)) {
            words.load(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return (object, field) -> {
            String usual = object.endsWith("-catch") ? words.getProperty("catch." + field) : null;
            return Optional.ofNullable(words.getProperty(object + "." + field, usual));
        };
    }
}
