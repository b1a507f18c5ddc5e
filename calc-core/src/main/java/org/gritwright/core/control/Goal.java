package org.gritwright.core.control;

import java.io.Serializable;
import org.gritwright.units.check.Require;

/** What a chart is to keep while nothing has changed. Immutable, thread-safe, a value. */
public sealed interface Goal extends Serializable {
    /**
     * An average run length in control.
     *
     * @param observations greater than 1, at most 10⁷
     */
    record Average(double observations) implements Goal {
        private static final double MOST = 1e7;

        /**
         * Checks the value.
         *
         * @throws org.gritwright.units.InvalidInputException if it is out of its range
         */
        public Average {
            Require.that(
                    observations > 1 && observations <= MOST,
                    "average run length in control",
                    "greater than 1, at most " + MOST,
                    observations);
        }
    }

    /**
     * A chance of at least one false alarm within so many observations.
     *
     * @param chance 10⁻⁹ or more, below 1
     * @param within how many observations, 1 to 100 000
     */
    record FalseAlarm(double chance, int within) implements Goal {
        private static final double LEAST = 1e-9;
        private static final int MOST_WITHIN = 100_000;

        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if one is out of its range
         */
        public FalseAlarm {
            Require.that(chance >= LEAST && chance < 1, "chance of a false alarm", LEAST + " or more, below 1", chance);
            Require.that(within >= 1 && within <= MOST_WITHIN, "number of observations", "1 to " + MOST_WITHIN, within);
        }
    }

    /**
     * An average run length in control.
     *
     * @param observations greater than 1, for example 500
     * @return the goal
     * @throws org.gritwright.units.InvalidInputException if it is out of its range
     */
    static Goal average(double observations) {
        return new Average(observations);
    }

    /**
     * A median run length in control: one chart of two has a false alarm within so many observations.
     *
     * @param observations 1 to 100 000
     * @return the goal
     * @throws org.gritwright.units.InvalidInputException if it is out of its range
     */
    static Goal median(int observations) {
        return new FalseAlarm(0.5, observations);
    }

    /**
     * A number of false alarms among many charts: each may have one with the chance allowed ÷ charts.
     *
     * @param allowed how many charts may have a false alarm, on average
     * @param charts how many charts there are, more than that
     * @param within within how many observations of each, 1 to 100 000
     * @return the goal
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    static Goal falseAlarms(double allowed, int charts, int within) {
        Require.that(charts >= 1, "number of charts", "1 or more", charts);
        return new FalseAlarm(allowed / charts, within);
    }
}
