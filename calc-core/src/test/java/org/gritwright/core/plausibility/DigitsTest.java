package org.gritwright.core.plausibility;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class DigitsTest {
    @Test
    void neighboringDigitsAreExchangedAndAPointStaysWhereItIs() {
        assertThat(Digits.swapped(281)).containsExactly(218.0, 821.0);
        assertThat(Digits.swapped(31.25)).containsExactly(13.25, 31.52);
        assertThat(Digits.swapped(77)).isEmpty();
    }

    @Test
    void noNumberBeginsWithANoughtThatNobodyWrites() {
        assertThat(Digits.swapped(203)).containsExactly(230.0);
        assertThat(Digits.withOneLess(105)).containsExactly(10.0, 15.0);
    }

    @Property
    void aSwapUndoesItself(@ForAll @IntRange(min = 100, max = 99_999) int tenths) {
        double number = tenths / 10.0;
        assertThat(Digits.swapped(number))
                .allMatch(other -> Digits.swapped(other).contains(number)
                        || other.toString().endsWith("0"));
    }

    @Property
    void aDigitLessAndOneMoreUndoEachOther(@ForAll @IntRange(min = 100, max = 99_999) int number) {
        assertThat(Digits.withOneLess(number))
                .allMatch(other -> Digits.withOneMore(other).contains((double) number));
    }
}
