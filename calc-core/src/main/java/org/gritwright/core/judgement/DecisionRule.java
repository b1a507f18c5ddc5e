package org.gritwright.core.judgement;

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

/**
 * How a measured error that is itself uncertain is held against a tolerance (JCGM 106:2012, clause 8). The caller names
 * it. Immutable, thread-safe, a value.
 *
 * <ul>
 *   <li>Simple acceptance: what is measured within the tolerance counts as within, whatever its uncertainty. An error at
 *       the limit is accepted as often as not.
 *   <li>Guarded: a guard band w on both sides of each limit. Up to w inside a limit the error is shown within, beyond w
 *       outside it is shown outside, in between the catch can't tell. w = k·u with Student's k, so that an error which is
 *       in truth at the limit is accepted with the stated risk at most: 1.645·u for 5 % and 2·u for 2.3 % where u is
 *       known. Where a budget has parts of different degrees of freedom, w² = Σ (kᵢ·uᵢ)² with the k of each: one k for
 *       the effective degrees of freedom accepts up to 6.1 % for 5 % (three catches and a span of half their scatter),
 *       this never more than it states (S. K. Banerjee, Sankhyā 22, 1960, for two sides; from memory). Where the scatter of
 *       few catches comes out below the resolution of scale and count, that stands in for it with the normal k: with two
 *       degrees of freedom up to 5.5 % for 5 % were seen. Where w is the tolerance or more, nothing can be shown within.
 * </ul>
 *
 * @param risk the greatest probability of accepting an error at the limit, greater than 0 and below 50 %; none for simple
 *     acceptance
 */
public record DecisionRule(Optional<Quantity<Dimensionless>> risk) {
    private static final double EVEN = 0.5;

    /** Simple acceptance. */
    public static final DecisionRule SIMPLE = new DecisionRule(Optional.empty());

    /**
     * Checks the risk.
     *
     * @throws InvalidInputException if it is out of its range
     */
    public DecisionRule {
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
     * @param riskPercent the greatest probability of accepting an error at the limit, for example 5 for 5 %
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
     * @return its width on one side of a limit, in the terms of the uncertainty; 0 for simple acceptance
     * @throws InvalidInputException if the uncertainty is negative or not finite, or there is no degree of freedom
     */
    public double guardBand(double standardUncertainty, double degreesOfFreedom) {
        if (!(Require.finite("standard uncertainty of an error", standardUncertainty) >= 0)) {
            throw new InvalidInputException(
                    "standard uncertainty of an error", "0 or more", String.valueOf(standardUncertainty));
        }
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
     * @param error the error, a ratio − 1
     * @param guardBand the guard band for it
     * @param tolerance the tolerance
     * @return the verdict; with a guard band of 0 one of two
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
}
