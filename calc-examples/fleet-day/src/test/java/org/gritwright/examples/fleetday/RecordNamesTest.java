package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordNamesTest {

    @ParameterizedTest
    @CsvSource({
        "T-07, T-07.json",
        "../../etc/passwd, _.._.._etc_passwd.json",
        "C:\\trucks\\7, C__trucks_7.json",
        ".hidden, _.hidden.json",
        "--help, _--help.json",
        "CON, _CON.json",
        "nul.txt, _nul.txt.json",
        "lpt1, _lpt1.json",
        "Füchsen 7, F_chsen_7.json",
        "<script>, _script_.json"
    })
    void namesAreSafe(String id, String name) {
        assertThat(new RecordNames().next(id)).isEqualTo(name);
    }

    @Test
    void namesAreAllDifferentWithoutLookingAtCase() {
        RecordNames names = new RecordNames();
        assertThat(names.next("T/1")).isEqualTo("T_1.json");
        assertThat(names.next("T 1")).isEqualTo("T_1-2.json");
        assertThat(names.next("t:1")).isEqualTo("t_1-3.json");
        assertThat(names.next("T_1-2")).isEqualTo("T_1-2-2.json");
    }

    @Test
    void longNamesAreCutAndStillDifferent() {
        RecordNames names = new RecordNames();
        String longId = "x".repeat(500);
        assertThat(names.next(longId)).isEqualTo("x".repeat(60) + ".json");
        assertThat(names.next(longId + "y")).isEqualTo("x".repeat(60) + "-2.json");
    }
}
