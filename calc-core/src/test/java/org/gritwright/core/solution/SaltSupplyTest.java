package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import org.gritwright.core.uncertainty.Measured;
import org.junit.jupiter.api.Test;

class SaltSupplyTest {
    /** By IUPAC's atomic weights of 2007: Ca 40.078, Mg 24.3050, Cl 35.453, H 1.00794, O 15.9994. */
    @Test
    void crystalWaterIsNoSalt() {
        double water = 2 * 1.00794 + 15.9994;
        double calcium = 40.078 + 2 * 35.453;
        double magnesium = 24.3050 + 2 * 35.453;

        assertThat(number(Hydrate.CALCIUM_CHLORIDE_DIHYDRATE.anhydrousPart()))
                .isCloseTo(100 * calcium / (calcium + 2 * water), within(0.003));
        assertThat(number(Hydrate.MAGNESIUM_CHLORIDE_HEXAHYDRATE.anhydrousPart()))
                .isCloseTo(100 * magnesium / (magnesium + 6 * water), within(0.003));
        assertThat(number(Hydrate.CALCIUM_CHLORIDE_DIHYDRATE.anhydrousPart())).isCloseTo(75.49, within(0.005));
        assertThat(number(Hydrate.MAGNESIUM_CHLORIDE_HEXAHYDRATE.anhydrousPart()))
                .isCloseTo(46.83, within(0.005));
        assertThat(Hydrate.CALCIUM_CHLORIDE_DIHYDRATE.salt()).isEqualTo(CACL2);
    }

    @Test
    void dampRockSaltIsChemicalWaterAndRest() {
        SaltSupply supply = SaltSupply.damp(NACL, percent(95, 1), percent(4));

        assertThat(number(supply.chemical())).isCloseTo(0.96 * 95, within(1e-9));
        assertThat(uncertainty(supply.chemical())).isCloseTo(0.96, within(1e-9));
        assertThat(number(supply.water())).isEqualTo(4);
        assertThat(supply.restRatio()).isCloseTo(0.96 * 0.05, within(1e-12));
    }

    @Test
    void pureSaltIsNothingElse() {
        assertThat(SaltSupply.pure(NACL).chemicalRatio()).isEqualTo(1);
        assertThat(SaltSupply.pure(NACL).waterRatio()).isZero();
        assertThat(SaltSupply.pure(NACL).restRatio()).isZero();
    }

    @Test
    void anAssayIsOfTheHydrateOrOfTheSaltWithoutWater() {
        double part = number(Hydrate.CALCIUM_CHLORIDE_DIHYDRATE.anhydrousPart()) / 100;
        SaltSupply hydrate =
                SaltSupply.assayedAsHydrate(Hydrate.CALCIUM_CHLORIDE_DIHYDRATE, percent(98, 1), percent(2));
        SaltSupply anhydrous = SaltSupply.assayedAsAnhydrous(CACL2, percent(77, 1));

        assertThat(number(hydrate.chemical())).isCloseTo(0.98 * 98 * part, within(1e-9));
        assertThat(uncertainty(hydrate.chemical())).isCloseTo(0.98 * part, within(1e-9));
        assertThat(number(hydrate.water())).isCloseTo(2 + 0.98 * 98 * (1 - part), within(1e-9));
        assertThat(hydrate.restRatio()).isCloseTo(0.98 * 0.02, within(1e-12));
        assertThat(hydrate.salt()).isEqualTo(CACL2);
        assertThat(number(anhydrous.chemical())).isEqualTo(77);
        assertThat(number(anhydrous.water())).isCloseTo(23, within(1e-9));
        assertThat(anhydrous.restRatio()).isCloseTo(0, within(1e-12));
    }

    @Test
    void partsAreChecked() {
        assertRefused(
                "chemical in the salt must be greater than 0: 0 %",
                () -> new SaltSupply(NACL, percent(0, 0), percent(0)));
        assertRefused(
                "chemical in the salt must be within 0 % to 100 %: 101 %",
                () -> SaltSupply.assayedAsAnhydrous(CACL2, percent(101, 0)));
        assertRefused(
                "water in the salt must be such that it and the chemical, 95 %, are at most 100 %: 6 %",
                () -> new SaltSupply(NACL, percent(95, 0), percent(6)));
        assertRefused(
                "water in the salt must be 0 or more: -1 %", () -> new SaltSupply(NACL, percent(95, 0), percent(-1)));
        assertRefused(
                "purity of the dry salt must be within 0 % to 100 %: 101 %",
                () -> SaltSupply.damp(NACL, percent(101, 0), percent(0)));
        assertRefused(
                "moisture of the wet salt must be below 100 %: 100 %",
                () -> SaltSupply.damp(NACL, percent(95, 0), percent(100)));
        assertRefused(
                "assay as the hydrate must be within 0 % to 100 %: 101 %",
                () -> SaltSupply.assayedAsHydrate(Hydrate.MAGNESIUM_CHLORIDE_HEXAHYDRATE, percent(101, 0), percent(0)));
        assertThat(new SaltSupply(NACL, percent(95, 0), percent(5)).restRatio()).isCloseTo(0, within(1e-12));
        assertThat(SaltSupply.damp(NACL, Measured.once(percent(95)), percent(4))
                        .chemical()
                        .standardUncertainty())
                .isEmpty();
    }
}
