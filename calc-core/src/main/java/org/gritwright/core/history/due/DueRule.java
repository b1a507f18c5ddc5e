package org.gritwright.core.history.due;

import java.time.Period;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * When a value has to be looked at again. Which rules hold, and with which numbers, is the caller's choice; each says which published
 * statement it follows, if any. Immutable, thread-safe values.
 */
public sealed interface DueRule {
    /** What a rule without a published statement says instead. */
    String COMMON_PRACTICE = "common practice, no source";

    /**
     * What clears it.
     *
     * @return a verification or a calibration
     */
    ClearedBy clearedBy();

    /**
     * The published statement behind it.
     *
     * @return the statement with its source, or {@link #COMMON_PRACTICE}
     */
    String statement();

    /**
     * At the start of each season.
     *
     * @param preparation how long before its first day something may be done and still be for that season, not negative
     * @param clearedBy what clears it
     */
    record EachSeason(Period preparation, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the time.
         *
         * @throws org.gritwright.units.InvalidInputException if it is negative
         */
        public EachSeason {
            Require.given(EachSeason.class, preparation, clearedBy);
            Require.that(!preparation.isNegative(), "time before the season", "0 or more", preparation);
        }

        @Override
        public String statement() {
            return "every spreader before each season (University of Delaware T² Center, 2020); a baseline calibration of each truck at "
                    + "the start of each winter (Iowa DOT, October 2020)";
        }
    }

    /**
     * After a change of the truck that the discharge depends on.
     *
     * @param clearedBy what clears it
     */
    record AfterChange(ClearedBy clearedBy) implements DueRule {
        /** Checks that it is given. */
        public AfterChange {
            Require.given(AfterChange.class, clearedBy);
        }

        @Override
        public String statement() {
            return "after any change in hydraulics, auger, battery, gate setting (University of Delaware T² Center, 2020); \"If any work is "
                    + "done on the equipment throughout the season a new calibration is performed\" (Iowa DOT, October 2020)";
        }
    }

    /**
     * After a time.
     *
     * @param most how old the last calibration or passed verification may be
     * @param clearedBy what clears it
     */
    record AfterTime(Period most, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the time.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't above 0
         */
        public AfterTime {
            Require.given(AfterTime.class, most, clearedBy);
            Require.that(!most.isNegative() && !most.isZero(), "age of a calibration", "greater than 0", most);
        }

        @Override
        public String statement() {
            return COMMON_PRACTICE;
        }
    }

    /**
     * After revolutions of the shaft.
     *
     * @param most how many since the last calibration or passed verification
     * @param clearedBy what clears it
     */
    record AfterTurns(Quantity<RevolutionCount> most, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the number.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't above 0
         */
        public AfterTurns {
            Require.given(AfterTurns.class, most, clearedBy);
            Require.positive("revolutions until due", RevolutionCount.class, most);
        }

        @Override
        public String statement() {
            return COMMON_PRACTICE;
        }
    }

    /**
     * After a mass was laid.
     *
     * @param most how much since the last calibration or passed verification
     * @param clearedBy what clears it
     */
    record AfterMass(Quantity<Mass> most, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the mass.
         *
         * @throws org.gritwright.units.InvalidInputException if it isn't above 0
         */
        public AfterMass {
            Require.given(AfterMass.class, most, clearedBy);
            Require.positive("mass until due", Mass.class, most);
        }

        @Override
        public String statement() {
            return COMMON_PRACTICE;
        }
    }

    /**
     * After storms.
     *
     * @param most how many since the last calibration or passed verification, 1 or more
     * @param clearedBy what clears it
     */
    record AfterStorms(int most, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the number.
         *
         * @throws org.gritwright.units.InvalidInputException if it is less than 1
         */
        public AfterStorms {
            Require.given(AfterStorms.class, clearedBy);
            Require.that(most >= 1, "storms until due", "1 or more", most);
        }

        @Override
        public String statement() {
            return "part-way through a hard season (University of Delaware T² Center, 2020); after how many storms: "
                    + COMMON_PRACTICE;
        }
    }

    /**
     * When what leaves per revolution drifts.
     *
     * @param drift the charts and their limits
     */
    record OnDrift(DriftRule drift) implements DueRule {
        /** Checks that it is given. */
        public OnDrift {
            Require.given(OnDrift.class, drift);
        }

        @Override
        public ClearedBy clearedBy() {
            return ClearedBy.CALIBRATION;
        }

        @Override
        public String statement() {
            return "control charts as in textbooks of statistical quality control (Montgomery); that they are kept for spreaders: "
                    + COMMON_PRACTICE;
        }
    }

    /** While a value isn't proven: not checked, not decided, wrong, or lost. */
    record WhileNotProven() implements DueRule {
        @Override
        public ClearedBy clearedBy() {
            return ClearedBy.VERIFICATION;
        }

        @Override
        public String statement() {
            return COMMON_PRACTICE;
        }
    }

    /**
     * When a lot of the material comes that is denser or less dense than what was calibrated with.
     *
     * @param most by how much the loose bulk densities may differ, relative
     * @param clearedBy what clears it
     */
    record OtherLot(Quantity<Dimensionless> most, ClearedBy clearedBy) implements DueRule {
        /**
         * Checks the difference.
         *
         * @throws org.gritwright.units.InvalidInputException if it is negative, or 100 % or more
         */
        public OtherLot {
            Require.given(OtherLot.class, most, clearedBy);
            Require.share("difference of densities", most);
        }

        @Override
        public String statement() {
            return "to each salt pile; again when type, grade, moisture or supplier changes (UK national winter service research group, in the "
                    + "trade press); by how much a density may differ: " + COMMON_PRACTICE;
        }
    }

    /**
     * The rules that follow published statements, and what isn't proven: before each season by a calibration not older than 120 days before
     * it, after changes by a calibration, other lots from 5 % difference in density.
     *
     * @return the rules
     */
    static List<DueRule> usual() {
        return Usual.rules();
    }
}
