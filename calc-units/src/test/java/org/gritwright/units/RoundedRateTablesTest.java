package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.numbers.fraction.BigFraction;
import org.gritwright.units.quantity.LaneWidth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rounded values: printed ones with their source, and a rate table derived from the exact definitions (NIST Special
 * Publication 811, 2008, Appendix B), which no agency publishes as such.
 */
class RoundedRateTablesTest {

    /** NIST SP 811 (2008), B.5: 24 miles per US gallon are 9.8 L/100 km. */
    @Test
    void twentyFourMilesPerGallonAreTheLitersPerHundredKilometersThatSp811Prints() {
        assertThat(UnitPairs.between("gal/mi", "L/km").convert(1.0 / 24) * 100).isCloseTo(9.8, within(0.05));
    }

    /** A US Navy facilities design manual, appendix of SI conversion factors. */
    @ParameterizedTest
    @CsvSource({"ton/yd³, t/m³, 1.18655, 0.000005", "lb/ft³, kg/m³, 16.0185, 0.00005", "mi/h, km/h, 1.609344, 0"})
    void factorsOfADesignManual(String from, String to, double printed, double halfOfTheLastPlace) {
        assertThat(UnitPairs.between(from, to).convert(1)).isCloseTo(printed, within(halfOfTheLastPlace));
    }

    /** The width of a lane in meters. */
    private static double meters(String laneWidth) {
        return Amounts.si(LaneWidth.class, Amounts.parse(LaneWidth.class, laneWidth));
    }

    @ParameterizedTest
    @CsvSource({"12 ft/lane, 259.54", "3.5 m/lane, 248.36", "11 ft/lane, 237.91"})
    void twentyGramsPerSquareMeterAsPoundsPerLaneMile(String laneWidth, double expected) {
        double kilogramsPerLaneMeter = UnitPairs.between("g/m²", "kg/m²").convert(20) * meters(laneWidth);
        assertThat(UnitPairs.between("kg/lane-m", "lb/lane-mi").convert(kilogramsPerLaneMeter))
                .isCloseTo(expected, within(0.005));
    }

    @ParameterizedTest
    @CsvSource({"12 ft/lane, 7.7059", "3.5 m/lane, 8.0528", "3.75 m/lane, 7.5160"})
    void hundredPoundsPerLaneMileAsGramsPerSquareMeter(String laneWidth, double expected) {
        double kilogramsPerLaneMeter =
                UnitPairs.between("lb/lane-mi", "kg/lane-m").convert(100);
        assertThat(UnitPairs.between("kg/m²", "g/m²").convert(kilogramsPerLaneMeter / meters(laneWidth)))
                .isCloseTo(expected, within(0.00005));
    }

    @ParameterizedTest
    @CsvSource({"in, 5940", "ft, 495"})
    void gallonsPerAcreAreAWholeNumberTimesGallonsPerMinuteByMphAndWidth(String unitOfWidth, int expected) {
        BigFraction acresPerMinute = fraction("mi/h", "m/s")
                .multiply(fraction(unitOfWidth, "m"))
                .multiply(fraction("min", "s"))
                .divide(fraction("acre", "m²"));
        assertThat(acresPerMinute.reciprocal()).isEqualTo(BigFraction.of(expected));
    }

    private static BigFraction fraction(String from, String to) {
        return Ulps.fraction(UnitPairs.between(from, to).exactFactor());
    }

    @Test
    void applicationRatesInTheWholeNumbersOfIso11783Part11() {
        // ISO 11783-11 data dictionary: DDI 6 is mass per area in mg/m², DDI 31 volume per mass in mm³/kg.
        double kilogramsPerSquareMeter =
                UnitPairs.between("lb/lane-mi", "kg/lane-m").convert(250) / meters("12 ft/lane");
        assertThat(Math.round(UnitPairs.between("kg/m²", "g/m²").convert(kilogramsPerSquareMeter) * 1000))
                .isEqualTo(19_265);
        assertThat(Math.round(UnitPairs.between("gal/ton", "mL/kg").convert(10) * 1000))
                .isEqualTo(41_727);
    }
}
