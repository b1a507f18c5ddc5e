package org.gritwright.units;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.lang.reflect.Field;
import java.lang.reflect.ParameterizedType;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * The rows of the symbol table, from {@code symbols.csv} beside this class: kind by kind; within a kind and a trade
 * system, the trade's usual unit comes first. A row names a constant of {@link SpreadingUnits}, whose type says the
 * kind.
 */
final class SymbolRows {
    private static final String TABLE = "symbols.csv";

    private SymbolRows() {}

    static List<UnitSymbol<?>> all() {
        try (BufferedReader table = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(SymbolRows.class.getResourceAsStream(TABLE), TABLE), StandardCharsets.UTF_8))) {
            return table.lines()
                    .skip(1)
                    .<UnitSymbol<?>>map(line -> row(line.split(",", -1)))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @SuppressWarnings("unchecked") // a constant's own type
    private static <Q extends Quantity<Q>> UnitSymbol<Q> row(String... cells) {
        try {
            Field constant = SpreadingUnits.class.getField(cells[0]);
            ParameterizedType type = (ParameterizedType) constant.getGenericType();
            return new UnitSymbol<>(
                    (Class<Q>) type.getActualTypeArguments()[0],
                    (Unit<Q>) constant.get(null),
                    TradeSystem.valueOf(cells[1]),
                    cells[2],
                    cells[3],
                    List.of(cells).subList(4, cells.length));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("not a unit: " + Arrays.toString(cells), e);
        }
    }
}
