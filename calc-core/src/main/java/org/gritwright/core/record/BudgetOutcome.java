package org.gritwright.core.record;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * An uncertainty budget as it stands in a record.
 *
 * @param components where the uncertainty comes from
 * @param combined the combined standard uncertainty
 * @param degreesOfFreedom its effective degrees of freedom; none where they are infinite
 * @param expanded the expanded uncertainty, for a coverage of 95 %
 * @param dominant the component with the largest share; none where nothing is uncertain
 */
public record BudgetOutcome(
        List<Row> components,
        Quantity<?> combined,
        Optional<Quantity<Dimensionless>> degreesOfFreedom,
        Quantity<?> expanded,
        Optional<String> dominant) {
    private static final double COVERAGE = 0.95;

    /**
     * One component.
     *
     * @param name what is uncertain
     * @param evaluation how the uncertainty was found
     * @param distribution the shape of the error's distribution
     * @param standardUncertainty of the input
     * @param contribution to the result
     * @param degreesOfFreedom of the standard uncertainty; none where they are infinite
     * @param group the common error it is part of; none for an error of its own
     * @param share its part of the combined variance
     */
    public record Row(
            String name,
            Component.Evaluation evaluation,
            Distribution distribution,
            Quantity<?> standardUncertainty,
            Quantity<?> contribution,
            Optional<Quantity<Dimensionless>> degreesOfFreedom,
            Optional<String> group,
            Quantity<Dimensionless> share) {}

    /** Copies the list. */
    public BudgetOutcome {
        components = List.copyOf(components);
    }

    static <Q extends Quantity<Q>> BudgetOutcome of(Budget<Q> budget) {
        return of(budget, result -> result);
    }

    /**
     * The budget of a result that is written in another form.
     *
     * @param written the result, or a part of its uncertainty, as it is written
     */
    static <Q extends Quantity<Q>> BudgetOutcome of(Budget<Q> budget, Function<Quantity<Q>, Quantity<?>> written) {
        Measured<Q> result = budget.result();
        return new BudgetOutcome(
                budget.components().stream().map(c -> row(budget, c, written)).toList(),
                written.apply(result.standardUncertainty().orElseThrow()),
                finite(result.degreesOfFreedom().orElseThrow()),
                written.apply(result.expandedUncertainty(COVERAGE).orElseThrow()),
                budget.dominant().map(Component::name));
    }

    private static <Q extends Quantity<Q>> Row row(
            Budget<Q> budget, Component<Q> component, Function<Quantity<Q>, Quantity<?>> written) {
        return new Row(
                component.name(),
                component.evaluation(),
                component.distribution(),
                component.standardUncertainty(),
                written.apply(component.contribution()),
                finite(component.degreesOfFreedom()),
                component.group(),
                Amounts.ofSi(budget.shareOf(component), SpreadingUnits.PERCENT));
    }

    private static Optional<Quantity<Dimensionless>> finite(double degreesOfFreedom) {
        return Double.isInfinite(degreesOfFreedom)
                ? Optional.empty()
                : Optional.of(Amounts.of(degreesOfFreedom, SpreadingUnits.ONE));
    }
}
