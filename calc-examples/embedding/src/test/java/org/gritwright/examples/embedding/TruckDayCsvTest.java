package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The smallest embedding on an invented day, whose rows were made by hand. */
class TruckDayCsvTest {
    @Test
    void countsWhatCanBeCountedAndSaysWhatCannot() throws Exception {
        Path csv = Path.of(getClass().getResource("truck-day.csv").toURI());
        // 6 × 180 (the counter rolls over in between), 300 asked for by hand, 180, 3 × 180 and 2 × 170 pulse, of
        // 5.85/60 lb each:
        // 2440 pulse are 237.9 lb. The restart's 35, the unknown mode's 180 and the gap's 9000 can't be attributed.
        assertThat(TruckDayCsv.laid(csv))
                .isEqualTo(
                        "laid 237.9 lb ± 2.8 lb (95 %); rows: 12 laid, 2 standing, 1 blast, 1 unloaded, 1 turned empty,"
                                + " 1 first, 1 duplicate, 1 restarted, 1 gap, 1 unknown mode; 9215 pulse that nobody can attribute");
    }
}
