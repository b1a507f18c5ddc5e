package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.fahrenheit;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;
import org.junit.jupiter.api.Test;

class RecipeTest {
    private static double poundsPerGallon(Measured<BulkDensity> density) {
        return Amounts.in(density.value(), SpreadingUnits.POUND_PER_US_GALLON);
    }

    private static Recipe pure(double percent, double celsius) {
        return new Recipe(brine(percent), SaltSupply.pure(NACL), celsius(celsius));
    }

    @Test
    void saltPerGallonOfWaterIsMoreThanPerGallonOfBrine() {
        Recipe recipe = pure(23.3, 15);

        // 23.3 ÷ 76.7 × 8.338 lb/gal, the water's 999.10 kg/m³.
        assertThat(poundsPerGallon(recipe.saltPerWater().massPerWater()))
                .isCloseTo(23.3 / 76.7 * 999.1026 / 119.826427, within(1e-5));
        assertThat(poundsPerGallon(recipe.saltPerBrine().massPerBrine())).isCloseTo(2.288, within(0.0025));
        // 76.7 % of about 1177 kg is water: 903 kg, of 999.1 kg/m³.
        assertThat(number(recipe.waterPerBrine())).isCloseTo(0.767 * density(brine(23.3), 15) / 9.991026, within(1e-5));
    }

    @Test
    void bothGiveTheSameBrine() {
        Recipe recipe = new Recipe(brine(20), SaltSupply.damp(NACL, percent(95, 1), percent(4)), celsius(10));
        double perBrine = number(recipe.saltPerBrine().massPerBrine());
        double perWater = number(recipe.saltPerWater().massPerWater());

        assertThat(perWater * number(recipe.waterPerBrine()) / 100).isCloseTo(perBrine, within(1e-9));
        // A cubic meter of brine: its salt is in the damp salt, and its water comes with both.
        assertThat(perBrine * 0.96 * 0.95).isCloseTo(0.2 * density(brine(20), 10), within(1e-9));
        double water = number(recipe.waterPerBrine()) / 100 * number(Water.density(celsius(10)));
        assertThat(water + 0.04 * perBrine).isCloseTo(0.8 * density(brine(20), 10), within(1e-9));
    }

    @Test
    void strengthAndAssayMakeARecipeUncertain() {
        SaltSupply supply = SaltSupply.damp(NACL, percent(95, 1), percent(4));
        Measured<?> perWater =
                new Recipe(brine(20), supply, celsius(10)).saltPerWater().massPerWater();
        double chemical = 0.96 * 0.95;
        double up = perWater(0.2, chemical + 0.0048, 0.04) - perWater(0.2, chemical - 0.0048, 0.04);

        assertThat(number(perWater)).isCloseTo(perWater(0.2, chemical, 0.04), within(1e-6));
        assertThat(uncertainty(perWater)).isCloseTo(Math.abs(up), within(1e-3));
        Measured<?> uncertainTarget = new Recipe(
                        new Solution(NACL, percent(20, 0.5)),
                        SaltSupply.damp(NACL, percent(95, 0), percent(4)),
                        celsius(10))
                .saltPerWater()
                .massPerWater();
        double strong = perWater(0.2025, chemical, 0.04) - perWater(0.1975, chemical, 0.04);
        assertThat(uncertainty(uncertainTarget)).isCloseTo(strong, within(1e-2));
    }

    /** Kilograms per cubic meter of water at 10 °C, one after the other. */
    private static double perWater(double share, double chemical, double moisture) {
        double salt = share / chemical;
        return salt / (1 - share - salt * moisture) * 999.702702;
    }

    @Test
    void densityStrengthAndAssayMakeSaltPerBrineUncertain() {
        SaltSupply supply = SaltSupply.damp(NACL, percent(95, 1), percent(0));
        Measured<?> perBrine = new Recipe(new Solution(NACL, percent(20, 0.5)), supply, celsius(20))
                .saltPerBrine()
                .massPerBrine();
        double rho = density(brine(20), 20);
        double slope = 100 * (1164.0 - 1131.9) / 4;
        double ofDensity = 0.2 * rho * 0.001 / Math.sqrt(3) / 0.95;
        double ofShare = 0.005 * (rho + 0.2 * slope) / 0.95;
        double ofAssay = 0.2 * rho / 0.95 * 0.01 / 0.95;

        assertThat(uncertainty(perBrine))
                .isCloseTo(Math.sqrt(ofDensity * ofDensity + ofShare * ofShare + ofAssay * ofAssay), within(0.02));
    }

    @Test
    void ofAnExactStrengthTheTablesAloneMakeSaltPerBrineUncertain() {
        Measured<?> perBrine = new Recipe(brine(20), SaltSupply.damp(NACL, percent(95, 0), percent(0)), celsius(20))
                .saltPerBrine()
                .massPerBrine();

        assertThat(uncertainty(perBrine)).isCloseTo(number(perBrine) * 0.001 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void whatDoesntDissolveMakesTheSaltNoWeaker() {
        // 24 of 96 that dissolve or are water are 25 %.
        SaltSupply slush = new SaltSupply(NACL, percent(24, 0), percent(72));

        assertThat(number(new Recipe(brine(24.9), slush, celsius(15)).waterPerBrine()))
                .isBetween(0.0, 1.0);
        assertRefused(
                "share of sodium chloride must be below what the salt makes with its own water, 25 %: 25.1 %",
                () -> new Recipe(brine(25.1), slush, celsius(15)));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        Recipe recipe = pure(20, 15);
        assertNamesWhatIsMissing(recipe);
        assertNamesWhatIsMissing(recipe.supply());
        assertNamesWhatIsMissing(recipe.saltPerWater());
        assertNamesWhatIsMissing(recipe.saltPerBrine());
    }

    @Test
    void whatCantBeMadeIsRefused() {
        assertRefused(
                "salt supply must be sodium chloride: calcium chloride",
                () -> new Recipe(brine(20), SaltSupply.pure(CACL2), celsius(10)));
        assertRefused(
                "share of sodium chloride at 50 °F must be within 0 % to 26.36 %: 26.5 %",
                () -> new Recipe(brine(26.5), SaltSupply.pure(NACL), fahrenheit(50)));
        assertRefused("share of sodium chloride must be greater than 0: 0 %", () -> pure(0, 15));
        assertRefused("temperature of the water must be within 0 °C to 40 °C: -5 °C", () -> pure(20, -5));
        SaltSupply slush = new SaltSupply(NACL, percent(25, 0), percent(75));
        assertRefused(
                "share of sodium chloride must be below what the salt makes with its own water, 25 %: 26 %",
                () -> new Recipe(brine(26), slush, celsius(15)));
        assertRefused(
                "share of sodium chloride must be below what the salt makes with its own water, 25 %: 25 %",
                () -> new Recipe(brine(25), slush, celsius(15)));
        assertThat(number(new Recipe(brine(24), slush, celsius(15)).waterPerBrine()))
                .isBetween(0.0, 5.0);
        assertRefused("salt per volume of water must be 0 or more: -1 kg/m³", () -> new SaltPerWater(density(-1, 0)));
        assertRefused("salt per volume of brine must be 0 or more: -1 kg/m³", () -> new SaltPerBrine(density(-1, 0)));
    }

    private static Measured<BulkDensity> density(double value, double uncertainty) {
        return SolutionSamples.density(value, uncertainty);
    }

    private static double density(Solution solution, double celsius) {
        return SolutionSamples.density(solution, celsius);
    }
}
