package org.gritwright.core.uncertainty;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/** Two independent results for the same quantity combined into one. */
public final class WeightedMean {

    private WeightedMean() {}

    /**
     * The mean of two results, each weighted by 1 ÷ u²: (a/u_a² + b/u_b²) ÷ (1/u_a² + 1/u_b²), with u² = 1 ÷ (1/u_a² +
     * 1/u_b²). This is the usual weighted mean, the one of least variance (derived from the law of propagation, JCGM
     * 100:2008, 5.1.2).
     *
     * @param <Q> their kind
     * @param a one result
     * @param b the other, with errors of its own
     * @return the budget of the mean, in the unit of the first, with a component for each
     * @throws org.gritwright.units.InvalidInputException if one has no uncertainty or an uncertainty of 0
     */
    public static <Q extends Quantity<Q>> Budget<Q> of(Measured<Q> a, Measured<Q> b) {
        Objects.requireNonNull(a, "a");
        Objects.requireNonNull(b, "b");
        Unit<Q> unit = a.value().getUnit();
        double weightOfA = weight(a, unit);
        double weightOfB = weight(b, unit);
        double total = weightOfA + weightOfB;
        double value = (weightOfA * Amounts.in(a.value(), unit) + weightOfB * Amounts.in(b.value(), unit)) / total;
        return Budget.of(
                Amounts.of(value, unit),
                List.of(
                        component("earlier evidence", a, weightOfA / total),
                        component("new evidence", b, weightOfB / total)));
    }

    private static <Q extends Quantity<Q>> double weight(Measured<Q> result, Unit<Q> unit) {
        double uncertainty =
                result.standardUncertainty().map(u -> Amounts.in(u, unit)).orElse(0.0);
        double weight = 1 / (uncertainty * uncertainty);
        Require.that(
                weight > 0 && Double.isFinite(weight),
                "uncertainty of evidence to combine",
                "known and greater than 0",
                uncertainty);
        return weight;
    }

    private static <Q extends Quantity<Q>> Component<Q> component(String name, Measured<Q> result, double share) {
        Quantity<Q> uncertainty = result.standardUncertainty().orElseThrow();
        return Component.typeA(
                name,
                uncertainty,
                Amounts.of(Amounts.in(uncertainty, uncertainty.getUnit()) * share, uncertainty.getUnit()),
                result.degreesOfFreedom().orElseThrow());
    }
}
