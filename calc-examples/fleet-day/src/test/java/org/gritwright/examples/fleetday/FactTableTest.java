package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FactTableTest {

    private static FactTable with(String value) {
        FactTable table = new FactTable();
        FactSheet.of(table, "T-01").of("road salt", "2 in").put("caught", value);
        return table;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            243 lb               | 243 lb
            243 lb               | 243.0000000001 lb
            243 lb               | 3888 oz
            0 %                  | 0.00000000009 %
            within-tolerance     | within-tolerance
            2026-10-19           | 2026-10-19
            """)
    void alike(String expected, String actual) {
        assertThat(with(expected).differencesTo(with(actual))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            243 lb               | 243.000000001 lb
            243 lb               | 243 kg
            243 lb               | 243 lb/mi
            243 lb               | 243
            0 %                  | 0.0000000002 %
            1e-20 %              | 1.00000000001e-20 %
            within-tolerance     | outside-tolerance
            2026-10-19           | 2026-10-20
            """)
    void different(String expected, String actual) {
        assertThat(with(expected).differencesTo(with(actual)))
                .containsExactly("different: T-01, caught, road salt, 2 in: expected " + expected + ", is " + actual);
    }

    @Test
    void missingAndAdditionalFactsAreDifferencesToo() {
        FactTable more = with("243 lb");
        FactSheet.of(more, "T-01").part("road speed").number(2).put("error", "1 %");
        assertThat(more.differencesTo(with("243 lb"))).containsExactly("missing: T-01, road speed/error, 2: 1 %");
        assertThat(with("243 lb").differencesTo(more)).containsExactly("additional: T-01, road speed/error, 2: 1 %");
    }

    @Test
    void aChangeReplacesAddsOrTakesAway() {
        FactTable changes = with("244 lb");
        FactSheet.of(changes, "T-01").put("refused", "no");
        FactTable changed = with("243 lb").changedBy(changes);
        assertThat(changed.values().values()).containsExactly("244 lb", "no");
        assertThat(changed.changedBy(with("")).values().values()).containsExactly("no");
    }

    @Test
    void aFactIsToldOnce() {
        FactTable table = with("243 lb");
        assertThatThrownBy(() ->
                        FactSheet.of(table, "T-01").of("road salt", "2 in").put("caught", "244 lb"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("two facts have one name: T-01, caught, road salt, 2 in: 243 lb and 244 lb");
    }

    @Test
    void aTableReadsBack() throws IOException {
        FactTable table = with("a text, with a comma");
        assertThat(table.text().lines().toList())
                .isEqualTo(List.of(
                        "truck,what,material,opening,at,index,value",
                        "T-01,caught,road salt,2 in,,,\"a text, with a comma\""));
        assertThat(FactTable.parse(table.text()).values()).isEqualTo(table.values());
    }
}
