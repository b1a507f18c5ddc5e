package org.gritwright.core.history.drift;

import org.gritwright.core.control.CusumChart;
import org.gritwright.core.control.EwmaChart;
import org.gritwright.core.control.Goal;
import org.gritwright.core.control.Sides;
import org.gritwright.units.check.Require;

/**
 * What counts as a change of what leaves per revolution. Immutable, thread-safe, a value.
 *
 * @param betweenDays how much values vary from day to day on a truck that is in order
 * @param ewma the chart of the exponentially weighted moving average
 * @param cusum the chart of cumulative sums
 * @param trendRisk the chance with which a straight line is taken to rise or fall where nothing drifts
 */
public record DriftRule(BetweenDays betweenDays, EwmaChart ewma, CusumChart cusum, double trendRisk) {
    /** For changes of about one standard deviation (common practice; Montgomery names 0.05 to 0.25 and 0.5). */
    private static final double LAMBDA = 0.2;

    private static final double ALLOWANCE = 0.5;

    /** The chance of a line where nothing drifts (common practice, no source). */
    private static final double TREND_RISK = 0.01;

    /**
     * Checks the risk.
     *
     * @throws org.gritwright.units.InvalidInputException if it isn't between 0 and 1
     */
    public DriftRule {
        Require.given(DriftRule.class, betweenDays, ewma, cusum);
        Require.probability("risk of a trend", trendRisk);
    }

    /**
     * Charts of usual weights (λ 0.2, k 0.5), each with limits that keep a goal, and lines at a risk of 1 %.
     *
     * @param betweenDays how much values vary from day to day
     * @param goal how rare false alarms of each chart are to be
     * @return the rule; its limits are computed here, which takes some hundredths of a second
     */
    public static DriftRule of(BetweenDays betweenDays, Goal goal) {
        return new DriftRule(
                betweenDays,
                EwmaChart.designed(LAMBDA, EwmaChart.Limits.EXACT, Sides.BOTH, goal),
                CusumChart.designed(ALLOWANCE, 0, Sides.BOTH, goal),
                TREND_RISK);
    }

    /**
     * The same for a fleet: so many of its points may have a false alarm, on average, within so many values each. Two charts share them, and all
     * lines share the risk of 1 %: of many the steepest is steep by chance.
     *
     * @param betweenDays how much values vary from day to day
     * @param allowed how many points may have a false alarm
     * @param points how many points are watched, more than that
     * @param values within how many values of each
     * @return the rule
     * @throws org.gritwright.units.InvalidInputException if a number is out of its range
     */
    public static DriftRule forFleet(BetweenDays betweenDays, double allowed, int points, int values) {
        DriftRule one = of(betweenDays, Goal.falseAlarms(allowed / 2, points, values));
        return new DriftRule(one.betweenDays, one.ewma, one.cusum, TREND_RISK / points);
    }
}
