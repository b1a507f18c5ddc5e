package org.gritwright.core.judgement;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * How a measured error, itself uncertain, is compared with a tolerance (JCGM 106:2012, clause 8). The caller chooses the
 * rule. Immutable, thread-safe, a value.
 *
 * <ul>
 *   <li>Simple acceptance: an error measured within the tolerance counts as within, whatever its uncertainty. A true error
 *       at the limit is accepted half of the time.
 *   <li>Guarded: a guard band w on both sides of each limit. An error at least w inside the limits is shown to be within,
 *       one more than w outside is shown to be outside, and in between the catch can't tell. w = k·u with Student's k, so
 *       that a true error at the limit is accepted with the stated risk at most: 1.645·u for 5 % and 2·u for 2.3 % where u
 *       is exactly known. Where the parts of a budget have different degrees of freedom, w² = Σ (kᵢ·uᵢ)² with the k of
 *       each. One k for the effective degrees of freedom would accept up to 6.1 % for a stated 5 % (three catches and a
 *       span of half their scatter); this form never accepts more than stated (S. K. Banerjee, Sankhyā 22, 1960, for two
 *       sides; from memory). Where few catches happen to scatter less than the resolution of scale and count, the
 *       resolution replaces their scatter, with the normal k: with two degrees of freedom, up to 5.5 % were accepted in
 *       simulations for a stated 5 %. Where w is the tolerance or more, nothing can be shown to be within.
 * </ul>
 *
 * @param risk the largest accepted probability of passing a true error at the limit, greater than 0 and below 50 %; none for
 *     simple acceptance
 */
public record DecisionRule(Optional<Quantity<Dimensionless>> risk) implements Serializable {
    private static final double EVEN = 0.5;

    /** Simple acceptance. */
    public static final DecisionRule SIMPLE = new DecisionRule(Optional.empty());

    /**
     * Checks the risk.
     *
     * @throws InvalidInputException if it is out of its range
     */
    public DecisionRule {
        Objects.requireNonNull(risk, "risk");
        if (risk.isPresent()) {
            Require.positive("risk of a decision", Dimensionless.class, risk.get());
            if (!(Amounts.si(Dimensionless.class, risk.get()) < EVEN)) {
                throw new InvalidInputException("risk of a decision", "below 50 %", Amounts.format(risk.get()));
            }
        }
    }

    /**
     * A guarded rule.
     *
     * @param riskPercent the largest accepted probability of passing a true error at the limit, for example 5 for 5 %
     * @return the rule
     * @throws InvalidInputException if the risk is out of its range
     */
    public static DecisionRule guarded(double riskPercent) {
        return new DecisionRule(Optional.of(Amounts.of(riskPercent, SpreadingUnits.PERCENT)));
    }

    /**
     * The guard band.
     *
     * @param standardUncertainty of the error, 0 or more
     * @param degreesOfFreedom of the uncertainty, greater than 0, possibly infinite
     * @return its width on one side of a limit, in the unit of the uncertainty; 0 for simple acceptance
     * @throws InvalidInputException if the uncertainty is negative or not finite, or there is no degree of freedom
     */
    public double guardBand(double standardUncertainty, double degreesOfFreedom) {
        Require.notNegative("standard uncertainty of an error", standardUncertainty);
        return risk.map(r -> Student.of(degreesOfFreedom).factorExceededWith(Amounts.si(Dimensionless.class, r))
                        * standardUncertainty)
                .orElse(0.0);
    }

    /** The guard band of an error whose components are independent, as a ratio; 0 for simple acceptance. */
    public double guardBand(Budget<Dimensionless> error) {
        return error.components().stream()
                .mapToDouble(c ->
                        guardBand(Math.abs(Amounts.si(Dimensionless.class, c.contribution())), c.degreesOfFreedom()))
                .reduce(0, Math::hypot);
    }

    /**
     * The verdict on a measured error.
     *
     * @param error the error as a ratio − 1, for example 0.0108 for 1.08 %
     * @param guardBand the guard band for it, as a ratio
     * @param tolerance the tolerance
     * @return the verdict; with a guard band of 0 it is within or outside
     * @throws InvalidInputException if the error is not finite
     */
    public Verdict verdict(double error, double guardBand, Tolerance tolerance) {
        Require.finite("error", error);
        double limit = tolerance.ratio();
        if (guardBand == 0) {
            return tolerance.acceptsRatio(error) ? Verdict.WITHIN_TOLERANCE : Verdict.OUTSIDE_TOLERANCE;
        }
        if (Comparison.isAbove(Math.abs(error), limit + guardBand, 1)) {
            return Verdict.OUTSIDE_TOLERANCE;
        }
        if (guardBand >= limit) {
            return Verdict.UNDECIDABLE;
        }
        return Comparison.isAbove(Math.abs(error), limit - guardBand, 1) ? Verdict.UNDECIDED : Verdict.WITHIN_TOLERANCE;
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
    /**
     * The rule as text.
     *
     * @return for example "guarded, risk 5 %" or "simple acceptance"
     */
    @Override
    public String toString() {
        return risk.map(r -> "guarded, risk " + Amounts.format(r)).orElse("simple acceptance");
    }
}
