package org.gritwright.core;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;

/**
 * The exact factors of units that the tests of calc-units compare the library with, where two of its units make a
 * factor. There each is compared as an exact rational; here it is computed again, as a double.
 */
final class UnitFactors {
    private static final Path ROWS = Path.of(
            "..", "calc-units", "src", "test", "resources", "org", "gritwright", "units", "published-factors.csv");

    private UnitFactors() {}

    /**
     * One factor.
     *
     * @param what from which unit to which
     * @param stated 22 digits of the exact rational
     * @param computed by this library
     */
    record Factor(String what, String stated, double computed) {
        double statedValue() {
            return new BigDecimal(stated).doubleValue();
        }

        String computedText() {
            return BigDecimal.valueOf(computed).stripTrailingZeros().toPlainString();
        }

        String deviationText() {
            double deviation = (computed / statedValue() - 1) * 100;
            return deviation == 0 ? "–" : PublishedCheck.text(deviation);
        }
    }

    static List<Factor> all() {
        try {
            return Files.readAllLines(ROWS, StandardCharsets.UTF_8).stream()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(",", -1))
                    .filter(fields -> fields[5].contains(" -> "))
                    .map(fields -> factor(fields[3], fields[5].split(" -> ", -1)))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Factor factor(String stated, String... units) {
        return new Factor("1 " + units[0] + " in " + units[1], stated, convert(symbol(units[0]), symbol(units[1])));
    }

    private static UnitSymbol<?> symbol(String text) {
        return UnitSymbol.all().stream()
                .filter(row -> row.symbol().equals(text))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no unit " + text));
    }

    private static <Q extends Quantity<Q>> double convert(UnitSymbol<Q> from, UnitSymbol<?> to) {
        @SuppressWarnings("unchecked") // a row of the file is of one kind
        UnitSymbol<Q> like = (UnitSymbol<Q>) to;
        return Amounts.in(Amounts.of(1, from.unit()), like.unit());
    }
}
