package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.units.SpreadingUnits.KILOGRAM_PER_KILOMETER;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;

import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {

    @ParameterizedTest
    @CsvSource({
        "5.286 lb/rev, 4, 5.286 lb/rev",
        "5.24 lb/rev, 4, 5.240 lb/rev",
        "299.99999999999994 lb, 4, 300.0 lb",
        "9.99999 lb, 4, 10.00 lb",
        "12302.67 pulse/mi, 4, 12300 pulse/mi",
        "12302.67 pulse/mi, 5, 12303 pulse/mi",
        "0.00749881 lb/rev, 2, 0.0075 lb/rev",
        "-0.5 lb, 3, -0.500 lb",
        "0 lb, 4, 0 lb",
        "0.84, 3, 0.840",
        "1e20 lb, 3, 100000000000000000000 lb"
    })
    void significantDigits(String quantity, int digits, String text) {
        assertThat(Figures.text(Amounts.parseAny(quantity), digits)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
        "2 in, 50.8 mm",
        "50 mm, 1.97 in",
        "1 mi, 1.61 km",
        "100 lb, 45.4 kg",
        "2.609 kg/rev, 5.75 lb/rev",
        "22.22 pulse/lb, 49.0 pulse/kg",
        "8150 pulse/km, 13100 pulse/mi",
        "78 lb/ft³, 1250 kg/m³"
    })
    void theOtherUnitSystem(String quantity, String other) {
        assertThat(Figures.otherSystem(Amounts.parseAny(quantity), 3)).contains(other);
    }

    @ParameterizedTest
    @CsvSource({"96 s", "4 %", "90 pulse/rev"})
    void unitsThatAllSystemsShareHaveNoOther(String quantity) {
        assertThat(Figures.otherSystem(Amounts.parseAny(quantity), 3)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"1.0791, +1.08 %", "-5.728, -5.73 %", "0, 0.00 %", "-0.0001, 0.00 %", "312, +312.00 %"})
    void errorsHaveTheirSignAndTwoDecimals(double percent, String text) {
        assertThat(Figures.error(Amounts.of(percent, PERCENT))).isEqualTo(text);
    }

    @Test
    void printedErrorsHaveAMinusSign() {
        assertThat(Figures.errorForPrint(Amounts.of(-5.728, PERCENT))).isEqualTo("−5.73 %");
    }

    @ParameterizedTest
    @CsvSource({
        "0, below 0.1 %",
        "0.000999, below 0.1 %",
        "0.001, 0.10 %",
        "0.0345, 3.4 %",
        "0.05, 5.0 %",
        "0.5, 50 %",
        "0.964, 96 %",
        "0.9949, 99.5 %",
        "0.999, 99.9 %",
        "0.9991, above 99.9 %",
        "1, above 99.9 %"
    })
    void chancesInPercentWithTwoDigits(double chance, String text) {
        assertThat(Figures.chance(chance)).isEqualTo(text);
    }

    @Test
    void numbersOfATableHaveNoUnit() {
        assertThat(Figures.number(Amounts.of(300, POUND_PER_MILE), POUND_PER_MILE))
                .isEqualTo("300");
        assertThat(Figures.number(Amounts.of(300, POUND_PER_MILE), KILOGRAM_PER_KILOMETER))
                .isEqualTo("84.5548");
        assertThat(Figures.number(Amounts.of(0, POUND_PER_MILE), POUND_PER_MILE))
                .isEqualTo("0");
    }
}
