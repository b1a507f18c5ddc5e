package org.gritwright.core.curve;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.units.check.Comparison;

/**
 * k · g(x) or k · g(x − x₀).
 *
 * @param fit the fit
 * @param rival the other model, where no test refuses it either
 * @param misfit the largest relative misfit of a group, where the test refuses the model; else 0
 */
record FittedShape(FittedData data, CurveFit fit, Optional<CurveFit> rival, double misfit) implements FittedModel {

    @Override
    public boolean discharges(double at) {
        double argument = at - fit.shift();
        return !Comparison.isAbove(data.lowestLimit(), argument)
                && !Comparison.isAbove(argument, data.highestLimit())
                && fit.at(at) > 0;
    }

    @Override
    public Value value(double at) {
        return rival.map(other -> coveringBoth(other, at)).orElseGet(() -> coveringMisfit(at));
    }

    /** What a refused curve misses a group by, it may miss any by. */
    private Value coveringMisfit(double at) {
        double value = fit.at(at);
        OptionalDouble scatter = fit.uncertaintyAt(at);
        return new Value(
                value,
                misfit > 0 ? OptionalDouble.of(Math.hypot(scatter.orElseThrow(), misfit * value)) : scatter,
                fit.degreesOfFreedom());
    }

    /**
     * The value of a curve that a test didn't refuse, with an uncertainty that also covers a rival that the test
     * doesn't refuse: the larger uncertainty of the two, together with their difference. A rival says nothing below its
     * shift, and beyond the shape's end it keeps its last value.
     */
    private Value coveringBoth(CurveFit other, double at) {
        double argument = Math.min(at - other.shift(), data.highestLimit());
        double rivalAt = argument + other.shift();
        boolean discharges = argument > data.lowestLimit() && other.at(rivalAt) > 0;
        double value = fit.at(at);
        double difference = value - (discharges ? other.at(rivalAt) : 0);
        double own = fit.uncertaintyAt(at).orElseThrow();
        double larger = discharges ? Math.max(own, other.uncertaintyAt(rivalAt).orElse(own)) : own;
        return new Value(
                value, OptionalDouble.of(Math.hypot(larger, difference)), Math.max(1, other.degreesOfFreedom()));
    }

    @Override
    public int degreesOfFreedom() {
        return fit.degreesOfFreedom();
    }

    @Override
    public DoubleUnaryOperator relativeUncertainty(double[] relative) {
        return fit.relativeUncertainty(relative);
    }
}
