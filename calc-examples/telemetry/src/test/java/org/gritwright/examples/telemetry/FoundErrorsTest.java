package org.gritwright.examples.telemetry;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Onset;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class FoundErrorsTest {
    @Test
    void anErrorCameWhenItWasFoundOrWasThereSinceItWasLastRightOrGrew() {
        Instant left = Instant.parse("2026-10-19T15:00:00Z");
        Instant found = Instant.parse("2027-01-12T15:00:00Z");
        AsFound error =
                new AsFound("1", Setting.none(), left, found, Measured.once(Amounts.of(5, SpreadingUnits.PERCENT)));

        assertThat(FoundErrors.AS_FOUND.onset(error)).isEqualTo(new Onset.AtOnce(found));
        assertThat(FoundErrors.AS_LEFT.onset(error)).isEqualTo(new Onset.AtOnce(left));
        assertThat(FoundErrors.WITH_TIME.onset(error)).isEqualTo(Onset.Gradually.WITH_TIME);
        assertThat(FoundErrors.WITH_TURNS.onset(error)).isEqualTo(Onset.Gradually.WITH_TURNS);
        assertThat(FoundErrors.WITH_AMOUNT.onset(error)).isEqualTo(Onset.Gradually.WITH_AMOUNT);
    }
}
