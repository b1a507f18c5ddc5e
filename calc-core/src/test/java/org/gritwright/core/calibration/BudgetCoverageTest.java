package org.gritwright.core.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.AUGER_POINT;
import static org.gritwright.core.Samples.catchAt;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.gritwright.core.KnownScatter;
import org.gritwright.core.Page;
import org.gritwright.core.SimulatedDay;
import org.gritwright.core.statistics.RatioEstimate;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * How often a calibration's 95 % interval holds the true mass per revolution, on 4000 made-up days a scenario with the
 * seeds 0 to 3999. The scenarios are all combinations of what is stated here; none was left out for what came of it.
 *
 * <p>Where the scatter is stated, firmly or as it was found from five catches before, and where nothing is stated and trucks
 * scatter by all of 0.3 to 3 %, the interval has to hold the truth in 93 to 97 % of the days. For a truck that scatters by more
 * than the 1 % that is assumed of it, it is too narrow: how often it holds is computed and documented.
 */
class BudgetCoverageTest {
    private static final int DAYS = 4000;
    private static final double TRUTH = 6;
    private static final double SCATTER = 0.02;
    private static final List<Integer> CATCHES = List.of(1, 2, 3, 5, 8);
    private static final List<Double> RATIOS = List.of(0.0, 0.5, 1.0, 2.0);

    private static double share(IntPredicate holds) {
        return IntStream.range(0, DAYS).parallel().filter(holds).count() / (double) DAYS;
    }

    private static boolean holdsTruth(Measured<?> measured) {
        double halfWidth =
                measured.expandedUncertainty(0.95).orElseThrow().getValue().doubleValue();
        return Math.abs(measured.value().getValue().doubleValue() - TRUTH) <= halfWidth;
    }

    /** Trucks of which as many scatter by less than 0.95 % as by more, as many by 0.3 to 0.53 % as by 1.7 to 3 %. */
    private static final double ALL_KINDS = 0;

    /**
     * Catches of a truck, with a systematic part of the mean's uncertainty that is so many times the random part: half of it
     * by spillage and the rest by the scale's span, each rectangular and fixed for a day.
     *
     * @param scatter of the truck's catches, or {@link #ALL_KINDS}
     */
    private record Scenario(KnownScatter known, double scatter, int catches, double ratio) {
        boolean holds(int seed) {
            SplittableRandom random = new SplittableRandom(seed);
            SplittableRandom ofTruck = random.split();
            double truly = scatter == ALL_KINDS ? 0.003 * Math.pow(10, ofTruck.nextDouble()) : scatter;
            double systematic = ratio * truly / Math.sqrt(catches);
            // From none to this, so that half of it is on either side of the middle.
            double greatestSpillage = 2 * Math.sqrt(3) * systematic / 2;
            double greatestSpan = Math.sqrt(3) * Math.sqrt(0.75) * systematic;
            SimulatedDay day = new SimulatedDay(random, "S-1", greatestSpan, greatestSpillage);
            List<CalibrationCatch> made = new ArrayList<>();
            for (int i = 0; i < catches; i++) {
                SimulatedDay.Caught caught = day.of(TRUTH, 20, truly);
                made.add(catchAt(AUGER_POINT, caught.mass(), caught.count()));
            }
            return holdsTruth(Calibration.from(
                            made,
                            RatioEstimator.RATIO_OF_SUMS,
                            SimulatedDay.limits(greatestSpillage, known.of(truly, ofTruck)))
                    .dischargePerRevolution());
        }

