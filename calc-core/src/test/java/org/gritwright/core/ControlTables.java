package org.gritwright.core;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Published tables of control charts, which the files name. */
public final class ControlTables {
    private ControlTables() {}

    /**
     * The rows of a table, by column.
     *
     * @param name the file without its ending
     * @return a map from column to text for each row
     */
    public static List<Map<String, String>> rows(String name) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(ControlTables.class.getResourceAsStream("/control/" + name + ".csv"), name),
                StandardCharsets.UTF_8))) {
            List<String> lines =
                    reader.lines().filter(line -> !line.startsWith("#")).toList();
            List<String> columns = List.of(lines.get(0).split(",", -1));
            List<Map<String, String>> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < cells.length; i++) {
                    row.put(columns.get(i), cells[i]);
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
