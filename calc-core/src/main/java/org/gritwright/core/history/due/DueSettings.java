package org.gritwright.core.history.due;

import java.time.Period;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * By which rules something is due, and what is planned. Immutable, thread-safe, a value.
 *
 * @param rules the rules
 * @param tolerance how far an error may be from zero
 * @param planned what the trucks are planned to lay in the time to come
 * @param unknownError the standard deviation of the error of a value about which nothing is known, or after a change, relative
 * @param ahead how far to look ahead: what is due by then is listed too, not negative
 */
public record DueSettings(
        List<DueRule> rules,
        Tolerance tolerance,
        List<Planned> planned,
        Quantity<Dimensionless> unknownError,
        Period ahead) {
    /** How far a value of which nothing is known may be off (common practice, no source). */
    private static final double UNKNOWN_PERCENT = 10;

    /**
     * What a truck is planned to lay of a material.
     *
     * @param truck the truck's id
     * @param material the material's name
     * @param mass how much, 0 or more
     */
    public record Planned(String truck, String material, Quantity<Mass> mass) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if a name is blank or the mass negative
         */
        public Planned {
            Require.given(Planned.class, truck, material, mass);
            Require.text("truck of a plan", truck);
            Require.text("material of a plan", material);
            Require.notNegative("planned mass of " + truck, Mass.class, mass);
        }
    }

    /**
     * Copies the lists.
     *
     * @throws org.gritwright.units.InvalidInputException if there is no rule, a truck's material is planned twice, the unknown error isn't
     *     below 100 %, or the time ahead is negative
     */
    public DueSettings {
        Require.given(DueSettings.class, rules, tolerance, planned, unknownError, ahead);
        rules = List.copyOf(rules);
        planned = List.copyOf(planned);
        List<Planned> all = planned;
        Require.that(!rules.isEmpty(), "rules", "one or more", "none");
        Require.that(
                all.stream()
                                .map(one -> List.of(one.truck(), one.material()))
                                .distinct()
                                .count()
                        == all.size(),
                "planned masses",
                "one for each truck and material",
                () -> all);
        Require.fraction("error of an unknown value", unknownError);
        Require.that(!ahead.isNegative(), "time to look ahead", "0 or more", ahead);
    }

    /**
     * The usual rules; nothing is planned, values that nobody knows anything of are off by 10 % (common practice, no source), and what is due
     * within a month is listed.
     *
     * @param tolerance how far an error may be from zero
     * @return the settings
     */
    public static DueSettings usual(Tolerance tolerance) {
        return new DueSettings(
                DueRule.usual(),
                tolerance,
                List.of(),
                Amounts.of(UNKNOWN_PERCENT, SpreadingUnits.PERCENT),
                Period.ofMonths(1));
    }

    /**
     * The same by other rules.
     *
     * @param other the rules
     * @return the settings
     */
    public DueSettings by(List<DueRule> other) {
        return new DueSettings(other, tolerance, planned, unknownError, ahead);
    }

    /**
     * The same with what is planned.
     *
     * @param masses what each truck is planned to lay
     * @return the settings
     */
    public DueSettings planning(List<Planned> masses) {
        return new DueSettings(rules, tolerance, masses, unknownError, ahead);
    }
}
