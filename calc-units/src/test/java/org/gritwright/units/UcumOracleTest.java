package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import javax.measure.IncommensurableException;
import javax.measure.Unit;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.function.RationalNumber;

/**
 * The units of UCUM (Unified Code for Units of Measure), as implemented by systems-ucum, agree with ours as exact
 * rationals. UCUM has no acre of the international foot, so acres are missing here. Lanes, revolutions and pulses are
 * annotations without value in UCUM.
 */
class UcumOracleTest {
    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("", "1"),
            Map.entry("%", "%"),
            Map.entry("lb", "[lb_av]"),
            Map.entry("oz", "[oz_av]"),
            Map.entry("ton", "[ston_av]"),
            Map.entry("long ton", "[lton_av]"),
            Map.entry("kg", "kg"),
            Map.entry("g", "g"),
            Map.entry("t", "t"),
            Map.entry("in", "[in_i]"),
            Map.entry("ft", "[ft_i]"),
            Map.entry("yd", "[yd_i]"),
            Map.entry("mi", "[mi_i]"),
            Map.entry("m", "m"),
            Map.entry("mm", "mm"),
            Map.entry("cm", "cm"),
            Map.entry("km", "km"),
            Map.entry("s", "s"),
            Map.entry("min", "min"),
            Map.entry("h", "h"),
            Map.entry("in²", "[sin_i]"),
            Map.entry("ft²", "[sft_i]"),
            Map.entry("yd²", "[syd_i]"),
            Map.entry("cm²", "cm2"),
            Map.entry("m²", "m2"),
            Map.entry("ha", "har"),
            Map.entry("1000 ft²", "(1000.[sft_i])"),
            Map.entry("gal", "[gal_us]"),
            Map.entry("imp gal", "[gal_br]"),
            Map.entry("qt", "[qt_us]"),
            Map.entry("fl oz", "[foz_us]"),
            Map.entry("L", "L"),
            Map.entry("mL", "mL"),
            Map.entry("in³", "[cin_i]"),
            Map.entry("ft³", "[cft_i]"),
            Map.entry("yd³", "[cyd_i]"),
            Map.entry("m³", "m3"),
            Map.entry("psi", "[psi]"),
            Map.entry("kPa", "kPa"),
            Map.entry("bar", "bar"),
            Map.entry("MPa", "MPa"),
            Map.entry("rev", "{rev}"),
            Map.entry("pulse", "{pulse}"),
            Map.entry("lane", "{lane}"),
            Map.entry("lane-mi", "({lane}.[mi_i])"),
            Map.entry("lane-km", "({lane}.km)"),
            Map.entry("lane-m", "({lane}.m)"));

    static final List<OracleUnits.Pair> PAIRS = OracleUnits.known(NAMES, "/");

    @Test
    void everyPairThatUcumKnowsHasTheSameExactFactor() throws IncommensurableException {
        for (OracleUnits.Pair pair : PAIRS) {
            Number theirs = ucum(pair.from()).getConverterToAny(ucum(pair.to())).convert((Number) 1);
            assertThat(fraction(theirs))
                    .as("%s, in UCUM %s to %s", pair.ours(), pair.from(), pair.to())
                    .isEqualTo(Ulps.fraction(pair.ours().conversion().exactFactor()));
        }
    }

    @Test
    void comparesManyPairs() {
        assertThat(PAIRS).hasSizeGreaterThan(650);
    }

    private static Unit<?> ucum(String code) {
        return UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE).parse(code);
    }

    private static BigFraction fraction(Number number) {
        return number instanceof RationalNumber rational
                ? BigFraction.of(rational.getDividend(), rational.getDivisor())
                : BigFraction.of(number.longValue());
    }
}
