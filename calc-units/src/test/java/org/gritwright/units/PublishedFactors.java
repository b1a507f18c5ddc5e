package org.gritwright.units;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The rows of published-factors.csv, whose head names the sources. */
final class PublishedFactors {

    /** One row; the texts are as in the file. */
    record Row(String unit, String to, String exact, String decimal, String remembered, String coveredBy) {
        boolean isDirect() {
            return coveredBy.contains(" -> ");
        }

        @Override
        public String toString() {
            return unit + " in " + to;
        }
    }

    private PublishedFactors() {}

    static List<Row> all() {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(PublishedFactors.class.getResourceAsStream("published-factors.csv")),
                StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .map(f -> new Row(f[0], f[1], f[2], f[3], f[4], f[5]))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
