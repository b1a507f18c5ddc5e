package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read as a unit, and how it is printed again. */
@Tag("locale")
class SpellingsTest {

    /** Would read on as a number, or as one of the slips after it. */
    private static final String NUMBER_LIKE = "[0-9.,+-].*|[eE][0-9+-].*|[dDfFeE]( .*)?|[xX].*|\\s.*|.*\\s";

    @Test
    void everySymbolAndSpellingReadsAsItsUnitWithASpaceOrWithout() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            List<String> spellings = new ArrayList<>(row.spellings());
            spellings.add(row.symbol());
            for (String spelling : spellings) {
                assertThat(Amounts.parseAny("2.5" + spelling).getUnit())
                        .as(spelling)
                        .isSameAs(row.unit());
                if (!spelling.isEmpty()) {
                    assertThat(Amounts.parse(row.kind(), "2.5 " + spelling).getUnit())
                            .as(spelling)
                            .isSameAs(row.unit());
                }
            }
        }
    }

    @Test
    void noSpellingStandsTwiceInTheTable() {
        List<String> all = new ArrayList<>();
        UnitSymbol.all().forEach(row -> {
            all.add(row.symbol());
            all.addAll(row.spellings());
        });
        assertThat(all).doesNotHaveDuplicates();
    }

    @Test
    void noSymbolOrSpellingCanBeMistakenForTheEndOfANumber() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            assertThat(row.symbol()).doesNotMatch(NUMBER_LIKE).doesNotContain("  ");
            assertThat(row.spellings())
                    .allSatisfy(spelling ->
                            assertThat(spelling).doesNotMatch(NUMBER_LIKE).isNotEmpty());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "260 lb/mi | 260 lb/mi",
                "260lb/mile | 260 lb/mi",
                "85 kg/km | 85 kg/km",
                "20 g/m² | 20 g/m²",
                "20 g/m2 | 20 g/m²",
                "40 gal/lane-mi | 40 gal/lane-mi",
                "10 gal/ton | 10 gal/ton",
                "10 gal/short ton | 10 gal/ton",
                "27.24 lb/rev | 27.24 lb/rev",
                "64 pulse/rev | 64 pulse/rev",
                "24 mi/h | 24 mi/h",
                "24 mph | 24 mi/h",
                "3 in | 3 in",
                "4 % | 4 %",
                "4% | 4 %",
                "360 pulse | 360 pulse",
                "360 pulses | 360 pulse",
                "20 rev | 20 rev",
                "2 lane | 2 lane",
                "2 lanes | 2 lane",
                "40 rpm | 40 rev/min",
                "20 gpm | 20 gal/min",
                "3.5 m/lane | 3.5 m/lane",
                "-10.5 degC | -10.5 °C",
                "1e3 lb | 1000 lb",
                "1E+3 lb | 1000 lb",
                "1.50 lb | 1.5 lb",
                "0.5e-1 lb | 0.05 lb",
                "1e-9 L | 1e-9 L",
                "5 l | 5 L",
                "1 lb/1000 ft2 | 1 lb/1000 ft²"
            })
    void aTextIsPrintedInTheTableOwnWay(String text, String printed) {
        assertThat(Amounts.format(Amounts.parseAny(text))).isEqualTo(printed);
    }
}
