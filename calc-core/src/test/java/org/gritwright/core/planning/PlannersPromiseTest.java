package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scale;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.FDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the planner promises, kept in simulated days: the true mass per revolution is within the wanted uncertainty of the
 * one that is found in 95 % of the days, and the uncertainty that is found is at most the wanted one in half of them.
 *
 * <p>A day: the scale has a span error anywhere within its limit; each catch scatters normally by s₀, stops anywhere in a
 * revolution, is counted in pulses of random phase, and lies in pails of their own tares, whose gross and tare are read to
 * the scale's division. It is evaluated as a calibration is: Σ mass ÷ Σ revolutions, with the scatter that the plan assumes,
 * pooled with that of the catches; where the catches are shown to scatter more, with theirs alone. The scatter is stated firmly,
 * or as if it had been found with 2 degrees of freedom. The scenarios were written down before any was run, and all are here.
 */
class PlannersPromiseTest {
    private static final int DAYS = 4000;
    private static final double TRUE_POUNDS = 5;

    /** The degrees of freedom of what is simply stated. */
    private static final double FIRM = Double.POSITIVE_INFINITY;

    /** Four standard deviations of a share of 95 % below it would be 93.6 %. */
    private static final double LEAST_COVERAGE = 0.94;

    /**
     * A yard, a truck and a wish.
     *
     * @param kit "fine" or "coarse"
     * @param scatter s₀ that the plan assumes, in percent
     * @param degrees with which s₀ is stated
     * @param trueScatter s₀ of the machine, in percent
     * @param sameTares whether each catch lies in the same pails, weighed empty once
     */
    record Scenario(
            String kit,
            double scatter,
            double degrees,
            double trueScatter,
            boolean sameTares,
            int fewestRepeats,
            double wanted) {

        Scenario withSameTares() {
            return new Scenario(kit, scatter, degrees, trueScatter, true, fewestRepeats, wanted);
        }

        double spanLimit() {
            return kit.equals("fine") ? 0.001 : 0.005;
        }

        Scale used() {
            return kit.equals("fine") ? scale(0.1, 0.1) : scale(1, 0.5);
        }

        double pulsesPerRevolution() {
            return kit.equals("fine") ? 60 : 8;
        }

        PlanResult plan() {
            CatchSetup setup = CatchSetup.of(
                            used(),
                            DAY,
                            new Containers(6, pounds(50), pounds(4)),
                            new PlannedCount.Pulses(
                                    Amounts.of(pulsesPerRevolution(), SpreadingUnits.PULSE_PER_REVOLUTION)),
                            Amounts.of(TRUE_POUNDS, SpreadingUnits.POUND_PER_REVOLUTION))
                    .allowing(new CatchAllowances(
                            percent(0),
                            percent(0),
                            Optional.empty(),
                            Optional.of(new Repeatability(percent(scatter), degrees))));
            return CatchPlanner.of(setup, fewestRepeats, CatchPlanner.MOST_REPEATS)
                    .plan(percent(wanted));
        }
    }

    /** What the days came to: the share with the truth within the wanted uncertainty, and the median found one. */
    record Kept(double coverage, double median) {}

    static Stream<Scenario> scenarios() {
        List<Scenario> all = new ArrayList<>();
        for (String kit : List.of("fine", "coarse")) {
            for (double scatter : new double[] {0.5, 2}) {
                for (double degrees : new double[] {FIRM, 2}) {
                    for (int fewest : new int[] {1, 3}) {
                        for (double wanted : new double[] {1, 1.5, 2, 3, 5}) {
                            all.add(new Scenario(kit, scatter, degrees, scatter, false, fewest, wanted));
                        }
                    }
                }
            }
        }
        return all.stream();
    }

    private static double rounded(double mass, double division) {
        return Math.rint(mass / division) * division;
    }

