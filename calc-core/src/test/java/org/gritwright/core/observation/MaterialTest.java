package org.gritwright.core.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.SALT;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.Samples.wrongKind;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;

import org.gritwright.core.LiquidSamples;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

class MaterialTest {
    @Test
    void nothingIsKnownOfItsGrainsUnlessStated() {
        assertThat(SALT.grainDiameter()).isEmpty();
    }

    @Test
    void grainsAreAPropertyOfTheMaterialAndChangeNothingElse() {
        Material dry = SALT.withGrains(Amounts.of(3, MILLIMETER));

        assertThat(dry.grainDiameter()).contains(Amounts.of(3, MILLIMETER));
        assertThat(dry.name()).isEqualTo(SALT.name());
        assertThat(dry.looseBulkDensity()).isEqualTo(SALT.looseBulkDensity());
        assertThat(dry).isNotEqualTo(SALT);
        assertThat(SALT.grainDiameter()).as("the material it was made from").isEmpty();
    }

    @Test
    void refusesGrainsThatAreNone() {
        assertRefused(
                "grain diameter of salt must be greater than 0: 0 mm",
                () -> SALT.withGrains(Amounts.of(0, MILLIMETER)));
        assertRefused(
                "grain diameter of salt must be greater than 0: -3 mm",
                () -> SALT.withGrains(Amounts.of(-3, MILLIMETER)));
        assertRefused(
                "grain diameter of salt must be a finite length: 3 lb", () -> SALT.withGrains(wrongKind(pounds(3))));
    }

    @Test
    void aLiquidHasADensityAndNoGrains() {
        assertThat(LiquidSamples.BRINE.isLiquid()).isTrue();
        assertThat(SALT.isLiquid()).isFalse();
        assertThat(SALT.kilogramsPerAmount()).isEqualTo(1);
        assertThat(LiquidSamples.BRINE.kilogramsPerAmount()).isCloseTo(1174.2989, within(1e-3));
        assertRefused(
                "grain diameter of brine must be none, as it is a liquid: 3 mm",
                () -> LiquidSamples.BRINE.withGrains(Amounts.of(3, MILLIMETER)));
        assertRefused(
                "density of brine must be greater than 0: 0 lb/gal",
                () -> Material.liquid("brine", LiquidSamples.poundsPerGallon(0)));
    }
}
