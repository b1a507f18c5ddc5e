package org.gritwright.core.telemetry;

import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What left a hopper between two loadings, as its rows indicate it, beside what its tickets say. What left the hopper weighs what
 * was in it after the first loading, less what was left before the second. Immutable, thread-safe, a value.
 *
 * <p>An error that both share, such as the span of a scale that the calibration and the load were weighed on, cancels as far as it is in both: it
 * is taken once, with the difference of what it does to either.
 *
 * @param indicated what left the hopper, on the road or not, by the rows
 * @param weighed the same by the ticket
 * @param error indicated ÷ weighed − 1, as an as-found error is
 * @param unattributed pulses that were turned, as far as readings tell, and that nobody can say of what left the hopper
 * @param untold rows before which more may have turned than their readings tell: restarts, and gaps of a counter that rolls over; and the last
 *     rows where none of them is counted, since their times or readings can't be or the clock went back
 */
public record LoadComparison(
        Measured<Mass> indicated,
        Measured<Mass> weighed,
        Measured<Dimensionless> error,
        long unattributed,
        long untold) {
    private static final double COVERAGE = 0.95;

    /**
     * Checks that everything is there.
     *
     * @throws org.gritwright.units.InvalidInputException if a number is negative
     */
    public LoadComparison {
        Require.given(LoadComparison.class, indicated, weighed, error);
        Require.that(unattributed >= 0, "pulses unattributed", "0 or more", unattributed);
        Require.that(untold >= 0, "rows untold", "0 or more", untold);
    }

    /**
     * Compares a load with its ticket.
     *
     * @param evaluator what evaluated the rows, of grains
     * @param between the sums of the rows between the loading of the ticket and the next one, and of no others
     * @param ticket what was loaded
     * @param before what was in the hopper before it was loaded, with its uncertainty; a hopper that was empty: 0
     * @param after what was in it before it was loaded again
     * @return the comparison; indicated and weighed are in the unit of the ticket
     * @throws org.gritwright.units.InvalidInputException if rows are of a liquid, the sums of another timeline or of no row with a reading, a remainder
     *     is negative, or nothing could have left the hopper
     */
    public static LoadComparison of(
            RowEvaluator evaluator, RowSums between, Ticket ticket, Measured<Mass> before, Measured<Mass> after) {
        Objects.requireNonNull(evaluator, "evaluator");
        Objects.requireNonNull(between, "between");
        Objects.requireNonNull(ticket, "ticket");
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(after, "after");
        AppliedTotal left = evaluator.left(between);
        Require.that(between.hasReading(), "rows between the loadings", "some with a reading", "none");
        Unit<Mass> unit = ticket.loaded().getUnit();
        double loaded = Amounts.si(Mass.class, ticket.loaded());
        double kilograms = remainder("hopper before loading", before)
                + loaded
                - remainder("hopper before the next loading", after);
        Require.that(
                kilograms > 0,
                "mass that left the hopper by the ticket",
                "greater than 0",
                Amounts.ofSi(kilograms, unit));
        Map<String, Double> shared = new TreeMap<>();
        for (SharedError error : ticket.errors()) {
            shared.merge(
                    error.id(), loaded * Amounts.si(Dimensionless.class, error.standardUncertainty()), Double::sum);
        }
        double alone = Math.hypot(
                Amounts.si(Mass.class, ticket.standardUncertainty()),
                Math.hypot(uncertainty(before), uncertainty(after)));
        double indicated = Amounts.si(Mass.class, left.mass(unit).value());
        double ratio = indicated / kilograms;
        Map<String, Double> both = new TreeMap<>();
        left.sharedErrors().forEach((id, size) -> both.merge(id, size / AmountPerCount.PER_KILOGRAM, Double::sum));
        shared.forEach((id, size) -> both.merge(id, -ratio * size, Double::sum));
        double difference =
                Math.hypot(Math.hypot(root(both), left.ownUncertainty() / AmountPerCount.PER_KILOGRAM), ratio * alone);
        return new LoadComparison(
                left.mass(unit),
                measured(kilograms, Math.hypot(root(shared), alone), unit),
                measured(ratio - 1, difference / kilograms, SpreadingUnits.PERCENT),
                between.unattributed(),
                evaluator.untold(between));
    }

    private static double remainder(String what, Measured<Mass> mass) {
        return Amounts.si(Mass.class, Require.notNegative(what, Mass.class, mass.value()));
    }

    private static double uncertainty(Measured<Mass> mass) {
        return mass.standardUncertainty().map(u -> Amounts.si(Mass.class, u)).orElse(0.0);
    }

    private static double root(Map<String, Double> sizes) {
        double squares = 0;
        for (double size : sizes.values()) {
            squares += size * size;
        }
        return Math.sqrt(squares);
    }

    private static <Q extends Quantity<Q>> Measured<Q> measured(double value, double uncertainty, Unit<Q> unit) {
        return Measured.of(Amounts.ofSi(value, unit), Amounts.ofSi(uncertainty, unit), Double.POSITIVE_INFINITY);
    }

    /**
     * Whether all that left the hopper is in what is indicated. Where it isn't, more left than that.
     *
     * @return true if every pulse between the loadings could be counted, and none was lost before a restart, in a gap or at the end
     */
    public boolean isComplete() {
        return unattributed == 0 && untold == 0;
    }

    /**
     * Whether the rows and the ticket are shown to differ.
     *
     * @return true if all was counted, and the 95 % interval of the error leaves zero out
     */
    public boolean isShown() {
        return isComplete()
                && error.expandedUncertainty(COVERAGE)
                        .filter(expanded -> Math.abs(Amounts.si(Dimensionless.class, error.value()))
                                > Amounts.si(Dimensionless.class, expanded))
                        .isPresent();
    }
}
