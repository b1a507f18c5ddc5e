package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Force;
import javax.measure.quantity.Mass;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tech.units.indriya.unit.Units;

/** The symbol table is complete and says the same as the constants. */
class SymbolTableTest {

    static Stream<Field> constants() {
        return Arrays.stream(SpreadingUnits.class.getFields());
    }

    private static Unit<?> unit(Field constant) throws IllegalAccessException {
        return (Unit<?>) constant.get(null);
    }

    @Test
    void theRowsAreThoseOfTheFile() {
        assertThat(SymbolRows.all()).isEqualTo(UnitSymbol.all()).first().hasFieldOrPropertyWithValue("symbol", "lb");
    }

    /** The avoirdupois pound is 0.453 592 37 kg exactly (NIST SP 811, B.8). */
    @Test
    void aUnitsFactorIsExactAndATemperatureScaleHasNone() {
        assertThat(FactorPair.toSystemUnit(SpreadingUnits.POUND).orElseThrow().toSystem())
                .isEqualTo(ExactFactor.of(45_359_237, 100_000_000));
        assertThat(FactorPair.toSystemUnit(SpreadingUnits.TONNE).orElseThrow().toSystem())
                .isEqualTo(ExactFactor.of(1000, 1));
        assertThat(FactorPair.toSystemUnit(SpreadingUnits.CELSIUS)).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("constants")
    void everyConstantStandsInTheTableOnceAsTheKindItIsDeclaredWith(Field constant) throws IllegalAccessException {
        assertThat(Modifier.toString(constant.getModifiers())).isEqualTo("public static final");
        Unit<?> unit = unit(constant);
        List<UnitSymbol<?>> rows =
                UnitSymbol.all().stream().filter(row -> row.unit().equals(unit)).collect(Collectors.toList());
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).unit()).isSameAs(unit);
        assertThat(UnitSymbol.of(unit)).isSameAs(rows.get(0));
        ParameterizedType type = (ParameterizedType) constant.getGenericType();
        assertThat(type.getRawType()).isEqualTo(Unit.class);
        assertThat(type.getActualTypeArguments()).containsExactly(rows.get(0).kind());
    }

    @Test
    void theTableHasNoRowBesideTheConstants() {
        assertThat(UnitSymbol.all()).hasSize((int) constants().count());
    }

    @ParameterizedTest
    @MethodSource("constants")
    void aConstantIsCalledLikeItsRow(Field constant) throws IllegalAccessException {
        String spoken = constant.getName().toLowerCase(Locale.ROOT).replace('_', ' ');
        String name = UnitSymbol.of(unit(constant)).name().toLowerCase(Locale.ROOT);
        assertThat(spoken)
                .isEqualTo(name.replace('-', ' ').replaceFirst("^degree ", "").replace("us liquid quart", "us quart"));
    }

    @Test
    void everyKindOfThePackageHasUnits() {
        Set<String> kinds = UnitSymbol.all().stream()
                .map(row -> row.kind().getName())
                .filter(name -> name.startsWith("org.gritwright"))
                .collect(Collectors.toSet());
        assertThat(kinds).hasSize(KINDS_OF_OUR_OWN).allMatch(name -> name.startsWith("org.gritwright.units.quantity."));
    }

    private static final int KINDS_OF_OUR_OWN = 25;

    @Test
    void aKindsUnitsShareOneDimensionAndSystemUnit() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            UnitSymbol<?> first = UnitSymbol.all().stream()
                    .filter(other -> other.kind().equals(row.kind()))
                    .findFirst()
                    .orElseThrow();
            assertThat(row.unit().getDimension())
                    .as(row.name())
                    .isEqualTo(first.unit().getDimension());
            assertThat(row.unit().isCompatible(first.unit())).as(row.name()).isTrue();
        }
    }

    @Test
    void theRowsOfAKindAreContiguousAndListedInTableOrder() {
        Set<Class<?>> kinds = new LinkedHashSet<>();
        UnitSymbol.all().forEach(row -> kinds.add(row.kind()));
        List<UnitSymbol<?>> kindByKind = kinds.stream()
                .<UnitSymbol<?>>flatMap(kind ->
                        UnitSymbol.all().stream().filter(row -> row.kind().equals(kind)))
                .toList();
        assertThat(UnitSymbol.all()).isEqualTo(kindByKind);
        assertThat(UnitSymbol.ofKind(ApplicationRate.class))
                .extracting(UnitSymbol::symbol)
                .containsExactly("lb/mi", "kg/km", "kg/m", "g/m", "t/km", "ton/mi", "lb/ft", "lb/yd");
    }

    @Test
    void theTableCannotBeChanged() {
        assertThatThrownBy(() -> UnitSymbol.all().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> UnitSymbol.ofKind(Mass.class).clear())
                .isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> UnitSymbol.of(SpreadingUnits.POUND).spellings().clear())
                .isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void kindsAndUnitsOutsideTheTableAreRefused() {
        assertThatThrownBy(() -> UnitSymbol.ofKind(Force.class))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("kind of quantity must be one of the symbol table: javax.measure.quantity.Force");
        assertThatThrownBy(() -> UnitSymbol.tradeUnit(Force.class, TradeSystem.US))
                .isInstanceOf(InvalidInputException.class);
        assertThatThrownBy(() -> UnitSymbol.of(Units.NEWTON))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("unit must be one of the symbol table: a unit of a dimension that no kind has");
    }

    @ParameterizedTest
    @CsvSource({
        "Mass, mass",
        "Dimensionless, ratio",
        "ApplicationRate, application rate",
        "LiquidLaneApplicationRate, liquid lane application rate",
        "DischargePerRevolution, discharge per revolution"
    })
    void aKindIsNamedInWords(String simpleName, String words) {
        Class<? extends Quantity<?>> kind = UnitSymbol.all().stream()
                .filter(row -> row.kind().getSimpleName().equals(simpleName))
                .findFirst()
                .orElseThrow()
                .kind();
        assertThat(UnitSymbol.kindName(kind)).isEqualTo(words);
    }

    @Test
    void aRowPrintsSymbolAndNameAndNothingOfTheReferenceImplementation() {
        assertThat(UnitSymbol.of(SpreadingUnits.POUND_PER_MILE)).hasToString("lb/mi (pound per mile)");
        assertThat(UnitSymbol.of(SpreadingUnits.ONE)).hasToString("one");
    }
}
