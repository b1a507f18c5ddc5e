package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import javax.measure.Unit;
import javax.measure.quantity.Force;
import javax.measure.quantity.Temperature;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;

/** The symbol table as a JSR 385 system of units. */
class SpreadingSystemOfUnitsTest {
    private final SpreadingSystemOfUnits system = new SpreadingSystemOfUnits();

    @Test
    void isCalledSpreading() {
        assertThat(system.getName()).isEqualTo("Spreading");
    }

    @Test
    void holdsEveryUnitOfTheTable() {
        Set<Unit<?>> units = new HashSet<>();
        UnitSymbol.all().forEach(row -> units.add(row.unit()));
        assertThat(system.getUnits()).isEqualTo(units).hasSizeGreaterThan(130);
    }

    @Test
    void findsAUnitBySymbolOrSpelling() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            assertThat(system.getUnit(row.symbol())).isSameAs(row.unit());
            row.spellings()
                    .forEach(spelling -> assertThat(system.getUnit(spelling)).isSameAs(row.unit()));
        }
        assertThat(system.getUnit("furlong")).isNull();
        assertThat(system.getUnit("LB")).isNull();
    }

    @Test
    void givesTheUsualMetricUnitOfAKind() {
        assertThat(system.getUnit(ApplicationRate.class)).isSameAs(SpreadingUnits.KILOGRAM_PER_KILOMETER);
        assertThat(system.getUnit(PrewetRate.class)).isSameAs(SpreadingUnits.LITER_PER_TONNE);
        assertThat(system.getUnit(RotationalSpeed.class)).isSameAs(SpreadingUnits.REVOLUTION_PER_MINUTE);
        assertThat(system.getUnit(Temperature.class)).isSameAs(SpreadingUnits.CELSIUS);
        assertThat(system.getUnit(Force.class)).isNull();
    }

    @Test
    void findsUnitsByDimensionWhichIsCoarserThanKind() {
        assertThat(system.getUnits(SpreadingUnits.KELVIN.getDimension()))
                .containsExactlyInAnyOrder(SpreadingUnits.KELVIN, SpreadingUnits.CELSIUS, SpreadingUnits.FAHRENHEIT);
        assertThat(system.getUnits(SpreadingUnits.SQUARE_METER.getDimension()))
                .contains(SpreadingUnits.ACRE, SpreadingUnits.LITER_PER_KILOMETER)
                .doesNotContain(SpreadingUnits.METER);
        assertThat(system.getUnits(SpreadingUnits.POUND_PER_LANE_MILE.getDimension()))
                .hasSize(4)
                .doesNotContain(SpreadingUnits.POUND_PER_MILE);
    }
}
