package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextTableTest {
    private static final TextTable TABLE = new TextTable(List.of(4, 8));

    @Test
    void shortCellsStandInOneLine() {
        assertThat(TABLE.row(List.of("T-1", "ready"))).containsExactly("T-1   ready");
    }

    @Test
    void longCellsGoOnBelow() {
        assertThat(TABLE.row(List.of("T-1", "enter the value")))
                .containsExactly("T-1   enter", "      the", "      value");
    }

    @Test
    void wordsThatAreTooLongAreBroken() {
        assertThat(TABLE.row(List.of("abcdefghij", "0123456789 x")))
                .containsExactly("abcd  01234567", "efgh  89 x", "ij");
    }

    @Test
    void charactersOutsideTheBasicPlaneAreNotTornApart() {
        assertThat(TABLE.row(List.of("🚛🚛🚛🚛🚛", "x"))).containsExactly("🚛🚛🚛🚛  x", "🚛");
    }

    @Test
    void controlAndFormatCharactersAreShownAsQuestionMarks() {
        assertThat(TextTable.wrap("a\tb\u001b[2J\u202ec\u2028d", 40)).containsExactly("a?b?[2J?c?d");
    }
}
