package org.gritwright.units.check;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EditsTest {
    @ParameterizedTest
    @CsvSource({
        "'', '', 0",
        "lb, lb, 0",
        "'', lb, 2",
        "lb, '', 2",
        "lb, kb, 1",
        "lb, lbs, 1",
        "lbs, lb, 1",
        "lb, bl, 2",
        "kitten, sitting, 3",
        "sunday, saturday, 3"
    })
    void lettersAreChangedLeftOutOrPutIn(String a, String b, int edits) {
        assertThat(Edits.between(a, b)).isEqualTo(edits);
    }

    @Property
    void itIsAsFarBackAndAroundIsNeverShorter(
            @ForAll @CharRange(from = 'a', to = 'c') @StringLength(max = 6) String a,
            @ForAll @CharRange(from = 'a', to = 'c') @StringLength(max = 6) String b,
            @ForAll @CharRange(from = 'a', to = 'c') @StringLength(max = 6) String c) {
        assertThat(Edits.between(a, b))
                .isEqualTo(Edits.between(b, a))
                .isLessThanOrEqualTo(Edits.between(a, c) + Edits.between(c, b));
    }
}
