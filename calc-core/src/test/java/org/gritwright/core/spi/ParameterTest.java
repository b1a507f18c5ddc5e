package org.gritwright.core.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class ParameterTest {
    private static final Parameter<Length> PITCH = Parameter.length("pitch", inches(1), inches(6));
    private static final Parameter<Dimensionless> TEETH = Parameter.wholeNumber("teeth", 3, 60);

    @Test
    void tellsAFormWhatItNeeds() {
        assertThat(PITCH.name()).isEqualTo("pitch");
        assertThat(PITCH.kind()).isEqualTo(Length.class);
        assertThat(PITCH.lowest()).isEqualTo(inches(1));
        assertThat(PITCH.highest()).isEqualTo(inches(6));
        assertThat(PITCH.isWhole()).isFalse();
        assertThat(PITCH.standard()).isEmpty();
        assertThat(TEETH.isWhole()).isTrue();
        assertThat(TEETH.kind()).isEqualTo(Dimensionless.class);
        assertThat(PITCH.withDefault(inches(2)).standard()).contains(inches(2));
    }

    @Test
    void limitsAreAccepted() {
        assertThat(PITCH.check(inches(1))).isEqualTo(inches(1));
        assertThat(PITCH.check(inches(6))).isEqualTo(inches(6));
        assertThat(PITCH.check(Amounts.of(152.4, SpreadingUnits.MILLIMETER)))
                .isEqualTo(Amounts.of(152.4, SpreadingUnits.MILLIMETER));
    }

    @Test
    void refusesWhatIsOutOfLimits() {
        assertRefused("pitch must be within 1 in to 6 in: 0.5 in", () -> PITCH.check(inches(0.5)));
        assertRefused("pitch must be within 1 in to 6 in: 60 in", () -> PITCH.check(inches(60)));
        assertRefused("pitch must be a finite length: 2 lb", () -> PITCH.check(wrongKind(pounds(2))));
    }

    @Test
    void refusesAFractionOfATooth() {
        assertRefused(
                "teeth must be a whole number, 0 or more: 6.5", () -> TEETH.check(Amounts.of(6.5, SpreadingUnits.ONE)));
        assertRefused("teeth must be within 3 to 60: 2", () -> TEETH.check(Amounts.of(2, SpreadingUnits.ONE)));
    }

    @Test
    void refusesLimitsThatAreTheWrongWayRound() {
        assertRefused(
                "highest pitch must be at least 6 in: 1 in", () -> Parameter.length("pitch", inches(6), inches(1)));
        assertRefused("highest teeth must be at least 60: 3", () -> Parameter.wholeNumber("teeth", 60, 3));
    }

    @Test
    void refusesLimitsOfAnotherKind() {
        assertRefused(
                "highest load must be a finite mass: 6 in",
                () -> Parameter.of("load", Mass.class, pounds(1), wrongKind(inches(6))));
        assertRefused(
                "highest load must be a finite mass: 6 in",
                () -> Parameter.of("load", Mass.class, wrongKind(inches(6)), pounds(1)));
    }

    @Test
    void refusesADefaultThatItWouldNotAccept() {
        assertRefused("pitch must be within 1 in to 6 in: 7 in", () -> PITCH.withDefault(inches(7)));
    }

    @Test
    void aSingleOneIsNoList() {
        assertThat(PITCH.isList()).isFalse();
        assertThat(PITCH.fewest()).isEqualTo(1);
        assertThat(PITCH.most()).isEqualTo(1);
        assertThat(TEETH.isList()).isFalse();
    }

    @Test
    void aListKeepsNameKindAndLimits() {
        Parameter<Length> list = PITCH.asList(2, 10);

        assertThat(list.isList()).isTrue();
        assertThat(list.fewest()).isEqualTo(2);
        assertThat(list.most()).isEqualTo(10);
        assertThat(list.name()).isEqualTo("pitch");
        assertThat(list.kind()).isEqualTo(Length.class);
        assertThat(list.lowest()).isEqualTo(inches(1));
        assertThat(list.highest()).isEqualTo(inches(6));
        assertThat(TEETH.asList(1, 2).isWhole()).isTrue();
        assertRefused("pitch must be within 1 in to 6 in: 7 in", () -> list.check(inches(7)));
        assertRefused(
                "teeth must be a whole number, 0 or more: 6.5",
                () -> TEETH.asList(1, 2).check(Amounts.of(6.5, SpreadingUnits.ONE)));
    }

    @Test
    void aListHasNoDefault() {
        assertThat(PITCH.withDefault(inches(2)).asList(1, 3).standard()).isEmpty();
        assertRefused(
                "default of pitch must be left out for a list: 2 in",
                () -> PITCH.asList(1, 3).withDefault(inches(2)));
    }

    @Test
    void refusesListsThatAreNone() {
        assertRefused(
                "number of values of pitch must be from 1 or more to 2 or more: 0 to 3", () -> PITCH.asList(0, 3));
        assertRefused(
                "number of values of pitch must be from 1 or more to 2 or more: 1 to 1", () -> PITCH.asList(1, 1));
        assertRefused(
                "number of values of pitch must be from 1 or more to 2 or more: 4 to 3", () -> PITCH.asList(4, 3));
        assertThat(PITCH.asList(3, 3).fewest()).isEqualTo(3);
    }

    @Test
    void refusesABlankName() {
        assertRefused(
                "parameter name must be a text that is not blank: \"\"",
                () -> Parameter.length("", inches(1), inches(6)));
    }
}
