package org.gritwright.core.conformance;

import java.io.Serializable;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.quantity.Area;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * What a type gives for one set of parameters: a swept volume or a shape, and the points, in rising order, at which the laws
 * ask it.
 */
record Answer(
        @Nullable Serializable given,
        Function<Serializable, DoubleUnaryOperator> reading,
        List<Double> points,
        int closedPoints,
        Words words) {
    private static final int SETTINGS = 33;

    /** From nothing to more than any spreader has open, in m². */
    private static final List<Double> OPEN_AREAS = List.of(0.0, 1e-6, 1e-4, 1e-3, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 5.0);

    private static final Words VOLUMES = new Words("a function", at -> number(at) + " m² open", "m³/rev");

    /** What it is, its points in words that follow "at", and the unit of its values. */
    record Words(String whole, DoubleFunction<String> point, String unit) {}

    static Answer of(ConveyorType type, Parameters given) {
        SweptVolume volume = type.sweptVolume(given);
        return new Answer(volume, f -> ((SweptVolume) f)::cubicMetersPerRevolution, OPEN_AREAS, 0, VOLUMES);
    }

    static Answer of(GateType type, Parameters given) {
        GateShape shape = type.shape(given);
        if (shape instanceof GateShape.Adjustable adjustable) {
            return of(adjustable);
        }
        Words words = new Words(String.valueOf(shape), at -> Setting.none().toString(), "m²");
        return new Answer(shape, s -> at -> areaOf((GateShape) s), List.of(0.0), 0, words);
    }

    private static double areaOf(GateShape shape) {
        return shape instanceof GateShape.Fixed fixed ? Amounts.si(Area.class, fixed.area()) : 0;
    }

    private static Answer of(GateShape.Adjustable shape) {
        double lowest = shape.lowest().si();
        double highest = shape.highest().si();
        double closed = shape.closed().map(Setting::si).orElse(Double.NEGATIVE_INFINITY);
        List<Double> points = DoubleStream.concat(
                        IntStream.range(0, SETTINGS)
                                .mapToDouble(i -> lowest + (highest - lowest) * i / (SETTINGS - 1.0)),
                        DoubleStream.of(highest, Math.max(closed, lowest)))
                .sorted()
                .boxed()
                .toList();
        int closedPoints =
                (int) points.stream().filter(point -> point <= closed).count();
        Words words =
                new Words(shape.toString(), at -> shape.lowest().withSi(at).toString(), "m²");
        return new Answer(shape, s -> ((GateShape.Adjustable) s).area()::squareMeters, points, closedPoints, words);
    }

    /** Of a gate's declared limits and closed position the first that can't be set on the gate itself, and why. */
    Optional<String> refusedSetting() {
        if (!(given instanceof GateShape.Adjustable shape)) {
            return Optional.empty();
        }
        Map<String, Setting> declared = new LinkedHashMap<>();
        declared.put("lowest setting", shape.lowest());
        declared.put("highest setting", shape.highest());
        shape.closed().ifPresent(closed -> declared.put("closed position", closed));
        for (Map.Entry<String, Setting> one : declared.entrySet()) {
            try {
                shape.area().squareMeters(shape.number(written(one.getValue())));
            } catch (InvalidInputException e) {
                return Optional.of(
                        "its own " + one.getKey() + ", " + one.getValue() + ", is refused: " + e.getMessage());
            }
        }
        return Optional.empty();
    }

    /** As a document holds it: written and read again. */
    private static Setting written(Setting setting) {
        return Setting.of(
                Amounts.parseAny(setting.quantity().map(Amounts::format).orElseThrow()));
    }

    /** What the function answers at the points. */
    List<Double> values() {
        return valuesOf(Objects.requireNonNull(given));
    }

    /** What another of the same kind answers at the same points. */
    List<Double> valuesOf(Serializable other) {
        DoubleUnaryOperator asked = reading.apply(other);
        return points.stream().map(asked::applyAsDouble).toList();
    }

    /** What the function answers a little beside a point, though never outside the first and the last. */
    double beside(int i, double part) {
        double first = points.get(0);
        double last = points.get(points.size() - 1);
        double at = points.get(i) + part * Math.abs(points.get(i));
        return reading.apply(given).applyAsDouble(Math.max(first, Math.min(last, at)));
    }

    /** Whether another answer is about the same points, bit for bit. */
    boolean hasPointsOf(Answer other) {
        return points.equals(other.points) && closedPoints == other.closedPoints;
    }

    /** The whole in words, with its limits if it has any. */
    String whole() {
        return words.whole();
    }

    /** A point in words that follow "at". */
    String point(int i) {
        return words.point().apply(points.get(i));
    }

    /** A value with its unit. */
    String value(double value) {
        return number(value) + " " + words.unit();
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Amounts.format(Amounts.of(value, SpreadingUnits.ONE)) : String.valueOf(value);
    }
}
