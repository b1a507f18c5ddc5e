package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class SinceTest {
    @Test
    void aDayAloneIsEarlierThanAnythingDoneOnIt() {
        assertThat(Since.of(DAY).isAfter(NOON.minusDays(1))).isTrue();
        assertThat(Since.of(DAY).isAfter(NOON)).isFalse();
        assertThat(Since.of(DAY).isAfter(NOON.plusDays(1))).isFalse();
    }

    @Test
    void aTimeIsLaterThanWhatWasDoneBefore() {
        assertThat(Since.of(NOON).isAfter(NOON.minusSeconds(1))).isTrue();
        assertThat(Since.of(NOON).isAfter(NOON)).isFalse();
        assertThat(Since.of(NOON).isAfter(NOON.plusSeconds(1))).isFalse();
    }

    @Test
    void readsWhatItWrites() {
        assertThat(Since.of(DAY)).hasToString("2026-10-19").isEqualTo(Since.parse("2026-10-19"));
        assertThat(Since.of(NOON))
                .hasToString("2026-10-19T12:00-04:00")
                .isEqualTo(Since.parse("2026-10-19T12:00-04:00"));
    }

    @Test
    void aTimeIsOfItsDay() throws ReflectiveOperationException {
        assertRefused(
                "day of a time must be its own: 2026-10-18", () -> new Since(DAY.minusDays(1), Optional.of(NOON)));
        assertNamesWhatIsMissing(Since.of(NOON));
    }
}
