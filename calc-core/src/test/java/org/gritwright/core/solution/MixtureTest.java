package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.MGCL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.brine;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.density;
import static org.gritwright.core.solution.SolutionSamples.gallons;
import static org.gritwright.core.solution.SolutionSamples.kilograms;
import static org.gritwright.core.solution.SolutionSamples.liters;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.share;
import static org.gritwright.core.solution.SolutionSamples.solution;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class MixtureTest {
    private static Portion of(double kilograms, Solution solution) {
        return new Portion(solution, kilograms(kilograms));
    }

    @Test
    void massesAndSaltAdd() {
        // 26 kg and 4 kg of salt in 140 kg.
        Portion result = Mixture.of(of(100, brine(26)), of(40, brine(10))).result();

        assertThat(number(result.mass())).isCloseTo(140, within(1e-9));
        assertThat(number(result.chemical())).isCloseTo(30, within(1e-9));
        assertThat(number(result.water())).isCloseTo(110, within(1e-9));
        assertThat(share(result.solution())).isCloseTo(100 * 30 / 140.0, within(1e-9));
        assertThat(result.mass().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
    }

    @Test
    void theSharesUncertaintiesAreThoseOfTheParts() {
        Portion result = Mixture.of(
                        of(75, new Solution(NACL, percent(20, 0.4))), of(25, new Solution(NACL, percent(10, 0.8))))
                .result();

        assertThat(uncertainty(result.solution().share())).isCloseTo(Math.hypot(0.3, 0.2), within(1e-9));
        assertThat(Mixture.of(of(75, brine(20)), of(25, new Solution(NACL, Measured.once(percent(10)))))
                        .result()
                        .solution()
                        .share()
                        .standardUncertainty())
                .isEmpty();
    }

    @Test
    void volumesDontAdd() {
        // A kilogram of 23.3 % and 0.165 kg of water make 1.165 kg of 20 %.
        Mixture mixture = Mixture.of(of(1, brine(23.3)), of(0.165, Solution.water(NACL)));
        double apart = 1 / density(brine(23.3), 15) + 0.165 / number(Water.density(celsius(15)));
        double together = 1.165 / density(brine(20), 15);

        assertThat(share(mixture.result().solution())).isCloseTo(20, within(1e-9));
        assertThat(number(mixture.shrinkage(celsius(15), SpreadingUnits.LITER)))
                .isCloseTo(1000 * (apart - together), within(1e-9));
        // By the handbook at 20 °C: 1 ÷ 1.1745 + 0.165 ÷ 0.9982 − 1.165 ÷ 1.1478 L, a few tenths of a percent.
        assertThat(number(mixture.shrinkage(celsius(20), SpreadingUnits.LITER)))
                .isCloseTo(1 / 1.1745 + 0.165 / 0.9982 - 1.165 / 1.1478, within(0.0015));
        assertThat(number(mixture.shrinkage(celsius(15), SpreadingUnits.LITER))).isPositive();
    }

    @Test
    void aPortionIsWeighedOrMeasured() {
        Portion gallon = Portion.ofVolume(brine(20), gallons(100), celsius(20));

        assertThat(gallon.mass().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(number(gallon.mass())).isCloseTo(100 * density(brine(20), 20) / 119.82642731689663, within(1e-6));
        assertThat(number(gallon.volume(celsius(20), SpreadingUnits.US_GALLON))).isCloseTo(100, within(1e-9));
        assertThat(Portion.ofVolume(brine(20), liters(1), celsius(20)).mass().getUnit())
                .isEqualTo(SpreadingUnits.KILOGRAM);
        // ±0.1 % of the density, as limits.
        assertThat(uncertainty(gallon.volume(celsius(20), SpreadingUnits.US_GALLON)))
                .isCloseTo(0.1 / Math.sqrt(3), within(1e-6));
        assertRefused("mass of the solution must be greater than 0: 0 kg", () -> of(0, brine(20)));
        assertRefused(
                "volume of the solution must be greater than 0: 0 gal",
                () -> Portion.ofVolume(brine(20), gallons(0), celsius(20)));
    }

    @Test
    void aMixtureIsOfOneSalt() {
        assertRefused(
                "salt of a mixture must be sodium chloride in all parts, since of mixed salts neither density nor freezing"
                        + " point is computed: calcium chloride",
                () -> Mixture.of(of(1, brine(20)), of(1, solution(CACL2, 20))));
        assertRefused("parts of a mixture must be one or more: none", () -> new Mixture(List.of()));
        assertRefused(
                "parts of a mixture must be at most 100: more",
                () -> new Mixture(Collections.nCopies(101, of(1, brine(20)))));
        assertThat(new Mixture(Collections.nCopies(100, of(1, brine(20)))).parts())
                .hasSize(100);
    }

    @Test
    void ofMixedSaltsOnlyMassesAreSaid() {
        MixedSalts mixed = MixedSalts.of(
                of(60, brine(20)), of(30, solution(CACL2, 30)), of(10, brine(10)), of(100, Solution.water(MGCL2)));

        assertThat(number(mixed.mass())).isCloseTo(200, within(1e-9));
        assertThat(number(mixed.massOf(NACL))).isCloseTo(13, within(1e-9));
        assertThat(number(mixed.massOf(CACL2))).isCloseTo(9, within(1e-9));
        assertThat(number(mixed.massOf(MGCL2))).isZero();
        assertThat(number(mixed.shareOf(NACL))).isCloseTo(6.5, within(1e-9));
        assertThat(number(mixed.water())).isCloseTo(178, within(1e-9));
        assertThat(Arrays.stream(MixedSalts.class.getMethods()).map(method -> method.getName()))
                .noneMatch(name -> name.matches("(?i).*(volume|density|freez).*"));
        assertRefused("parts of a mixture must be one or more: none", () -> new MixedSalts(List.of()));
        assertRefused(
                "parts of a mixture must be at most 100: more",
                () -> new MixedSalts(Collections.nCopies(101, of(1, brine(20)))));
        assertThat(new MixedSalts(Collections.nCopies(100, of(1, brine(20)))).parts())
                .hasSize(100);
    }

    @Test
    void theSquaresPartsAreTheDistancesAcross() {
        BrineSquare square = new BrineSquare(brine(23.3), brine(5), percent(20, 0));

        assertThat(number(square.partOfFirst())).isCloseTo(100 * 15 / 18.3, within(1e-9));
        assertThat(number(square.massOfFirst(kilograms(183)))).isCloseTo(150, within(1e-9));
        assertThat(number(new BrineSquare(brine(5), brine(23.3), percent(20, 0)).partOfFirst()))
                .isCloseTo(100 * 3.3 / 18.3, within(1e-9));
        assertRefused("mass of the mixture must be greater than 0: 0 kg", () -> square.massOfFirst(kilograms(0)));
    }

    @Test
    void allThreeSharesMakeThePartUncertain() {
        // (t − b) ÷ (a − b) with a 20, b 10, t 12.5: by t 1/10, by a −0.25/10, by b −0.75/10.
        BrineSquare square = new BrineSquare(
                new Solution(NACL, percent(20, 0.4)), new Solution(NACL, percent(10, 0.8)), percent(12.5, 0.3));

        assertThat(uncertainty(square.partOfFirst())).isCloseTo(100 * Math.sqrt(0.01 + 0.36 + 0.09) / 10, within(1e-9));
    }

    @Test
    void theSquareIsRefusedOutsideTheTwo() {
        assertRefused(
                "share that is wanted must be between those of the two solutions, 12 % and 10 %: 14 %",
                () -> new BrineSquare(brine(12), brine(10), percent(14, 0)));
        assertRefused(
                "share that is wanted must be between those of the two solutions, 10 % and 12 %: 9 %",
                () -> new BrineSquare(brine(10), brine(12), percent(9, 0)));
        assertRefused(
                "share of sodium chloride in the second solution must be another than in the first: 10 %",
                () -> new BrineSquare(brine(10), brine(10), percent(10, 0)));
        assertRefused(
                "salt of the second solution must be sodium chloride: calcium chloride",
                () -> new BrineSquare(brine(10), solution(CACL2, 20), percent(15, 0)));
        assertThat(number(new BrineSquare(brine(12), brine(10), percent(12, 0)).partOfFirst()))
                .isEqualTo(100);
        BrineSquare none = new BrineSquare(brine(12), brine(10), percent(10, 0));
        assertThat(number(none.partOfFirst())).isZero();
        assertRefused(
                "part of the first solution must be greater than 0: 0.0",
                () -> none.volumeOfSecondPerFirst(celsius(15)));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        Portion portion = of(1, brine(20));
        assertNamesWhatIsMissing(portion);
        assertNamesWhatIsMissing(Mixture.of(portion));
        assertNamesWhatIsMissing(MixedSalts.of(portion));
        assertNamesWhatIsMissing(new BrineSquare(brine(10), brine(20), percent(15, 0)));
        assertNamesWhatIsMissing(new IdealFilm(
                brine(20),
                Amounts.of(40, SpreadingUnits.GRAM_PER_SQUARE_METER),
                Amounts.of(50, SpreadingUnits.GRAM_PER_SQUARE_METER)));
    }

    @Test
    void aFilmDilutesWhatWasApplied() {
        // 40 g with 9.32 g of salt and 50 g of water: 9.32 ÷ 90.
        IdealFilm film = new IdealFilm(
                new Solution(NACL, percent(23.3, 0.9)),
                Amounts.of(40, SpreadingUnits.GRAM_PER_SQUARE_METER),
                Amounts.of(50, SpreadingUnits.GRAM_PER_SQUARE_METER));

        assertThat(share(film.diluted())).isCloseTo(100 * 9.32 / 90, within(1e-9));
        assertThat(uncertainty(film.diluted().share())).isCloseTo(0.4, within(1e-9));
        assertThat(film.idealFreezingPoint()).isEqualTo(film.diluted().freezingPoint());
        assertThat(number(film.idealFreezingPoint().temperature().orElseThrow()))
                .isBetween(-7.5, -6.56);
        assertThat(share(new IdealFilm(
                                brine(20),
                                Amounts.of(40, SpreadingUnits.GRAM_PER_SQUARE_METER),
                                Amounts.of(0, SpreadingUnits.GRAM_PER_SQUARE_METER))
                        .diluted()))
                .isEqualTo(20);
        assertRefused(
                "rate of the solution must be greater than 0: 0 g/m²",
                () -> new IdealFilm(
                        brine(20),
                        Amounts.of(0, SpreadingUnits.GRAM_PER_SQUARE_METER),
                        Amounts.of(50, SpreadingUnits.GRAM_PER_SQUARE_METER)));
        assertRefused(
                "film of water or ice must be 0 or more: -1 g/m²",
                () -> new IdealFilm(
                        brine(20),
                        Amounts.of(40, SpreadingUnits.GRAM_PER_SQUARE_METER),
                        Amounts.of(-1, SpreadingUnits.GRAM_PER_SQUARE_METER)));
    }
}
