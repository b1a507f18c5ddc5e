package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class GateShapeTest {
    private static final OpenArea AREA = opening -> opening;

    @Test
    void anAdjustableOneTellsItsLimitsAndItsArea() {
        GateShape.Adjustable shape = GateShape.byOpening(inches(1), inches(2), AREA);

        assertThat(shape.scale()).isEqualTo(Setting.Scale.HEIGHT);
        assertThat(shape.lowest()).isEqualTo(Setting.height(inches(1)));
        assertThat(shape.highest()).isEqualTo(Setting.height(inches(2)));
        assertThat(shape.area()).isSameAs(AREA);
        assertThat(shape.closed()).isEmpty();
    }

    @Test
    void mayHaveOneSettingOnly() {
        assertThat(GateShape.byOpening(inches(2), inches(2), AREA).highest()).isEqualTo(Setting.height(inches(2)));
    }

    @Test
    void limitsAreInOrderAndNotNegative() {
        assertRefused(
                "lowest gate opening must be 0 or more: -1 in", () -> GateShape.byOpening(inches(-1), inches(2), AREA));
        assertRefused(
                "highest gate opening must be at least 3 in: 2 in",
                () -> GateShape.byOpening(inches(3), inches(2), AREA));
        assertRefused(
                "highest gate setting must be at least 3: 2",
                () -> GateShape.adjustable(Setting.mark(3), Setting.mark(2), AREA));
        assertRefused(
                "highest gate setting must be at least 3 %: 2 %",
                () -> GateShape.adjustable(Setting.percent(3), Setting.percent(2), AREA));
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
    void bothLimitsAreOnOneScaleInWhateverUnit() {
        GateShape.Adjustable shape = GateShape.byOpening(Amounts.of(10, MILLIMETER), inches(4), AREA);

        assertThat(shape.lowest()).isEqualTo(Setting.height(Amounts.of(10, MILLIMETER)));
        assertThat(shape.highest()).isEqualTo(Setting.height(inches(4)));
        assertRefused(
                "highest gate setting must be a percentage, as the lowest is, 8 %: 1",
                () -> GateShape.adjustable(Setting.percent(8), Setting.mark(1), AREA));
        assertRefused(
                "highest gate setting must be the number of a painted mark, as the lowest is, 0: 100 %",
                () -> GateShape.adjustable(Setting.mark(0), Setting.percent(100), AREA));
        assertRefused(
                "highest gate setting must be a height, as the lowest is, 1 in: nothing",
                () -> GateShape.adjustable(Setting.height(inches(1)), Setting.none(), AREA));
    }

    @Test
    void somethingCanBeSet() {
        assertRefused(
                "lowest gate setting must be a height, the number of a painted mark, or a percentage: nothing",
                () -> GateShape.adjustable(Setting.none(), Setting.none(), AREA));
    }

    @Test
    void aSettingBecomesTheNumberThatTheAreaTakes() {
        GateShape.Adjustable heights = GateShape.byOpening(inches(1), inches(4), AREA);
        GateShape.Adjustable marks = GateShape.adjustable(Setting.mark(1), Setting.mark(9), AREA);
        GateShape.Adjustable percentages = GateShape.adjustable(Setting.percent(8), Setting.percent(100), AREA);

        assertThat(heights.number(Setting.height(Amounts.of(50.8, MILLIMETER)))).isEqualTo(0.0508);
        assertThat(marks.number(Setting.mark(4))).isEqualTo(4);
        assertThat(percentages.number(Setting.percent(40))).isEqualTo(0.4);
        assertRefused(
                "gate setting must be a percentage from 8 % to 100 %: 40", () -> percentages.number(Setting.mark(40)));
        assertRefused("gate setting must be within 8 % to 100 %: 7 %", () -> percentages.number(Setting.percent(7)));
        assertRefused(
                "gate setting must be the number of a painted mark from 1 to 9: 40 %",
                () -> marks.number(Setting.percent(40)));
        assertRefused("gate setting must be a height from 1 in to 4 in: nothing", () -> heights.number(Setting.none()));
    }

    @Test
    void aNumberIsNeverOutsideTheLimitsNotEvenByRounding() {
        GateShape.Adjustable shape = GateShape.adjustable(Setting.mark(1), Setting.mark(9), AREA);

        assertThat(shape.number(Setting.mark(9 * (1 + 1e-13)))).isEqualTo(9);
        assertThat(shape.number(Setting.mark(1 - 1e-13))).isEqualTo(1);
        assertThat(shape.number(9 * (1 + 1e-13))).isEqualTo(9);
        assertThat(shape.number(1 - 1e-13)).isEqualTo(1);
        assertRefused("gate setting must be within 1 to 9: 9.001", () -> shape.number(Setting.mark(9.001)));
        assertRefused("gate setting must be within 1 to 9: 0.999", () -> shape.number(0.999));
        assertRefused("gate setting must be within 1 to 9: NaN", () -> shape.number(Double.NaN));
    }

    @Test
    void saysWhatItIsSetBy() {
        assertThat(GateShape.adjustable(Setting.percent(8), Setting.percent(100), AREA))
                .hasToString("set by a percentage from 8 % to 100 %");
        assertThat(GateShape.byOpening(inches(0), inches(12), AREA).closedAt(inches(0.5)))
                .hasToString("set by a height from 0 in to 12 in, closed at 0.5 in");
        assertThat(GateShape.fixed(Amounts.of(0.02, SQUARE_METER))).hasToString("fixed at 0.02 m²");
        assertThat(GateShape.none()).hasToString("no gate");
    }

    @Test
    void anAreaIsGiven() {
        assertThatNullPointerException()
                .isThrownBy(() -> GateShape.byOpening(inches(0), inches(2), null))
                .withMessage("area");
    }

    @Test
    void aClosedPositionIsWithinTheLimits() {
        GateShape.Adjustable open = GateShape.byOpening(inches(1), inches(4), AREA);
        GateShape.Adjustable closing = open.closedAt(inches(2));

        assertThat(closing.closed()).contains(Setting.height(inches(2)));
        assertThat(closing.lowest()).isEqualTo(Setting.height(inches(1)));
        assertThat(closing.highest()).isEqualTo(Setting.height(inches(4)));
        assertThat(closing.area()).isSameAs(AREA);
        assertThat(open.closed()).as("the shape it was made from").isEmpty();
        assertThat(open.closedAt(inches(1)).closed()).contains(Setting.height(inches(1)));
        assertThat(open.closedAt(inches(4)).closed()).contains(Setting.height(inches(4)));
        assertRefused("closed position must be within 1 in to 4 in: 0.5 in", () -> open.closedAt(inches(0.5)));
        assertRefused("closed position must be within 1 in to 4 in: 5 in", () -> open.closedAt(inches(5)));
        assertRefused("closed position must be a finite length: 2 lb", () -> open.closedAt(wrongKind(pounds(2))));
        assertRefused("closed position must be a height from 1 in to 4 in: 2", () -> open.closedAt(Setting.mark(2)));
        assertRefused(
                "closed position must be a percentage from 8 % to 100 %: 2 in",
                () -> GateShape.adjustable(Setting.percent(8), Setting.percent(100), AREA)
                        .closedAt(inches(2)));
    }

    @Test
    void aFixedOneLeavesAnArea() {
        assertThat(GateShape.fixed(Amounts.of(0.02, SQUARE_METER)))
                .isEqualTo(new GateShape.Fixed(Amounts.of(0.02, SQUARE_METER)));
        assertRefused("open area must be greater than 0: 0 m²", () -> GateShape.fixed(Amounts.of(0, SQUARE_METER)));
        assertRefused("open area must be greater than 0: -1 m²", () -> GateShape.fixed(Amounts.of(-1, SQUARE_METER)));
        assertRefused(
                "open area must be a finite area: NaN in \"m²\"",
                () -> GateShape.fixed(foreign(Double.NaN, SQUARE_METER)));
        assertRefused("open area must be a finite area: 2 lb", () -> GateShape.fixed(wrongKind(pounds(2))));
    }

    @Test
    void noGatesAreAllAlike() {
        assertThat(GateShape.none()).isEqualTo(new GateShape.None());
    }
}
