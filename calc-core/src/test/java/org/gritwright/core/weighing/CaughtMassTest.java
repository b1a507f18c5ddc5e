package org.gritwright.core.weighing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.SCALE;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;

import java.util.List;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class CaughtMassTest {
    @Test
    void isTheSumOverItsContainers() {
        CaughtMass caught = CaughtMass.of(
                SCALE,
                DAY,
                new Weighing("A", pounds(84.5), pounds(4)),
                new Weighing("B", pounds(85.1), pounds(4.1)),
                new Weighing("C", pounds(4), pounds(4)));

        assertThat(caught.total()).isEqualTo(pounds(161.5));
        assertThat(caught.kilograms()).isCloseTo(161.5 * 0.45359237, within(1e-13));
    }

    @Test
    void isInTheUnitOfTheFirstGross() {
        CaughtMass caught = CaughtMass.of(
                SCALE,
                DAY,
                new Weighing("A", Amounts.of(10, SpreadingUnits.KILOGRAM), Amounts.of(1, SpreadingUnits.KILOGRAM)),
                new Weighing("B", pounds(10), pounds(0)));

        assertThat(caught.total()).isEqualTo(Amounts.of(13.5359237, SpreadingUnits.KILOGRAM));
    }

    @Test
    void anOverloadNamesContainerAndScale() {
        assertRefused(
                "gross of container B must be at most the capacity of scale S-1, 5000 lb: 5000.5 lb",
                () -> CaughtMass.of(
                        SCALE,
                        DAY,
                        new Weighing("A", pounds(5000), pounds(0)),
                        new Weighing("B", pounds(5000.5), pounds(0))));
    }

    @Test
    void aCatchThatCaughtNothingNamesItsContainers() {
        assertRefused(
                "caught mass in container A, B must be greater than 0: 0 lb",
                () -> CaughtMass.of(
                        SCALE,
                        DAY,
                        new Weighing("A", pounds(4), pounds(4)),
                        new Weighing("B", pounds(4.5), pounds(4.5))));
        assertRefused("containers of a catch must be one or more: none", () -> new CaughtMass(SCALE, DAY, List.of()));
    }

    @Test
    void isAValueOfScaleDayAndContainers() {
        Weighing weighing = new Weighing("A", pounds(84.5), pounds(4));
        CaughtMass caught = CaughtMass.of(SCALE, DAY, weighing);
        Weighing other = new Weighing("B", pounds(84.5), pounds(4));

        assertThat(caught)
                .isEqualTo(CaughtMass.of(SCALE, DAY, weighing))
                .hasSameHashCodeAs(CaughtMass.of(SCALE, DAY, weighing));
        assertThat(caught)
                .isNotEqualTo(CaughtMass.of(SCALE, DAY, other))
                .isNotEqualTo(CaughtMass.of(SCALE, DAY.plusDays(1), weighing))
                .isNotEqualTo(CaughtMass.of(Scale.of("S-2", SCALE.capacity(), SCALE.division()), DAY, weighing))
                .isNotEqualTo(weighing);
        assertThat(caught).hasToString("80.5 lb on scale S-1, " + DAY);
        assertThat(caught.weighings()).containsExactly(weighing);
        assertThat(caught).doesNotHaveSameHashCodeAs(CaughtMass.of(SCALE, DAY, other));
    }
}
