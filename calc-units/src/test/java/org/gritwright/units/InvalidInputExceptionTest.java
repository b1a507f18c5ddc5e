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
}
