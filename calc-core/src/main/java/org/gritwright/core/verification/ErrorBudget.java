package org.gritwright.core.verification;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.budget.BudgetDraft;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.statistics.Variance;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Where the uncertainty of the error of one catch or several comes from, with the errors that more catches reduce kept apart
 * from those that all catches have in common.
 *
 * <p>The scatter is that of the calibration catches and of these catches, without the rounding of scale and count that is in it,
 * pooled with what was known before. The moisture is left out, because masses of the same material are compared.
 */
final class ErrorBudget {
    private final ErrorSums sums;
    private final double error;

    private final BudgetDraft<Dimensionless> draft = new BudgetDraft<>(SpreadingUnits.PERCENT);

    ErrorBudget(ErrorSums sums, Optional<Calibration> calibration, CatchAllowances allowances) {
        this.sums = sums;
        this.error = sums.error();
        addRandom(shown(calibration), allowances);
        draft.addCommon(sums.relativeSpans(), allowances, 0, 1 + error);
        if (sums.byRunTime()) {
            draft.addUnknown(Term.RUN_TIME);
        }
    }

    /** How single catches scatter, relative, as they and the calibration catches show; and how much of that is rounding. */
    private record Shown(Optional<Variance> scatter, double rounding) {
        private static final Shown NOTHING = new Shown(Optional.empty(), 0);
    }

    private Shown shown(Optional<Calibration> calibration) {
        double degrees = 0;
        double variance = 0;
        double rounding = 0;
        if (calibration.isPresent()) {
            Calibration known = calibration.get();
            degrees = known.scatterDegreesOfFreedom();
            variance = degrees * square(known.relativeScatter().orElse(0));
            rounding = degrees * square(known.relativeResolution());
        }
        if (sums.catches() > 1) {
            degrees += sums.catches() - 1;
            variance += sums.scatter();
            rounding += (sums.catches() - 1) * sums.resolution();
        }
        return degrees > 0
                ? new Shown(Optional.of(new Variance(variance / degrees, degrees)), rounding / degrees)
                : Shown.NOTHING;
    }

    private static double square(double number) {
        return number * number;
    }

    /** What a relative error of the masses contributes to the error. */
    private double contribution(double relative) {
        return relative * (1 + error);
    }

    private void addRandom(Shown shown, CatchAllowances allowances) {
        if (!sums.countKnown()) {
            draft.addUnknown(Term.COUNT);
        }
        addRounding();
        double perRelative = contribution(sums.shrinking());
        draft.addScatter(
                allowances,
                relative -> relative * perRelative,
                shown.scatter().map(one -> new Variance(one.value() * square(perRelative), one.degreesOfFreedom())),
                shown.rounding() * square(perRelative));
    }

    private void addRounding() {
        VerificationCatch first = sums.first();
        boolean isSingle = sums.catches() == 1;
        draft.addRounding(first.caught(), isSingle, contribution(sums.ofRounding()));
        if (!sums.countKnown() || sums.ofCounting() == 0) {
            return;
        }
        if (first.counted().isPresent()) {
            draft.addCount(first.observation(), isSingle, contribution(sums.ofCounting()));
        } else {
            Quantity<?> step = first.indicated().orElseThrow().resolution();
            draft.addDisplayStep(
                    Amounts.ofSi(
                            ErrorSums.displayStep(first) / first.stepKilograms() * IndicatedAmount.si(step),
                            step.getUnit()),
                    isSingle,
                    contribution(sums.ofCounting()));
        }
    }

    /** Whether further catches would have the same error again. */
    static boolean isSystematic(Component<?> component) {
        return ErrorSource.of(component.key()).orElseThrow().isCommonToCatches();
    }

    int catches() {
        return sums.catches();
    }

    Budget<Dimensionless> budget() {
        return ofCatches(sums.catches());
    }

    /** What is assumed in it, and what is not in it. */
    List<Finding> findings() {
        return draft.findings();
    }

    /** The budget of the mean error of more catches like these, if their mean comes out the same. */
    Budget<Dimensionless> ofCatches(int wanted) {
        int catches = sums.catches();
        double shrinking = Math.sqrt((double) catches / wanted);
        return Budget.of(
                Amounts.ofSi(error, SpreadingUnits.PERCENT),
                draft.components().stream()
                        .map(c -> isSystematic(c) ? c : shrunk(c, wanted, shrinking))
                        .toList());
    }

    private Component<Dimensionless> shrunk(Component<Dimensionless> component, int wanted, double shrinking) {
        return new Component<>(
                component.key(),
                component.name(),
                component.evaluation(),
                component.distribution(),
                component.standardUncertainty(),
                Amounts.ofSi(
                        Amounts.si(Dimensionless.class, component.contribution()) * shrinking, SpreadingUnits.PERCENT),
                // Each further catch tells a little more about the scatter.
                component.degreesOfFreedom() + wanted - sums.catches(),
                component.group());
    }
}
