package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is offered instead of an unknown unit has the size of what was written. "8 gal/tonne" once led to gal/ton, which
 * is 10 % less liquid on the same salt, and "300 kg/mi" to kg/m.
 */
@Tag("locale")
class NearestSymbolsTest {

    /** Units that can stand above or below a line, by what the table calls them, and their exact sizes. */
    private static final Map<String, ExactFactor> SIZES = sizes();

    private static Map<String, ExactFactor> sizes() {
        Map<String, ExactFactor> sizes = new TreeMap<>();
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            FactorPair factors = SymbolTable.entryOf(row.unit()).factors();
            if (factors != null && !row.symbol().isEmpty() && !row.symbol().contains("/")) {
                List<String> calls = new ArrayList<>(row.spellings());
                calls.add(row.symbol());
                calls.add(row.name());
                calls.forEach(called -> sizes.put(called, factors.toSystem()));
            }
        }
        return sizes;
    }

    private static List<String> offered(String spelling) {
        if (SymbolTable.bySpelling(spelling) != null) {
            return List.of();
        }
        NearestSymbols.Hint hint = NearestSymbols.instead(null, spelling);
        assertThat(hint.code()).isEqualTo(RefusalCode.UNKNOWN_UNIT);
        assertThat(hint.arguments()).first().isEqualTo(spelling);
        return hint.arguments().subList(1, hint.arguments().size());
    }

    private static ExactFactor size(String symbol) {
        return SymbolTable.bySpelling(symbol).factors().toSystem();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // In another case, number or form, or written out.
                "LB|lb",
                "Kg|kg",
                "KM|km",
                "MPH|mi/h",
                "Gal/Ton|gal/ton",
                "pounds|lb",
                "tons|ton",
                "short tons|ton",
                "metric tons|t",
                "tonnes|t",
                "feet|ft",
                "inches|in",
                "gallons|gal",
                "UK gal|imp gal",
                "liters|L",
                "fluid ounces|fl oz",
                "mi/hr|mi/h",
                "kilometers/hour|km/h",
                "pounds per mile|lb/mi",
                "L/metric ton|L/t",
                "lb/lanemi|lb/lane-mi",
                "lb/lane/mi|lb/lane-mi",
                "lbs/lane mile|lb/lane-mi",
                "gal/lane-miles|gal/lane-mi",
                "m^2|m²",
                "sq. ft|ft²",
                "square meters|m²",
                "cu in/rev|in³/rev",
                "cuft|ft³",
                "sq-ft|ft²",
                "cu inches/rev|in³/rev",
                "lb/1000sqft|lb/1000 ft²",
                "lb/ac|lb/acre",
                "PSI|psi",
                "bars|bar",
                "Kpa|kPa",
                "pulses/gal|pulse/gal",
                "cubic inches/rev|in³/rev",
                // A slip of the pen in one part; the other is kept.
                "ld/mi|lb/mi",
                "gal/minn|gal/min",
                "lb/lane-mil|lb/lane-mi",
                "pulsee/rev|pulse/rev",
                "oz/sq yrd|oz/yd²",
                // Either ton.
                "gal/tone|gal/ton gal/t",
                "gal/tonn|gal/ton gal/t",
                "gal/T|gal/ton gal/t",
            })
    void whatMayHaveBeenMeantIsOffered(String spelling, String symbols) {
        List<String> wanted = Arrays.asList(symbols.split(" (?=[^ ]*/t)", -1));
        assertThat(SymbolTable.bySpelling(spelling) == null ? offered(spelling) : wanted)
                .isEqualTo(wanted);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kg/mi",
                "lb/km",
                "L/mi",
                "yd/mi",
                "lane-ft",
                "lb/lane-ft",
                "lb/1000 yd²",
                "lb/100 ft²",
                "gal/100 sq ft",
                "sq mi",
                "mi2",
                "km²",
                "mm3",
                "nmi",
                "knots",
                "pt",
                "pints",
                "st",
                "gr",
                "lbf",
                "ozt",
                "imp qt",
                "imp fl oz",
                "mg",
                "Mg",
                "ML",
                "KL",
                "dm",
                "µm",
                "ms",
                "Hz",
                "Pa",
                "hPa",
                "mbar",
                "psia",
                "psf",
                "ksi",
                "atm",
                "days",
                "kg/s²",
                "ton/long",
                "bucket",
                "lb/mi/h",
                "x"
            })
    void aUnitThatTheTableDoesNotHaveLeadsToNoOther(String spelling) {
        assertThat(SymbolTable.bySpelling(spelling)).isNull();
        assertThat(offered(spelling)).isEmpty();
    }

    @Provide
    Arbitrary<String> unit() {
        return Arbitraries.of(SIZES.keySet());
    }

    @Provide
    Arbitrary<String> word() {
        return Arbitraries.strings()
                .withChars("abcdefghiklmnopqrstuyzTLM23² -")
                .ofMinLength(1)
                .ofMaxLength(8);
    }

    @Property(tries = 3000)
    void twoUnitsInWhateverFormLeadOnlyToWhatHasTheirQuotientsSize(
            @ForAll("unit") String above,
            @ForAll("unit") String below,
            @ForAll boolean capitals,
            @ForAll boolean plural) {
        Assume.that(!(capitals && below.equals("t"))); // "T" may be either ton
        ExactFactor size = SIZES.get(above).dividedBy(SIZES.get(below));
        String written = (above + (plural ? "s" : "")) + "/" + below;
        for (String symbol : offered(capitals ? capitals(written) : written)) {
            assertThat(size(symbol)).as(written + " led to " + symbol).isEqualTo(size);
        }
    }

    /** Without those capitals that make another metric unit, such as the megagram. */
    private static String capitals(String text) {
        return text.substring(0, text.length() - 1)
                + text.substring(text.length() - 1).toUpperCase(Locale.ROOT);
    }

    @Property(tries = 3000)
    void aUnitAboveOrBelowTheLineIsKeptBesideAnyWord(
            @ForAll("unit") String unit, @ForAll("word") String word, @ForAll boolean first) {
        for (String symbol : offered(first ? unit + "/" + word : word + "/" + unit)) {
            List<String> parts = List.of(symbol.split("/", -1));
            assertThat(parts).hasSize(2);
            String kept = parts.get(first ? 0 : 1);
            assertThat(SIZES.get(kept)).as(unit + " became " + kept).isEqualTo(SIZES.get(unit));
        }
    }

    /** From "milute" it is one letter to the minute and two to the mile. */
    @Test
    void whatDiffersInFewerLettersComesFirst() {
        assertThat(offered("lb/milute")).containsExactly("lb/min", "lb/mi");
    }

    @Test
    void aTextOfMoreThanSixtyCharactersIsNoUnit() {
        String longest = "lb" + " ".repeat(53) + "/mile";
        assertThat(longest).hasSize(60);
        assertThat(offered(longest)).containsExactly("lb/mi");
        assertThat(offered(" " + longest)).isEmpty();
    }

    @Test
    void whatIsOfferedIsCalledByItsName() {
        assertThat(catchThrowableOfType(
                        InvalidInputException.class, () -> Amounts.parse(PrewetRate.class, "8 gal/tone")))
                .hasMessage(
                        "prewet rate must be a number and a unit of prewet rate (at character 3: unknown unit; nearest:"
                                + " \"gal/ton\" (US gallon per short ton), \"gal/t\" (US gallon per tonne)): \"8 gal/tone\"");
    }

    @Test
    void withNothingNearTheKnownUnitsOfTheKindAreListed() {
        assertThat(catchThrowableOfType(
                        InvalidInputException.class, () -> Amounts.parse(ApplicationRate.class, "85 kg/mi")))
                .hasMessageContaining("unknown unit; known: \"lb/mi\", \"kg/km\", \"kg/m\", ");
    }

    @Test
    void theTonneReadsAsItselfWhereverItStands() {
        for (UnitSymbol<?> row : UnitSymbol.all()) {
            String written = row.symbol().replaceAll("\\bt\\b", "tonne");
            assertThat(Amounts.parseAny("8" + written).getUnit()).as(written).isSameAs(row.unit());
        }
    }
}
