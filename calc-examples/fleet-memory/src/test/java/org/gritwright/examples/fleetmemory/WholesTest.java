package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WholesTest {
    private static final Pattern MARKED = Pattern.compile("<span class=\"whole\">([^<]*)</span>");

    private static List<String> marked(String words) {
        return MARKED.matcher(Wholes.kept("<body>" + words + "</body>"))
                .results()
                .map((MatchResult one) -> one.group(1))
                .toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            caught on 2026-01-16, 25 days ago             | 2026-01-16
            since 2025-10-14 13:24 (UTC−6), slot 1       | 2025-10-14 13:24 (UTC−6)
            Truck C-12: conveyor changed                  | C-12
            trucks T-07, Z-99                             | T-07; Z-99
            Season 2024/25                                | 2024/25
            over-reports by 7.3 ± 0.7 % (95 %), C-03      | 7.3 ± 0.7 %; 95 %; C-03
            error −1.3 % ± 1.0 %, nothing changed         | −1.3 %; ± 1.0 %
            Tolerance ±4 %.                               | ±4 %
            means 300 lb/mi on the road                   | 300 lb/mi
            5.117 ± 0.040 lb/rev                          | 5.117 ± 0.040 lb/rev
            holds 12,035.5 ton                            | 12,035.5 ton
            road salt at 2 in: 4.93 lb/rev                | 2 in; 4.93 lb/rev
            """)
    void datesIdsAndNumbersWithTheirUnitsStayTogether(String words, String expected) {
        assertThat(String.join("; ", marked(words))).isEqualTo(expected);
    }

    @Test
    void wordsAreNot() {
        assertThat(
                        marked(
                                "over-report, lb/rev, 25 days, 3 insides, and/or, EWMA 0.23 (±0.64), 5-pound-pails-of-salt-2026"))
                .isEmpty();
    }

    @Test
    void nothingButTheMarksIsAdded() {
        String page = "<head><title>C-12</title></head><body><a href=\"truck-c-12.html\">C-12</a> is 7.1 % off"
                + "<svg aria-label=\"C-12\"><text>C-12</text></svg>&#39;C-12&#39;</body>";
        String kept = Wholes.kept(page);
        assertThat(Fixtures.unmarked(kept)).isEqualTo(page);
        assertThat(MARKED.matcher(kept).results()).hasSize(3);
    }
}
