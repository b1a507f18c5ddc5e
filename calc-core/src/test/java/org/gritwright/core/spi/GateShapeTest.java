package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;

import org.junit.jupiter.api.Test;

class GateShapeTest {
    private static final OpenArea AREA = openingMetres -> openingMetres;

    @Test
    void mayHaveOneSettingOnly() {
        assertThat(GateShape.byOpening(inches(2), inches(2), AREA).highest()).isEqualTo(inches(2));
    }

    @Test
    void limitsAreInOrderAndNotNegative() {
        assertRefused(
                "lowest gate opening must be 0 or more: -1 in", () -> GateShape.byOpening(inches(-1), inches(2), AREA));
        assertRefused(
                "highest gate opening must be at least 3 in: 2 in",
                () -> GateShape.byOpening(inches(3), inches(2), AREA));
    }

    @Test
    void anAreaIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> GateShape.byOpening(inches(0), inches(2), null))
                .withMessage("area");
    }
}
