package org.gritwright.core.finding;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The sentences of findings, from {@code findings.properties} beside this class. */
final class Sentences {
    private static final String FILE = "findings.properties";
    private static final Map<String, String> BY_ID = read();

    private Sentences() {}

    static String of(String id) {
        return Objects.requireNonNull(BY_ID.get(id), id);
    }

    private static Map<String, String> read() {
        Properties sentences = new Properties();
        try (Reader file = new InputStreamReader(
                Objects.requireNonNull(Sentences.class.getResourceAsStream(FILE), FILE), StandardCharsets.UTF_8)) {
            sentences.load(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return sentences.stringPropertyNames().stream()
                .collect(Collectors.toUnmodifiableMap(Function.identity(), sentences::getProperty));
    }
}
