package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            since 2025-10-14T13:24-06:00, slot 1         | since 2025-10-14 13:24 (UTC−6), slot 1
            2025-10-14T13:24:05.250+05:30 to             | 2025-10-14 13:24:05 (UTC+5:30) to
            at 2025-10-14T13:24Z.                        | at 2025-10-14 13:24 (UTC).
            at 2025-10-14T13:24+00:00                    | at 2025-10-14 13:24 (UTC)
            on 2025-10-14, 13:24                         | on 2025-10-14, 13:24
            such as "2025-10-14T13:24-06:00"             | such as "2025-10-14T13:24-06:00"
            file day-2025-10-14T13:24-06:00.json         | file day-2025-10-14T13:24-06:00.json
            """)
    void aTimeIsWrittenForPeopleAndWhatSomebodyTypedIsLeft(String text, String expected) {
        assertThat(Words.times(text)).isEqualTo(expected);
    }
}
