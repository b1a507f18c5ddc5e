package org.gritwright.units;

import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Dimension;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.spi.SystemOfUnits;
import org.jspecify.annotations.Nullable;

/** The symbol table as a JSR 385 system of units. Immutable, thread-safe. */
@SuppressWarnings("exports") // nobody needs the annotation that says what may be null
public final class SpreadingSystemOfUnits implements SystemOfUnits {

    /** Makes the system; all instances are alike. */
    public SpreadingSystemOfUnits() {}

    /**
     * The system's name.
     *
     * @return "Spreading"
     */
    @Override
    public String getName() {
        return "Spreading";
    }

    /**
     * The trade's usual metric unit for a kind.
     *
     * @return the unit, or {@code null} for a kind that the symbol table doesn't have
     */
    @Override
    public <Q extends Quantity<Q>> @Nullable Unit<Q> getUnit(Class<Q> quantityType) {
        Objects.requireNonNull(quantityType, "quantityType");
        boolean known = UnitSymbol.all().stream().anyMatch(row -> row.kind().equals(quantityType));
        return known ? UnitSymbol.tradeUnit(quantityType, TradeSystem.METRIC) : null;
    }

    /**
     * The unit with a symbol or accepted spelling.
     *
     * @return the unit, or {@code null} if there is none
     */
    @Override
    public @Nullable Unit<?> getUnit(String symbol) {
        Objects.requireNonNull(symbol, "symbol");
        SymbolTable.Entry<?> entry = SymbolTable.bySpelling(symbol);
        return entry == null ? null : entry.row().unit();
    }

    @Override
    public Set<Unit<?>> getUnits() {
        return UnitSymbol.all().stream().<Unit<?>>map(UnitSymbol::unit).collect(Collectors.toUnmodifiableSet());
    }

    @Override
    public Set<Unit<?>> getUnits(Dimension dimension) {
        Objects.requireNonNull(dimension, "dimension");
        return getUnits().stream()
                .filter(unit -> unit.getDimension().equals(dimension))
                .collect(Collectors.toUnmodifiableSet());
    }
}
