package org.gritwright.units.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.units.samples.Samples.assertRefused;
import static org.gritwright.units.samples.Samples.foreign;
import static org.gritwright.units.samples.Samples.inches;
import static org.gritwright.units.samples.Samples.pounds;
import static org.gritwright.units.samples.Samples.wrongKind;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.PulseCount;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("locale")
class RequireTest {
    @Test
    void returnsWhatPasses() {
        assertThat(Require.positive("mass", Mass.class, pounds(1))).isEqualTo(pounds(1));
        assertThat(Require.notNegative("mass", Mass.class, pounds(0))).isEqualTo(pounds(0));
        assertThat(Require.atLeast("mass", Mass.class, pounds(2), pounds(2))).isEqualTo(pounds(2));
        assertThat(Require.within("opening", Length.class, inches(24), inches(0), inches(24)))
                .isEqualTo(inches(24));
        assertThat(Require.text("name", "x")).isEqualTo("x");
        assertThat(Require.finite("ratio", 0.5)).isEqualTo(0.5);
        assertThat(Require.finite("mass", pounds(-1))).isEqualTo(pounds(-1));
    }

    @Test
    void namesFieldRuleAndValueWithUnit() {
        assertRefused("mass must be greater than 0: 0 lb", () -> Require.positive("mass", Mass.class, pounds(0)));
        assertRefused("mass must be 0 or more: -1 lb", () -> Require.notNegative("mass", Mass.class, pounds(-1)));
        assertRefused(
                "mass must be at least 2 lb: 1.5 lb",
                () -> Require.atLeast("mass", Mass.class, pounds(1.5), pounds(2)));
        assertRefused(
                "gate opening must be within 0 in to 24 in: 250 in",
                () -> Require.within("gate opening", Length.class, inches(250), inches(0), inches(24)));
        assertRefused(
                "gate opening must be within 0 in to 24 in: -1 in",
                () -> Require.within("gate opening", Length.class, inches(-1), inches(0), inches(24)));
        assertRefused("name must be a text that is not blank: \" \"", () -> Require.text("name", " "));
    }

    @Test
    void copiesAListAndStopsWhereItIsTooLong() {
        List<String> listed = new ArrayList<>(List.of("a", "b"));
        List<String> copy = Require.noMoreThan(2, "names", listed);
        listed.clear();

        assertThat(copy).containsExactly("a", "b");
        Iterable<String> endless = () -> Stream.generate(() -> "a").iterator();
        assertRefused("names must be at most 2: more", () -> Require.noMoreThan(2, "names", endless));
    }

    @Test
    void limitsHoldInEveryUnit() {
        Quantity<Length> limit = Amounts.of(609.6, SpreadingUnits.MILLIMETER);

        assertThat(Require.within("opening", Length.class, limit, inches(24), inches(24)))
                .isEqualTo(limit);
        assertThat(Require.atLeast("opening", Length.class, inches(24), limit)).isEqualTo(inches(24));
    }

    @Test
    void countsAreWholeNumbers() {
        Quantity<PulseCount> count = Amounts.of(360, SpreadingUnits.PULSE);

        assertThat(Require.wholeNumber("pulses", PulseCount.class, count)).isEqualTo(count);
        assertRefused(
                "pulses must be a whole number, 0 or more: 360.5 pulse",
                () -> Require.wholeNumber("pulses", PulseCount.class, Amounts.of(360.5, SpreadingUnits.PULSE)));
        assertRefused(
                "pulses must be a whole number, 0 or more: -1 pulse",
                () -> Require.wholeNumber("pulses", PulseCount.class, Amounts.of(-1, SpreadingUnits.PULSE)));
    }

    @Test
    void rawTypesDoNotGetAnotherKindIn() {
        assertRefused(
                "gate opening must be a finite length: 5 lb",
                () -> Require.positive("gate opening", Length.class, wrongKind(pounds(5))));
    }

    @Test
    void foreignQuantitiesDoNotGetWhatIsNotFiniteIn() {
        assertRefused(
                "mass must be a finite mass: NaN in \"lb\"",
                () -> Require.positive("mass", Mass.class, foreign(Double.NaN, SpreadingUnits.POUND)));
        assertRefused(
                "mass must be a finite mass: Infinity in \"lb\"",
                () -> Require.notNegative("mass", Mass.class, foreign(Double.POSITIVE_INFINITY, SpreadingUnits.POUND)));
        assertRefused(
                "mass must be finite: NaN", () -> Require.finite("mass", foreign(Double.NaN, SpreadingUnits.POUND)));
        assertRefused("ratio must be finite: -Infinity", () -> Require.finite("ratio", Double.NEGATIVE_INFINITY));
    }

