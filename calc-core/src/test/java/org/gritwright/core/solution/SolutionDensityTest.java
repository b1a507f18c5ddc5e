package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.MGCL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.density;
import static org.gritwright.core.solution.SolutionSamples.fahrenheit;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.solution;
import static org.gritwright.core.solution.SolutionSamples.table;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import java.util.List;
import java.util.OptionalDouble;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SolutionDensityTest {
    private static final double NACL_WEIGHT = 58.443;

    private static void agrees(Solution solution, double celsius, double published, double relative) {
        assertThat(density(solution, celsius))
                .as(solution.salt().words() + ", " + solution.share() + " at " + celsius + " °C")
                .isCloseTo(published, within(relative * published));
    }

    @Test
    void sodiumChlorideAgreesWithRogersAndPitzerToATenthOfAPercent() {
        List<double[]> rows = table("rogers-pitzer-1982");
        assertThat(rows).hasSize(54);
        for (double[] row : rows) {
            double percent = 100 * row[1] * NACL_WEIGHT / (1000 + row[1] * NACL_WEIGHT);
            agrees(brine(percent), row[0], 1000 / row[2], 0.001);
        }
    }

    @Test
    void from10CelsiusOnSodiumChlorideAgreesWithThemToHalfOfThat() {
        table("rogers-pitzer-1982").stream().filter(row -> row[0] >= 10).forEach(row -> {
            double percent = 100 * row[1] * NACL_WEIGHT / (1000 + row[1] * NACL_WEIGHT);
            agrees(brine(percent), row[0], 1000 / row[2], 0.0005);
        });
    }

    @Test
    void sodiumChlorideAgreesWithAHandbookAt20Celsius() {
        table("handbook-sodium-chloride-20").forEach(row -> agrees(brine(row[0]), 20, row[1], 0.0005));
    }

    @Test
    void theHandbooksSuspectValueAt2PercentIsNotOurs() {
        // Printed 1012.2; 1012.5 by Rogers and Pitzer. Neighbors at 1 % and 4 % agree to 0.2.
        assertThat(density(brine(2), 20)).isGreaterThan(1012.2).isLessThan(1012.6);
    }

    @Test
    void sodiumChlorideAgreesWithTheVdiTableInTheColdToo() {
        table("vdi-density-sodium-chloride").stream()
                .filter(row -> row[0] >= -18)
                .forEach(row -> agrees(solution(NACL, row[1]), row[0], row[2], row[0] >= 10 ? 0.0014 : 0.0016));
    }

    @Test
    void calciumChlorideAgreesWithTheVdiTableButForItsSuspectColumn() {
        table("vdi-density-calcium-chloride").stream()
                .filter(row -> row[1] != 28.4 && row[0] >= -30)
                .forEach(row -> agrees(solution(CACL2, row[1]), row[0], row[2], row[0] >= 15 ? 0.003 : 0.004));
    }

    @Test
    void theSuspect1272OfCalciumChlorideIsTooDense() {
        double ours = density(solution(CACL2, 28.4), 20);

        assertThat(ours).isCloseTo(1265, within(1.0));
        assertThat(1272 / ours - 1).isGreaterThan(0.005);
    }

    @Test
    void whatIsBetweenTheColumnsOfTheColdAgreesWithTheColumnThatWasLeftOut() {
        table("vdi-density-calcium-chloride").stream()
                .filter(row -> row[1] == 28.4 && row[0] < 15 && row[0] >= -30)
                .forEach(row -> agrees(solution(CACL2, row[1]), row[0], row[2], 0.004));
    }

    @Test
    void magnesiumChlorideAgreesWithTheVdiTableLessWellBelow10Celsius() {
        table("vdi-density-magnesium-chloride").stream()
                .filter(row -> row[0] >= -22)
                .forEach(row -> agrees(solution(MGCL2, row[1]), row[0], row[2], row[0] >= 10 ? 0.003 : 0.005));
    }

    @Test
    void specificGravitiesOfLangesHandbookAgree() {
        table("lange-sodium-chloride")
                .forEach(row -> agrees(brine(row[0]), 15, row[1] * number(Water.density(celsius(15))), 0.0012));
        table("lange-magnesium-chloride").stream()
                .filter(row -> row[0] < 30)
                .forEach(row ->
                        agrees(solution(MGCL2, row[0]), 15.6, row[1] * number(Water.density(celsius(15.6))), 0.003));
    }

    /** Laliberté's equation itself, as a program for it gives: 0.37838838 % of sodium chloride at 0 °C. */
    /** Computed by a program apart from this one from the same constants, so that no digit of them gets lost. */
    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 5, 20, 1033.864842889",
        "SODIUM_CHLORIDE, 20, 15, 1150.546061031",
        "SODIUM_CHLORIDE, 22, 35, 1156.122988922",
        "CALCIUM_CHLORIDE, 5, 20, 1039.413872175",
        "CALCIUM_CHLORIDE, 20, 15, 1179.550466327",
        "CALCIUM_CHLORIDE, 38, 35, 1360.913224057",
        "MAGNESIUM_CHLORIDE, 5, 20, 1039.500991032",
        "MAGNESIUM_CHLORIDE, 20, 15, 1176.627693778",
        "MAGNESIUM_CHLORIDE, 22, 35, 1189.795397964"
    })
    void theEquationHasTheConstantsThatWereRead(Salt salt, double percent, double celsius, double computed) {
        assertThat(density(solution(salt, percent), celsius)).isCloseTo(computed, within(1e-8));
    }

    /** As much as from 0 °C, or of calcium chloride from midway between its two temperatures about 15 °C. */
    @ParameterizedTest
    @CsvSource({
        "vdi-density-sodium-chloride, SODIUM_CHLORIDE, 0, 0, -18",
        "vdi-density-magnesium-chloride, MAGNESIUM_CHLORIDE, 0, 0, -22",
        "vdi-density-calcium-chloride, CALCIUM_CHLORIDE, 20, 10, -30"
    })
    void everyColumnOfTheColdShrinksAsItsTableSays(
            String name, Salt salt, double warmer, double colder, double coldest) {
        List<double[]> rows = table(name).stream().filter(row -> row[1] != 28.4).toList();
        int compared = 0;
        for (double[] row : rows) {
            double tied = (warmer + colder) / 2;
            OptionalDouble before = valueAt(rows, row[1], warmer);
            OptionalDouble after = valueAt(rows, row[1], colder);
            // The last column alone at its temperature is no range.
            if (row[0] >= tied || row[0] < coldest || before.isEmpty() || after.isEmpty()) {
                continue;
            }
            double from = (before.getAsDouble() + after.getAsDouble()) / 2;
            Solution solution = solution(salt, row[1]);
            assertThat(density(solution, row[0]) / density(solution, tied))
                    .as("%s %% at %s °C", row[1], row[0])
                    .isCloseTo(row[2] / from, within(1e-9));
            compared++;
        }
        assertThat(compared).isGreaterThan(10);
    }

    private static OptionalDouble valueAt(List<double[]> rows, double percent, double celsius) {
        return rows.stream()
                .filter(row -> row[0] == celsius && row[1] == percent)
                .mapToDouble(row -> row[2])
                .findFirst();
    }

    @Test
    void theEquationGivesItsAuthorsExample() {
        assertThat(density(brine(0.37838838), 0)).isCloseTo(1002.6250120185854, within(0.005));
    }

    @Test
    void waterIsTheEndOfEverySaltsRange() {
        for (Salt salt : List.of(NACL, CACL2, MGCL2)) {
            assertThat(density(Solution.water(salt), 20)).isCloseTo(998.2067455596167, within(1e-9));
        }
    }

    @Test
    void waterIsThatOfTanakaAndWithinThreeMilligramsThatOfEos80() {
        for (double[] row : table("water")) {
            double ours = number(Water.density(celsius(row[0])));
            assertThat(ours).isCloseTo(row[1], within(6e-7));
            assertThat(ours).isCloseTo(row[2], within(0.006));
        }
        assertRefused(
                "temperature of the water must be within 0 °C to 40 °C: -0.1 °C", () -> Water.density(celsius(-0.1)));
        assertRefused(
                "temperature of the water must be within 0 °C to 40 °C: 105 °F", () -> Water.density(fahrenheit(105)));
        assertThat(number(Water.density(fahrenheit(32)))).isEqualTo(number(Water.density(celsius(0))));
    }

    @Test
    void kellsEquationWithAMisprintWouldBeAQuarterOfAKilogramLighter() {
        // With 16.897850e-3 in the denominator water at 20 °C has 997.936, with 16.879850e-3 998.204.
        assertThat(kell(16.897850e-3)).isCloseTo(997.936, within(0.001));
        assertThat(kell(16.879850e-3)).isCloseTo(998.204, within(0.001));
        assertThat(number(Water.density(celsius(20)))).isCloseTo(kell(16.879850e-3), within(0.003));
    }

    private static double kell(double denominator) {
        double t = 20;
        return ((((((-2.8054253e-10 * t + 1.0556302e-7) * t - 4.6170461e-5) * t - 0.0079870401) * t + 16.945176) * t)
                        + 999.83952)
                / (1 + denominator * t);
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 20, 1147.8, 0.001",
        "CALCIUM_CHLORIDE, 20, 1177.5, 0.003",
        "MAGNESIUM_CHLORIDE, 20, 1174.2, 0.003",
    })
    void theUncertaintyIsThatByWhichTablesDiffer(Salt salt, double percent, double about, double limit) {
        Measured<?> density = solution(salt, percent).density(celsius(20));

        assertThat(number(density)).isCloseTo(about, within(limit * about));
        assertThat(uncertainty(density)).isCloseTo(number(density) * limit / Math.sqrt(3), within(1e-9));
        assertThat(density.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        assertThat(density.value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM_PER_CUBIC_METER);
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 20, 0, 0.001",
        "SODIUM_CHLORIDE, 20, -0.1, 0.002",
        "CALCIUM_CHLORIDE, 20, 15, 0.003",
        "CALCIUM_CHLORIDE, 20, 14.9, 0.004",
        "MAGNESIUM_CHLORIDE, 20, 10, 0.003",
        "MAGNESIUM_CHLORIDE, 20, 9.9, 0.005",
        "MAGNESIUM_CHLORIDE, 20, -20, 0.005",
    })
    void theLimitsAreWiderInTheCold(Salt salt, double percent, double celsius, double limit) {
        Measured<?> density = solution(salt, percent).density(celsius(celsius));

        assertThat(uncertainty(density) / number(density)).isCloseTo(limit / Math.sqrt(3), within(1e-12));
    }

    @Test
    void aSharesUncertaintyMakesTheDensityUncertainToo() {
        // About 8.2 kg/m³ per percent at 20 %, by the handbook's 1131.9 and 1164.0 at 18 % and 22 %.
        Solution solution = new Solution(NACL, percent(20, 0.5));
        double ofShare = 0.5 * (1164.0 - 1131.9) / 4;
        double ofTables = density(solution, 20) * 0.001 / Math.sqrt(3);

        assertThat(uncertainty(solution.density(celsius(20)))).isCloseTo(Math.hypot(ofShare, ofTables), within(0.03));
        // w·ρ changes with w by ρ + w·ρ'.
        double perShare = density(solution, 20) + 0.2 * 100 * (1164.0 - 1131.9) / 4;
        assertThat(uncertainty(solution.chemicalPerVolume(celsius(20))))
                .isCloseTo(Math.hypot(0.005 * perShare, 0.2 * ofTables), within(0.02));
        assertThat(new Solution(NACL, Measured.once(percent(20)))
                        .density(celsius(20))
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void atTheEndsOfTheRangeAShareIsAsUncertainAsBeside() {
        Solution water = new Solution(NACL, percent(0, 0.1));
        Solution saturated = new Solution(NACL, percent(26.395, 0.1));

        // By the handbook, 7.1 kg/m³ from 0 % to 1 %, and 8.4 from 24 % to 26 %.
        assertThat(uncertainty(water.density(celsius(20))))
                .isCloseTo(Math.hypot(0.71, 998.2 * 0.001 / Math.sqrt(3)), within(0.02));
        assertThat(uncertainty(saturated.density(fahrenheit(60))))
                .isCloseTo(Math.hypot(0.83, 1202.5 * 0.001 / Math.sqrt(3)), within(0.02));
    }

    @Test
    void chemicalPerVolumeIsShareTimesDensity() {
        Measured<?> salt = brine(20).chemicalPerVolume(celsius(20));

        // The handbook's 1147.8 kg/m³ hold 229.56 kg of salt.
        assertThat(number(salt)).isCloseTo(229.56, within(0.1));
        assertThat(uncertainty(salt)).isCloseTo(229.56 * 0.001 / Math.sqrt(3), within(0.001));
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 27, 20, share of sodium chloride at 20 °C must be within 0 % to 26.4378 %: 27 %",
        "SODIUM_CHLORIDE, 26.6, 40, share of sodium chloride at 40 °C must be within 0 % to 26.59 %: 26.6 %",
        "SODIUM_CHLORIDE, 9, -5, share of sodium chloride at -5 °C must be within 11 % to 23.1 %: 9 %",
        "SODIUM_CHLORIDE, 23.3, -5, share of sodium chloride at -5 °C must be within 11 % to 23.1 %: 23.3 %",
        "SODIUM_CHLORIDE, 20, 40.1, temperature of the solution must be within -18 °C to 40 °C: 40.1 °C",
        "SODIUM_CHLORIDE, 20, -21.1, temperature of the solution must be within -18 °C to 40 °C: -21.1 °C",
        "SODIUM_CHLORIDE, 21, -18, share of sodium chloride at -18 °C must be within 21.2 % to 23.1 %: 21 %",
        "CALCIUM_CHLORIDE, 41, 20, share of calcium chloride at 20 °C must be within 0 % to 40 %: 41 %",
        "CALCIUM_CHLORIDE, 32, 14, share of calcium chloride at 14 °C must be within 0 % to 29.9 %: 32 %",
        "CALCIUM_CHLORIDE, 5, -1, share of calcium chloride at -1 °C must be within 14.7 % to 29.9 %: 5 %",
        "CALCIUM_CHLORIDE, 29, -30.1, temperature of the solution must be within -30 °C to 40 °C: -30.1 °C",
        "MAGNESIUM_CHLORIDE, 33, 20, share of magnesium chloride at 20 °C must be within 0 % to 32.38 %: 33 %",
        "MAGNESIUM_CHLORIDE, 30, -1, share of magnesium chloride at -1 °C must be within 7.2 % to 20.6 %: 30 %",
        "POTASSIUM_ACETATE, 49, 20, 'salt must be one whose density is known here: sodium chloride, calcium chloride,"
                + " magnesium chloride: potassium acetate'",
    })
    void whatIsNotPublishedIsRefused(Salt salt, double percent, double celsius, String message) {
        assertRefused(message, () -> solution(salt, percent).density(celsius(celsius)));
        assertRefused(message, () -> solution(salt, percent).chemicalPerVolume(celsius(celsius)));
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 26.4378, 20",
        "SODIUM_CHLORIDE, 11, -5",
        "SODIUM_CHLORIDE, 21.2, -18",
        "SODIUM_CHLORIDE, 23.1, -18",
        "CALCIUM_CHLORIDE, 40, 15",
        "CALCIUM_CHLORIDE, 29.9, -30",
        "CALCIUM_CHLORIDE, 0, 0",
        "MAGNESIUM_CHLORIDE, 32.38, 0",
        "MAGNESIUM_CHLORIDE, 20.6, -22",
    })
    void theEndsOfTheRangeAreInIt(Salt salt, double percent, double celsius) {
        assertThat(density(solution(salt, percent), celsius)).isGreaterThan(998);
    }

    /** What the columns for the cold are tied to. */
    @ParameterizedTest
    @CsvSource({"SODIUM_CHLORIDE, 21, 0", "CALCIUM_CHLORIDE, 21, 15", "MAGNESIUM_CHLORIDE, 18, 0"})
    void theColdBeginsWhereTheEquationEnds(Salt salt, double percent, double celsius) {
        assertThat(density(solution(salt, percent), celsius - 1e-6))
                .isCloseTo(density(solution(salt, percent), celsius), within(1e-3));
    }

    @Test
    void betweenTwoColumnsOfTheColdTheSolutionShrinksByAPartOfBoth() {
        // From 0 °C to −5 °C: 1085 ÷ 1084 at 11 %, 1108 ÷ 1106 at 13.6 %, half of each at 12.3 %.
        double shrunk = (1085.0 / 1084 + 1108.0 / 1106) / 2;

        assertThat(density(brine(12.3), -5) / density(brine(12.3), 0)).isCloseTo(shrunk, within(1e-9));
        assertThat(density(brine(23.1), -5) / density(brine(23.1), 0)).isCloseTo(1185.0 / 1183, within(1e-9));
        assertThat(density(brine(11), -5) / density(brine(11), 0)).isCloseTo(1085.0 / 1084, within(1e-9));
        assertThat(density(brine(23.1), -18) / density(brine(23.1), 0))
                .isCloseTo((1189 + 3 * (1191 - 1189) / 6.0) / 1183, within(1e-9));
    }

    @Test
    void calciumChlorideInTheColdIsTiedToTheMiddleOfTheTable() {
        // 1128 at 20 °C and 1131 at 10 °C make 1129.5 at 15 °C; water is the column of 0 %.
        assertThat(density(solution(CACL2, 14.7), 0) / density(solution(CACL2, 14.7), 15))
                .isCloseTo(1135 / 1129.5, within(1e-9));
        double water = number(Water.density(celsius(10))) / number(Water.density(celsius(15)));
        assertThat(density(Solution.water(CACL2), 10) / density(Solution.water(CACL2), 15))
                .isCloseTo(water, within(1e-9));
        assertThat(density(solution(CACL2, 7.35), 10) / density(solution(CACL2, 7.35), 15))
                .isCloseTo((water + 1131 / 1129.5) / 2, within(1e-9));
    }

    @Test
    void saturationIsKnownOfSodiumChlorideOnly() {
        assertThat(number(NACL.saturation(fahrenheit(60)).orElseThrow())).isEqualTo(26.395);
        assertThat(number(NACL.saturation(fahrenheit(-6)).orElseThrow())).isEqualTo(23.31);
        assertThat(number(NACL.saturation(fahrenheit(125)).orElseThrow())).isEqualTo(26.92);
        assertThat(number(NACL.saturation(celsius(20)).orElseThrow())).isBetween(26.395, 26.45);
        assertThat(CACL2.saturation(celsius(20))).isEmpty();
        assertThat(Salt.POTASSIUM_ACETATE.saturation(celsius(20))).isEmpty();
        assertRefused(
                "temperature must be within -21.111111111 °C to 51.666666667 °C: 126 °F",
                () -> NACL.saturation(fahrenheit(126)));
    }

    @Test
    void aSolutionIsCheckedAndEqualByValue() {
        assertRefused("share of sodium chloride must be 0 or more: -1 %", () -> brine(-1));
        assertRefused("share of sodium chloride must be below 100 %: 100 %", () -> brine(100));
        assertThat(brine(20)).isEqualTo(brine(20)).isNotEqualTo(brine(21)).isNotEqualTo(solution(CACL2, 20));
    }

    @Test
    void aShareIsTheSameAsARatio() {
        Solution ratio = Solution.of(NACL, Amounts.of(0.233, SpreadingUnits.ONE));

        assertThat(number(ratio.density(celsius(15)))).isCloseTo(density(brine(23.3), 15), within(1e-9));
        assertThat(ratio.side()).isEqualTo(Side.UP_TO_EUTECTIC);
    }

    /** What {@code ReadVolume} and {@code CatchFindings} say of brine that warms before it is read. */
    @Test
    void strongBrineThatWarmsByTenDegreesTakesFourToFiveThousandthsMoreRoom() {
        Solution brine = brine(23);

        for (double celsius = -10; celsius <= 20; celsius += 5) {
            double more = density(brine, celsius) / density(brine, celsius + 10) - 1;
            assertThat(more).isBetween(0.0033, 0.005);
        }
        assertThat(density(brine, 0) / density(brine, 10) - 1).isBetween(0.004, 0.005);
        assertThat(density(brine, 20) / density(brine, 30) - 1).isBetween(0.004, 0.005);
        assertThat(density(brine, 5) / density(brine, 30) - 1).isBetween(0.009, 0.012);
    }
}
