package org.gritwright.units.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.units.SpreadingUnits.*;

import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.junit.jupiter.api.Test;

/**
 * A ton is not a tonne, and there are two gallons. The factors follow from NIST Special Publication 811 (2008), Appendix B, and
 * NIST Handbook 44, Appendix C; the whole numbers are what a display or a data field would show.
 */
class TonsAndGallonsTest {

    private static double litersPerTonne(double value, Unit<PrewetRate> unit) {
        return Amounts.in(Amounts.of(value, unit), LITER_PER_TONNE);
    }

    @Test
    void aGallonPerShortTonIsATenthMoreThanAGallonPerTonne() {
        assertThat(litersPerTonne(1, US_GALLON_PER_SHORT_TON)).isCloseTo(4.1727, within(5e-5));
        assertThat(litersPerTonne(1, US_GALLON_PER_TONNE)).isCloseTo(3.785, within(5e-4));
        assertThat(litersPerTonne(1, US_GALLON_PER_LONG_TON)).isCloseTo(3.7256, within(5e-5));
        assertThat(litersPerTonne(1, US_GALLON_PER_SHORT_TON) / litersPerTonne(1, US_GALLON_PER_TONNE))
                .isCloseTo(1.10231, within(5e-6));
    }

    @Test
    void anImperialGallonIsAFifthMoreThanAUSGallon() {
        assertThat(litersPerTonne(1, IMPERIAL_GALLON_PER_SHORT_TON)).isCloseTo(5.0112, within(5e-5));
        assertThat(Amounts.in(Amounts.of(1, IMPERIAL_GALLON_PER_LANE_MILE), US_GALLON_PER_LANE_MILE))
                .isCloseTo(1.20095, within(5e-6));
        assertThat(Amounts.in(Amounts.of(1200, PULSE_PER_US_GALLON), PULSE_PER_IMPERIAL_GALLON))
                .isCloseTo(1441.14, within(5e-3));
    }

    /** ISO 11783-11 gives volume per mass (data dictionary identifiers 31 and 32) in mm³/kg, which is mL/t. */
    @Test
    void tenGallonsPerShortTonAreDataDictionaryValue41727() {
        assertThat(Math.round(1000 * litersPerTonne(10, US_GALLON_PER_SHORT_TON)))
                .isEqualTo(41_727);
        assertThat(Math.round(1000 * litersPerTonne(10, US_GALLON_PER_TONNE))).isEqualTo(37_854);
    }

    @Test
    void fromALaneRateToThePrewettingFlow() {
        Quantity<PrewetRate> prewet = Amounts.of(10, US_GALLON_PER_SHORT_TON);
        Quantity<ApplicationRate> rate =
                Rates.rateFromLaneRate(Amounts.of(300, POUND_PER_LANE_MILE), Amounts.of(1, LANE));
        var discharge = Rates.dischargeFromRate(rate, Amounts.of(25, MILE_PER_HOUR));

        assertThat(Amounts.in(
                        PrewetRates.liquidLaneRateFromDryLaneRate(Amounts.of(300, POUND_PER_LANE_MILE), prewet),
                        US_GALLON_PER_LANE_MILE))
                .isCloseTo(1.5, within(1e-14));
        assertThat(Amounts.in(discharge, POUND_PER_MINUTE)).isCloseTo(125, within(1e-12));
        assertThat(Amounts.in(PrewetRates.flowFromDischarge(discharge, prewet), US_GALLON_PER_MINUTE))
                .isCloseTo(0.625, within(1e-14));
    }

    @Test
    void aPumpsGallonIsTwoHundredThirtyOneCubicInches() {
        assertThat(Amounts.in(Amounts.of(1, US_GALLON_PER_REVOLUTION), CUBIC_INCH_PER_REVOLUTION))
                .isEqualTo(231);
        assertThat(Amounts.format(Amounts.parseAny("16.9332 cm³/rev"))).isEqualTo("16.9332 mL/rev");
    }
}