    private static Kept simulate(Scenario scenario, CatchSeries series) {
        SplittableRandom random = new SplittableRandom(20261019);
        double division = Amounts.in(scenario.used().division(), SpreadingUnits.POUND);
        double limit = scenario.spanLimit();
        double planned = Amounts.in(series.revolutions(), SpreadingUnits.REVOLUTION);
        double rounding = 2 * series.containersToFill() * division * division / 12 / Math.pow(TRUE_POUNDS * planned, 2)
                + 1 / (6 * Math.pow(scenario.pulsesPerRevolution() * planned, 2));
        Evaluation evaluation = new Evaluation(scenario, rounding, series.repeats());
        int n = series.repeats();
        int within = 0;
        double[] found = new double[DAYS];
        for (int day = 0; day < DAYS; day++) {
            double span = 1 + limit * (2 * random.nextDouble() - 1);
            double[] tares = new double[series.containersToFill()];
            double mass = 0;
            double revolutions = 0;
            double[] ratios = new double[n];
            for (int i = 0; i < n; i++) {
                double turned = planned + random.nextDouble() - 0.5;
                double counted = Math.floor(turned * scenario.pulsesPerRevolution() + random.nextDouble())
                        / scenario.pulsesPerRevolution();
                double fallen = TRUE_POUNDS * turned * (1 + scenario.trueScatter() / 100 * random.nextGaussian());
                double read = 0;
                for (int c = 0; c < tares.length; c++) {
                    if (i == 0 || !scenario.sameTares()) {
                        tares[c] = 3.5 + random.nextDouble();
                    }
                    read += rounded(span * (fallen / tares.length + tares[c]), division)
                            - rounded(span * tares[c], division);
                }
                mass += read;
                revolutions += counted;
                ratios[i] = read / counted;
            }
            double result = mass / revolutions;
            within += Math.abs(result / TRUE_POUNDS - 1) <= scenario.wanted() / 100 ? 1 : 0;
            found[day] = evaluation.expanded(ratios, result);
        }
        Arrays.sort(found);
        return new Kept((double) within / DAYS, found[DAYS / 2]);
    }

    /**
     * How a day's catches are evaluated.
     *
     * @param rounding the relative variance of one catch by the rounding of scale and count
     */
    private record Evaluation(Scenario scenario, double rounding, double stated, double refuting) {
        Evaluation(Scenario scenario, double rounding, int catches) {
            this(
                    scenario,
                    rounding,
                    Math.pow(scenario.scatter() / 100, 2),
                    catches == 1 ? Double.POSITIVE_INFINITY : refuting(scenario.degrees(), catches - 1.0));
        }

        /** The ratio of variances that chance exceeds in one case of twenty, by another library. */
        private static double refuting(double degrees, double shown) {
            return degrees == FIRM
                    ? new ChiSquaredDistribution(shown).inverseCumulativeProbability(0.95) / shown
                    : new FDistribution(shown, degrees).inverseCumulativeProbability(0.95);
        }

        /** In percent. */
        double expanded(double[] ratios, double result) {
            double squares = 0;
            for (double ratio : ratios) {
                squares += Math.pow(ratio / result - 1, 2);
            }
            double shown = ratios.length - 1.0;
            double own = Math.max(0, squares - shown * rounding);
            double scatter = stated;
            double degrees = scenario.degrees();
            if (squares > refuting * (stated + rounding) * shown) {
                scatter = own / shown;
                degrees = shown;
            } else if (degrees != FIRM) {
                scatter = (degrees * stated + own) / (degrees + shown);
                degrees += shown;
            }
            double ofMean = scatter / ratios.length;
            double variance = ofMean + rounding / ratios.length + Math.pow(scenario.spanLimit(), 2) / 3;
            double effective = Math.min(1e9, degrees * Math.pow(variance / ofMean, 2));
            return 100 * Student.of(effective).coverageFactor(0.95) * Math.sqrt(variance);
        }
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void theTruthIsWithinTheWantedUncertainty(Scenario scenario) {
        PlanResult result = scenario.plan();
        if (result instanceof PlanResult.Reached) {
            Kept kept = simulate(scenario, result.series());
            assertThat(kept.coverage()).isGreaterThanOrEqualTo(LEAST_COVERAGE);
            assertThat(kept.median()).isLessThanOrEqualTo(scenario.wanted());
        } else {
            assertThat(inPercent(result.series().expandedUncertainty())).isGreaterThan(scenario.wanted());
        }
    }

