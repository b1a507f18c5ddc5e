package org.gritwright.core.telemetry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.gritwright.core.telemetry.DictionaryValue.Entry;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the data dictionary of ISO 11783-11 as isobus.net exports it: identifiers, resolutions and ranges. */
class DictionaryValueTest {
    private static DictionaryValue of(Entry entry, int raw) {
        return new DictionaryValue(entry, raw, false);
    }

    @Test
    void valuesAreWholeNumbersOfTheirResolution() {
        // 20 mi/h are 8940.8 mm/s.
        assertThat(DictionaryValue.ofSpeed(Amounts.of(20, SpreadingUnits.MILE_PER_HOUR)))
                .isEqualTo(of(Entry.SPEED, 8941));
        assertThat(DictionaryValue.ofShaftSpeed(Amounts.of(30, SpreadingUnits.REVOLUTION_PER_MINUTE)))
                .isEqualTo(of(Entry.REVOLUTIONS_PER_TIME, 300_000));
        // 40 gal/mi are 94.0858 mL/m.
        assertThat(DictionaryValue.ofLiquidRate(Amounts.of(40, SpreadingUnits.US_GALLON_PER_MILE)))
                .isEqualTo(of(Entry.VOLUME_PER_DISTANCE, 94_086));
        assertThat(DictionaryValue.ofRate(Amounts.of(20, SpreadingUnits.GRAM_PER_SQUARE_METER)))
                .isEqualTo(of(Entry.MASS_PER_AREA, 20_000));
        assertThat(DictionaryValue.ofMass(Amounts.of(1234.5678, SpreadingUnits.KILOGRAM)))
                .containsExactly(of(Entry.TOTAL_GRAMS, 1_234_568), of(Entry.TOTAL_KILOGRAMS, 1235));
        assertThat(DictionaryValue.ofVolume(Amounts.of(12.3456, SpreadingUnits.LITER)))
                .containsExactly(of(Entry.TOTAL_MILLILITERS, 12_346), of(Entry.TOTAL_LITERS, 12));
        assertThat(DictionaryValue.ofArea(Amounts.of(7.4, SpreadingUnits.SQUARE_METER)))
                .isEqualTo(of(Entry.TOTAL_AREA, 7));
        assertThat(DictionaryValue.ofTime(Entry.EFFECTIVE_TIME, Amounts.of(1, SpreadingUnits.HOUR)))
                .isEqualTo(of(Entry.EFFECTIVE_TIME, 3600));
        assertThat(of(Entry.VOLUME_PER_DISTANCE, 94_086).value()).isEqualByComparingTo("94.086");
        assertThat(Entry.TOTAL_GRAMS.identifier()).isEqualTo(352);
    }

    /** From the export: identifier, and what a raw 1 000 000 stands for in its unit; and that only two may be negative. */
    @ParameterizedTest
    @CsvSource({
        "MASS_PER_AREA, 7, 1000000",
        "TOTAL_LITERS, 80, 1000000",
        "TOTAL_KILOGRAMS, 81, 1000000",
        "TOTAL_AREA, 116, 1000000",
        "EFFECTIVE_DISTANCE, 117, 1000000",
        "INEFFECTIVE_DISTANCE, 118, 1000000",
        "EFFECTIVE_TIME, 119, 1000000",
        "INEFFECTIVE_TIME, 120, 1000000",
        "TOTAL_MILLILITERS, 351, 1000000",
        "TOTAL_GRAMS, 352, 1000000",
        "REVOLUTIONS_PER_TIME, 390, 100",
        "SPEED, 397, 1000000",
        "TOTAL_DISTANCE, 597, 1000000",
        "VOLUME_PER_DISTANCE, 634, 1000"
    })
    void entriesAreThoseOfTheDictionary(Entry entry, int identifier, String stands) {
        assertThat(entry.identifier()).isEqualTo(identifier);
        assertThat(of(entry, 1_000_000).value()).isEqualByComparingTo(stands);
        assertThat(entry.of(-2e15).raw())
                .isEqualTo(entry == Entry.SPEED || entry == Entry.REVOLUTIONS_PER_TIME ? Integer.MIN_VALUE : 0);
        assertThat(entry.of(2e15)).isEqualTo(new DictionaryValue(entry, Integer.MAX_VALUE, true));
    }

    /** A signed number of 32 bits in mm ends at 2147.48 km, which a truck passes in a season. */
    @Test
    void whatIsBeyondTheRangeIsAtItsEndAndSaysSo() {
        assertThat(DictionaryValue.ofDistance(
                        Entry.EFFECTIVE_DISTANCE, Amounts.of(2147.483647, SpreadingUnits.KILOMETER)))
                .isEqualTo(of(Entry.EFFECTIVE_DISTANCE, Integer.MAX_VALUE));
        assertThat(DictionaryValue.ofDistance(Entry.EFFECTIVE_DISTANCE, Amounts.of(2147.49, SpreadingUnits.KILOMETER)))
                .isEqualTo(new DictionaryValue(Entry.EFFECTIVE_DISTANCE, Integer.MAX_VALUE, true));
        assertThat(DictionaryValue.ofSpeed(Amounts.of(-1, SpreadingUnits.METER_PER_SECOND)))
                .isEqualTo(of(Entry.SPEED, -1000));
        assertThat(DictionaryValue.ofArea(Amounts.of(-1, SpreadingUnits.SQUARE_METER)))
                .isEqualTo(new DictionaryValue(Entry.TOTAL_AREA, 0, true));
    }

    @Test
    void aNumberBelowTheEntrysRangeIsNone() {
        assertThat(new DictionaryValue(Entry.SPEED, Integer.MIN_VALUE, false).raw())
                .isEqualTo(Integer.MIN_VALUE);
        assertThat(new DictionaryValue(Entry.TOTAL_GRAMS, 0, false).raw()).isZero();
        assertThatThrownBy(() -> new DictionaryValue(Entry.TOTAL_GRAMS, -1, false))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("raw value of entry 352 must be 0 or more: -1");
    }

    @Test
    void anEntryIsOfItsKind() {
        assertThatThrownBy(() -> DictionaryValue.ofDistance(Entry.SPEED, Amounts.of(1, SpreadingUnits.METER)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("entry must be one of [EFFECTIVE_DISTANCE, INEFFECTIVE_DISTANCE, TOTAL_DISTANCE]: SPEED");
        assertThatThrownBy(() -> DictionaryValue.ofTime(Entry.SPEED, Amounts.of(1, SpreadingUnits.SECOND)))
                .isInstanceOf(InvalidInputException.class);
    }
}
