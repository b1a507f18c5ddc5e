package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.verification.Advice;

/**
 * Takes the facts out of the day's table for spreadsheets. Columns that were not there when the day was frozen are left
 * alone; when one gets another name, {@link #COLUMNS} follows it.
 */
final class CsvFacts {
    /** The names of the facts, and of the columns they stand in. */
    private static final Map<String, String> COLUMNS = same(
            "day",
            "needs attention",
            "material",
            "value as found",
            "value as left",
            "value to enter",
            "mass per revolution measured (lb/rev)",
            "expanded uncertainty of the measured (lb/rev)",
            "mass per revolution as left (lb/rev)",
            "mass per revolution as left (kg/rev)",
            "mass per revolution by calibration catches",
            "expanded uncertainty (95 %)",
            "largest source of uncertainty",
            "apparent fill (1 is loose bulk density)",
            "verification catches (count)",
            "expected (lb)",
            "indicated (lb)",
            "caught (lb)",
            "expected (kg)",
            "indicated (kg)",
            "caught (kg)",
            "calibration error (%)",
            "expanded uncertainty of the error (%)",
            "guard band (%)",
            "probability below tolerance (%)",
            "probability within tolerance (%)",
            "probability above tolerance (%)",
            "verdict of the last catches",
            "advice",
            "catch more (lb)",
            "catch more (kg)",
            "delivery error (%)",
            "delivered rate (lb/mi)",
            "delivered rate (kg/km)",
            "road-speed value in force",
            "road-speed value measured",
            "effect on rate (%)",
            "findings",
            "record");

    /** Sentences; what they say stands in the facts of the assessment. */
    static final List<String> SENTENCES = List.of("next step", "instruction", "verdict", "record refused because");

    /** Words that stand for a code. */
    private static final Map<String, UnaryOperator<String>> CODES = Map.of(
            "verdict of the last catches", words -> code(Arrays.stream(Verdict.values()), Verdict::words, words),
            "advice", words -> code(Arrays.stream(Advice.values()), Advice::words, words),
            "largest source of uncertainty", FrozenWords::component);

    private CsvFacts() {}

    private static Map<String, String> same(String... names) {
        return Arrays.stream(names).collect(Collectors.toMap(name -> name, name -> name));
    }

    private static <T extends Enum<?>> String code(
            Stream<T> codes, java.util.function.Function<T, String> wordsOf, String words) {
        return codes.filter(one -> wordsOf.apply(one).equals(words))
                .map(FactSheet::word)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("not known: " + words));
    }

    static void add(FactTable table, String csv) throws IOException {
        try (CSVParser rows = parser(csv)) {
            for (CSVRecord row : rows) {
                FactSheet sheet = FactSheet.of(table, row.get("truck")).part("table");
                COLUMNS.forEach((what, column) -> cell(sheet, what, row.get(column)));
            }
        }
    }

    /** The columns of a table that no fact is taken from. */
    static List<String> unreadColumns(String csv) throws IOException {
        try (CSVParser rows = parser(csv)) {
            return rows.getHeaderNames().stream()
                    .filter(name -> !name.equals("truck") && !COLUMNS.containsValue(name))
                    .toList();
        }
    }

    private static CSVParser parser(String csv) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return CSVParser.parse(csv, format);
    }

    private static void cell(FactSheet sheet, String what, String cell) {
        if (cell.isEmpty()) {
            return;
        }
        List<String> values = List.of(cell.split("; ", -1));
        for (int i = 0; i < values.size(); i++) {
            sheet.number(i + 1)
                    .put(what, CODES.getOrDefault(what, value -> value).apply(values.get(i)));
        }
    }
}
