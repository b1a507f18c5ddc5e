package org.gritwright.core.control;

import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/** Finds the limit that meets a goal. */
final class Design {
    private static final double NEAREST = 1e-4;

    private Design() {}

    /**
     * The limit, to a part in 10⁹ of itself.
     *
     * @param charts the chart by its limit; the wider, the rarer are its alarms
     * @param guess where to begin
     * @param firstStep by which factor the limit is moved first, until it is on the other side; then ever more
     */
    static double find(DoubleFunction<? extends ControlChart> charts, Goal goal, double guess, double firstStep) {
        DoubleUnaryOperator excess = limit -> excess(charts.apply(limit), goal);
        double low = guess;
        double high = guess;
        double step = firstStep;
        if (excess.applyAsDouble(guess) < 0) {
            do {
                low = high;
                high *= step;
                step *= step;
            } while (isTooNarrow(excess, high, goal));
        } else {
            do {
                high = low;
                low /= step;
                step *= step;
                Require.that(low >= NEAREST, "goal in control", "more than the narrowest limit keeps", goal);
            } while (excess.applyAsDouble(low) >= 0);
        }
        return Root.between(excess, low, high);
    }

    /** Where no chart is as wide as is wanted, that is what the goal has to be told of, and not the limit that was tried. */
    private static boolean isTooNarrow(DoubleUnaryOperator excess, double limit, Goal goal) {
        try {
            return excess.applyAsDouble(limit) < 0;
        } catch (InvalidInputException e) {
            InvalidInputException refusal = new InvalidInputException(
                    "goal in control", "no more than the widest limit keeps", goal.toString());
            refusal.initCause(e);
            throw refusal;
        }
    }

    /** By how much a chart keeps more than is wanted, on a scale on which that is nearly straight. */
    private static double excess(ControlChart chart, Goal goal) {
        if (goal instanceof Goal.Average average) {
            return Math.log(RunLengthMethods.average(chart, Change.none()) / average.observations());
        }
        Goal.FalseAlarm alarm = (Goal.FalseAlarm) goal;
        double survival = RunLengthMethods.byObservation(chart, Change.none(), alarm.within())
                .survival(alarm.within());
        // −∞ where no chart survives, and +∞ where the chance of an alarm is lost in rounding.
        return Math.log(survival / (1 - survival)) - Math.log((1 - alarm.chance()) / alarm.chance());
    }
}
