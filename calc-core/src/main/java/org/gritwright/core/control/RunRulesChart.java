package org.gritwright.core.control;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import org.gritwright.units.check.Require;

/**
 * A chart of standardized observations with run rules: a signal where so many of the last observations, the newest one included, are
 * beyond a limit on one side (C. W. Champ and W. H. Woodall, Exact results for Shewhart control charts with supplementary runs rules,
 * Technometrics 29, 1987, 393–399). Immutable, thread-safe, a value.
 *
 * <p>More rules notice more, and raise more false alarms: with all four of {@link #COMMON}, four to five times as many as with the
 * first alone, an average run length of about 92 instead of 370 in control.
 *
 * @param rules one or more, each once
 */
public record RunRulesChart(List<Rule> rules) implements ControlChart {
    private static final int MOST_RULES = 8;

    /** One observation beyond three standard deviations. */
    public static final Rule ONE_BEYOND_3 = new Rule(1, 1, 3);

    /** Two of three successive observations beyond two standard deviations on one side. */
    public static final Rule TWO_OF_3_BEYOND_2 = new Rule(2, 3, 2);

    /** Four of five successive observations beyond one standard deviation on one side. */
    public static final Rule FOUR_OF_5_BEYOND_1 = new Rule(4, 5, 1);

    /** Eight successive observations on one side. */
    public static final Rule EIGHT_ON_ONE_SIDE = new Rule(8, 8, 0);

    /** The four rules of the Western Electric handbook of 1956, from memory. */
    public static final List<Rule> COMMON =
            List.of(ONE_BEYOND_3, TWO_OF_3_BEYOND_2, FOUR_OF_5_BEYOND_1, EIGHT_ON_ONE_SIDE);

    /**
     * So many of so many successive observations beyond a limit, all on one side.
     *
     * @param count how many, 1 or more
     * @param within of how many, from count to 16
     * @param beyond the limit in standard deviations, 0 or more
     */
    public record Rule(int count, int within, double beyond) implements Serializable {
        private static final int MOST_WITHIN = 16;

        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is out of its range
         */
        public Rule {
            Require.that(count >= 1, "observations beyond", "1 or more", count);
            Require.that(
                    within >= count && within <= MOST_WITHIN,
                    "successive observations",
                    "from " + count + " to " + MOST_WITHIN,
                    within);
            Require.notNegative("limit of a run rule", beyond);
        }

        /** Whether it signals at the observation at the end of a list. */
        boolean isBroken(List<Double> observations) {
            int n = observations.size();
            double newest = observations.get(n - 1);
            double sign = Math.signum(newest);
            return sign * newest > beyond
                    && observations.subList(Math.max(0, n - within), n).stream()
                                    .filter(x -> sign * x > beyond)
                                    .count()
                            >= count;
        }
    }

    /**
     * A point of the chart.
     *
     * @param number the observation's number, from 1
     * @param value the observation
     * @param broken the rules that signal
     */
    public record Point(long number, double value, List<Rule> broken) implements Serializable {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is not finite or out of its range
         */
        public Point {
            Require.given(Point.class, broken);
            Require.that(number >= 1, "number of the observation", "1 or more", number);
            Require.finite("observation", value);
            broken = List.copyOf(broken);
        }

        /**
         * Whether it is a signal.
         *
         * @return true if a rule signals
         */
        public boolean isSignal() {
            return !broken.isEmpty();
        }
    }

    /**
     * Checks the rules.
     *
     * @throws org.gritwright.units.InvalidInputException if there is none, too many, or one twice
     */
    public RunRulesChart {
        Require.given(RunRulesChart.class, rules);
        rules = List.copyOf(rules);
        Require.that(
                !rules.isEmpty() && rules.size() <= MOST_RULES && new LinkedHashSet<>(rules).size() == rules.size(),
                "run rules",
                "1 to " + MOST_RULES + ", each once",
                rules);
    }

    /**
     * A chart.
     *
     * @param rules one or more, each once
     * @return the chart
     * @throws org.gritwright.units.InvalidInputException if there is none, too many, or one twice
     */
    public static RunRulesChart of(Rule... rules) {
        return new RunRulesChart(List.of(Objects.requireNonNull(rules, "rules")));
    }

    /**
     * Runs the chart.
     *
     * @param observations standardized
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> run(double... observations) {
        return runFrom(List.of(), observations);
    }

    /**
     * Runs the chart on.
     *
     * @param before the points so far; as many at the end as the longest rule looks at are enough
     * @param observations standardized, those that follow
     * @return a point for each
     * @throws org.gritwright.units.InvalidInputException if one is not finite
     */
    public List<Point> runFrom(Collection<Point> before, double... observations) {
        List<Double> all = new ArrayList<>();
        long number = 0;
        for (Point point : Objects.requireNonNull(before, "before")) {
            all.add(point.value());
            number = point.number();
        }
        List<Point> points = new ArrayList<>();
        for (double x : Objects.requireNonNull(observations, "observations")) {
            all.add(Require.finite("observation", x));
            number++;
            points.add(new Point(
                    number, x, rules.stream().filter(rule -> rule.isBroken(all)).toList()));
        }
        return List.copyOf(points);
    }

    @Override
    public RunRulesChart scaled(double factor) {
        Require.positive("factor", factor);
        return new RunRulesChart(rules.stream()
                .map(rule -> new Rule(rule.count(), rule.within(), rule.beyond() * factor))
                .toList());
    }
}