    /** Each catch in the same pails, weighed empty once: the tares' rounding is common to all, and repeats don't shrink it. */
    @ParameterizedTest
    @MethodSource("reachedByTheFineScale")
    void pailsThatAreWeighedEmptyOnlyOnceHardlyBreakThePromiseOfAFineScale(Scenario scenario) {
        // 94.8 % at the worst of 40 000 days; less four standard deviations of 4000.
        assertThat(simulate(scenario.withSameTares(), scenario.plan().series()).coverage())
                .isGreaterThanOrEqualTo(0.934);
    }

    static Stream<Scenario> reachedByTheFineScale() {
        return reached("fine");
    }

    /** On a scale that reads whole pounds the plan is too sure of such pails: 90 % instead of 95 % at the worst. */
    @Test
    void pailsThatAreWeighedEmptyOnlyOnceBreakThePromiseOfACoarseScale() {
        double worst = reached("coarse")
                .mapToDouble(scenario -> simulate(
                                scenario.withSameTares(), scenario.plan().series())
                        .coverage())
                .min()
                .orElseThrow();
        assertThat(worst).isBetween(0.88, 0.92);
    }

    private static Stream<Scenario> reached(String kit) {
        return scenarios()
                .filter(scenario -> scenario.kit().equals(kit))
                .filter(scenario -> scenario.plan() instanceof PlanResult.Reached);
    }

    /** Of ten catches at most: a scatter of 2 % known before is 1.96 × 2 % ÷ √10, or 1.24 %. */
    @Test
    void aLargeScatterPutsOnePercentOutOfReach() {
        assertThat(scenarios().filter(scenario -> scenario.plan() instanceof PlanResult.OutOfReach))
                .allSatisfy(scenario -> assertThat(scenario.scatter()).isEqualTo(2))
                .allSatisfy(scenario -> assertThat(scenario.wanted()).isEqualTo(1))
                .hasSize(8);
        assertThat(scenarios()).hasSize(80);
    }

    /**
     * The limit of the promise: two catches on a firm statement of 2 % hold 3 % in some 70 % of the days of a machine that
     * scatters by 4 %, and mostly say 3 % all the same; five catches mostly refute it, and say that it isn't 3 %. Where
     * 2 % is stated with 2 degrees of freedom, more catches are planned, and they mostly say so.
     */
    @Test
    void aMachineThatScattersTwiceAsMuchAsStatedFirmlyIsShownByManyCatchesOnly() {
        Scenario two = new Scenario("fine", 2, FIRM, 4, false, 1, 3);
        CatchSeries planned = two.plan().series();
        assertThat(planned.repeats()).isEqualTo(2);
        Kept broken = simulate(two, planned);
        assertThat(broken.coverage()).isBetween(0.65, 0.78);
        assertThat(broken.median()).isLessThan(3);

        Scenario five = new Scenario("fine", 2, FIRM, 4, false, 5, 3);
        CatchSeries shown = five.plan().series();
        assertThat(shown.repeats()).isEqualTo(5);
        assertThat(simulate(five, shown).median()).isGreaterThan(4);

        Scenario hardlyKnown = new Scenario("fine", 2, 2, 4, false, 1, 3);
        CatchSeries more = hardlyKnown.plan().series();
        assertThat(more.repeats()).isGreaterThan(2);
        assertThat(simulate(hardlyKnown, more).median()).isGreaterThan(3);
    }
}
