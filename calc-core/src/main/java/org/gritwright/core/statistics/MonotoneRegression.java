package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The least-squares fit among those that never fall, to observations of {@link Scatter#ABSOLUTE absolute} scatter: isotonic
 * regression by pooling adjacent violators (F. M. T. A. Busing, Monotone regression: a simple and fast O(n) PAVA
 * implementation, Journal of Statistical Software 102, code snippet 1, 2022; Barlow, Bartholomew, Bremner and Brunk,
 * Statistical Inference under Order Restrictions, 1972; both cited from memory).
 *
 * <p>Observations of one x become one row, at their weighted mean; rows whose means fall are pooled, at their weighted mean,
 * until nothing falls. So the weighted sum of the fitted values is that of the observations, and a fit to the fitted values
 * is itself. The order of the observations doesn't matter. Where y should fall as x rises, negate x.
 *
 * <p>{@link MonotoneTable} does the same for relative scatter, and interpolates. Immutable, thread-safe, a value.
 */
public final class MonotoneRegression implements Serializable {
    private static final long serialVersionUID = 1L;

    @SuppressWarnings("serial") // an immutable list of records
    private final List<Row> rows;

    private final int degreesOfFreedom;

    /**
     * All observations of one x.
     *
     * @param x their x
     * @param weight the sum of their weights
     * @param mean their weighted mean
     * @param squares the weighted sum of their squared deviations from the mean
     * @param size how many they are
     * @param value the fitted value
     * @param block which of the blocks of pooled rows this one belongs to, counted from 0
     * @param blockWeight the sum of the weights of that block
     */
    public record Row(
            double x, double weight, double mean, double squares, int size, double value, int block, double blockWeight)
            implements Serializable {}

    private MonotoneRegression(Observations data, double meanWeight) {
        Observations.Group[] groups = data.groups();
        List<Row> made = new ArrayList<>();
        List<PooledBlock> blocks = PooledBlock.pool(groups);
        for (int block = 0; block < blocks.size(); block++) {
            PooledBlock pooled = blocks.get(block);
            for (int i = 0; i < pooled.rows(); i++) {
                Observations.Group group = groups[made.size()];
                made.add(new Row(
                        group.x(),
                        group.weight() * meanWeight,
                        group.mean(),
                        group.squares() * meanWeight,
                        (int) Arrays.stream(data.x).filter(x -> x == group.x()).count(),
                        Require.finite("fitted value", pooled.mean()),
                        block,
                        pooled.weight() * meanWeight));
            }
        }
        this.rows = List.copyOf(made);
        this.degreesOfFreedom = data.n - groups.length;
    }

    /**
     * Fits.
     *
     * @param x finite numbers, one or more
     * @param y as many finite numbers
     * @param weights as many numbers greater than 0; that of a mean of n readings is n
     * @return the fit
     * @throws InvalidInputException if there is no observation, the lengths differ, a number is out of its range or the result
     *     is not finite
     */
    public static MonotoneRegression fit(double[] x, double[] y, double[] weights) {
        Observations data = new Observations(Scatter.ABSOLUTE, x, y, weights);
        return new MonotoneRegression(data, Arrays.stream(weights).sum() / data.n);
    }

    /**
     * The rows.
     *
     * @return one for each x, in rising order
     */
    public List<Row> rows() {
        return rows;
    }

    /**
     * The degrees of freedom of the scatter.
     *
     * @return the number of observations less that of rows, 0 or more
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * How observations of one x scatter: the standard deviation of one of weight 1, from the repeats of all rows together.
     * What pooling moved is not in it.
     *
     * @return √(Σ squares ÷ degrees of freedom); absent without repeats
     */
    public OptionalDouble deviation() {
        return degreesOfFreedom == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Math.sqrt(rows.stream().mapToDouble(Row::squares).sum() / degreesOfFreedom));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MonotoneRegression that && rows.equals(that.rows);
    }

    @Override
    public int hashCode() {
        return rows.hashCode();
    }

    /**
     * The fit as text.
     *
     * @return for example "monotone regression, 7 rows in 2 blocks, 0 degrees of freedom"
     */
    @Override
    public String toString() {
        int blocks = rows.get(rows.size() - 1).block() + 1;
        return "monotone regression, " + rows.size() + (rows.size() == 1 ? " row" : " rows") + " in " + blocks
                + (blocks == 1 ? " block, " : " blocks, ") + Optionals.degrees(degreesOfFreedom);
    }
}
