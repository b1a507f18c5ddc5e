package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A table that never falls, through the means of observations of {@link Scatter#RELATIVE relative} scatter: the least-squares
 * fit among those that never fall (isotonic regression, as by {@link MonotoneRegression}), with straight lines between the rows.
 *
 * <p>The uncertainty of a row comes from the scatter of all repeats together, s / √W with W the weight of the row's
 * observations; between rows it is interpolated as the value is. It doesn't cover how the true curve bends between rows.
 * Immutable, thread-safe, a value.
 */
public final class MonotoneTable implements Serializable {
    private static final long serialVersionUID = 1L;

    private final double[] x;
    private final double[] values;
    private final double[] relativeUncertainties;
    private final int degreesOfFreedom;
    /** Of each row, the block of pooled rows that it belongs to. */
    private final int[] blocks;
    /** Of each observation, its row, and its part w · y / W of the block's value. */
    private final int[] rows;

    private final double[] parts;

    private MonotoneTable(Observations data) {
        Observations.Group[] groups = data.groups();
        this.x = Arrays.stream(groups).mapToDouble(Observations.Group::x).toArray();
        List<PooledBlock> pooled = PooledBlock.pool(groups);
        this.values = new double[x.length];
        this.blocks = new int[x.length];
        int row = 0;
        for (int i = 0; i < pooled.size(); i++) {
            Arrays.fill(values, row, row + pooled.get(i).rows(), pooled.get(i).mean());
            Arrays.fill(blocks, row, row + pooled.get(i).rows(), i);
            row += pooled.get(i).rows();
        }
        this.rows = new int[data.n];
        this.parts = new double[data.n];
        for (int i = 0; i < data.n; i++) {
            rows[i] = Arrays.binarySearch(x, data.x[i]);
            parts[i] = data.weights[i] * data.y[i] / pooled.get(blocks[rows[i]]).weight();
        }
        this.degreesOfFreedom = data.n - groups.length;
        double variance =
                Arrays.stream(groups).mapToDouble(Observations.Group::squares).sum() / degreesOfFreedom;
        this.relativeUncertainties = Arrays.stream(groups)
                .mapToDouble(group -> Math.sqrt(variance / group.weight()))
                .toArray();
        for (int i = 0; i < x.length; i++) {
            Require.finite("value of the table", values[i]);
            if (degreesOfFreedom > 0) {
                Require.finite("uncertainty of the table", relativeUncertainties[i]);
            }
        }
        for (double part : parts) {
            Require.finite("part of an observation", part);
        }
    }

    /**
     * Fits the table.
     *
     * @param x finite numbers, one or more
     * @param y as many numbers greater than 0
     * @param weights as many numbers greater than 0
     * @return the table
     * @throws InvalidInputException if there is no observation, the lengths differ, a number is out of its range or the result
     *     is not finite
     */
    public static MonotoneTable fit(double[] x, double[] y, double[] weights) {
        return new MonotoneTable(new Observations(Scatter.RELATIVE, x, y, weights));
    }

    /**
     * The lowest x.
     *
     * @return x of the first row
     */
    public double lowest() {
        return x[0];
    }

    /**
     * The highest x.
     *
     * @return x of the last row
     */
    public double highest() {
        return x[x.length - 1];
    }

    /**
     * The degrees of freedom of the uncertainties.
     *
     * @return the number of observations less that of rows, 0 or more
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /** Where an x falls: between two rows, or on one. */
    private record Place(int below, int above, double part) {}

    private Place place(double at) {
        if (!(at >= lowest() && at <= highest())) {
            throw new InvalidInputException(
                    "x in the table", "within " + lowest() + " to " + highest(), String.valueOf(at));
        }
        int found = Arrays.binarySearch(x, at);
        if (found >= 0) {
            return new Place(found, found, 0);
        }
        int above = -found - 1;
        // Halves: the whole range of doubles is too wide for one.
        double from = x[above - 1] / 2;
        return new Place(above - 1, above, (at / 2 - from) / (x[above] / 2 - from));
    }

    /**
     * The table's value.
     *
     * @param at from the lowest to the highest x
     * @return the value, interpolated on a straight line
     * @throws InvalidInputException if x is outside the table
     */
    public double at(double at) {
        Place place = place(at);
        return values[place.below] + place.part * (values[place.above] - values[place.below]);
    }

    /**
     * The standard uncertainty of the table's value.
     *
     * @param at from the lowest to the highest x
     * @return the uncertainty; absent without repeats
     * @throws InvalidInputException if x is outside the table
     */
    public OptionalDouble uncertaintyAt(double at) {
        Place place = place(at);
        if (degreesOfFreedom < 1) {
            return OptionalDouble.empty();
        }
        double lower = (1 - place.part) * values[place.below] * relativeUncertainties[place.below];
        double upper = place.part * values[place.above] * relativeUncertainties[place.above];
        return OptionalDouble.of(Math.hypot(lower, upper));
    }

    /**
     * What independent relative uncertainties uᵢ of the observations contribute to the table's: √Σ(sᵢ·uᵢ)², with the
     * sensitivities sᵢ = ∂ ln ŷ / ∂ ln yᵢ. A row's value is the weighted mean of the observations of its block, so each
     * of them moves it by its part; which rows are pooled is taken as it is. What is computed here once doesn't depend
     * on x.
     *
     * @param relative of each observation in the given order
     * @return the relative uncertainty by x, from the lowest to the highest; serializable
     * @throws InvalidInputException if there are more numbers or fewer than observations
     */
    public DoubleUnaryOperator relativeUncertainty(double[] relative) {
        CurveFit.requireOnePerObservation(relative, parts.length);
        double[] squares = new double[blocks[blocks.length - 1] + 1];
        for (int i = 0; i < parts.length; i++) {
            double part = parts[i] * relative[i];
            squares[blocks[rows[i]]] += part * part;
        }
        return (DoubleUnaryOperator & Serializable) at -> {
            Place place = place(at);
            int below = blocks[place.below];
            int above = blocks[place.above];
            double part = place.part;
            double variance = below == above
                    ? squares[below]
                    : (1 - part) * (1 - part) * squares[below] + part * part * squares[above];
            return Require.finite("relative uncertainty", Math.sqrt(variance) / at(at));
        };
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MonotoneTable that
                && Arrays.equals(x, that.x)
                && Arrays.equals(values, that.values)
                && Arrays.equals(relativeUncertainties, that.relativeUncertainties)
                && degreesOfFreedom == that.degreesOfFreedom
                && Arrays.equals(rows, that.rows)
                && Arrays.equals(parts, that.parts);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(values);
    }

    /**
     * The table as text.
     *
     * @return for example "rising table of 3 rows from 2.0 to 6.0, 6 degrees of freedom"
     */
    @Override
    public String toString() {
        String rows = x.length == 1 ? "1 row at " + lowest() : x.length + " rows from " + lowest() + " to " + highest();
        return "rising table of " + rows + ", " + Optionals.degrees(degreesOfFreedom);
    }
}
