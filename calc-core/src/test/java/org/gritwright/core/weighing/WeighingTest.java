package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.foreign;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;

import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class WeighingTest {
    @Test
    void netIsGrossLessTareInDecimals() {
        assertThat(236.1 - 4.3).isNotEqualTo(231.8);
        assertThat(new Weighing("A", pounds(236.1), pounds(4.3)).net()).isEqualTo(pounds(231.8));
    }

    @Test
    void netIsInTheUnitOfTheGross() {
        Weighing weighing = new Weighing("A", pounds(100), Amounts.of(4.5359237, SpreadingUnits.KILOGRAM));

        assertThat(weighing.net()).isEqualTo(pounds(90));
    }

    @Test
    void anEmptyContainerWeighsItsTare() {
        assertThat(new Weighing("A", pounds(4), pounds(4)).net()).isEqualTo(pounds(0));
        assertThat(new Weighing("A", pounds(4), pounds(0)).net()).isEqualTo(pounds(4));
    }

    @Test
    void namesTheContainerInEveryError() {
        assertRefused(
                "A: gross 3.5 lb is below its tare 4 lb. Swapped?", () -> new Weighing("A", pounds(3.5), pounds(4)));
        assertRefused("tare of container A must be 0 or more: -4 lb", () -> new Weighing("A", pounds(3), pounds(-4)));
        assertRefused("gross of container A must be 0 or more: -3 lb", () -> new Weighing("A", pounds(-3), pounds(0)));
        assertRefused("container must be a text that is not blank: \"\"", () -> new Weighing("", pounds(3), pounds(0)));
        assertRefused(
                "gross of container A must be a finite mass: 3 in",
                () -> new Weighing("A", wrongKind(inches(3)), pounds(0)));
        assertRefused(
                "tare of container A must be a finite mass: NaN in \"lb\"",
                () -> new Weighing("A", pounds(3), foreign(Double.NaN, SpreadingUnits.POUND)));
    }

    @Test
    void theTareIsMandatory() {
        assertThatNullPointerException()
                .isThrownBy(() -> new Weighing("A", pounds(3), null))
                .withMessage("tare of container A");
    }
}
