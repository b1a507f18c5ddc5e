package org.gritwright.core.verification;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.budget.SharedErrors;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Conformity;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.uncertainty.NormalizedError;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What one catch's error and its uncertainty say about the tolerance, and what to do. Immutable, thread-safe, a value.
 *
 * @param budget the error in percent, and where its uncertainty comes from
 * @param rule the decision rule
 * @param tolerance the tolerance
 * @param verdict the verdict by the rule
 * @param conformity how likely the true error is within the tolerance, and how likely below and above it
 * @param guardBand the guard band in percent; 0 for simple acceptance
 * @param advice what to do
 * @param further how many more catches like this one could tell, and how much that is; none where nothing more need be
 *     caught, or where 50 more could not tell
 * @param mainCause the component that would keep even many more catches from telling; none where more catches could tell,
 *     or where the error is just too close to a limit
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
        Optional<Component<Dimensionless>> mainCause) {
    /** Checks that nothing is null. */
    public Judgement {
        Require.given(
                Judgement.class, budget, rule, tolerance, verdict, conformity, guardBand, advice, further, mainCause);
    }

    private static final double COVERAGE = 0.95;

    /** Beyond this nobody would go on catching. */
    private static final int MOST_CATCHES = 50;

    private static final double MOST = 0.5;

    /**
     * Catches to make beside the one there is.
     *
     * @param catches how many, 1 or more
     * @param amount how much together, if each is like the one there is: a mass or, of a liquid, a volume
     */
    public record FurtherCatches(int catches, Quantity<?> amount) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if there is no catch, or the amount is not greater than zero
         */
        public FurtherCatches {
            Require.that(catches >= 1, "further catches", "1 or more", catches);
            Require.given(FurtherCatches.class, amount);
            Require.that(amount.getValue().doubleValue() > 0, "amount to catch", "greater than 0", amount);
        }
    }

    /** What a judgement comes to, without what a person reads beside it. */
    record Call(Verdict verdict, Advice advice) {}

    static Call call(Budget<Dimensionless> budget, DecisionRule rule, Tolerance tolerance) {
        return call(budget, rule.guardBand(budget), rule, tolerance);
    }

    private static Call call(Budget<Dimensionless> budget, double guard, DecisionRule rule, Tolerance tolerance) {
        Measured<Dimensionless> result = budget.result();
        Verdict verdict = rule.verdict(Amounts.si(Dimensionless.class, result.value()), guard, tolerance);
        return new Call(verdict, Advice.of(isSignificant(result), verdict));
    }

    static Judgement of(ErrorBudget errors, DecisionRule rule, Tolerance tolerance, Quantity<?> caught) {
        Budget<Dimensionless> budget = errors.budget();
        Measured<Dimensionless> result = budget.result();
        double error = Amounts.si(Dimensionless.class, result.value());
        double uncertainty =
                Amounts.si(Dimensionless.class, result.standardUncertainty().orElseThrow());
        double degrees = result.degreesOfFreedom().orElseThrow();
        double guard = rule.guardBand(budget);
        Call call = call(budget, guard, rule, tolerance);
        Advice advice = call.advice();
        Optional<FurtherCatches> further =
                advice == Advice.CATCH_MORE ? further(errors, rule, tolerance, caught) : Optional.empty();
        return new Judgement(
                budget,
                rule,
                tolerance,
                call.verdict(),
                Conformity.of(error, uncertainty, degrees, -tolerance.ratio(), tolerance.ratio()),
                Amounts.ofSi(guard, SpreadingUnits.PERCENT),
                advice,
                further,
                advice == Advice.CATCH_MORE && further.isEmpty() ? mainCause(errors) : Optional.empty());
    }

    /** The same of data on which nothing may be built. */
    Judgement doubted() {
        return new Judgement(
                budget,
                rule,
                tolerance,
                verdict,
                conformity,
                guardBand,
                Advice.FIND_FAULT,
                Optional.empty(),
                Optional.empty());
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
            ErrorBudget errors, DecisionRule rule, Tolerance tolerance, Quantity<?> caught) {
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
        return call(errors.ofCatches(errors.catches() + more), rule, tolerance).advice() != Advice.CATCH_MORE;
    }

    /** The component that would still dominate after many more catches, if that is what keeps them from telling. */
    private static Optional<Component<Dimensionless>> mainCause(ErrorBudget errors) {
        Budget<Dimensionless> many = errors.ofCatches(errors.catches() + MOST_CATCHES);
        return many.dominant().filter(worst -> ErrorBudget.isSystematic(worst) && many.shareOf(worst) > MOST);
    }

    /**
     * A mass per revolution that was found with the error: relative to itself it is as uncertain as the error is to 1 + error.
     */
    Measured<DischargePerRevolution> discharge(
            double kilogramsPerRevolution, Set<ComponentKey> without, Unit<DischargePerRevolution> unit) {
        Measured<Dimensionless> error = budget.without(without).result();
        double relative =
                Amounts.si(Dimensionless.class, error.standardUncertainty().orElseThrow())
                        / (1 + Amounts.si(Dimensionless.class, error.value()));
        return Measured.of(
                Amounts.ofSi(kilogramsPerRevolution, unit),
                Amounts.ofSi(relative * kilogramsPerRevolution, unit),
                error.degreesOfFreedom().orElseThrow());
    }

    /** Compares a mass per revolution found with the error with a calibration; an error common to both is left out. */
    Optional<NormalizedError> comparedWith(
            Calibration calibration, double kilogramsPerRevolution, List<? extends Caught> caught) {
        Set<ComponentKey> shared = SharedErrors.of(
                calibration.catches().stream().map(CalibrationCatch::caught).toList(), caught);
        Measured<DischargePerRevolution> before =
                calibration.budget().without(shared).result();
        Measured<DischargePerRevolution> now =
                discharge(kilogramsPerRevolution, shared, before.value().getUnit());
        return isUncertain(now) || isUncertain(before)
                ? Optional.of(NormalizedError.between(now, before))
                : Optional.empty();
    }

    private static boolean isUncertain(Measured<?> measured) {
        return measured.standardUncertainty()
                .filter(u -> u.getValue().doubleValue() > 0)
                .isPresent();
    }

    /**
     * The expanded uncertainty of the error.
     *
     * @return in percent, for a coverage of 95 %
     */
    public Quantity<Dimensionless> expandedUncertainty() {
        return budget.result().expandedUncertainty(COVERAGE).orElseThrow();
    }
}
