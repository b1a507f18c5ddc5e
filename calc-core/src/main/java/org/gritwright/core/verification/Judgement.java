package org.gritwright.core.verification;

import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Conformity;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What one catch's error and its uncertainty say of the tolerance, and what to do. Immutable, thread-safe, a value.
 *
 * @param budget the error in per cent, and where its uncertainty comes from
 * @param rule the decision rule
 * @param tolerance the tolerance
 * @param verdict the verdict by the rule
 * @param conformity how likely the true error is within the tolerance, and how likely below and above it
 * @param guardBand the guard band in per cent; 0 for simple acceptance
 * @param advice what to do
 * @param further how many more catches like this one could tell, and how much that is; none where nothing more need be
 *     caught, or where 50 more could not tell
 * @param blame the component that keeps many more catches from telling; none where more could tell, or where the error is
 *     just too near a limit
 */
public record Judgement(
        Budget<Dimensionless> budget,
        DecisionRule rule,
        Tolerance tolerance,
        Verdict verdict,
        Conformity conformity,
        Quantity<Dimensionless> guardBand,
        Advice advice,
        Optional<FurtherCatches> further,
        Optional<String> blame) {
    private static final double COVERAGE = 0.95;

    /** Beyond this nobody would go on catching. */
    private static final int MOST_CATCHES = 50;

    private static final double MOST = 0.5;

    /**
     * Catches to make beside the one there is.
     *
     * @param catches how many, 1 or more
     * @param mass how much together, if each is like the one there is
     */
    public record FurtherCatches(int catches, Quantity<Mass> mass) {
        /**
         * Checks the values.
         *
         * @throws InvalidInputException if there is no catch, or the mass is not greater than zero
         */
        public FurtherCatches {
            if (catches < 1) {
                throw new InvalidInputException("further catches", "1 or more", String.valueOf(catches));
            }
            Require.positive("mass to catch", Mass.class, mass);
        }
    }

    static Judgement of(ErrorBudget errors, DecisionRule rule, Tolerance tolerance, Quantity<Mass> caught) {
        Budget<Dimensionless> budget = errors.budget();
        Measured<Dimensionless> result = budget.result();
        double error = Amounts.si(Dimensionless.class, result.value());
        double uncertainty =
                Amounts.si(Dimensionless.class, result.standardUncertainty().orElseThrow());
        double degrees = result.degreesOfFreedom().orElseThrow();
        double guard = rule.guardBand(budget);
        Verdict verdict = rule.verdict(error, guard, tolerance);
        Advice advice = Advice.of(isSignificant(result), verdict);
        Optional<FurtherCatches> further =
                advice == Advice.CATCH_MORE ? further(errors, rule, tolerance, caught) : Optional.empty();
        return new Judgement(
                budget,
                rule,
                tolerance,
                verdict,
                Conformity.of(error, uncertainty, degrees, -tolerance.ratio(), tolerance.ratio()),
                Amounts.ofSi(guard, SpreadingUnits.PERCENT),
                advice,
                further,
                advice == Advice.CATCH_MORE && further.isEmpty() ? blame(errors) : Optional.empty());
    }

    private static boolean isSignificant(Measured<Dimensionless> error) {
        return Comparison.isAbove(
                Math.abs(Amounts.si(Dimensionless.class, error.value())),
                Amounts.si(
                        Dimensionless.class, error.expandedUncertainty(COVERAGE).orElseThrow()),
                1);
    }

    /**
     * The fewest further catches whose mean with these, if it comes out the same, leads to something else. What more of
     * them tell, fewer may not, and never the other way round; so they are found by halving.
     */
    private static Optional<FurtherCatches> further(
            ErrorBudget errors, DecisionRule rule, Tolerance tolerance, Quantity<Mass> caught) {
        if (!isEnough(MOST_CATCHES, errors, rule, tolerance)) {
            return Optional.empty();
        }
        int tooFew = 0;
        int enough = MOST_CATCHES;
        while (enough - tooFew > 1) {
            int middle = (tooFew + enough) / 2;
            if (isEnough(middle, errors, rule, tolerance)) {
                enough = middle;
            } else {
                tooFew = middle;
            }
        }
        double more = enough * caught.getValue().doubleValue();
        return Optional.of(new FurtherCatches(enough, Amounts.of(more, caught.getUnit())));
    }

    private static boolean isEnough(int more, ErrorBudget errors, DecisionRule rule, Tolerance tolerance) {
        Budget<Dimensionless> budget = errors.ofCatches(errors.catches() + more);
        Measured<Dimensionless> result = budget.result();
        double error = Amounts.si(Dimensionless.class, result.value());
        return Advice.of(isSignificant(result), rule.verdict(error, rule.guardBand(budget), tolerance))
                != Advice.CATCH_MORE;
    }

    /** What would still be uncertain after many more catches, if that is what keeps them from telling. */
    private static Optional<String> blame(ErrorBudget errors) {
        Budget<Dimensionless> many = errors.ofCatches(errors.catches() + MOST_CATCHES);
        return many.dominant()
                .filter(worst -> errors.isSystematic(worst) && many.shareOf(worst) > MOST)
                .map(Component::name);
    }

    /**
     * A mass per revolution that was found with the error: relative to itself it is as uncertain as the error is to 1 + error.
     */
    Measured<DischargePerRevolution> discharge(
            double kilogramsPerRevolution, Set<String> without, Unit<DischargePerRevolution> unit) {
        Measured<Dimensionless> error = budget.without(without).result();
        double relative =
                Amounts.si(Dimensionless.class, error.standardUncertainty().orElseThrow())
                        / (1 + Amounts.si(Dimensionless.class, error.value()));
        return Measured.of(
                Amounts.ofSi(kilogramsPerRevolution, unit),
                Amounts.ofSi(relative * kilogramsPerRevolution, unit),
                error.degreesOfFreedom().orElseThrow());
    }

    /**
     * The expanded uncertainty of the error.
     *
     * @return in per cent, for a coverage of 95 %
     */
    public Quantity<Dimensionless> expandedUncertainty() {
        return budget.result().expandedUncertainty(COVERAGE).orElseThrow();
    }
}
