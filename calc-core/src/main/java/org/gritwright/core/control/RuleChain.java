package org.gritwright.core.control;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.units.check.Require;

/**
 * The law of a chart with run rules: an exact Markov chain (C. W. Champ and W. H. Woodall, Exact results for Shewhart control charts with
 * supplementary runs rules, Technometrics 29, 1987, 393–399). A state says, of each rule and side, which of the last observations
 * were beyond, as far as they can still matter.
 */
final class RuleChain implements Stepper {
    private static final int MOST_STATES = 20_000;

    /** Ends of zones, in rising order. */
    private final double[] ends;
    /** By state and zone, the next state; −1 for a signal. */
    private final List<int[]> moves = new ArrayList<>();

    private final int longest;
    private double[] chances;
    private long number;

    RuleChain(List<RunRulesChart.Rule> rules) {
        longest = rules.stream().mapToInt(RunRulesChart.Rule::within).max().orElseThrow();
        ends = rules.stream()
                .flatMap(rule -> Stream.of(-rule.beyond(), rule.beyond()))
                .map(end -> end + 0.0) // no −0
                .distinct()
                .sorted()
                .mapToDouble(Double::doubleValue)
                .toArray();
        // By the state's bits, two numbers a rule: above and below.
        Map<List<Integer>, Integer> numbers = new HashMap<>();
        Deque<List<Integer>> open = new ArrayDeque<>();
        List<Integer> none = Stream.generate(() -> 0).limit(2L * rules.size()).toList();
        numbers.put(none, 0);
        open.add(none);
        while (!open.isEmpty()) {
            List<Integer> state = open.remove();
            int[] next = new int[ends.length + 1];
            for (int zone = 0; zone < next.length; zone++) {
                next[zone] = -1;
                List<Integer> after = after(rules, state, zone);
                if (!after.isEmpty()) {
                    if (!numbers.containsKey(after)) {
                        Require.that(
                                numbers.size() < MOST_STATES,
                                "run rules",
                                "so few and short that a chart has at most " + MOST_STATES + " states",
                                rules);
                        numbers.put(after, numbers.size());
                        open.add(after);
                    }
                    next[zone] = numbers.getOrDefault(after, -1);
                }
            }
            moves.add(next);
        }
        chances = new double[moves.size()];
        chances[0] = 1;
    }

    /** The state after an observation in a zone; empty for a signal. */
    private List<Integer> after(List<RunRulesChart.Rule> rules, List<Integer> state, int zone) {
        List<Integer> after = new ArrayList<>();
        for (int r = 0; r < rules.size(); r++) {
            RunRulesChart.Rule rule = rules.get(r);
            // Zone z is from end z − 1 to end z.
            boolean isAbove = zone > 0 && ends[zone - 1] >= rule.beyond();
            boolean isBelow = zone < ends.length && ends[zone] <= -rule.beyond();
            int above = state.get(2 * r) << 1 | (isAbove ? 1 : 0);
            int below = state.get(2 * r + 1) << 1 | (isBelow ? 1 : 0);
            if (Integer.bitCount(above) >= rule.count() || Integer.bitCount(below) >= rule.count()) {
                return List.of();
            }
            after.add(relevant(rule, above));
            after.add(relevant(rule, below));
        }
        return after;
    }

    /**
     * The bits that can still lead to a signal, of the last within − 1 observations, the newest in bit 0. A bit can't if there would be
     * too few even if all to come were beyond, up to the last window that still has it.
     */
    private static int relevant(RunRulesChart.Rule rule, int bits) {
        // Each older one makes one fewer to come, and one more at most.
        int age = rule.within() - 1;
        while (Integer.bitCount(bits & ((1 << age) - 1)) + rule.within() - age < rule.count()) {
            age--;
        }
        return bits & ((1 << age) - 1);
    }

    int states() {
        return moves.size();
    }

    /** Until the longest rule has had its chance, what each observation leaves may be steady for a while. */
    @Override
    public boolean isSettled() {
        return number >= 2L * longest;
    }

    @Override
    public double advance(double mean) {
        number++;
        double[] zones = new double[ends.length + 1];
        for (int z = 0; z < zones.length; z++) {
            double low = z == 0 ? Double.NEGATIVE_INFINITY : ends[z - 1] - mean;
            double high = z == ends.length ? Double.POSITIVE_INFINITY : ends[z] - mean;
            zones[z] = Normal.between(low, high);
        }
        double[] next = new double[chances.length];
        for (int s = 0; s < chances.length; s++) {
            int[] to = moves.get(s);
            for (int z = 0; z < zones.length; z++) {
                if (to[z] >= 0) {
                    next[to[z]] += chances[s] * zones[z];
                }
            }
        }
        chances = next;
        return Arrays.stream(next).sum();
    }
}
