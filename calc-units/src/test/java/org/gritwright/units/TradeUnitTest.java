package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The usual unit of every kind in every system (common practice, no source); a system without a unit of its own for a
 * kind gets the shared one, else the kind's first.
 */
class TradeUnitTest {
    @ParameterizedTest
    @CsvSource({
        "mass, lb, kg, long ton, lb",
        "length, in, m, in, in",
        "time, s, s, s, s",
        "speed, mi/h, km/h, mi/h, mi/h",
        "area, in², m², in², in²",
        "volume, gal, L, imp gal, gal",
        "ratio, '', '', '', ''",
        "pressure, psi, kPa, psi, psi",
        "electric current, mA, mA, mA, mA",
        "temperature, °F, °C, °C, °C",
        "application rate, lb/mi, kg/km, lb/mi, lb/mi",
        "lane application rate, lb/lane-mi, kg/lane-km, lb/lane-mi, lb/lane-mi",
        "areal application rate, lb/1000 ft², g/m², g/m², g/m²",
        "discharge rate, lb/min, kg/min, lb/min, lb/min",
        "liquid application rate, gal/mi, L/km, imp gal/mi, gal/mi",
        "liquid lane application rate, gal/lane-mi, L/lane-km, imp gal/lane-mi, gal/lane-mi",
        "liquid areal application rate, gal/1000 ft², mL/m², mL/m², mL/m²",
        "prewet rate, gal/ton, L/t, imp gal/long ton, gal/ton",
        "flow rate, gal/min, L/min, imp gal/min, gal/min",
        "discharge per revolution, lb/rev, kg/rev, lb/rev, lb/rev",
        "discharge per pulse, lb/pulse, kg/pulse, lb/pulse, lb/pulse",
        "revolutions per mass, rev/lb, rev/kg, rev/lb, rev/lb",
        "pulses per mass, pulse/lb, pulse/kg, pulse/lb, pulse/lb",
        "volume per revolution, in³/rev, L/rev, in³/rev, in³/rev",
        "volume per pulse, gal/pulse, mL/pulse, imp gal/pulse, gal/pulse",
        "pulses per volume, pulse/gal, pulse/L, pulse/imp gal, pulse/gal",
        "revolutions per volume, rev/gal, rev/L, rev/imp gal, rev/gal",
        "rotational speed, rev/min, rev/min, rev/min, rev/min",
        "pulses per revolution, pulse/rev, pulse/rev, pulse/rev, pulse/rev",
        "pulses per distance, pulse/mi, pulse/km, pulse/mi, pulse/mi",
        "bulk density, lb/ft³, kg/m³, lb/imp gal, lb/ft³",
        "lane width, ft/lane, m/lane, ft/lane, ft/lane",
        "pulse count, pulse, pulse, pulse, pulse",
        "revolution count, rev, rev, rev, rev",
        "lane count, lane, lane, lane, lane"
    })
    void isTheTradesUsualUnit(String kind, String us, String metric, String imperial, String any) {
        UnitSymbol<?> row = UnitSymbol.all().stream()
                .filter(candidate -> UnitSymbol.kindName(candidate.kind()).equals(kind))
                .findFirst()
                .orElseThrow();
        assertThat(tradeSymbol(row, TradeSystem.US)).isEqualTo(us);
        assertThat(tradeSymbol(row, TradeSystem.METRIC)).isEqualTo(metric);
        assertThat(tradeSymbol(row, TradeSystem.IMPERIAL)).isEqualTo(imperial);
        assertThat(tradeSymbol(row, TradeSystem.ANY)).isEqualTo(any);
    }

    @Test
    void followsTheSystemOfAQuantity() {
        assertThat(UnitSymbol.tradeUnit(DischargePerRevolution.class, Amounts.of(5, SpreadingUnits.POUND)))
                .isEqualTo(SpreadingUnits.POUND_PER_REVOLUTION);
        assertThat(UnitSymbol.tradeUnit(DischargePerRevolution.class, Amounts.of(5, SpreadingUnits.TONNE)))
                .isEqualTo(SpreadingUnits.KILOGRAM_PER_REVOLUTION);
    }

    @Test
    void everyKindIsListedAbove() {
        Set<String> kinds = UnitSymbol.all().stream()
                .map(row -> UnitSymbol.kindName(row.kind()))
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(kinds).hasSize(35);
    }

    private static <Q extends Quantity<Q>> String tradeSymbol(UnitSymbol<Q> row, TradeSystem system) {
        return UnitSymbol.of(UnitSymbol.tradeUnit(row.kind(), system)).symbol();
    }
}
