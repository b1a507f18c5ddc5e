package org.gritwright.examples.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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

    @Test
    void aFileWithOtherColumnsOrARowThatCantBeReadIsRefusedWithItsLine(@TempDir Path folder) throws Exception {
        Path csv = folder.resolve("day.csv");
        for (String text : new String[] {
            "", "time,mode,shaft_pulse\n2026-11-24T11:00:00Z,0,65200\n", "2026-11-24T11:00:00Z,65200,0\n"
        }) {
            Files.writeString(csv, text);
            assertThatThrownBy(() -> TruckDayCsv.laid(csv))
                    .isInstanceOf(IOException.class)
                    .hasMessage(csv + ", line 1: must be time,shaft_pulse,mode");
        }
        for (String row :
                new String[] {"", "2026-11-24 11:00:00,65200,0", "2026-11-24T11:00:00Z,,0", "2026-11-24T11:00:00Z,1"}) {
            Files.writeString(csv, "time,shaft_pulse,mode\n2026-11-24T11:00:00Z,65200,0\n" + row + "\n");
            assertThatThrownBy(() -> TruckDayCsv.laid(csv))
                    .isInstanceOf(IOException.class)
                    .hasMessage(csv + ", line 3: must be like 2026-11-24T11:00:00Z,65200,0: " + row);
        }
        Files.writeString(csv, "\uFEFFtime,shaft_pulse,mode,road\n2026-11-24T11:00:00Z,65200,0,M 12\n");
        assertThat(TruckDayCsv.laid(csv)).contains("rows: 1 first;");
    }
}
