package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.units.samples.Samples.assertRefused;
import static org.gritwright.units.samples.Samples.foreign;
import static org.gritwright.units.samples.Samples.pounds;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("locale")
class RoundedTest {
    @ParameterizedTest
    @CsvSource({
        "27.23954, 4, 27.24 lb",
        "1234567, 4, 1234567 lb",
        "12303.4, 4, 12303 lb",
        "0.00012345, 3, 0.000123 lb",
        "2.50, 4, 2.5 lb",
        "100, 4, 100 lb",
        "-0.5, 1, -0.5 lb",
        "0, 4, 0 lb",
        "1.25, 2, 1.2 lb",
        "1.35, 2, 1.4 lb"
    })
    void textHasSignificantDigitsWithoutTrailingZeros(double number, int digits, String text) {
        assertThat(Rounded.text(pounds(number), digits)).isEqualTo(text);
    }

    @Test
    void aBareNumberHasNoSymbol() {
        assertThat(Rounded.text(Amounts.of(0.85, SpreadingUnits.ONE), 4)).isEqualTo("0.85");
    }

    @ParameterizedTest
    @CsvSource({
        "27.23954, 0.01, 27.24",
        "27.235, 0.01, 27.24",
        "27.2349, 0.01, 27.23",
        "-27.235, 0.01, -27.24",
        "5.3, 0.25, 5.25",
        "0.004, 0.01, 0",
        "7, 2, 8"
    })
    void toResolutionIsTheNearestMultipleWithHalvesAwayFromZero(double number, double step, double rounded) {
        assertThat(Rounded.toResolution(pounds(number), pounds(step))).isEqualTo(pounds(rounded));
    }

    @Test
    void refusesAResolutionThatIsNotPositiveOrInAnotherUnit() {
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 5 lb: 0 lb",
                () -> Rounded.toResolution(pounds(5), pounds(0)));
        assertRefused(
                "display resolution must be greater than 0 and in the unit of 5 lb: 0.1 kg",
                () -> Rounded.toResolution(pounds(5), Amounts.of(0.1, SpreadingUnits.KILOGRAM)));
    }

    @Test
    void refusesNoDigits() {
        assertRefused("significant digits must be 1 or more: 0", () -> Rounded.text(pounds(5), 0));
    }

    @Test
    void refusesWhatIsNotFinite() {
        assertRefused("value must be finite: NaN", () -> Rounded.text(foreign(Double.NaN, SpreadingUnits.POUND), 4));
        assertRefused(
                "value must be finite: Infinity",
                () -> Rounded.toResolution(foreign(Double.POSITIVE_INFINITY, SpreadingUnits.POUND), pounds(1)));
    }
}
