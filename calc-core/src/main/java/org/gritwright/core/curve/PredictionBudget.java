package org.gritwright.core.curve;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.budget.BudgetDraft;
import org.gritwright.core.budget.ScaleSpans;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/**
 * Where the uncertainty of a curve's predictions comes from. What it takes from the catches is summed up once, when the curve
 * is made.
 *
 * @param <Q> the kind of what is predicted: mass or volume per revolution
 */
final class PredictionBudget<Q extends Quantity<Q>> {
    private static final double COVERAGE = 0.95;

    private final FittedModel model;
    private final CatchAllowances allowances;
    private final Class<Q> kind;
    private final Unit<Q> unit;
    /** A scale has the share in a prediction that its masses have in the catches. */
    private final ScaleSpans spans;
    /** By the moisture, relative. */
    private final double moisture;
    /** What the rounding of scale and count contributes to a prediction, relative, by opening. */
    private final DoubleUnaryOperator resolution;
    /** What the scatter that is known from experience contributes to it. */
    private final DoubleUnaryOperator experience;

    PredictionBudget(
            List<CalibrationCatch> catches,
            FittedModel model,
            CatchAllowances allowances,
            Class<Q> kind,
            Unit<Q> unit) {
        this.model = model;
        this.allowances = allowances;
        this.kind = kind;
        this.unit = unit;
        double[] kilograms =
                catches.stream().mapToDouble(c -> c.observation().kilograms()).toArray();
        this.spans = ScaleSpans.of(
                        catches.stream().map(CalibrationCatch::caught).toList(), kilograms)
                .over(Arrays.stream(kilograms).sum());
        this.moisture = catches.stream()
                        .mapToDouble(c -> c.observation().kilograms()
                                * allowances.moistureUncertainty(c.observation().conditions()))
                        .sum()
                / Arrays.stream(kilograms).sum();
        this.resolution = model.relativeUncertainty(catches.stream()
                .mapToDouble(CalibrationCatch::relativeResolution)
                .toArray());
        double[] scatter = new double[catches.size()];
        Arrays.fill(scatter, allowances.scatter().relative());
        this.experience = model.relativeUncertainty(scatter);
    }

    /** None where nothing is known about how the catches scatter: a budget of the rest would look complete. */
    Optional<Budget<Q>> of(Measured<Q> byCurve, double at, Optional<Component<Q>> ofGate) {
        double value = Amounts.si(kind, byCurve.value());
        BudgetDraft<Q> draft = new BudgetDraft<>(unit);
        double rounding = resolution.applyAsDouble(at) * value;
        Optional<Quantity<Q>> scattered = byCurve.standardUncertainty();
        if (scattered.isPresent()) {
            double degrees = byCurve.degreesOfFreedom().orElseThrow();
            // A few catches may agree by chance: the rounding stands for them only where it makes the wider interval.
            double atMost = rounding * interval(Double.POSITIVE_INFINITY) / interval(degrees);
            boolean isScatter = Amounts.si(kind, scattered.get()) >= atMost;
            draft.addScatter(ErrorSource.CURVE, scattered.get(), degrees, isScatter ? 0 : rounding);
        } else {
            draft.addResolution(rounding);
            draft.addScatter(allowances, relative -> experience.applyAsDouble(at) * value, Optional.empty(), 0);
        }
        draft.addCommon(spans, allowances, moisture, value);
        ofGate.ifPresent(draft::add);
        return Optional.of(draft.budget(byCurve.value()));
    }

    private static double interval(double degreesOfFreedom) {
        return Student.of(degreesOfFreedom).coverageFactor(COVERAGE);
    }

    /** What is in no budget because nobody knows it. */
    List<Finding> findings() {
        BudgetDraft<Q> draft = new BudgetDraft<>(unit);
        draft.addCommon(spans, allowances, moisture, 1);
        if (model.degreesOfFreedom() < 1) {
            draft.addScatter(allowances, DoubleUnaryOperator.identity(), Optional.empty(), 0);
        }
        return draft.findings();
    }
}
