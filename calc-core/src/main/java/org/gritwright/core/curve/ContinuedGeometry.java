package org.gritwright.core.curve;

import java.util.function.DoubleUnaryOperator;
import org.gritwright.core.metering.SweptByOpening;
import org.gritwright.core.statistics.CurveFit;

/**
 * A spreader's geometry past the openings that can be set, for a gate whose reading is off: one that stands at its last
 * mark may really be open further. Past an end it continues straight at the slope that it has there, never below 0, for
 * as far again as the gate can be set.
 */
final class ContinuedGeometry implements CurveFit.Shape {
    private static final long serialVersionUID = 1L;

    /** The part of the range over which an end's slope is taken. */
    private static final double STEP = 1e-6;

    private final DoubleUnaryOperator geometry;
    private final double first;
    private final double last;
    private final double firstValue;
    private final double lastValue;
    private final double firstSlope;
    private final double lastSlope;

    ContinuedGeometry(SweptByOpening geometry) {
        this.geometry = geometry;
        this.first = geometry.lowest().si();
        this.last = geometry.highest().si();
        this.firstValue = geometry.applyAsDouble(first);
        this.lastValue = geometry.applyAsDouble(last);
        double step = STEP * (last - first);
        this.firstSlope = step > 0 ? (geometry.applyAsDouble(first + step) - firstValue) / step : 0;
        this.lastSlope = step > 0 ? (lastValue - geometry.applyAsDouble(last - step)) / step : 0;
    }

    /** Its lower end: where nothing is swept any more, if that is near enough. */
    double lowest() {
        return firstValue > 0 ? Math.max(first - (last - first), first - firstValue / firstSlope) : first;
    }

    double highest() {
        return last + (last - first);
    }

    @Override
    public double applyAsDouble(double opening) {
        if (opening < first) {
            return Math.max(0, firstValue - firstSlope * (first - opening));
        }
        return opening > last ? lastValue + lastSlope * (opening - last) : geometry.applyAsDouble(opening);
    }
}
