package org.gritwright.core.conformance;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * What a type gives for one set of parameters: a swept volume, a shape or an output, what it states beside its function, and the
 * points, in rising order, at which the laws ask that.
 */
record Answer(
        @Nullable Serializable given,
        Function<Serializable, DoubleUnaryOperator> reading,
        List<Double> points,
        Stated stated,
        Rise rise,
        Words words) {
    /** What stands beside the function: at how many of the points nothing is open, a nominal volume, and the limits. */
    record Stated(int closedPoints, double nominal, List<Limit> limits) {}

    /** A declared limit, in words, and asking the type where that is set. */
    record Limit(String name, String value, Runnable asked) {}

    /** What never falls from point to point, made of a point and the value there, and its unit. */
    record Rise(DoubleBinaryOperator of, String unit) {}

    /** What it is, its points in words that follow "at", and the unit of its values. */
    record Words(String whole, DoubleFunction<String> point, String unit) {}

    /** Of the declared limits the first that can't be set on the type's own function, and why. */
    Optional<String> refusedLimit() {
        for (Limit limit : stated.limits()) {
            try {
                limit.asked().run();
            } catch (InvalidInputException e) {
                return Optional.of(
                        "its own " + limit.name() + ", " + limit.value() + ", is refused: " + e.getMessage());
            }
        }
        return Optional.empty();
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

    /** Whether another answer is about the same points and states the same, bit for bit. */
    boolean hasPointsOf(Answer other) {
        return points.equals(other.points)
                && stated.closedPoints() == other.stated.closedPoints()
                && stated.nominal() == other.stated.nominal();
    }

    /** At how many points, from the first, nothing is open. */
    int closedPoints() {
        return stated.closedPoints();
    }

    /** What never falls, at a point where the function has this value. */
    double rising(int i, double value) {
        return rise.of().applyAsDouble(points.get(i), value);
    }

    /** What never falls, with its unit. */
    String risingText(double rising) {
        return number(rising) + " " + rise.unit();
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

    static String number(double value) {
        return Double.isFinite(value) ? Amounts.format(Amounts.of(value, SpreadingUnits.ONE)) : String.valueOf(value);
    }
}
