package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
import static org.gritwright.core.solution.SolutionSamples.MGCL2;
import static org.gritwright.core.solution.SolutionSamples.NACL;
import static org.gritwright.core.solution.SolutionSamples.celsius;
import static org.gritwright.core.solution.SolutionSamples.density;
import static org.gritwright.core.solution.SolutionSamples.freezing;
import static org.gritwright.core.solution.SolutionSamples.kilograms;
import static org.gritwright.core.solution.SolutionSamples.number;
import static org.gritwright.core.solution.SolutionSamples.percent;
import static org.gritwright.core.solution.SolutionSamples.share;
import static org.gritwright.core.solution.SolutionSamples.solution;
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import javax.measure.quantity.Temperature;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.BulkDensity;

class SolutionLawsTest {
    /** A salt, a temperature at which densities are known, and two strengths that are known there, the first weaker. */
    record Case(Salt salt, double celsius, double weaker, double stronger) {}

    @Provide
    Arbitrary<Case> cases() {
        return Combinators.combine(
                        Arbitraries.of(NACL, CACL2, MGCL2),
                        Arbitraries.doubles().between(0, 1).ofScale(4),
                        Arbitraries.doubles().between(0, 1).ofScale(4),
                        Arbitraries.doubles().between(0.0001, 1).ofScale(4))
                .as((salt, warmth, first, further) -> {
                    DensityModel model = salt.densities();
                    double coldest = model.coldestOfAll();
                    double celsius = Math.rint(1000 * (coldest + warmth * (40 - coldest))) / 1000;
                    DensityModel.Range range = model.range(celsius);
                    double width = range.highestPercent() - range.lowestPercent();
                    double weaker = range.lowestPercent() + first * width;
                    double stronger = weaker + further * (range.highestPercent() - weaker);
                    return new Case(salt, celsius, weaker, stronger);
                });
    }

    @Property
    void densityRisesWithTheStrengthThroughout(@ForAll("cases") Case at) {
        double weaker = density(solution(at.salt(), at.weaker()), at.celsius());
        double stronger = density(solution(at.salt(), at.stronger()), at.celsius());

        if (at.stronger() - at.weaker() > 1e-9) {
            assertThat(stronger).isGreaterThan(weaker);
        }
    }

    @Property
    void densityGoesToAShareAndBack(@ForAll("cases") Case at) {
        Solution solution = solution(at.salt(), at.stronger());
        Solution back =
                Concentration.byDensity(at.salt(), solution.density(celsius(at.celsius())), celsius(at.celsius()));

        assertThat(share(back)).isCloseTo(at.stronger(), within(1e-8));
        assertThat(density(back, at.celsius())).isCloseTo(density(solution, at.celsius()), within(1e-7));
    }

    /** From 4 °C on, where water is densest; below it where the data are for the cold. Between them the data don't say so. */
    @Property
    void densityFallsWithTheTemperature(
            @ForAll("cases") Case at, @ForAll @DoubleRange(min = 0.01, max = 10) double warmer) {
        double warm = at.celsius() + warmer;
        DensityModel model = at.salt().densities();
        boolean both = at.celsius() >= 4 || warm <= model.coldest();
        if (both && warm <= 40 && at.stronger() <= model.range(warm).highestPercent()) {
            Solution solution = solution(at.salt(), at.stronger());
            assertThat(density(solution, warm)).isLessThanOrEqualTo(density(solution, at.celsius()));
            if (at.celsius() >= Math.max(4, model.coldest())) {
                assertThat(density(solution, warm)).isLessThan(density(solution, at.celsius()));
            }
        }
    }

    @Property
    void freezingPointsFallUpToTheEutecticAndRiseBeyondIt(
            @ForAll("withFreezing") Salt salt,
            @ForAll @DoubleRange(min = 0, max = 1) double first,
            @ForAll @DoubleRange(min = 0, max = 1) double second) {
        FreezingCurve curve = salt.freezing();
        double weak = Math.min(first, second);
        double strong = Math.max(first, second);
        double eutectic = curve.weakestEutectic();
        if (strong - weak > 1e-6) {
            assertThat(freezing(solution(salt, strong * eutectic)))
                    .isLessThan(freezing(solution(salt, weak * eutectic)));
            if (curve.stronger().isPresent()) {
                double beyond = curve.strongestEutectic();
                double width = curve.highest() - beyond;
                assertThat(freezing(solution(salt, beyond + strong * width)))
                        .isGreaterThan(freezing(solution(salt, beyond + weak * width)));
            }
        }
    }

    @Provide
    Arbitrary<Salt> withFreezing() {
        return Arbitraries.of(NACL, CACL2, MGCL2);
    }

    @Property
    void aFreezingPointGoesToBothSharesAndBack(
            @ForAll("withFreezing") Salt salt, @ForAll @DoubleRange(min = 0, max = 1) double part) {
        Solution solution = solution(salt, part * salt.freezing().weakestEutectic());
        Measured<Temperature> point = solution.freezingPoint().temperature().orElseThrow();
        FreezingMatch match = Concentration.byFreezingPoint(salt, point);

        assertThat(share(match.weaker())).isCloseTo(share(solution), within(1e-6));
        match.stronger().ifPresent(stronger -> {
            assertThat(freezing(stronger)).isCloseTo(number(point), within(1e-6));
            assertThat(stronger.side()).isEqualTo(Side.BEYOND_EUTECTIC);
        });
    }

