package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import com.ibm.icu.impl.units.ConversionRates;
import com.ibm.icu.impl.units.MeasureUnitImpl;
import com.ibm.icu.impl.units.UnitsConverter;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The exact unit converter of ICU4J (Unicode CLDR's unit data) agrees with our factors to the 34 digits it gives. ICU
 * has no long ton. Pulses and lanes go as its counted "item"; one "revolution" stands for ours.
 */
class IcuOracleTest {
    private static final int DIGITS = 34;

    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("", "part"),
            Map.entry("%", "percent"),
            Map.entry("lb", "pound"),
            Map.entry("oz", "ounce"),
            Map.entry("ton", "ton"),
            Map.entry("kg", "kilogram"),
            Map.entry("g", "gram"),
            Map.entry("t", "tonne"),
            Map.entry("in", "inch"),
            Map.entry("ft", "foot"),
            Map.entry("yd", "yard"),
            Map.entry("mi", "mile"),
            Map.entry("m", "meter"),
            Map.entry("mm", "millimeter"),
            Map.entry("cm", "centimeter"),
            Map.entry("km", "kilometer"),
            Map.entry("s", "second"),
            Map.entry("min", "minute"),
            Map.entry("h", "hour"),
            Map.entry("in²", "square-inch"),
            Map.entry("ft²", "square-foot"),
            Map.entry("yd²", "square-yard"),
            Map.entry("cm²", "square-centimeter"),
            Map.entry("m²", "square-meter"),
            Map.entry("acre", "acre"),
            Map.entry("ha", "hectare"),
            Map.entry("1000 ft²", "1000-square-foot"),
            Map.entry("gal", "gallon"),
            Map.entry("imp gal", "gallon-imperial"),
            Map.entry("qt", "quart"),
            Map.entry("fl oz", "fluid-ounce"),
            Map.entry("L", "liter"),
            Map.entry("mL", "milliliter"),
            Map.entry("in³", "cubic-inch"),
            Map.entry("ft³", "cubic-foot"),
            Map.entry("yd³", "cubic-yard"),
            Map.entry("m³", "cubic-meter"),
            Map.entry("psi", "pound-force-per-square-inch"),
            Map.entry("kPa", "kilopascal"),
            Map.entry("bar", "bar"),
            Map.entry("MPa", "megapascal"),
            Map.entry("rev", "revolution"),
            Map.entry("pulse", "item"),
            Map.entry("lane", "item"),
            Map.entry("lane-mi", "item-mile"),
            Map.entry("lane-km", "item-kilometer"),
            Map.entry("lane-m", "item-meter"));

    static final List<OracleUnits.Pair> PAIRS = OracleUnits.known(NAMES, "-per-");

    @Test
    void everyPairThatIcuKnowsHasTheSameFactor() {
        ConversionRates rates = new ConversionRates();
        for (OracleUnits.Pair pair : PAIRS) {
            BigDecimal theirs = new UnitsConverter(
                            MeasureUnitImpl.forIdentifier(pair.from()), MeasureUnitImpl.forIdentifier(pair.to()), rates)
                    .convert(BigDecimal.ONE);
            assertThat(theirs)
                    .as("%s, in ICU %s to %s", pair.ours(), pair.from(), pair.to())
                    .isEqualByComparingTo(pair.ours().conversion().exactFactor().toDecimal(DIGITS));
        }
    }

    @Test
    void comparesManyPairs() {
        assertThat(PAIRS).hasSizeGreaterThan(650);
    }
}
