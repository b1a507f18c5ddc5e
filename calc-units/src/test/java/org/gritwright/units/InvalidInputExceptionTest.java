package org.gritwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** The one exception for input that can't be used. */
class InvalidInputExceptionTest {

    @Test
    void theMessageIsMadeOfFieldRuleAndValue() {
        InvalidInputException e = new InvalidInputException("gate opening", "within 0 in to 24 in", "250 in");
        assertThat(e).hasMessage("gate opening must be within 0 in to 24 in: 250 in");
        assertThat(e.field()).isEqualTo("gate opening");
        assertThat(e.accepted()).isEqualTo("within 0 in to 24 in");
        assertThat(e.value()).isEqualTo("250 in");
        assertThat(e).isInstanceOf(IllegalArgumentException.class).hasNoCause();
    }

    @Test
    void noPartMayBeMissing() {
        assertThatThrownBy(() -> new InvalidInputException(null, "finite", "1 lb"))
                .hasMessage("field");
        assertThatThrownBy(() -> new InvalidInputException("value", null, "1 lb"))
                .hasMessage("accepted");
        assertThatThrownBy(() -> new InvalidInputException("value", "finite", null))
                .hasMessage("value");
    }

    @Test
    void withoutACodeItIsTheGeneralOne() {
        InvalidInputException e = new InvalidInputException("gate opening", "above the closed position", "0 in");
        assertThat(e.code()).isEqualTo(RefusalCode.NOT_ACCEPTED);
        assertThat(e.arguments()).isEmpty();
    }

    @Test
    void aCodeAndItsArgumentsStandBesideTheEnglish() {
        InvalidInputException e = new InvalidInputException(
                RefusalCode.OUT_OF_RANGE, "gate opening", "within 1 in to 10 in", "12 in", "1 in", "10 in");
        assertThat(e).hasMessage("gate opening must be within 1 in to 10 in: 12 in");
        assertThat(e.code()).isEqualTo(RefusalCode.OUT_OF_RANGE);
        assertThat(e.arguments()).containsExactly("1 in", "10 in").isUnmodifiable();
    }

    @Test
    void wordsOfItsOwnChangeNothingButTheMessage() {
        InvalidInputException rule =
                new InvalidInputException(RefusalCode.INCONSISTENT, "gross", "at least its tare, 4 lb", "3 lb", "4 lb");
        InvalidInputException said = rule.withWords("gross 3 lb is below its tare 4 lb");
        assertThat(said).hasMessage("gross 3 lb is below its tare 4 lb");
        assertThat(said.words()).contains("gross 3 lb is below its tare 4 lb");
        assertThat(rule.words()).isEmpty();
        assertThat(said.code()).isEqualTo(RefusalCode.INCONSISTENT);
        assertThat(said.field()).isEqualTo("gross");
        assertThat(said.arguments()).containsExactly("4 lb");
        assertThat(said.withField("pail")).hasMessage("pail must be at least its tare, 4 lb: 3 lb");
    }

    @Test
    void anotherFieldKeepsAllElse() {
        InvalidInputException e = new InvalidInputException(
                        RefusalCode.TOO_LOW, "width", "at least 1 in", "0.5 in", "1 in")
                .withField("belt: width");
        assertThat(e).hasMessage("belt: width must be at least 1 in: 0.5 in");
        assertThat(e.code()).isEqualTo(RefusalCode.TOO_LOW);
        assertThat(e.arguments()).containsExactly("1 in");
    }

    @Test
    void anotherFieldKeepsTheCause() {
        InvalidInputException e = new InvalidInputException("width", "a number", "x");
        ArithmeticException cause = new ArithmeticException("no number");
        e.initCause(cause);
        assertThat(e.withField("belt: width")).hasCause(cause);
    }

    @Test
    void neitherCodeNorArgumentMayBeNull() {
        assertThatThrownBy(() -> new InvalidInputException((RefusalCode) null, "value", "finite", "1 lb"))
                .isInstanceOf(NullPointerException.class)
                .hasMessage("code");
        assertThatThrownBy(
                        () -> new InvalidInputException(RefusalCode.TOO_LOW, "value", "at least 1", "0", (String) null))
                .isInstanceOf(NullPointerException.class);
    }
}
