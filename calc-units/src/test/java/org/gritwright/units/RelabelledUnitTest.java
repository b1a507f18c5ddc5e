package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;

import javax.measure.Unit;
import org.gritwright.units.quantity.LiquidApplicationRate;
import org.junit.jupiter.api.Test;
import tech.units.indriya.format.SimpleUnitFormat;

/**
 * A label on Indriya's global format changes the hash code of equal units that are made afterwards. Units were once
 * looked up by hash code, and such a unit was not found.
 */
class RelabelledUnitTest {

    @Test
    @SuppressWarnings("unchecked") // the kind of a quotient of units is what we say it is
    void aUnitMadeAfterItsPartsWereRelabelledIsStillFound() {
        SimpleUnitFormat global = SimpleUnitFormat.getInstance();
        Unit<?> part = SpreadingUnits.US_GALLON.getSystemUnit();
        int before = SpreadingUnits.US_GALLON_PER_MILE.hashCode();
        global.label(part, "aaa");
        try {
            Unit<LiquidApplicationRate> made =
                    (Unit<LiquidApplicationRate>) SpreadingUnits.US_GALLON.divide(SpreadingUnits.MILE);
            assertThat(made).isEqualTo(SpreadingUnits.US_GALLON_PER_MILE);
            assertThat(made.hashCode()).isNotEqualTo(before);
            assertThat(Amounts.format(Amounts.of(40, made))).isEqualTo("40 gal/mi");
        } finally {
            global.removeLabel(part);
        }
    }
}
