package org.gritwright.core.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.planning.Setups.inPercent;
import static org.gritwright.core.planning.Setups.percent;
import static org.gritwright.core.planning.Setups.scale;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the planner promises, kept in simulated days: the true mass per revolution is within the wanted uncertainty of the
 * one that is found in 95 % of the days, and the uncertainty that is found is at most the wanted one in half of them.
 *
 * <p>A day: the scale has a span error anywhere within its limit; each catch scatters normally by s₀, stops anywhere in a
 * revolution, is counted in pulses of random phase, and lies in pails of their own tares, whose gross and tare are read to
 * the scale's division. It is evaluated as a calibration is: Σ mass ÷ Σ revolutions; from three catches on with the
 * scatter of the catches, with fewer as planned. The scenarios were written down before any was run, and all are here.
 */
class PlannersPromiseTest {
    private static final int DAYS = 4000;
    private static final double TRUE_POUNDS = 5;

    /** Four standard deviations of a share of 95 % below it would be 93.6 %. */
    private static final double LEAST_COVERAGE = 0.94;

    /**
     * A yard, a truck and a wish.
     *
     * @param kit "fine" or "coarse"
     * @param scatter s₀ that the plan assumes, in percent
     * @param trueScatter s₀ of the machine, in percent
     * @param sameTares whether each catch lies in the same pails, weighed empty once
     */
    record Scenario(
            String kit, double scatter, double trueScatter, boolean sameTares, int fewestRepeats, double wanted) {

        Scenario withSameTares() {
            return new Scenario(kit, scatter, trueScatter, true, fewestRepeats, wanted);
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
                    .allowing(Setups.scatter(scatter));
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
                for (int fewest : new int[] {1, 3}) {
                    for (double wanted : new double[] {1.5, 2, 3, 5}) {
                        all.add(new Scenario(kit, scatter, scatter, false, fewest, wanted));
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
        double limit = scenario.kit().equals("fine") ? 0.001 : 0.005;
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
                double turned = Amounts.in(series.revolutions(), SpreadingUnits.REVOLUTION) + random.nextDouble() - 0.5;
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
            found[day] = n < 3 ? inPercent(series.expandedUncertainty()) : evaluated(ratios, result, limit);
        }
        Arrays.sort(found);
        return new Kept((double) within / DAYS, found[DAYS / 2]);
    }

    /** In percent. */
    private static double evaluated(double[] ratios, double result, double spanLimit) {
        double squares = 0;
        for (double ratio : ratios) {
            squares += Math.pow(ratio / result - 1, 2);
        }
        double deviation = Math.sqrt(squares / (ratios.length - 1) / ratios.length);
        double span = Distribution.RECTANGULAR.standardUncertainty(spanLimit);
        return inPercent(Budget.of(
                        percent(100),
                        List.of(
                                Component.typeA(
                                        "scatter",
                                        percent(100 * deviation),
                                        percent(100 * deviation),
                                        ratios.length - 1.0),
                                Component.typeB(
                                        "span", Distribution.RECTANGULAR, percent(100 * span), percent(100 * span))))
                .result()
                .expandedUncertainty(0.95)
                .orElseThrow());
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

    /** Each catch in the same pails, weighed empty once: the tares' rounding is common to all and no scatter shows it. */
    @ParameterizedTest
    @MethodSource("reached")
    void pailsThatAreWeighedEmptyOnlyOnceDontBreakThePromise(Scenario scenario) {
        assertThat(simulate(scenario.withSameTares(), scenario.plan().series()).coverage())
                .isGreaterThanOrEqualTo(LEAST_COVERAGE);
    }

    static Stream<Scenario> reached() {
        return scenarios().filter(scenario -> scenario.plan() instanceof PlanResult.Reached);
    }

    @Test
    void theCoarseScaleAndTheLargeScatterPutOneAndAHalfPercentOutOfReach() {
        assertThat(scenarios().filter(scenario -> scenario.plan() instanceof PlanResult.OutOfReach))
                .extracting(Scenario::kit, Scenario::scatter, Scenario::fewestRepeats, Scenario::wanted)
                .containsExactly(tuple("coarse", 2.0, 1, 1.5), tuple("coarse", 2.0, 3, 1.5));
        assertThat(scenarios()).hasSize(32);
    }

    /**
     * The limit of the promise: two catches on an assumed scatter of 2 % hold 3 % in some 70 % of the days of a machine
     * that scatters by 4 %, and say 3 % all the same; five catches say that it isn't 3 %.
     */
    @Test
    void aMachineThatScattersTwiceAsMuchAsAssumedIsShownByThreeCatchesOrMoreOnly() {
        Scenario two = new Scenario("fine", 2, 4, false, 1, 3);
        CatchSeries planned = two.plan().series();
        assertThat(planned.repeats()).isEqualTo(2);
        Kept broken = simulate(two, planned);
        assertThat(broken.coverage()).isBetween(0.65, 0.78);
        assertThat(broken.median()).isLessThan(3);

        Scenario five = new Scenario("fine", 2, 4, false, 3, 3);
        CatchSeries shown = five.plan().series();
        assertThat(shown.repeats()).isEqualTo(5);
        assertThat(simulate(five, shown).median()).isGreaterThan(4);
    }
}