    /** Never one temperature for two strengths without saying so: what is said is on the side that is said. */
    @Property
    void everyFreezingPointSaysItsSide(
            @ForAll("withFreezing") Salt salt, @ForAll @DoubleRange(min = 0, max = 1) double part) {
        FreezingCurve curve = salt.freezing();
        Solution solution = solution(salt, part * curve.highest());
        FreezingPoint point = solution.freezingPoint();
        double weakest = number(salt.eutectics().get(0).share());

        assertThat(point.side() == Side.UP_TO_EUTECTIC).isEqualTo(part * curve.highest() <= weakest + 1e-9);
        assertThat(solution.findings().isEmpty()).isEqualTo(point.side() == Side.UP_TO_EUTECTIC);
        if (point.side() == Side.UNDECIDED) {
            assertThat(point.temperature()).isEmpty();
        }
    }

    @Provide
    Arbitrary<Portion> portions() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.5, 5000).ofScale(3),
                        Arbitraries.doubles().between(0, 26).ofScale(3),
                        Arbitraries.doubles().between(0, 1).ofScale(3))
                .as((mass, share, u) -> new Portion(new Solution(NACL, percent(share, u)), kilograms(mass)));
    }

    @Property
    void mixingConservesMassSaltAndWater(@ForAll @Size(min = 1, max = 6) List<@From("portions") Portion> parts) {
        Portion result = new Mixture(parts).result();

        assertThat(number(result.mass()))
                .isCloseTo(parts.stream().mapToDouble(p -> number(p.mass())).sum(), within(1e-7));
        assertThat(number(result.chemical()))
                .isCloseTo(parts.stream().mapToDouble(p -> number(p.chemical())).sum(), within(1e-7));
        assertThat(number(result.water()))
                .isCloseTo(parts.stream().mapToDouble(p -> number(p.water())).sum(), within(1e-7));
    }

    private static void alike(Portion one, Portion other) {
        assertThat(number(one.mass())).isCloseTo(number(other.mass()), within(1e-7));
        assertThat(share(one.solution())).isCloseTo(share(other.solution()), within(1e-9));
        assertThat(uncertainty(one.solution().share()))
                .isCloseTo(uncertainty(other.solution().share()), within(1e-9));
    }

    @Property
    void mixingIsCommutative(@ForAll @Size(min = 2, max = 6) List<@From("portions") Portion> parts, @ForAll long seed) {
        List<Portion> shuffled = new ArrayList<>(parts);
        Collections.shuffle(shuffled, new Random(seed));

        alike(new Mixture(parts).result(), new Mixture(shuffled).result());
    }

    @Property
    void mixingIsAssociative(
            @ForAll("portions") Portion one, @ForAll("portions") Portion two, @ForAll("portions") Portion three) {
        Portion left = Mixture.of(Mixture.of(one, two).result(), three).result();
        Portion right = Mixture.of(one, Mixture.of(two, three).result()).result();

        alike(left, right);
        alike(left, Mixture.of(one, two, three).result());
    }

    @Property
    void ofMixedSaltsEachIsConserved(
            @ForAll("portions") Portion one,
            @ForAll @DoubleRange(min = 1, max = 1000) double mass,
            @ForAll @DoubleRange(min = 0, max = 40) double percent) {
        Portion other = new Portion(solution(CACL2, percent), kilograms(mass));
        MixedSalts mixed = MixedSalts.of(one, other, one);

        assertThat(number(mixed.massOf(NACL))).isCloseTo(2 * number(one.chemical()), within(1e-8));
        assertThat(number(mixed.massOf(CACL2))).isCloseTo(number(other.chemical()), within(1e-8));
        assertThat(number(mixed.massOf(NACL)) + number(mixed.massOf(CACL2)) + number(mixed.water()))
                .isCloseTo(number(mixed.mass()), within(1e-7));
        assertThat(number(mixed.shareOf(NACL)) * number(mixed.mass()) / 100)
                .isCloseTo(number(mixed.massOf(NACL)), within(1e-8));
    }

    @Property
    void theSquareFindsWhatWasMixed(@ForAll("portions") Portion one, @ForAll("portions") Portion two) {
        if (Math.abs(share(one.solution()) - share(two.solution())) > 0.01) {
            Portion mixed = Mixture.of(one, two).result();
            BrineSquare square = new BrineSquare(
                    one.solution(), two.solution(), mixed.solution().share());

            assertThat(number(square.massOfFirst(mixed.mass()))).isCloseTo(number(one.mass()), within(1e-6));
            double volumes = number(two.volume(celsius(10), SpreadingUnits.LITER))
                    / number(one.volume(celsius(10), SpreadingUnits.LITER));
            assertThat(number(square.volumeOfSecondPerFirst(celsius(10))) / 100)
                    .isCloseTo(volumes, within(1e-6 * volumes));
        }
    }

    @Property
    void unitsDontMatter(@ForAll("cases") Case at) {
        Solution solution = solution(at.salt(), at.weaker());
        Solution ratio = Solution.of(at.salt(), Amounts.of(at.weaker() / 100, SpreadingUnits.ONE));
        var fahrenheit = Amounts.of(at.celsius() * 1.8 + 32, SpreadingUnits.FAHRENHEIT);
        var kelvin = Amounts.of(at.celsius() + 273.15, SpreadingUnits.KELVIN);

        double expected = density(solution, at.celsius());
        assertThat(number(ratio.density(fahrenheit))).isCloseTo(expected, within(1e-6));
        assertThat(number(solution.density(kelvin))).isCloseTo(expected, within(1e-6));
        Measured<BulkDensity> pounds = Measured.of(
                Amounts.of(expected / 119.82642731689663, SpreadingUnits.POUND_PER_US_GALLON),
                Amounts.of(0, SpreadingUnits.POUND_PER_US_GALLON),
                Double.POSITIVE_INFINITY);
        assertThat(share(Concentration.byDensity(at.salt(), pounds, fahrenheit)))
                .isCloseTo(at.weaker(), within(1e-6));
    }

    @Property
    void aCorrectionMakesWhatIsWanted(
            @ForAll @DoubleRange(min = 1, max = 26) double from,
            @ForAll @DoubleRange(min = 1, max = 26) double to,
            @ForAll @DoubleRange(min = 1, max = 10) double moisture,
            @ForAll @DoubleRange(min = 60, max = 100) double purity) {
        var liters = Amounts.of(1000.0, SpreadingUnits.LITER);
        Tank tank = new Tank(Amounts.of(100000.0, SpreadingUnits.LITER), liters, solution(NACL, from), celsius(12));
        Portion content = Portion.ofVolume(solution(NACL, from), liters, celsius(12));
        SaltSupply supply = SaltSupply.damp(NACL, percent(purity, 0), percent(moisture));
        TankCorrection correction = tank.correctedTo(percent(to), supply);

        double salt = correction.salt().map(SolutionSamples::number).orElse(0.0);
        double water =
                correction.water().map(SolutionSamples::number).orElse(0.0) * number(Water.density(celsius(12))) / 1000;
        double chemical = number(content.chemical()) + salt * supply.chemicalRatio();
        double whole = number(content.mass()) + water + salt * (supply.chemicalRatio() + supply.waterRatio());
        assertThat(100 * chemical / whole).isCloseTo(to, within(1e-9));
        assertThat(number(correction.rest())).isCloseTo(salt * supply.restRatio(), within(1e-9));
        assertThat(salt >= 0 && water >= 0 && salt * water == 0).isTrue();
        assertThat(number(correction.filled())).isCloseTo(1000 * whole / density(solution(NACL, to), 12), within(1e-6));
    }

    @Property
    void aBatchInFineStepsIsWhatIsWanted(
            @ForAll @DoubleRange(min = 1, max = 26) double to,
            @ForAll @DoubleRange(min = 0, max = 10) double moisture,
            @ForAll @DoubleRange(min = 60, max = 100) double purity) {
        SaltSupply supply = SaltSupply.damp(NACL, percent(purity, 0), percent(moisture));
        Recipe recipe = new Recipe(solution(NACL, to), supply, celsius(12));
        BatchPlan plan = new BatchPlan(
                recipe,
                Amounts.of(1000.0, SpreadingUnits.LITER),
                Amounts.of(1001.0, SpreadingUnits.LITER),
                kilograms(0.001),
                Amounts.of(0.001, SpreadingUnits.LITER));

        assertThat(share(plan.result().solution())).isCloseTo(to, within(1e-3));
        assertThat(number(plan.volume())).isCloseTo(1000, within(0.01));
        assertThat(number(plan.salt()) / number(plan.water()) * 1000)
                .isCloseTo(number(recipe.saltPerWater().massPerWater()), within(0.01));
        assertThat(number(plan.salt())).isCloseTo(number(recipe.saltPerBrine().massPerBrine()), within(0.01));
    }

    @Property
    void aFilmNeverMakesASolutionUpToTheEutecticColder(
            @ForAll @DoubleRange(min = 0, max = 23.3) double percent,
            @ForAll @DoubleRange(min = 1, max = 1000) double rate,
            @ForAll @DoubleRange(min = 0, max = 1000) double film) {
        IdealFilm ideal = new IdealFilm(
                solution(NACL, percent),
                Amounts.of(rate, SpreadingUnits.GRAM_PER_SQUARE_METER),
                Amounts.of(film, SpreadingUnits.GRAM_PER_SQUARE_METER));

        assertThat(share(ideal.diluted()) * (rate + film)).isCloseTo(percent * rate, within(1e-7));
        assertThat(number(ideal.idealFreezingPoint().temperature().orElseThrow()))
                .isGreaterThanOrEqualTo(freezing(solution(NACL, percent)) - 1e-9);
    }
}