        double coverage() {
            return share(this::holds);
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"RATIO_OF_SUMS", "MEAN_OF_RATIOS"})
    void studentsIntervalsOfTwoToTenRepeatsHoldTheTruthAsOftenAsTheySay(RatioEstimator estimator) {
        for (int catches = 2; catches <= 10; catches++) {
            int n = catches;
            double coverage = share(seed -> {
                SplittableRandom random = new SplittableRandom(seed);
                double[] revolutions = random.doubles(n, 18, 22).toArray();
                double[] masses = new double[n];
                for (int i = 0; i < n; i++) {
                    masses[i] = TRUTH * revolutions[i] * (1 + SCATTER * random.nextGaussian());
                }
                RatioEstimate estimate = estimator.estimate(masses, revolutions);
                return holdsTruth(Measured.of(
                        Amounts.of(estimate.ratio(), SpreadingUnits.POUND_PER_REVOLUTION),
                        Amounts.of(estimate.standardUncertainty().orElseThrow(), SpreadingUnits.POUND_PER_REVOLUTION),
                        estimate.degreesOfFreedom()));
            });

            assertThat(coverage).as("%d catches", n).isBetween(0.93, 0.97);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = KnownScatter.class,
            names = {"FIRMLY", "FROM_FIVE_CATCHES"})
    void whereTheScatterIsStatedTheTruthIsHeldAsOftenAsIsSaid(KnownScatter known) {
        for (int catches : CATCHES) {
            for (double ratio : RATIOS) {
                Scenario scenario = new Scenario(known, SCATTER, catches, ratio);
                assertThat(scenario.coverage()).as("%s", scenario).isBetween(0.93, 0.97);
            }
        }
    }

    /** A single catch without systematic errors is surer than it says: up to 3 % are far too much for most trucks. */
    @Test
    void whereNothingIsStatedTheTruthIsHeldAsOftenAsIsSaidOfTrucksOfAllKinds() {
        for (int catches : CATCHES) {
            for (double ratio : RATIOS) {
                Scenario scenario = new Scenario(KnownScatter.NOTHING, ALL_KINDS, catches, ratio);
                assertThat(scenario.coverage()).as("%s", scenario).isBetween(0.93, catches < 3 ? 0.985 : 0.97);
            }
        }
    }

    @Test
    void whereNothingIsStatedTheTruthOfATruckThatScattersAsAssumedIsHeldAtLeastAsOftenAsIsSaid() {
        for (int catches : CATCHES) {
            for (double ratio : new double[] {0.5, 2}) {
                Scenario scenario = new Scenario(KnownScatter.NOTHING, 0.01, catches, ratio);
                assertThat(scenario.coverage()).as("%s", scenario).isGreaterThan(0.95 - 4 * DEVIATION);
            }
        }
    }

    /** Of a share of 95 % of the days. */
    private static final double DEVIATION = Math.sqrt(0.95 * 0.05 / DAYS);

    /**
     * The limit of what is assumed: a truck that scatters by two or three times as much. One catch of it holds the truth the
     * less often the more its spillage and span could tell of the uncertainty, for Student's factor is then that of many
     * degrees of freedom. More catches show it, but an F test refutes 1 % of 2 degrees of freedom late.
     */
    @Test
    void whereNothingIsStatedTheTruthOfATruckThatScattersMoreIsHeldLessOften() {
        assertThat(new Scenario(KnownScatter.NOTHING, 0.02, 1, 0.5).coverage()).isBetween(0.84, 0.88);
        assertThat(new Scenario(KnownScatter.NOTHING, 0.03, 1, 0.5).coverage()).isBetween(0.71, 0.76);
        for (double ratio : new double[] {0.5, 2}) {
            for (double scatter : new double[] {0.02, 0.03}) {
                double three = new Scenario(KnownScatter.NOTHING, scatter, 3, ratio).coverage();
                double ten = new Scenario(KnownScatter.NOTHING, scatter, 10, ratio).coverage();
                assertThat(three).as("3 catches, %s, ratio %s", scatter, ratio).isBetween(0.86, 0.96);
                assertThat(ten).as("10 catches, %s, ratio %s", scatter, ratio).isBetween(0.93, 0.97);
            }
        }
    }

    /** Catches that are all but alike and known to be, so that rounding and count are all. */
    @Test
    void whereRoundingIsAllItHoldsTheTruth() {
        for (int catches : new int[] {1, 3, 5}) {
            assertThat(new Scenario(KnownScatter.FIRMLY, 1e-6, catches, 0).coverage())
                    .as("%d catches", catches)
                    .isGreaterThan(0.93);
        }
    }

    @Test
    void theCoverageIsComputed() throws IOException {
        StringBuilder table = new StringBuilder("""
            True value 6 lb/rev; catches of 20 revolutions; a scale that reads to half a pound; 100 pulses per
            revolution. The systematic uncertainty of the mean (half of it from spillage, the rest from the scale's
            span) is half of its random uncertainty. In the first column the scatter of 2 % was found from five
            catches before and is stated so; in the others nothing is stated: of trucks whose catches scatter by all
            of 0.3 to 3 %, and of trucks whose catches scatter by just so much.

            | catches | stated | 0.3 to 3 % | 0.5 % | 1 % | 2 % | 3 % |
            |---|---|---|---|---|---|---|
            """);
        for (int catches : new int[] {1, 2, 3, 5, 8, 10}) {
            table.append("| ").append(catches);
            append(table, new Scenario(KnownScatter.FROM_FIVE_CATCHES, SCATTER, catches, 0.5));
            for (double scatter : new double[] {ALL_KINDS, 0.005, 0.01, 0.02, 0.03}) {
                append(table, new Scenario(KnownScatter.NOTHING, scatter, catches, 0.5));
            }
            table.append(" |\n");
        }
        Page.UNCERTAINTY.assertHolds("budget coverage", table.toString());
    }

    private static void append(StringBuilder table, Scenario scenario) {
        table.append(String.format(Locale.ROOT, " | %.1f %%", 100 * scenario.coverage()));
    }
}
