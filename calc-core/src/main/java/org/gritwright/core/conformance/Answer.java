package org.gritwright.core.conformance;

import java.io.Serializable;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;

/**
 * What a type gives for one set of parameters: a function, and the points, in rising order, at which the laws ask it.
 */
final class Answer {
    private static final int OPENINGS = 33;

    /** From nothing to more than any spreader has open, in m². */
    private static final List<Double> OPEN_AREAS = List.of(0.0, 1e-6, 1e-4, 1e-3, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 5.0);

    private final Serializable function;
    private final Function<Serializable, DoubleUnaryOperator> reading;
    private final List<Double> points;
    private final int closedPoints;

    private Answer(
            Serializable function,
            Function<Serializable, DoubleUnaryOperator> reading,
            List<Double> points,
            int closedPoints) {
        this.function = function;
        this.reading = reading;
        this.points = points;
        this.closedPoints = closedPoints;
    }

    static Answer of(ConveyorType type, Parameters given) {
        SweptVolume volume = type.sweptVolume(given);
        return new Answer(volume, f -> ((SweptVolume) f)::cubicMetresPerRevolution, OPEN_AREAS, 0);
    }

    static Answer of(GateType type, Parameters given) {
        GateShape shape = type.shape(given);
        if (shape instanceof GateShape.Adjustable<?> adjustable) {
            return of(adjustable);
        }
        double area = shape instanceof GateShape.Fixed fixed ? Amounts.si(Area.class, fixed.area()) : 0;
        return new Answer(shape == null ? null : Double.valueOf(area), f -> at -> (Double) f, List.of(0.0), 0);
    }

    private static <Q extends Quantity<Q>> Answer of(GateShape.Adjustable<Q> shape) {
        double lowest = Amounts.si(shape.kind(), shape.lowest());
        double highest = Amounts.si(shape.kind(), shape.highest());
        double closed = shape.closed().map(c -> Amounts.si(shape.kind(), c)).orElse(Double.NEGATIVE_INFINITY);
        List<Double> points = DoubleStream.concat(
                        IntStream.range(0, OPENINGS)
                                .mapToDouble(i -> lowest + (highest - lowest) * i / (OPENINGS - 1.0)),
                        DoubleStream.of(highest, Math.max(closed, lowest)))
                .sorted()
                .boxed()
                .toList();
        return new Answer(shape.area(), f -> ((OpenArea) f)::squareMetres, points, (int)
                points.stream().filter(point -> point <= closed).count());
    }

    /** What the type gave; null if it gave nothing. */
    Serializable function() {
        return function;
    }

    /** At least one. */
    List<Double> points() {
        return points;
    }

    /** How many of the points, the first ones, the type declares to be closed. */
    int closedPoints() {
        return closedPoints;
    }

    /** What the function answers at the points. */
    List<Double> values() {
        return valuesOf(function);
    }

    /** What another function of the same kind answers at the same points. */
    List<Double> valuesOf(Serializable other) {
        DoubleUnaryOperator asked = reading.apply(other);
        return points.stream().map(asked::applyAsDouble).toList();
    }

    /** What the function answers a little beside a point, though never outside the first and the last. */
    double beside(int i, double part) {
        double first = points.get(0);
        double last = points.get(points.size() - 1);
        double at = points.get(i) + part * Math.abs(points.get(i));
        return reading.apply(function).applyAsDouble(Math.max(first, Math.min(last, at)));
    }

    /** Whether another answer is about the same points, bit for bit. */
    boolean hasPointsOf(Answer other) {
        return points.equals(other.points) && closedPoints == other.closedPoints;
    }
}
