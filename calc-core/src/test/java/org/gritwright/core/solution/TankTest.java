package org.gritwright.core.solution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.solution.SolutionSamples.CACL2;
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
import static org.gritwright.core.solution.SolutionSamples.uncertainty;

import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class TankTest {
    private static final SaltSupply DAMP = SaltSupply.damp(NACL, percent(95, 0), percent(4));
    private static final double WATER = 999.702702;

    private static Tank tank(double liters, double percent) {
        return new Tank(liters(5000), liters(liters), brine(percent), celsius(10));
    }

    @Test
    void whatIsTooStrongGetsWater() {
        TankCorrection correction = tank(4000, 25).correctedTo(percent(23.3), DAMP);
        double mass = 4 * density(brine(25), 10);
        double water = mass * (25 / 23.3 - 1);

        assertThat(correction.salt()).isEmpty();
        assertThat(number(correction.water().orElseThrow())).isCloseTo(1000 * water / WATER, within(1e-6));
        assertThat(correction.water().orElseThrow().value().getUnit()).isEqualTo(SpreadingUnits.LITER);
        assertThat(number(correction.filled()))
                .isCloseTo(1000 * (mass + water) / density(brine(23.3), 10), within(1e-6));
        assertThat(number(correction.rest())).isZero();
    }

    @Test
    void whatIsTooWeakGetsSalt() {
        TankCorrection correction = tank(4000, 20).correctedTo(percent(23.3), DAMP);
        Measured<?> salt = correction.salt().orElseThrow();
        double mass = 4 * density(brine(20), 10);
        double chemical = 0.2 * mass + number(salt) * 0.96 * 0.95;
        double solution = mass + number(salt) * (0.96 * 0.95 + 0.04);

        assertThat(correction.water()).isEmpty();
        assertThat(chemical / solution).isCloseTo(0.233, within(1e-12));
        assertThat(salt.value().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertThat(number(correction.filled())).isCloseTo(1000 * solution / density(brine(23.3), 10), within(1e-6));
        assertThat(number(correction.rest())).isCloseTo(number(salt) * 0.96 * 0.05, within(1e-9));
    }

    @Test
    void whatIsRightGetsNothing() {
        TankCorrection correction = tank(4000, 23.3).correctedTo(percent(23.3), DAMP);

        assertThat(correction.salt()).isEmpty();
        assertThat(correction.water()).isEmpty();
        assertThat(number(correction.filled())).isCloseTo(4000, within(1e-9));
    }

    @Test
    void poundsStandBesideGallons() {
        TankCorrection correction = new Tank(gallons(1000), gallons(900), brine(20), celsius(10))
                .correctedTo(percent(23.3), SaltSupply.pure(NACL));

        assertThat(correction.salt().orElseThrow().value().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(correction.filled().getUnit()).isEqualTo(SpreadingUnits.US_GALLON);
        assertThat(correction.rest().getUnit()).isEqualTo(SpreadingUnits.POUND);
    }

    @Test
    void theReadingMakesTheWaterUncertain() {
        Measured<?> water =
                uncertainTank(25, 0.2).correctedTo(percent(23.3), DAMP).water().orElseThrow();
        double up =
                number(tank(4000, 25.2).correctedTo(percent(23.3), DAMP).water().orElseThrow());
        double down =
                number(tank(4000, 24.8).correctedTo(percent(23.3), DAMP).water().orElseThrow());
        double ofDensity = number(water) * 0.001 / Math.sqrt(3);

        assertThat(uncertainty(water)).isCloseTo(Math.hypot((up - down) / 2, ofDensity), within(0.01));
    }

    private static Tank uncertainTank(double percent, double uncertainty) {
        return new Tank(liters(5000), liters(4000), new Solution(NACL, percent(percent, uncertainty)), celsius(10));
    }

    @Test
    void theReadingAndTheAssayMakeTheSaltUncertain() {
        Measured<?> salt =
                uncertainTank(20, 0.2).correctedTo(percent(23.3), DAMP).salt().orElseThrow();
        double up =
                number(tank(4000, 20.2).correctedTo(percent(23.3), DAMP).salt().orElseThrow());
        double down =
                number(tank(4000, 19.8).correctedTo(percent(23.3), DAMP).salt().orElseThrow());
        double ofDensity = number(salt) * 0.001 / Math.sqrt(3);
        double ofReading = Math.hypot((down - up) / 2, ofDensity);

        assertThat(uncertainty(salt)).isCloseTo(ofReading, within(0.01));

        SaltSupply assayed = new SaltSupply(NACL, percent(91.2, 1), percent(4));
        double rich = salt(new SaltSupply(NACL, percent(91.3, 0), percent(4)));
        double poor = salt(new SaltSupply(NACL, percent(91.1, 0), percent(4)));
        Measured<?> both = uncertainTank(20, 0.2)
                .correctedTo(percent(23.3), assayed)
                .salt()
                .orElseThrow();
        assertThat(uncertainty(both)).isCloseTo(Math.hypot(ofReading, 5 * (poor - rich)), within(0.02));
    }

    private static double salt(SaltSupply supply) {
        return number(tank(4000, 20).correctedTo(percent(23.3), supply).salt().orElseThrow());
    }

    @Test
    void ofAnExactReadingTheTablesAloneMakeTheAmountsUncertain() {
        Measured<?> water =
                tank(4000, 25).correctedTo(percent(23.3), DAMP).water().orElseThrow();
        Measured<?> salt =
                tank(4000, 20).correctedTo(percent(23.3), DAMP).salt().orElseThrow();

        assertThat(uncertainty(water)).isCloseTo(number(water) * 0.001 / Math.sqrt(3), within(1e-9));
        assertThat(uncertainty(salt)).isCloseTo(number(salt) * 0.001 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void whatIsMissingIsNamed() throws ReflectiveOperationException {
        assertNamesWhatIsMissing(tank(4000, 20));
        assertNamesWhatIsMissing(tank(4000, 20).correctedTo(percent(23.3), DAMP));
        assertNamesWhatIsMissing(batch(25, 50));
    }

    @Test
    void whatTheTankCantHoldIsRefused() {
        assertRefused("capacity of the tank must be at least 5001 L, the solution in it: 5000 L", () -> tank(5001, 20));
        assertThat(number(tank(5000, 20).filled())).isEqualTo(5000);
        assertRefused(
                "capacity of the tank must be at least " + after(25, 10)
                        + " L, what is in it after water is added: 5000 L",
                () -> tank(4000, 25).correctedTo(percent(10), DAMP));
        assertRefused(
                "capacity of the tank must be at least " + afterSalt()
                        + " L, what is in it after salt is added: 5000 L",
                () -> tank(4999, 20).correctedTo(percent(23.3), SaltSupply.pure(NACL)));
    }

    private static String after(double from, double to) {
        return Rounded.text(
                        new Tank(liters(50000), liters(4000), brine(from), celsius(10))
                                .correctedTo(percent(to), DAMP)
                                .filled(),
                        6)
                .replace(" L", "");
    }

    private static String afterSalt() {
        return Rounded.text(
                        new Tank(liters(50000), liters(4999), brine(20), celsius(10))
                                .correctedTo(percent(23.3), SaltSupply.pure(NACL))
                                .filled(),
                        6)
                .replace(" L", "");
    }

    @Test
    void tanksAndTargetsAreChecked() {
        assertRefused(
                "capacity of the tank must be greater than 0: 0 L",
                () -> new Tank(liters(0), liters(1), brine(20), celsius(10)));
        assertRefused("content of the tank must be greater than 0: 0 L", () -> tank(0, 20));
        assertRefused(
                "temperature of the water must be within 0 °C to 40 °C: -5 °C",
                () -> new Tank(liters(5000), liters(1), brine(20), celsius(-5)));
        assertRefused(
                "share of sodium chloride at 10 °C must be within 0 % to 26.36 %: 26.5 %", () -> tank(4000, 26.5));
        assertRefused(
                "share of sodium chloride at 10 °C must be within 0 % to 26.36 %: 26.5 %",
                () -> tank(4000, 20).correctedTo(percent(26.5), DAMP));
        assertRefused(
                "share that is wanted must be greater than 0: 0 %",
                () -> tank(4000, 20).correctedTo(percent(0), DAMP));
        assertRefused(
                "salt supply must be sodium chloride: calcium chloride",
                () -> tank(4000, 20).correctedTo(percent(23), SaltSupply.pure(CACL2)));
        assertRefused(
                "share of sodium chloride must be below what the salt makes with its own water, 22 %: 23 %",
                () -> tank(4000, 20).correctedTo(percent(23), new SaltSupply(NACL, percent(22, 0), percent(78))));
    }

    private static BatchPlan batch(double massStep, double volumeStep) {
        return new BatchPlan(
                new Recipe(brine(23.3), DAMP, celsius(10)),
                liters(4000),
                liters(5000),
                kilograms(massStep),
                liters(volumeStep));
    }

    @Test
    void aBatchIsInWholeSteps() {
        BatchPlan plan = batch(25, 50);
        double exactSalt = 4 * density(brine(23.3), 10) * 0.233 / 0.912;
        double exactWater = 4000 * number(new Recipe(brine(23.3), DAMP, celsius(10)).waterPerBrine()) / 100;

        assertThat(number(plan.salt())).isEqualTo(25 * Math.rint(exactSalt / 25));
        assertThat(number(plan.water())).isEqualTo(50 * Math.rint(exactWater / 50));
        assertThat(plan.salt().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
        assertThat(plan.water().getUnit()).isEqualTo(SpreadingUnits.LITER);
    }

    @Test
    void whatComesOutIsThatOfTheRoundedAmounts() {
        BatchPlan plan = batch(25, 50);
        double salt = number(plan.salt());
        double chemical = salt * 0.912;
        double whole = salt * 0.952 + number(plan.water()) / 1000 * WATER;

        assertThat(share(plan.result().solution())).isCloseTo(100 * chemical / whole, within(1e-6));
        assertThat(share(plan.result().solution())).isNotEqualTo(23.3).isCloseTo(23.3, within(0.4));
        assertThat(number(plan.result().mass())).isCloseTo(whole, within(1e-4));
        assertThat(number(plan.volume()))
                .isCloseTo(1000 * whole / density(plan.result().solution(), 10), within(1e-3));
        assertThat(number(plan.rest())).isCloseTo(salt * 0.048, within(1e-9));
        assertThat(plan.rest().getUnit()).isEqualTo(SpreadingUnits.KILOGRAM);
    }

    @Test
    void fineStepsGiveWhatIsWanted() {
        BatchPlan plan = batch(0.001, 0.001);

        assertThat(share(plan.result().solution())).isCloseTo(23.3, within(1e-4));
        assertThat(number(plan.volume())).isCloseTo(4000, within(0.01));
        assertThat(uncertainty(plan.result().solution().share())).isZero();
    }

    @Test
    void theAssayMakesTheResultUncertain() {
        Recipe recipe = new Recipe(brine(23.3), new SaltSupply(NACL, percent(91.2, 1), percent(4)), celsius(10));
        BatchPlan plan = new BatchPlan(recipe, liters(4000), liters(5000), kilograms(1), liters(1));

        // A hundredth of the salt's mass more chemical, and so much more solution.
        double salt = number(plan.salt());
        double whole = number(plan.result().mass());
        double up = (0.922 * salt) / (whole + 0.01 * salt) - (0.902 * salt) / (whole - 0.01 * salt);
        assertThat(uncertainty(plan.result().solution().share())).isCloseTo(100 * up / 2, within(1e-3));
    }

    @Test
    void batchesAreChecked() {
        assertRefused("step of the mass must be greater than 0: 0 kg", () -> batch(0, 50));
        assertRefused("step of the volume must be greater than 0: 0 L", () -> batch(25, 0));
        assertRefused("step of the mass must be fine enough for the salt: 3000 kg", () -> batch(3000, 50));
        assertRefused("step of the volume must be fine enough for the water: 9000 L", () -> batch(25, 9000));
        Recipe recipe = new Recipe(brine(23.3), DAMP, celsius(10));
        assertRefused(
                "volume of the batch must be greater than 0: 0 L",
                () -> new BatchPlan(recipe, liters(0), liters(1), kilograms(1), liters(1)));
        assertRefused(
                "capacity of the tank must be greater than 0: 0 L",
                () -> new BatchPlan(recipe, liters(1), liters(0), kilograms(1), liters(1)));
        String comesOut = Rounded.text(batch(25, 50).volume(), 6);
        assertRefused(
                "capacity of the tank must be at least " + comesOut + ", the finished batch: 3900 L",
                () -> new BatchPlan(recipe, liters(4000), liters(3900), kilograms(25), liters(50)));
    }
}
