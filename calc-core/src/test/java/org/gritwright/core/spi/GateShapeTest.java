package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_METRE;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class GateShapeTest {
    private static final OpenArea AREA = opening -> opening;

    @Test
    void anAdjustableOneTellsItsLimitsAndItsArea() {
        GateShape.Adjustable<Length> shape = GateShape.byOpening(inches(1), inches(2), AREA);

        assertThat(shape.kind()).isEqualTo(Length.class);
        assertThat(shape.lowest()).isEqualTo(inches(1));
        assertThat(shape.highest()).isEqualTo(inches(2));
        assertThat(shape.area()).isSameAs(AREA);
        assertThat(shape.closed()).isEmpty();
    }

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
        assertRefused(
                "highest gate opening must be at least 3: 2",
                () -> GateShape.adjustable(Dimensionless.class, Amounts.of(3, ONE), Amounts.of(2, ONE), AREA));
        assertRefused(
                "lowest gate opening must be a finite length: NaN in \"in\"",
                () -> GateShape.byOpening(foreign(Double.NaN, INCH), inches(2), AREA));
    }

    @Test
    void limitsAreOfTheKindThatTheGateIsSetBy() {
        assertRefused(
                "lowest gate opening must be a finite length: 1 lb",
                () -> GateShape.byOpening(wrongKind(pounds(1)), inches(2), AREA));
        assertRefused(
                "highest gate opening must be a finite length: 2",
                () -> GateShape.byOpening(inches(1), wrongKind(Amounts.of(2, ONE)), AREA));
    }

    @Test
    void aGateIsSetByALengthOrABareNumberAndNothingElse() {
        assertThat(GateShape.adjustable(Dimensionless.class, Amounts.of(0, ONE), Amounts.of(9, ONE), AREA)
                        .kind())
                .isEqualTo(Dimensionless.class);
        assertRefused(
                "what a gate is set by must be a length or a bare number: mass",
                () -> GateShape.adjustable(Mass.class, pounds(1), pounds(2), AREA));
    }

    @Test
    void anAreaIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> GateShape.byOpening(inches(0), inches(2), null))
                .withMessage("area");
    }

    @Test
    void aClosedPositionIsWithinTheLimits() {
        GateShape.Adjustable<Length> open = GateShape.byOpening(inches(1), inches(4), AREA);
        GateShape.Adjustable<Length> closing = open.closedAt(inches(2));

        assertThat(closing.closed()).contains(inches(2));
        assertThat(closing.lowest()).isEqualTo(inches(1));
        assertThat(closing.highest()).isEqualTo(inches(4));
        assertThat(closing.area()).isSameAs(AREA);
        assertThat(open.closed()).as("the shape it was made from").isEmpty();
        assertThat(open.closedAt(inches(1)).closed()).contains(inches(1));
        assertThat(open.closedAt(inches(4)).closed()).contains(inches(4));
        assertRefused("closed position must be within 1 in to 4 in: 0.5 in", () -> open.closedAt(inches(0.5)));
        assertRefused("closed position must be within 1 in to 4 in: 5 in", () -> open.closedAt(inches(5)));
        assertRefused("closed position must be a finite length: 2 lb", () -> open.closedAt(wrongKind(pounds(2))));
    }

    @Test
    void aFixedOneLeavesAnArea() {
        assertThat(GateShape.fixed(Amounts.of(0.02, SQUARE_METRE)))
                .isEqualTo(new GateShape.Fixed(Amounts.of(0.02, SQUARE_METRE)));
        assertRefused("open area must be greater than 0: 0 m²", () -> GateShape.fixed(Amounts.of(0, SQUARE_METRE)));
        assertRefused("open area must be greater than 0: -1 m²", () -> GateShape.fixed(Amounts.of(-1, SQUARE_METRE)));
        assertRefused(
                "open area must be a finite area: NaN in \"m²\"",
                () -> GateShape.fixed(foreign(Double.NaN, SQUARE_METRE)));
        assertRefused("open area must be a finite area: 2 lb", () -> GateShape.fixed(wrongKind(pounds(2))));
    }

    @Test
    void noGatesAreAllAlike() {
        assertThat(GateShape.none()).isEqualTo(new GateShape.None());
    }
}
