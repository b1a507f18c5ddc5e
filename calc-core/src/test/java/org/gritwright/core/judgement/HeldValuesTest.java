package org.gritwright.core.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Shipped.assertIsAValue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What a user keeps of this package is a value: equal, hashed, printed and serialized as such. */
@Tag("locale")
class HeldValuesTest {
    @Test
    void areValues() {
        assertIsAValue(Tolerance.percent(4), Tolerance.percent(4), Tolerance.percent(5));
        assertIsAValue(DecisionRule.guarded(5), DecisionRule.guarded(5), DecisionRule.SIMPLE);
        assertIsAValue(DecisionRule.SIMPLE, DecisionRule.SIMPLE, DecisionRule.guarded(2.5));
    }

    @Test
    void rulesArePrintedInOurSymbols() {
        assertThat(DecisionRule.guarded(5)).hasToString("guarded, risk 5 %");
        assertThat(DecisionRule.SIMPLE).hasToString("simple acceptance");
    }

    @Test
    @SuppressWarnings("NullOptional") // that is what is refused
    void nullIsRefusedByName() {
        assertThatNullPointerException()
                .isThrownBy(() -> new DecisionRule(null))
                .withMessage("risk");
    }
}
