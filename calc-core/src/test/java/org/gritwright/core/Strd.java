package org.gritwright.core;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Data sets of the NIST Statistical Reference Datasets; the files name their source. */
public final class Strd {

    private Strd() {}

    /** The column of a data set, for example "y" of "norris". */
    public static double[] column(String set, String name) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Strd.class.getResourceAsStream("/strd/" + set + ".csv"), StandardCharsets.UTF_8))) {
            List<String> rows =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            int column = List.of(rows.get(0).split(",", -1)).indexOf(name);
            return rows.stream()
                    .skip(1)
                    .mapToDouble(row -> Double.parseDouble(row.split(",", -1)[column]))
                    .toArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
