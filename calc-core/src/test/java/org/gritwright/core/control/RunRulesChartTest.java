package org.gritwright.core.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.control.RunRulesChart.EIGHT_ON_ONE_SIDE;
import static org.gritwright.core.control.RunRulesChart.FOUR_OF_5_BEYOND_1;
import static org.gritwright.core.control.RunRulesChart.ONE_BEYOND_3;
import static org.gritwright.core.control.RunRulesChart.TWO_OF_3_BEYOND_2;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.ControlTables;
import org.gritwright.core.control.RunRulesChart.Rule;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunRulesChartTest {
    private static final RunRulesChart ALL = new RunRulesChart(RunRulesChart.COMMON);

    private static List<Long> signals(RunRulesChart chart, double... observations) {
        return chart.run(observations).stream()
                .filter(RunRulesChart.Point::isSignal)
                .map(RunRulesChart.Point::number)
                .toList();
    }

    @Test
    void everyAverageOfChampAndWoodallComesOut() {
        Map<String, RunRulesChart> charts = Map.of(
                "beyond3", RunRulesChart.of(ONE_BEYOND_3),
                "two", RunRulesChart.of(ONE_BEYOND_3, TWO_OF_3_BEYOND_2),
                "four", RunRulesChart.of(ONE_BEYOND_3, FOUR_OF_5_BEYOND_1),
                "eight", RunRulesChart.of(ONE_BEYOND_3, EIGHT_ON_ONE_SIDE));
        List<Map<String, String>> rows = ControlTables.rows("run-rules");
        assertThat(rows).hasSize(16);
        for (Map<String, String> row : rows) {
            charts.forEach((rules, chart) -> {
                BigDecimal printed = new BigDecimal(row.get(rules));
                assertThat(chart.averageRunLength(Change.step(Double.parseDouble(row.get("shift")))))
                        .as("%s, %s", rules, row)
                        .isCloseTo(printed.doubleValue(), within(printed.ulp().doubleValue() * 0.50001));
            });
        }
    }

    @Test
    void allRulesTogetherAlarmFourToFiveTimesAsOften() {
        double one = RunRulesChart.of(ONE_BEYOND_3).averageRunLength(Change.none());

        assertThat(one / ALL.averageRunLength(Change.none())).isBetween(4.0, 5.0);
    }

    @Test
    void runsOnOneSideHaveTheirClosedForm() {
        // n in a row of chance p on either side of two: (2ⁿ − 1) for fair coins, by the usual recurrence.
        assertThat(RunRulesChart.of(EIGHT_ON_ONE_SIDE).averageRunLength(Change.none()))
                .isCloseTo(255, within(1e-7));
        assertThat(RunRulesChart.of(new Rule(3, 3, 0)).averageRunLength(Change.none()))
                .isCloseTo(7, within(1e-9));
        assertThat(RunRulesChart.of(new Rule(3, 3, 0)).runLengths(Change.none()).survival(2))
                .isEqualTo(1);
    }

    @Test
    void twoOfThreeIsTheSolutionOfItsOwnSmallChain() {
        double out = Normal.below(-2);
        double in = 1 - 2 * out;
        // None; above just now; above, then in; below just now; below, then in; above, then below; below, then above.
        RealMatrix chain = MatrixUtils.createRealMatrix(new double[][] {
            {in, out, 0, out, 0, 0, 0},
            {0, 0, in, 0, 0, out, 0},
            {in, 0, 0, out, 0, 0, 0},
            {0, 0, 0, 0, in, 0, out},
            {in, out, 0, 0, 0, 0, 0},
            {0, 0, 0, 0, in, 0, 0},
            {0, 0, in, 0, 0, 0, 0}
        });
        double average = new LUDecomposition(
                        MatrixUtils.createRealIdentityMatrix(7).subtract(chain))
                .getSolver()
                .solve(MatrixUtils.createRealVector(new double[] {1, 1, 1, 1, 1, 1, 1}))
                .getEntry(0);

        assertThat(RunRulesChart.of(TWO_OF_3_BEYOND_2).averageRunLength(Change.none()))
                .isCloseTo(average, within(1e-8 * average));
        assertThat(new RuleChain(List.of(TWO_OF_3_BEYOND_2)).states()).isEqualTo(7);
    }

    @Test
    void whatCanNoLongerMatterIsNoState() {
        // In a row only how many: 0 to 7 on one side, or on the other.
        assertThat(new RuleChain(List.of(EIGHT_ON_ONE_SIDE)).states()).isEqualTo(15);
        assertThat(new RuleChain(List.of(ONE_BEYOND_3)).states()).isEqualTo(1);
    }

    /** Of how many histories the future can be told apart, by splitting all windows until nothing splits any more (Moore). */
    private static int distinguishable(Rule rule) {
        int windows = 1;
        for (int i = 1; i < rule.within(); i++) {
            windows *= 3;
        }
        // A window in base 3, the newest in its last digit: 0 inside, 1 above, 2 below. The last class is the signal's.
        int[] reached = new int[windows + 1];
        int[][] next = new int[windows][3];
        for (int window = 0; window < windows; window++) {
            for (int zone = 0; zone < 3; zone++) {
                int[] counts = new int[3];
                int rest = window * 3 + zone;
                int after = rest % windows;
                for (int i = 0; i < rule.within(); i++, rest /= 3) {
                    counts[rest % 3]++;
                }
                boolean isSignal = zone > 0 && counts[zone] >= rule.count();
                next[window][zone] = isSignal ? windows : after;
            }
        }
        Deque<Integer> open = new ArrayDeque<>(List.of(0));
        reached[0] = 1;
        while (!open.isEmpty()) {
            for (int to : next[open.remove()]) {
                if (reached[to] == 0 && to < windows) {
                    open.add(to);
                }
                reached[to] = 1;
            }
        }
        int[] classOf = new int[windows + 1];
        classOf[windows] = 1;
        int classes = 1;
        while (true) {
            Map<List<Integer>, Integer> split = new HashMap<>();
            int[] finer = new int[windows + 1];
            finer[windows] = -1;
            for (int window = 0; window < windows; window++) {
                if (reached[window] == 1) {
                    int[] to = next[window];
                    List<Integer> key = List.of(classOf[window], classOf[to[0]], classOf[to[1]], classOf[to[2]]);
                    finer[window] = split.computeIfAbsent(key, one -> split.size());
                }
            }
            if (split.size() == classes) {
                return classes;
            }
            classes = split.size();
            classOf = finer;
        }
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "2, 2", "2, 3", "3, 4", "4, 5", "2, 5", "3, 5", "6, 6", "4, 7"})
    void thereIsAStateForEachHistoryThatMatters(int count, int within) {
        Rule rule = new Rule(count, within, 1);

        assertThat(new RuleChain(List.of(rule)).states()).isEqualTo(distinguishable(rule));
    }

    @Test
    void eachRuleSignalsWhereItIsBroken() {
        assertThat(signals(RunRulesChart.of(ONE_BEYOND_3), 3, 3.1, -3.1, 2.9)).containsExactly(2L, 3L);
        assertThat(signals(RunRulesChart.of(TWO_OF_3_BEYOND_2), 2.5, 0, 2.1, 0, -2.1, 2.5, -2.1, 0, 0))
                .containsExactly(3L, 7L);
        assertThat(signals(RunRulesChart.of(FOUR_OF_5_BEYOND_1), 1.1, 1.1, 0.9, 1.1, 1.1, 0, 1.1, 1.1, -1.1))
                .containsExactly(5L, 8L);
        assertThat(signals(RunRulesChart.of(EIGHT_ON_ONE_SIDE), 1, 1, 1, 1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1))
                .containsExactly(16L, 17L);
        assertThat(ALL.run(3.5, 2.5).get(1).broken()).containsExactly(TWO_OF_3_BEYOND_2);
    }

    @Test
    void anObservationInsideIsNoSignalEvenAfterTwoBeyond() {
        assertThat(signals(RunRulesChart.of(TWO_OF_3_BEYOND_2), 2.5, 2.5, 0)).containsExactly(2L);
        assertThat(signals(RunRulesChart.of(TWO_OF_3_BEYOND_2), 2.5, 2.5, 2)).containsExactly(2L);
    }

    @Test
    void whatIsNoRuleIsRefused() {
        assertThatThrownBy(() -> new Rule(0, 1, 3)).hasMessageContaining("observations beyond");
        assertThatThrownBy(() -> new Rule(2, 1, 3)).hasMessageContaining("successive observations");
        assertThatThrownBy(() -> new Rule(2, 17, 3)).hasMessageContaining("successive observations");
        assertThatThrownBy(() -> new Rule(2, 2, -1)).hasMessageContaining("limit of a run rule");
        assertThatThrownBy(() -> new RunRulesChart(List.of())).hasMessageContaining("run rules");
        assertThatThrownBy(() -> RunRulesChart.of(ONE_BEYOND_3, ONE_BEYOND_3)).hasMessageContaining("each once");
        List<Rule> nine = Stream.iterate(1, i -> i + 1)
                .limit(9)
                .map(i -> new Rule(1, i, 3))
                .toList();
        assertThat(new RunRulesChart(nine.subList(0, 8)).rules()).hasSize(8);
        assertThatThrownBy(() -> new RunRulesChart(nine)).hasMessageContaining("1 to 8, each once");
        assertThatThrownBy(() -> ALL.run(Double.NaN)).hasMessageContaining("observation");
        assertThatThrownBy(() -> ALL.scaled(0)).hasMessageContaining("factor");
        assertThatThrownBy(() -> new RunRulesChart.Point(0, 1, List.of())).hasMessageContaining("number");
        assertThatThrownBy(() -> new RunRulesChart.Point(1, Double.NaN, List.of()))
                .hasMessageContaining("observation");
    }

    @Test
    void rulesThatNeedTooManyStatesAreRefused() {
        RunRulesChart chart = RunRulesChart.of(new Rule(8, 16, 0.5), new Rule(7, 15, 1), new Rule(6, 16, 1.5));

        assertThatThrownBy(() -> chart.averageRunLength(Change.none())).hasMessageContaining("at most 20000 states");
    }
}
