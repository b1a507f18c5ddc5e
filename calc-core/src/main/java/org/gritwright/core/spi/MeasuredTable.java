package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A table that somebody measured, for types whose parameters are its columns: at each of several values of one quantity, in
 * rising order, what another was. Between two rows it is interpolated on a straight line, beyond the first and the last nothing
 * is guessed. Immutable, thread-safe, serializable.
 */
public final class MeasuredTable implements Serializable {
    private static final long serialVersionUID = 1L;

    private final double[] at;
    private final double[] values;

    private MeasuredTable(double[] at, double[] values) {
        this.at = at;
        this.values = values;
    }

    /**
     * The table of two columns.
     *
     * @param <A> the kind of what was set
     * @param <V> the kind of what was measured
     * @param given the parameters
     * @param set the column of what was set, a list
     * @param measured the column of what was measured, a list
     * @return the table
     * @throws InvalidInputException if the columns aren't equally long, or what was set doesn't rise from row to row
     */
    public static <A extends Quantity<A>, V extends Quantity<V>> MeasuredTable of(
            Parameters given, Parameter<A> set, Parameter<V> measured) {
        Objects.requireNonNull(set, "set");
        Objects.requireNonNull(measured, "measured");
        List<Quantity<A>> rows = given.list(set);
        double[] at = si(set, rows);
        double[] values = si(measured, given.list(measured));
        Require.that(
                at.length == values.length,
                measured.name(),
                "as many as " + set.name() + ", " + at.length,
                values.length);
        IntStream.range(1, at.length)
                .filter(i -> !(at[i] > at[i - 1]))
                .findFirst()
                .ifPresent(i -> {
                    throw outOfOrder(set.name(), "above the one before", rows, i);
                });
        return new MeasuredTable(at, values);
    }

    /**
     * The table of two columns of which the second never falls.
     *
     * @param <A> the kind of what was set
     * @param <V> the kind of what was measured
     * @param given the parameters
     * @param set the column of what was set, a list
     * @param measured the column of what was measured, a list
     * @return the table
     * @throws InvalidInputException as for {@link #of}, or if what was measured falls from one row to the next
     */
    public static <A extends Quantity<A>, V extends Quantity<V>> MeasuredTable neverFalling(
            Parameters given, Parameter<A> set, Parameter<V> measured) {
        MeasuredTable table = of(given, set, measured);
        table.firstFall().ifPresent(i -> {
            throw outOfOrder(measured.name(), "not below the one before", given.list(measured), i);
        });
        return table;
    }

    private static InvalidInputException outOfOrder(
            String column, String rule, List<? extends Quantity<?>> values, int row) {
        return new InvalidInputException(
                column, rule + ", " + Amounts.format(values.get(row - 1)), Amounts.format(values.get(row)));
    }

    private static <Q extends Quantity<Q>> double[] si(Parameter<Q> parameter, List<Quantity<Q>> column) {
        return column.stream()
                .mapToDouble(value -> Amounts.si(parameter.kind(), value))
                .toArray();
    }

    /**
     * The same rows with other values, such as flow ÷ speed in place of the flow.
     *
     * @param value gives the new value of a row from what was set and what was measured, both in SI
     * @return the table
     */
    public MeasuredTable with(DoubleBinaryOperator value) {
        double[] others = IntStream.range(0, at.length)
                .mapToDouble(i -> value.applyAsDouble(at[i], values[i]))
                .toArray();
        return new MeasuredTable(at, others);
    }

    /**
     * The first row whose value is smaller than the one before.
     *
     * @return its index, 1 or more; none if the values never fall
     */
    public OptionalInt firstFall() {
        return IntStream.range(1, values.length)
                .filter(i -> !(values[i] >= values[i - 1]))
                .findFirst();
    }

    /**
     * The values of the rows.
     *
     * @return what was measured, in SI
     */
    public DoubleStream values() {
        return Arrays.stream(values);
    }

    /**
     * The value at or between rows.
     *
     * @param set what was set, in SI, within the table
     * @return what was measured, or the straight line between two rows, in SI
     * @throws InvalidInputException if it is outside the table
     */
    public double value(double set) {
        int found = Arrays.binarySearch(at, set);
        if (found >= 0) {
            return values[found];
        }
        int above = -found - 1;
        Require.that(
                above > 0 && above < at.length,
                "value of the table",
                "within " + at[0] + " to " + at[at.length - 1],
                set);
        double part = (set - at[above - 1]) / (at[above] - at[above - 1]);
        return values[above - 1] + part * (values[above] - values[above - 1]);
    }
}
