package org.gritwright.core.calibration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import javax.measure.Unit;
import org.gritwright.core.budget.BudgetDraft;
import org.gritwright.core.budget.ScaleSpans;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.statistics.RatioEstimate;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.statistics.Variance;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Where the uncertainty of a calibration comes from.
 *
 * <p>Nothing is counted twice: the rounding of scale and count is taken out of the catches' scatter. What is left is pooled with
 * what was known before about how catches scatter.
 */
final class CalibrationBudget {
    private final List<CalibrationCatch> catches;
    private final RatioEstimate estimate;
    private final CatchAllowances allowances;
    private final Unit<DischargePerRevolution> unit;
    /** By how much the estimate rises per kilogram of each catch. */
    private final double[] perKilogram;

    private final BudgetDraft<DischargePerRevolution> draft;

    CalibrationBudget(
            List<CalibrationCatch> catches,
            RatioEstimator estimator,
            RatioEstimate estimate,
            CatchAllowances allowances,
            Unit<DischargePerRevolution> unit) {
        this.catches = catches;
        this.estimate = estimate;
        this.allowances = allowances;
        this.unit = unit;
        this.draft = new BudgetDraft<>(unit);
        double[] revolutions =
                catches.stream().mapToDouble(CalibrationCatch::revolutions).toArray();
        this.perKilogram = estimator.sensitivities(revolutions);
        boolean countKnown = catches.stream()
                .allMatch(c -> c.observation().uncertaintyRevolutions().isPresent());
        boolean single = catches.size() == 1;
        CalibrationCatch first = catches.get(0);
        draft.addRounding(first.caught(), single, rounding());
        if (countKnown) {
            draft.addCount(first.observation(), single, counting());
        }
        draft.addScatter(
                allowances,
                relative -> together(i -> relative * discharged(i)),
                estimate.standardUncertainty().isPresent()
                        ? Optional.of(new Variance(
                                square(estimate.standardUncertainty().getAsDouble()), estimate.degreesOfFreedom()))
                        : Optional.empty(),
                square(rounding()) + square(counting()));
        if (!countKnown) {
            draft.addUnknown(Term.COUNT);
        }
        addCommon(shares());
    }

    private void addCommon(double[] shares) {
        double moisture = 0;
        for (int i = 0; i < shares.length; i++) {
            moisture += shares[i]
                    * allowances.moistureUncertainty(
                            catches.get(i).observation().conditions());
        }
        ScaleSpans spans =
                ScaleSpans.of(catches.stream().map(CalibrationCatch::caught).toList(), shares);
        draft.addCommon(spans, allowances, moisture, estimate.ratio());
    }

    private static double square(double number) {
        return number * number;
    }

    /** Which part of the estimate each catch makes up. */
    private double[] shares() {
        double[] shares = new double[perKilogram.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = perKilogram[i] * discharged(i) / estimate.ratio();
        }
        return shares;
    }

    private double discharged(int i) {
        return catches.get(i).observation().kilograms() * allowances.spillageFactor();
    }

    private double rounding() {
        return together(i -> catches.get(i).observation().roundingKilograms() * allowances.spillageFactor());
    }

    /** Counting one revolution too many has the same effect as catching one revolution's mass too little. */
    private double counting() {
        return together(i -> estimate.ratio()
                * catches.get(i).observation().uncertaintyRevolutions().orElse(0));
    }

    /** The uncertainty of the estimate due to independent uncertainties of the catches' masses. */
    private double together(IntToDoubleFunction kilograms) {
        double squares = 0;
        for (int i = 0; i < perKilogram.length; i++) {
            double part = perKilogram[i] * kilograms.applyAsDouble(i);
            squares += part * part;
        }
        return Math.sqrt(squares);
    }

    /** The uncertainty of a line's intercept due to the rounding of scale and count, in kg. */
    double resolutionOfStart() {
        double[] revolutions =
                catches.stream().mapToDouble(CalibrationCatch::revolutions).toArray();
        double mean = Arrays.stream(revolutions).average().orElseThrow();
        double squares = 0;
        for (int i = 0; i < revolutions.length; i++) {
            // The line goes through the means: what a catch does to the mean, less what it does to the slope.
            double sensitivity = 1.0 / revolutions.length - mean * perKilogram[i];
            double resolution = Math.hypot(
                    catches.get(i).observation().roundingKilograms() * allowances.spillageFactor(),
                    estimate.ratio()
                            * catches.get(i)
                                    .observation()
                                    .uncertaintyRevolutions()
                                    .orElse(0));
            squares += sensitivity * sensitivity * resolution * resolution;
        }
        return Math.sqrt(squares);
    }

    Budget<DischargePerRevolution> budget() {
        return draft.budget(Amounts.ofSi(estimate.ratio(), unit));
    }

    /** What is assumed in it, and what is not in it. */
    List<Finding> findings() {
        return draft.findings();
    }
}
