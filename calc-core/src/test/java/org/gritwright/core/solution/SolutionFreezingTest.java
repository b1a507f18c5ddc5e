package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.MGCL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.fahrenheit;
import static org.gritwright.core.solution.SolutionSamples.freezing;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.solution;
import static org.gritwright.core.solution.SolutionSamples.table;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Temperature;
import org.gritwright.core.Shipped;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SolutionFreezingTest {
    private static void agrees(Solution solution, double published) {
        Measured<?> ours = solution.freezingPoint().temperature().orElseThrow();
        // Within the limits that are stated, √3 standard uncertainties.
        assertThat(number(ours))
                .as(solution.salt().words() + " of " + solution.share())
                .isCloseTo(published, within(uncertainty(ours) * Math.sqrt(3)));
    }

    @Test
    void freezingPointsAreThoseOfLangesHandbook() {
        table("lange-sodium-chloride")
                .forEach(row -> assertThat(freezing(brine(row[0]))).isCloseTo(row[2], within(1e-9)));
        table("lange-magnesium-chloride").stream()
                .forEach(row -> assertThat(freezing(solution(MGCL2, row[0]))).isCloseTo(row[2], within(1e-9)));
    }

    @Test
    void anotherHandbooksFreezingPointsAreWithinTheLimits() {
        agrees(brine(5), -3.05);
        agrees(brine(10), -6.56);
        agrees(brine(15), -10.89);
        agrees(brine(20), -16.46);
    }

    @Test
    void theVdiTablesAreWithinTheLimitsButForOneThatIsColderThanAnyEutectic() {
        table("vdi-freezing-sodium-chloride").forEach(row -> agrees(brine(row[0]), row[1]));
        table("vdi-freezing-magnesium-chloride").forEach(row -> agrees(solution(MGCL2, row[0]), row[1]));
        table("vdi-freezing-calcium-chloride").stream()
                .filter(row -> row[0] != 29.9)
                .forEach(row -> agrees(solution(CACL2, row[0]), row[1]));
    }

    @Test
    void theSmithsonianTablesAreWithinTheLimits() {
        for (double[] row : table("smithsonian-calcium-chloride")) {
            double percent = 100 * row[0] * 110.978 / (1000 + row[0] * 110.978);
            agrees(solution(CACL2, percent), -row[1]);
        }
    }

    /** Smithsonian Physical Tables, VDI Heat Atlas and last FHWA-RD-95-202, as {@code FreezingData} names them. */
    @ParameterizedTest
    @CsvSource({
        "1.098, -0.49",
        "2.700, -1.27",
        "5.257, -2.66",
        "7.684, -4.28",
        "14.7, -10.2",
        "20.9, -19.2",
        "25.7, -31.2",
        "28.4, -43.6",
        "29.8, -51"
    })
    void calciumChlorideFreezesWhereItsThreeSourcesSay(double percent, double celsius) {
        assertThat(freezing(solution(CACL2, percent))).isCloseTo(celsius, within(1e-9));
    }

    @Test
    void waterFreezesAt0() {
        assertThat(freezing(Solution.water(NACL))).isEqualTo(0.0);
        assertThat(uncertainty(
                        Solution.water(NACL).freezingPoint().temperature().orElseThrow()))
                .isCloseTo(0.05 / Math.sqrt(3), within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 23.3, -21.1, 0.472",
        "CALCIUM_CHLORIDE, 29.8, -51, 5.66",
        "MAGNESIUM_CHLORIDE, 21.6, -33, 5.33",
    })
    void atTheWeakestEutecticItIsColdest(Salt salt, double percent, double celsius, double limit) {
        FreezingPoint point = solution(salt, percent).freezingPoint();

        assertThat(point.side()).isEqualTo(Side.UP_TO_EUTECTIC);
        assertThat(freezing(solution(salt, percent))).isEqualTo(celsius);
        assertThat(uncertainty(point.temperature().orElseThrow())).isCloseTo(limit / Math.sqrt(3), within(1e-9));
        assertThat(solution(salt, percent).findings()).isEmpty();
    }

    @Test
    void theShareMakesTheFreezingPointUncertainToo() {
        // 1.25 K per percent about 20 % (−15.21 °C at 19 %, −17.78 °C at 21 %).
        Measured<?> point =
                new Solution(NACL, percent(20, 1)).freezingPoint().temperature().orElseThrow();
        double limit = (0.05 + 0.02 * 16.46) / Math.sqrt(3);

        assertThat(uncertainty(point)).isCloseTo(Math.hypot(limit, (17.78 - 15.21) / 2), within(0.02));
        assertThat(point.degreesOfFreedom()).hasValue(Double.POSITIVE_INFINITY);
        Measured<?> unknown = new Solution(NACL, Measured.once(percent(20)))
                .freezingPoint()
                .temperature()
                .orElseThrow();
        assertThat(unknown.standardUncertainty()).isEmpty();
        assertThat(number(unknown)).isEqualTo(-16.46);
    }

    @Test
    void atEitherEndOfTheCurveAShareIsAsUncertainAsBeside() {
        Measured<?> weak = new Solution(NACL, percent(0, 0.1))
                .freezingPoint()
                .temperature()
                .orElseThrow();
        Measured<?> strong = new Solution(NACL, percent(23.3, 0.1))
                .freezingPoint()
                .temperature()
                .orElseThrow();

        // 0.58 K from 0 % to 1 %, 0.41 K from 23 % to 23.3 %.
        assertThat(uncertainty(weak)).isCloseTo(Math.hypot(0.058, 0.05 / Math.sqrt(3)), within(0.004));
        assertThat(uncertainty(strong)).isCloseTo(Math.hypot(0.137, 0.472 / Math.sqrt(3)), within(0.01));
    }

    @Test
    void beyondTheEutecticItTurnsAndIsFlagged() {
        FreezingPoint point = brine(25).freezingPoint();

        assertThat(point.side()).isEqualTo(Side.BEYOND_EUTECTIC);
        // Between 24.7 % at 10 °F and 25.53 % at 20 °F, and of unknown uncertainty.
        assertThat(number(point.temperature().orElseThrow())).isBetween(-12.2, -6.6);
        assertThat(point.temperature().orElseThrow().standardUncertainty()).isEmpty();
        assertThat(brine(25).findings())
                .extracting(Finding::sentence)
                .containsExactly(
                        "The solution holds 25 % of its salt, more than the eutectic of 23.31 %: in the cold salt"
                                + " drops out of it first, and more salt makes that happen warmer.");
        assertThat(freezing(brine(24.7)))
                .isCloseTo(Amounts.si(Temperature.class, fahrenheit(10)) - 273.15, within(1e-6));
        assertThat(freezing(brine(26.31))).isCloseTo(0.111111111, within(1e-9));
        assertThat(freezing(brine(23.31))).isCloseTo(-21.111111111, within(1e-9));
        assertThat(brine(23.31).freezingPoint().side()).isEqualTo(Side.BEYOND_EUTECTIC);
    }

    @Test
    void betweenTwoEutecticsNobodyCanTell() {
        Solution between = solution(CACL2, 30.5);

        assertThat(between.freezingPoint()).isEqualTo(new FreezingPoint(Side.UNDECIDED, Optional.empty()));
        assertThat(between.findings())
                .extracting(Finding::sentence)
                .containsExactly(
                        "The solution holds 30.5 % of its salt, and published eutectics go from 29.8 % to 31 %:"
                                + " within the uncertainties it may be weaker than the eutectic or stronger.");
        assertThat(solution(CACL2, 31).freezingPoint().side()).isEqualTo(Side.BEYOND_EUTECTIC);
        assertThat(solution(CACL2, 31).freezingPoint().temperature()).isEmpty();
        assertThat(solution(MGCL2, 21.8).freezingPoint().temperature()).isEmpty();
        assertThat(freezing(solution(MGCL2, 22))).isEqualTo(-32.8);
    }

    @Test
    void anUncertainShareMayReachAcross() {
        // Two standard uncertainties: 22.9 + 0.4 just reaches 23.3, and 23.71 − 0.4 just 23.31.
        assertThat(new Solution(NACL, percent(22.9, 0.19)).side()).isEqualTo(Side.UP_TO_EUTECTIC);
        assertThat(new Solution(NACL, percent(22.9, 0.21)).side()).isEqualTo(Side.UNDECIDED);
        assertThat(new Solution(NACL, percent(23.71, 0.19)).side()).isEqualTo(Side.BEYOND_EUTECTIC);
        assertThat(new Solution(NACL, percent(23.71, 0.21)).side()).isEqualTo(Side.UNDECIDED);
        assertThat(new Solution(NACL, Measured.once(percent(23))).side()).isEqualTo(Side.UP_TO_EUTECTIC);
        assertThat(new Solution(NACL, percent(22.9, 0.3)).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.EUTECTIC_SIDE_UNDECIDED);
        // The temperature is then that of the share as it stands.
        assertThat(new Solution(NACL, percent(23, 0.3)).freezingPoint().temperature())
                .isPresent();
    }

    @Test
    void whatIsNotPublishedIsRefused() {
        assertRefused(
                "share of sodium chloride must be within 0 % to 26.31 %: 26.32 %",
                () -> brine(26.32).freezingPoint());
        assertRefused(
                "share of magnesium chloride must be within 0 % to 30 %: 30.1 %",
                () -> solution(MGCL2, 30.1).freezingPoint());
        assertRefused(
                "share of calcium chloride must be within 0 % to 40 %: 41 %",
                () -> solution(CACL2, 41).freezingPoint());
        assertRefused(
                "salt must be one whose freezing point is known here: sodium chloride, calcium chloride, magnesium chloride:"
                        + " calcium magnesium acetate",
                () -> solution(Salt.CALCIUM_MAGNESIUM_ACETATE, 30).freezingPoint());
        assertThat(freezing(solution(MGCL2, 30))).isEqualTo(-16.7);
        assertThat(solution(CACL2, 40).freezingPoint().temperature()).isEmpty();
    }

    @Test
    void langesMisprintAt19PercentIsMended() {
        // 25.6 °C stands beside 12.2 °F below zero, which is 24.6 °C.
        assertThat(freezing(solution(MGCL2, 19))).isEqualTo(-24.6);
    }

    @ParameterizedTest
    @CsvSource({
        "SODIUM_CHLORIDE, 23.3, -21",
        "CALCIUM_CHLORIDE, 29.8, -51",
        "MAGNESIUM_CHLORIDE, 21.6, -33",
        "CALCIUM_MAGNESIUM_ACETATE, 32.5, -27.5",
        "POTASSIUM_ACETATE, 49, -60",
    })
    void theEutecticsOfTheFederalHighwayAdministration(Salt salt, double percent, double celsius) {
        Eutectic eutectic = salt.eutectics().get(0);

        assertThat(number(eutectic.share())).isEqualTo(percent);
        assertThat(number(eutectic.temperature())).isEqualTo(celsius);
        assertThat(eutectic.source()).startsWith("FHWA-RD-95-202");
    }

    @ParameterizedTest
    @EnumSource(Salt.class)
    void eutecticsComeWeakestFirstAndEachWithItsSource(Salt salt) {
        List<Eutectic> eutectics = salt.eutectics();

        assertThat(eutectics)
                .isNotEmpty()
                .isSortedAccordingTo((a, b) -> Double.compare(number(a.share()), number(b.share())));
        assertThat(eutectics).extracting(Eutectic::source).doesNotHaveDuplicates();
        assertThat(Solution.of(salt, eutectics.get(0).share()).side()).isEqualTo(Side.UP_TO_EUTECTIC);
    }

    @Test
    void theOtherEutectics() {
        assertThat(number(NACL.eutectics().get(1).share())).isEqualTo(23.31);
        assertThat(number(NACL.eutectics().get(1).temperature())).isEqualTo(-21.12);
        assertThat(number(CACL2.eutectics().get(1).share())).isEqualTo(31);
        assertThat(number(CACL2.eutectics().get(1).temperature())).isEqualTo(-50);
        assertThat(number(MGCL2.eutectics().get(1).share())).isEqualTo(22);
        assertRefused(
                "share of a eutectic must be greater than 0: 0 %",
                () -> new Eutectic(percent(0), fahrenheit(0), "somebody"));
        assertRefused(
                "temperature of a eutectic must be 0 or more: -500 °F",
                () -> new Eutectic(percent(20), fahrenheit(-500), "somebody"));
        assertRefused(
                "source of a eutectic must be a text that is not blank: \" \"",
                () -> new Eutectic(percent(20), fahrenheit(0), " "));
    }

    @Test
    void acetatesHaveASideToo() {
        assertThat(solution(Salt.POTASSIUM_ACETATE, 50).side()).isEqualTo(Side.BEYOND_EUTECTIC);
        assertThat(solution(Salt.POTASSIUM_ACETATE, 49).side()).isEqualTo(Side.UP_TO_EUTECTIC);
        assertThat(new Solution(Salt.POTASSIUM_ACETATE, percent(49, 1)).side()).isEqualTo(Side.UNDECIDED);
    }

    @Test
    void valuesAreShipped() {
        assertThat(Shipped.copyOf(brine(20))).isEqualTo(brine(20));
        FreezingPoint with = brine(20).freezingPoint();
        FreezingPoint without = solution(CACL2, 30.5).freezingPoint();
        assertThat(Shipped.copyOf(with)).isEqualTo(with);
        assertThat(Shipped.copyOf(without)).isEqualTo(without);
        assertThat(Shipped.copyOf(NACL.eutectics().get(0)))
                .isEqualTo(NACL.eutectics().get(0));
    }
}
