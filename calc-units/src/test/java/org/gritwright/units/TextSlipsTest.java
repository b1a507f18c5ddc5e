package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Mass;
import org.gritwright.units.quantity.ApplicationRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every slip in a text is refused by name, with the text and the position of the slip. */
@Tag("locale")
class TextSlipsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                // text|at|says
                "300,5 lb|4|no comma in a number",
                "1,000 lb|2|no comma in a number",
                "0x10 lb|2|no hexadecimal number",
                "-0X1p3 lb|3|no hexadecimal number",
                "5d lb|2|no letter \"d\" after a number",
                "5D|2|no letter \"D\" after a number",
                "5f lb|2|no letter \"f\" after a number",
                "5F|2|no letter \"F\" after a number",
                "NaN lb|1|NaN is not a number",
                "-NaN lb|1|NaN is not a number",
                "Infinity lb|1|infinity is not a number",
                "-Infinity lb|1|infinity is not a number",
                "+5 lb|1|no plus sign before a number",
                "−5 lb|1|an ordinary hyphen for a minus sign",
                "05 lb|2|no leading zero",
                "-007 lb|3|no leading zero",
                "09 lb|2|no leading zero",
                "00 lb|2|no leading zero",
                "5. lb|2|a digit after the point",
                "5.|2|a digit after the point",
                "5.5.5 lb|4|one point only",
                ".5 lb|1|a digit before the point",
                "-.5 lb|1|a digit before the point",
                "5e lb|2|digits after the exponent's \"e\"",
                "5E|2|digits after the exponent's \"E\"",
                "٣٠٠ lb|1|digits 0 to 9",
                "-٣ lb|1|digits 0 to 9",
                "３ lb|1|digits 0 to 9",
                "|1|a number first",
                "-|1|a number first",
                "lb|1|a number first",
                " 5 lb|1|a number first",
                "--5 lb|1|a number first",
                "5  lb|3|one space at most after the number",
                "5 \u00a0lb|3|one space at most after the number",
                "5 lb |5|no space at the end",
                "5 |2|no space at the end",
                "5 lb\t|5|no space at the end",
                "5 lb\u00a0|5|no space at the end",
                "5\u00a0lb|2|an ordinary space or none after the number",
                "5\tlb|2|an ordinary space or none after the number",
                "5\u202flb|2|an ordinary space or none after the number",
                "1 000 lb|2|no space within a number",
                "1 9 lb|2|no space within a number",
                "5|2|no unit; known: \"lb\", \"kg\", \"oz\", \"ton\", \"long ton\", \"g\", \"t\"",
                "5 LB|3|unknown unit; nearest: \"lb\"",
                "5 Kg|3|unknown unit; nearest: \"kg\"",
                "5KG|2|unknown unit; nearest: \"kg\"",
                "5 pounds|3|unknown unit; nearest: \"lb\" (pound))",
                "5 bucket|3|unknown unit; known: \"lb\", \"kg\", \"oz\", \"ton\", \"long ton\", \"g\", \"t\")",
                "5 lb/mi/h|3|unknown unit; known:",
                "5 tons|3|unknown unit; nearest: \"ton\"",
                "5 :|3|unknown unit; known:",
                "5 /|3|unknown unit; known:",
                "5 lb/mi|3|\"lb/mi\" is a unit of application rate",
                "5 ft|3|\"ft\" is a unit of length",
                "5 mph|3|\"mph\" is a unit of speed",
                "5%|2|\"%\" is a unit of ratio",
            })
    void aSlipInAMassIsNamed(String text, int at, String says) {
        String given = text == null ? "" : text;
        assertThatThrownBy(() -> Amounts.parse(Mass.class, given))
                .isInstanceOfSatisfying(InvalidInputException.class, e -> {
                    assertThat(e.field()).isEqualTo("mass");
                    assertThat(e.accepted())
                            .startsWith("a number and a unit of mass (at character " + at + ": ")
                            .contains(says);
                    assertThat(e.value()).startsWith("\"").endsWith("\"");
                });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1e309 lb|",
                "-1e309 lb|",
                "1e99999999999 lb|",
                "1e-400 lb|",
                "-1e-324 lb|",
                "0.1e-9999999999 lb|",
                "9e-999 lb|"
            })
    void aNumberOutsideTheRangeOfADoubleIsRefusedAndNotRounded(String text) {
        assertThatThrownBy(() -> Amounts.parse(Mass.class, text))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("mass must be within the range of a double, about 5e-324 to 1.8e308: \"" + text + "\"");
    }

    @Test
    void aZeroWithAnyExponentIsNoUnderflow() {
        assertThat(Amounts.parse(Mass.class, "0e9 lb")).isEqualTo(Amounts.of(0, SpreadingUnits.POUND));
        assertThat(Amounts.parse(Mass.class, "0.000E-999 lb")).isEqualTo(Amounts.of(0, SpreadingUnits.POUND));
    }

    @Test
    void aNumberThatUnderflowsPartlyIsTheNearestSubnormal() {
        assertThat(Amounts.parse(Mass.class, "3e-324 lb"))
                .isEqualTo(Amounts.of(Double.MIN_VALUE, SpreadingUnits.POUND));
    }

    @Test
    void theWholeMessageQuotesTextPositionAndNearestSymbols() {
        assertThatThrownBy(() -> Amounts.parse(ApplicationRate.class, "260 lb/mil"))
                .hasMessage("application rate must be a number and a unit of application rate"
                        + " (at character 5: unknown unit; nearest: \"lb/mi\" (pound per mile)): \"260 lb/mil\"");
        assertThatThrownBy(() -> Amounts.parseAny("260 lb/lanemi"))
                .hasMessage(
                        "quantity must be a number and a unit"
                                + " (at character 5: unknown unit; nearest: \"lb/lane-mi\" (pound per lane-mile)): \"260 lb/lanemi\"");
    }

    @Test
    void aUnitLikeNoneIsOnlyCalledUnknown() {
        assertThatThrownBy(() -> Amounts.parseAny("5 furlongs per fortnight"))
                .hasMessage("quantity must be a number and a unit (at character 3: unknown unit):"
                        + " \"5 furlongs per fortnight\"");
    }

    @Test
    void theBareNumberOneIsNeverOffered() {
        assertThatThrownBy(() -> Amounts.parseAny("5 ones")).hasMessageContaining(": unknown unit)");
        assertThatThrownBy(() -> Amounts.parse(Dimensionless.class, "5 parts"))
                .hasMessageContaining(": unknown unit; known: \"%\")");
        assertThatThrownBy(() -> Amounts.parse(Dimensionless.class, "5 one"))
                .hasMessageContaining(": unknown unit; known: \"%\")");
    }

    @Test
    void whatCannotBeSeenIsQuotedAsItsCode() {
        assertThatThrownBy(() -> Amounts.parse(Mass.class, "5\u00a0lb")).hasMessageContaining("\"5\\u00a0lb\"");
        assertThatThrownBy(() -> Amounts.parse(Mass.class, "5 lb\u200b")).hasMessageContaining("\"5 lb\\u200b\"");
        assertThatThrownBy(() -> Amounts.parse(Mass.class, "5 l\u001bb")).hasMessageContaining("\"5 l\\u001bb\"");
        assertThatThrownBy(() -> Amounts.parse(Mass.class, "5 lb\n")).hasMessageContaining("\"5 lb\\u000a\"");
    }

    @Test
    void aLongTextIsQuotedInPart() {
        String text = "5 " + "x".repeat(1_000_000);
        assertThatThrownBy(() -> Amounts.parse(Mass.class, text))
                .hasMessageEndingWith(": \"5 " + "x".repeat(98) + "…\"");
        String hundred = "5 " + "x".repeat(98);
        assertThatThrownBy(() -> Amounts.parse(Mass.class, hundred)).hasMessageEndingWith(": \"" + hundred + "\"");
    }

    @Test
    void aKindOutsideTheTableIsRefused() {
        assertThatThrownBy(() -> Amounts.parse(Force.class, "5 lb"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("kind of quantity must be one of the symbol table: javax.measure.quantity.Force");
    }
}