    @Test
    void aValueTooLargeForSiUnitsIsRefused() {
        assertRefused(
                "mass must be a finite mass: 1e308 t",
                () -> Require.positive("mass", Mass.class, Amounts.of(1e308, SpreadingUnits.TONNE)));
    }

    @Test
    void aMissingQuantityIsNamed() {
        assertThatNullPointerException()
                .isThrownBy(() -> Require.positive("tare", Mass.class, null))
                .withMessage("tare");
        assertThatNullPointerException()
                .isThrownBy(() -> Require.text("name", null))
                .withMessage("name");
    }

    @Test
    void anythingElseIsRefusedWithItsValue() {
        Require.that(true, "catches", "three or more", 3);
        Require.that(true, "mass", "greater than the tare", () -> {
            throw new AssertionError("asked for though accepted");
        });

        assertRefused("catches must be three or more: 2", () -> Require.that(false, "catches", "three or more", 2));
        assertRefused("mass must be greater: 5 lb", () -> Require.that(false, "mass", "greater", pounds(5)));
        assertRefused(
                "limits must be in order: 2 and 1", () -> Require.that(false, "limits", "in order", () -> "2 and 1"));
    }

    @Test
    void numbersAreFiniteAndPositive() {
        assertThat(Require.positive("weight", 0.5)).isEqualTo(0.5);
        assertThat(Require.notNegative("rounding", 0.0)).isZero();
        assertRefused("weight must be greater than 0: 0.0", () -> Require.positive("weight", 0.0));
        assertRefused("weight must be finite: NaN", () -> Require.positive("weight", Double.NaN));
        assertRefused("rounding must be 0 or more: -1.0", () -> Require.notNegative("rounding", -1));
    }

    private record Pair(String first, String second) {}

    @Test
    void aMissingComponentOfARecordIsNamed() {
        Require.given(Pair.class, "a", "b");

        assertThatNullPointerException()
                .isThrownBy(() -> Require.given(Pair.class, "a", null))
                .withMessage("second");
    }

    @Test
    void primitivesAreNotCountedAmongTheComponents() {
        assertThatNullPointerException()
                .isThrownBy(() -> Require.given(Numbered.class, "a", null))
                .withMessage("second");
        assertThatNullPointerException()
                .isThrownBy(() -> Require.given(Numbered.class, null, "b"))
                .withMessage("first");
    }

    private record Numbered(int number, String first, double size, String second) {}

    @Test
    void aNumberThatPassesIsReturned() {
        assertThat(Require.notNegative("rounding", 0.25)).isEqualTo(0.25);
        assertThat(Require.probability("confidence", 0.95)).isEqualTo(0.95);
    }

    @Test
    void aProbabilityLeavesSomethingOpen() {
        for (double certain : new double[] {0, 1, -0.1, 1.1, Double.NaN}) {
            assertRefused(
                    "confidence must be greater than 0 and below 1: " + certain,
                    () -> Require.probability("confidence", certain));
        }
    }

    @Test
    void aShareMayBeNothingAndAFractionMayNot() {
        assertThat(Require.share("moisture", percent(0))).isEqualTo(percent(0));
        assertThat(Require.share("moisture", percent(99.9))).isEqualTo(percent(99.9));
        assertThat(Require.fraction("accuracy", percent(0.1))).isEqualTo(percent(0.1));
        assertRefused("accuracy must be greater than 0: 0 %", () -> Require.fraction("accuracy", percent(0)));
        assertRefused("moisture must be below 100 %: 100 %", () -> Require.share("moisture", percent(100)));
        assertRefused("accuracy must be below 100 %: 100 %", () -> Require.fraction("accuracy", percent(100)));
    }

    private static Quantity<Dimensionless> percent(double percent) {
        return Amounts.of(percent, SpreadingUnits.PERCENT);
    }

    @Test
    void aCountOfNothingIsACountAndARefusedOneSaysWhy() {
        assertThat(Require.wholeNumber("pulses", PulseCount.class, pulses(0))).isEqualTo(pulses(0));
        assertCode(RefusalCode.NEGATIVE, -1);
        assertCode(RefusalCode.NOT_WHOLE, 0.5);
    }

    private static void assertCode(RefusalCode code, double pulses) {
        assertThatExceptionOfType(InvalidInputException.class)
                .isThrownBy(() -> Require.wholeNumber("pulses", PulseCount.class, pulses(pulses)))
                .satisfies(refusal -> assertThat(refusal.code()).isEqualTo(code));
    }

    private static Quantity<PulseCount> pulses(double pulses) {
        return Amounts.of(pulses, SpreadingUnits.PULSE);
    }
}
