package org.gritwright.core.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.Samples.pounds;
import static org.gritwright.core.uncertainty.Components.a;
import static org.gritwright.core.uncertainty.Components.b;
import static org.gritwright.core.uncertainty.Components.normal;
import static org.gritwright.core.uncertainty.Components.u;

import java.util.List;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.MonteCarlo.Input;
import org.gritwright.core.uncertainty.MonteCarlo.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MonteCarloTest {
    private static final int TRIALS = 200_000;
    private static final double INFINITE = Double.POSITIVE_INFINITY;

    private static MonteCarlo simulate(Budget<Mass> budget) {
        return budget.simulate(TRIALS, new SplittableRandom(11));
    }

    private static double halfWidth(MonteCarlo simulated) {
        Interval interval = simulated.interval(0.95);
        return (interval.upper() - interval.lower()) / 2;
    }

    private static double expanded(Budget<Mass> budget) {
        return budget.result()
                .expandedUncertainty(0.95)
                .orElseThrow()
                .getValue()
                .doubleValue();
    }

    @Test
    void agreesWithABudgetOfNormalErrors() {
        Budget<Mass> budget = Budget.of(pounds(60), List.of(normal("a", 0.3), normal("b", -0.4)));
        MonteCarlo simulated = simulate(budget);

        assertThat(simulated.mean()).isCloseTo(60, within(0.005));
        assertThat(simulated.standardDeviation()).isCloseTo(0.5, within(0.005));
        assertThat(halfWidth(simulated)).isCloseTo(expanded(budget), within(0.01));
        assertThat(simulated.interval(0.95).lower()).isCloseTo(60 - 1.96 * 0.5, within(0.015));
        assertThat(simulated.quantile(0.5)).isCloseTo(60, within(0.005));
    }

    /** Of a single rectangular error ±a, 95 % lie within ±0.95·a, where Student's factor would say 1.96·a ÷ √3. */
    @Test
    void aRectangularErrorIsNarrowerThanTheFactorSays() {
        Budget<Mass> budget = Budget.of(pounds(60), List.of(b("a", Distribution.RECTANGULAR, 1)));

        assertThat(halfWidth(simulate(budget))).isCloseTo(0.95 * Math.sqrt(3), within(0.01));
        assertThat(expanded(budget)).isCloseTo(1.96, within(1e-4));
        assertThat(halfWidth(simulate(budget))).isLessThan(0.9 * expanded(budget));
    }

    /** Of a triangular error ±a, 95 % lie within ±a·(1 − √0.05). */
    @Test
    void aTriangularErrorIsTheClosedForm() {
        Budget<Mass> budget = Budget.of(pounds(60), List.of(b("a", Distribution.TRIANGULAR, 1)));

        assertThat(halfWidth(simulate(budget))).isCloseTo(Math.sqrt(6) * (1 - Math.sqrt(0.05)), within(0.01));
    }

    @Test
    void aGroupIsDrawnOnce() {
        Budget<Mass> budget = Budget.of(
                pounds(60),
                List.of(
                        normal("a", 3).inGroup("one"),
                        normal("b", -2).inGroup("one"),
                        normal("c", 0.5),
                        normal("d", 4).inGroup("other")));

        assertThat(simulate(budget).standardDeviation()).isCloseTo(u(budget), within(0.02));
        assertThat(u(budget)).isCloseTo(Math.sqrt(1 + 0.25 + 16), within(1e-12));
    }

    @Test
    void anInputFromRepeatsHasStudentsInterval() {
        Budget<Mass> budget = Budget.of(pounds(60), List.of(a("a", 1, 2)));

        assertThat(halfWidth(simulate(budget))).isCloseTo(4.3027, within(0.1));
        assertThat(expanded(budget)).isCloseTo(4.3027, within(1e-4));
    }

    /** m ÷ N with 4 % in each: relative deviation about √(0.04² + 0.04²), and a mean of m/N·(1 + 0.04²). */
    @Test
    void aQuotientIsPropagatedThroughItsModel() {
        MonteCarlo simulated = MonteCarlo.propagate(
                List.of(
                        new Input(120, 4.8, Distribution.NORMAL, INFINITE),
                        new Input(20, 0.8, Distribution.NORMAL, INFINITE)),
                x -> x[0] / x[1],
                TRIALS,
                new SplittableRandom(3));

        assertThat(simulated.standardDeviation()).isCloseTo(6 * 0.04 * Math.sqrt(2), within(0.003));
        assertThat(simulated.mean()).isCloseTo(6 * (1 + 0.0016), within(0.003));
        // Skewed: more room above than below.
        Interval interval = simulated.interval(0.95);
        assertThat(interval.upper() - 6).isGreaterThan(6 - interval.lower());
    }

    @Test
    void theSameSeedGivesTheSameAgainAndAnotherOneAnother() {
        Budget<Mass> budget = Budget.of(pounds(60), List.of(a("a", 1, 3), b("b", Distribution.ARCSINE, 1)));
        MonteCarlo one = budget.simulate(1000, new SplittableRandom(5));
        MonteCarlo again = budget.simulate(1000, new SplittableRandom(5));
        MonteCarlo other = budget.simulate(1000, new SplittableRandom(6));

        assertThat(again.mean()).isEqualTo(one.mean());
        assertThat(again.interval(0.9)).isEqualTo(one.interval(0.9));
        assertThat(other.mean()).isNotEqualTo(one.mean());
    }

    @Test
    void quantilesLieBetweenTheOrderedResults() {
        double[] next = {0};
        // 0, 1, …, 1000
        MonteCarlo counted = MonteCarlo.propagate(List.of(), x -> next[0]++, 1001, new SplittableRandom(1));

        assertThat(counted.quantile(0.5)).isEqualTo(500);
        assertThat(counted.quantile(0.0255)).isCloseTo(25.5, within(1e-9));
        assertThat(counted.interval(0.95).lower()).isCloseTo(25, within(1e-9));
        assertThat(counted.interval(0.95).upper()).isCloseTo(975, within(1e-9));
        assertThat(counted.mean()).isEqualTo(500);
        assertThat(counted.standardDeviation()).isCloseTo(Math.sqrt(1001 * 1002 / 12.0), within(1e-9));
    }

    @Test
    void evenTheGreatestProbabilityHasAQuantile() {
        double[] next = {0};
        MonteCarlo counted = MonteCarlo.propagate(List.of(), x -> next[0]++, 1025, new SplittableRandom(1));

        assertThat(counted.quantile(Math.nextDown(1.0))).isCloseTo(1024, within(1e-12));
        assertThat(counted.quantile(Double.MIN_VALUE)).isCloseTo(0, within(1e-300));
    }

    /** Three quarters of the way from one limit, ±√3·u, to the other is half the upper one. */
    @Test
    void anErrorIsAddedWithItsSign() {
        RandomGenerator threeQuarters = () -> 3L << 62;
        Budget<Mass> budget = Budget.of(pounds(60), List.of(b("a", Distribution.RECTANGULAR, 1)));
        MonteCarlo input = MonteCarlo.propagate(
                List.of(new Input(10, 1, Distribution.RECTANGULAR, INFINITE)), x -> x[0], 1000, threeQuarters);

        assertThat(budget.simulate(1000, threeQuarters).mean()).isCloseTo(60 + Math.sqrt(3) / 2, within(1e-12));
        assertThat(input.mean()).isCloseTo(10 + Math.sqrt(3) / 2, within(1e-12));
    }

    @Test
    void anIntervalMayBeAPointButNotUpsideDown() {
        MonteCarlo same = MonteCarlo.propagate(List.of(), x -> 2, 1000, new SplittableRandom(1));

        assertThat(same.interval(0.95)).isEqualTo(new Interval(2, 2));
        assertRefused("interval must be from a lower to an upper end: 2.0 to 1.0", () -> new Interval(2, 1));
        assertRefused("interval must be from a lower to an upper end: NaN to 1.0", () -> new Interval(Double.NaN, 1));
    }

    @Test
    void refusesTooFewTrials() {
        assertRefused(
                "trials must be 1000 or more: 999",
                () -> Budget.of(pounds(1), List.of(normal("a", 1))).simulate(999, new SplittableRandom(1)));
    }

    @Test
    void refusesStatedCorrelations() {
        Budget<Mass> correlated =
                Budget.of(pounds(1), List.of(normal("a", 1), normal("b", 1)), List.of(new Correlation("a", "b", 0.5)));

        assertRefused(
                "correlations of a simulated budget must be by groups only:" + " [a with b 0.5]",
                () -> correlated.simulate(1000, new SplittableRandom(1)));
    }

    @Test
    void refusesAModelThatGivesNothing() {
        assertRefused(
                "result of the model must be finite: NaN",
                () -> MonteCarlo.propagate(List.of(), x -> Double.NaN, 1000, new SplittableRandom(1)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, Double.NaN})
    void refusesProbabilitiesThatAreNone(double none) {
        MonteCarlo simulated = MonteCarlo.propagate(List.of(), x -> 1, 1000, new SplittableRandom(1));

        assertRefused("probability must be greater than 0 and below 1: " + none, () -> simulated.quantile(none));
        assertRefused("coverage must be greater than 0 and below 1: " + none, () -> simulated.interval(none));
    }

    @Test
    void refusesBadInputs() {
        assertRefused(
                "value of an input must be finite: NaN", () -> new Input(Double.NaN, 1, Distribution.NORMAL, INFINITE));
        assertRefused(
                "standard uncertainty of an input must be finite: NaN",
                () -> new Input(0, Double.NaN, Distribution.NORMAL, INFINITE));
        assertRefused(
                "standard uncertainty of an input must be 0 or more: -1.0",
                () -> new Input(0, -1, Distribution.NORMAL, INFINITE));
        assertRefused(
                "degrees of freedom of an input must be greater than 0: NaN",
                () -> new Input(0, 1, Distribution.NORMAL, Double.NaN));
        assertRefused(
                "degrees of freedom of an input must be greater than 0: 0.0",
                () -> new Input(0, 1, Distribution.NORMAL, 0));
    }
}
