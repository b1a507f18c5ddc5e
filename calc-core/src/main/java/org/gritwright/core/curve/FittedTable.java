package org.gritwright.core.curve;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.core.metering.SweptByOpening;
import org.gritwright.core.statistics.MonotoneTable;

/** A rising table over the swept volume. Beyond its rows it goes on in proportion to the geometry, without uncertainty. */
record FittedTable(SweptByOpening geometry, MonotoneTable rows) implements FittedModel {

    @Override
    public boolean discharges(double at) {
        return geometry.applyAsDouble(at) > 0;
    }

    @Override
    public Value value(double at) {
        double swept = geometry.applyAsDouble(at);
        double row = nearestRow(swept);
        double factor = swept / row;
        return new Value(
                factor * rows.at(row),
                row == swept ? rows.uncertaintyAt(row) : OptionalDouble.empty(),
                rows.degreesOfFreedom());
    }

    private double nearestRow(double swept) {
        return Math.max(rows.lowest(), Math.min(rows.highest(), swept));
    }

    @Override
    public int degreesOfFreedom() {
        return rows.degreesOfFreedom();
    }

    @Override
    public DoubleUnaryOperator relativeUncertainty(double[] relative) {
        DoubleUnaryOperator ofRows = rows.relativeUncertainty(relative);
        return at -> ofRows.applyAsDouble(nearestRow(geometry.applyAsDouble(at)));
    }
}
