package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.QuoteMode;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.UnitSymbol;

/**
 * A table for spreadsheets (RFC 4180), column by column: units stand in the header or, where they differ from row to row, in the cell.
 *
 * @param <T> what a row is of
 */
final class CsvTable<T> {
    /** All cells in quotation marks: in many countries a spreadsheet takes a semicolon for the end of a cell. */
    static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setQuoteMode(QuoteMode.ALL).get();

    private static final String BETWEEN = "; ";

    private final List<String> header = new ArrayList<>();
    private final List<Function<T, String>> cells = new ArrayList<>();

    /** Numbers, or other words of this program. */
    void number(String name, Function<T, Optional<String>> cell) {
        header.add(name);
        cells.add(row -> cell.apply(row).orElse(""));
    }

    /** Words that somebody may have typed. */
    void text(String name, Function<T, String> cell) {
        header.add(name);
        cells.add(row -> harmless(cell.apply(row)));
    }

    void optional(String name, Function<T, Optional<String>> cell) {
        text(name, row -> cell.apply(row).orElse(""));
    }

    /** A column for each unit, which the names end with. */
    @SafeVarargs
    final <Q extends Quantity<Q>> void quantity(
            String name, Function<T, Optional<Quantity<Q>>> cell, Unit<Q>... units) {
        for (Unit<Q> unit : units) {
            number(
                    name + " (" + UnitSymbol.of(unit).symbol() + ")",
                    row -> cell.apply(row).map(quantity -> Figures.number(quantity, unit)));
        }
    }

    /** The same of a measured value, each with its expanded uncertainty beside it. */
    @SafeVarargs
    final <Q extends Quantity<Q>> void measured(
            String name, Function<T, Optional<Measured<Q>>> cell, Unit<Q>... units) {
        for (Unit<Q> unit : units) {
            quantity(name, row -> cell.apply(row).map(Measured::value), unit);
            quantity(
                    "expanded uncertainty of " + name,
                    row -> cell.apply(row).flatMap(one -> one.expandedUncertainty(Figures.COVERAGE)),
                    unit);
        }
    }

    static String codes(List<Finding> findings) {
        return findings.stream().map(finding -> finding.code().id()).distinct().collect(Collectors.joining(BETWEEN));
    }

    static String sentences(List<Refusal> refusals) {
        return refusals.stream().map(Refusal::sentence).collect(Collectors.joining(BETWEEN));
    }

    String of(List<T> rows) throws IOException {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
            printer.printRecord(header);
            for (T row : rows) {
                printer.printRecord(cells.stream()
                        .map(cell -> PlainText.page(cell.apply(row)))
                        .toList());
            }
        }
        return text.toString();
    }

    /** A spreadsheet takes a text that begins like this for a formula and runs it; an apostrophe keeps it a text. */
    private static String harmless(String text) {
        return !text.isEmpty() && "=+-@\t\r\n＝＋－＠".indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }
}
