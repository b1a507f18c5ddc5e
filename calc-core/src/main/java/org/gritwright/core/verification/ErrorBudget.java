package org.gritwright.core.verification;

import java.util.List;
import java.util.Optional;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.budget.BudgetDraft;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;

/**
 * Where the uncertainty of the error of one catch or several comes from, with the errors that more catches reduce kept apart
 * from those that all catches have in common.
 *
 * <p>If the calibration has three catches or more, their scatter is taken for these catches too, pooled with what the catches
 * themselves show from the second on; without a calibration, three catches show their own. Such a scatter includes the
 * rounding of scale and count of the catches it was found from; where these catches are rounded more coarsely, the rest is a
 * component of its own. The moisture is left out, because masses of the same material are compared.
 */
final class ErrorBudget {
    private final ErrorSums sums;
    private final double error;

    private final BudgetDraft<Dimensionless> draft = new BudgetDraft<>(SpreadingUnits.PERCENT);

    ErrorBudget(ErrorSums sums, Optional<Calibration> calibration, CatchAllowances allowances) {
        this.sums = sums;
        this.error = sums.error();
        addRandom(scatter(calibration), allowances.repeatability());
        draft.addCommon(sums.relativeSpans(), allowances, 0, 1 + error);
        if (sums.byRunTime()) {
            draft.addUnknown(Term.RUN_TIME);
        }
    }

    /** The known scatter of single catches, relative: its variance, and how much of that is rounding of scale and count. */
    private record Scatter(double variance, double rounding, double degreesOfFreedom) {}

    private Optional<Scatter> scatter(Optional<Calibration> calibration) {
        double variance = 0;
        double rounding = 0;
        double degrees = 0;
        if (calibration.isPresent() && calibration.get().catches().size() >= Repeatability.FEWEST_CATCHES) {
            Calibration known = calibration.get();
            degrees = known.scatterDegreesOfFreedom();
            variance = degrees * square(known.relativeScatter().orElse(0));
            rounding = degrees * square(known.relativeResolution());
        }
        int catches = sums.catches();
        if (catches >= Repeatability.FEWEST_CATCHES || (catches > 1 && degrees > 0)) {
            variance += sums.scatter();
            rounding += (catches - 1) * sums.resolution();
            degrees += catches - 1;
        }
        return degrees > 0
                ? Optional.of(new Scatter(variance / degrees, rounding / degrees, degrees))
                : Optional.empty();
    }

    private static double square(double number) {
        return number * number;
    }

    /** What a relative error of the masses contributes to the error. */
    private double contribution(double relative) {
        return relative * (1 + error);
    }

    private void addRandom(Optional<Scatter> scatter, Optional<Repeatability> repeatability) {
        if (!sums.countKnown()) {
            draft.addUnknown(Term.COUNT);
        }
        if (scatter.isPresent()) {
            Scatter known = scatter.get();
            draft.addScatter(
                    ErrorSource.SCATTER,
                    contribution(Math.sqrt(known.variance()) * sums.shrinking()),
                    known.degreesOfFreedom(),
                    contribution(Math.sqrt(known.rounding()) * sums.shrinking()));
            if (Comparison.isAbove(sums.resolution(), known.rounding())) {
                double coarser = Math.sqrt(sums.resolution() - known.rounding());
                draft.addCoarserResolution(contribution(coarser * sums.shrinking()));
            }
            return;
        }
        addRounding();
        draft.addRepeatability(repeatability, relative -> contribution(relative * sums.shrinking()));
    }

    private void addRounding() {
        VerificationCatch first = sums.first();
        boolean isSingle = sums.catches() == 1;
        draft.addScaleRounding(first.caught(), isSingle, contribution(sums.ofRounding()));
        if (!sums.countKnown() || sums.ofCounting() == 0) {
            return;
        }
        if (first.counted().isPresent()) {
            draft.addCount(first.observation(), isSingle, contribution(sums.ofCounting()));
        } else {
            Unit<Mass> unit = first.indicated().orElseThrow().resolution().getUnit();
            draft.addDisplayStep(
                    Amounts.ofSi(ErrorSums.displayStep(first), unit), isSingle, contribution(sums.ofCounting()));
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

    /** What is not in the budget because nobody knows it. */
    List<Argument.Unknown> unknown() {
        return draft.unknown();
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
                wanted == sums.catches() ? component.distribution() : Distribution.NORMAL,
                component.standardUncertainty(),
                Amounts.ofSi(
                        Amounts.si(Dimensionless.class, component.contribution()) * shrinking, SpreadingUnits.PERCENT),
                // Each further catch tells a little more about the scatter.
                component.degreesOfFreedom() + wanted - sums.catches(),
                component.group());
    }
}
