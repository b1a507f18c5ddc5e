package org.gritwright.core.statistics;

import java.io.Serializable;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * A curve through points that never fall, itself never falling, both ways: y of x, and the x of a y.
 *
 * <p>{@link #cubic} is the cubic Hermite interpolant of the variant that is known as PCHIM: inside, each point's slope is
 * the weighted harmonic mean of the slopes of the two lines beside it (F. N. Fritsch and J. Butland, A method for
 * constructing local monotone piecewise cubic interpolants, SIAM Journal on Scientific and Statistical Computing 5, 1984,
 * 300–304, with weights by the distances of the points), 0 where one of them is 0; at the ends it is that of the parabola
 * through three points, cut off at 0. Cited from memory. It isn't the curve of F. N. Fritsch and R. E. Carlson's paper of 1980, which adjusts slopes in two steps. {@link #straight} has straight lines
 * between the points.
 *
 * <p>Both answer with numbers between those of the points on either side, so no rounding makes them overshoot.
 * Immutable, thread-safe, a value.
 */
public final class MonotoneCurve implements Serializable {
    private static final long serialVersionUID = 1L;

    private final double[] x;
    private final double[] y;
    /** Of each piece, the slope at its beginning and at its end. */
    private final double[] first;

    private final double[] last;

    /**
     * The x of one y: all from the lowest to the highest.
     *
     * @param lowest the lowest
     * @param highest the highest; the same but on a plateau
     */
    public record Interval(double lowest, double highest) implements Serializable {}

    private MonotoneCurve(double[] x, double[] y, double[] first, double[] last) {
        this.x = x;
        this.y = y;
        this.first = first;
        this.last = last;
    }

    /**
     * The monotone cubic through points.
     *
     * @param x finite numbers, one or more, each greater than the one before
     * @param y as many finite numbers, none less than the one before
     * @return the curve; through two points a straight line
     * @throws InvalidInputException if the numbers aren't so, or a slope is not finite
     */
    public static MonotoneCurve cubic(double[] x, double[] y) {
        double[] ownX = Objects.requireNonNull(x, "x").clone();
        double[] ownY = Objects.requireNonNull(y, "y").clone();
        double[] lines = lines(ownX, ownY);
        int pieces = lines.length;
        double[] slopes = new double[pieces + 1];
        if (pieces == 1) {
            Arrays.fill(slopes, lines[0]);
        } else if (pieces > 1) {
            slopes[0] = atEnd(ownX[1] - ownX[0], ownX[2] - ownX[1], lines[0], lines[1]);
            for (int i = 1; i < pieces; i++) {
                slopes[i] = between(ownX[i] - ownX[i - 1], ownX[i + 1] - ownX[i], lines[i - 1], lines[i]);
            }
            slopes[pieces] = atEnd(
                    ownX[pieces] - ownX[pieces - 1],
                    ownX[pieces - 1] - ownX[pieces - 2],
                    lines[pieces - 1],
                    lines[pieces - 2]);
        }
        return new MonotoneCurve(ownX, ownY, Arrays.copyOf(slopes, pieces), Arrays.copyOfRange(slopes, 1, pieces + 1));
    }

    /**
     * Straight lines between points.
     *
     * @param x finite numbers, one or more, each greater than the one before
     * @param y as many finite numbers, none less than the one before
     * @return the curve
     * @throws InvalidInputException if the numbers aren't so, or a slope is not finite
     */
    public static MonotoneCurve straight(double[] x, double[] y) {
        double[] ownX = Objects.requireNonNull(x, "x").clone();
        double[] ownY = Objects.requireNonNull(y, "y").clone();
        double[] lines = lines(ownX, ownY);
        return new MonotoneCurve(ownX, ownY, lines, lines);
    }

    /** The slopes of the lines between checked points. */
    private static double[] lines(double[] x, double[] y) {
        Require.that(
                x.length != 0 && y.length == x.length,
                "points of a curve",
                "one or more, with an x and a y each",
                () -> x.length + " x, " + y.length + " y");
        double[] lines = new double[x.length - 1];
        Require.finite("x", x[0]);
        Require.finite("y", y[0]);
        for (int i = 0; i < lines.length; i++) {
            int next = i + 1;
            Require.that(Require.finite("x", x[next]) > x[i], "x", "greater than the one before", x[next]);
            Require.that(Require.finite("y", y[next]) >= y[i], "y", "at least the one before", y[next]);
            lines[i] = Require.finite("slope", (y[next] - y[i]) / (x[next] - x[i]));
        }
        return lines;
    }

    private static double between(double before, double after, double lineBefore, double lineAfter) {
        if (lineBefore == 0 || lineAfter == 0) {
            return 0;
        }
        double ofBefore = 2 * after + before;
        double ofAfter = after + 2 * before;
        return (ofBefore + ofAfter) / (ofBefore / lineBefore + ofAfter / lineAfter);
    }

    /** At an end, of the piece beside it and the next one. */
    private static double atEnd(double width, double next, double line, double nextLine) {
        double parabola = ((2 * width + next) * line - width * nextLine) / (width + next);
        // PCHIM also cuts it off at three times the slope of the line, which it can't reach where nothing falls.
        return Math.max(0, parabola);
    }

    /**
     * The lowest x.
     *
     * @return x of the first point
     */
    public double lowest() {
        return x[0];
    }

    /**
     * The highest x.
     *
     * @return x of the last point
     */
    public double highest() {
        return x[x.length - 1];
    }

    /**
     * The curve's y.
     *
     * @param at from the lowest to the highest x
     * @return y
     * @throws InvalidInputException if x is outside
     */
    public double at(double at) {
        Require.that(
                at >= lowest() && at <= highest(), "x of the curve", "within " + lowest() + " to " + highest(), at);
        int found = Arrays.binarySearch(x, at);
        return found >= 0 ? y[found] : inside(-found - 2, at);
    }

    private double inside(int piece, double at) {
        double width = x[piece + 1] - x[piece];
        double part = (at - x[piece]) / width;
        double rest = 1 - part;
        double value = y[piece]
                + (y[piece + 1] - y[piece]) * part * part * (3 - 2 * part)
                + width * part * rest * (rest * first[piece] - part * last[piece]);
        return Math.max(y[piece], Math.min(value, y[piece + 1]));
    }

    /**
     * Where the curve has a y.
     *
     * @param value a number
     * @return the x, one or, on a plateau, all from the first to the last; empty below the lowest y and above the highest
     */
    public Optional<Interval> where(double value) {
        if (!(value >= y[0] && value <= y[y.length - 1])) {
            return Optional.empty();
        }
        int from = 0;
        while (y[from] < value) {
            from++;
        }
        if (y[from] == value) {
            int to = from;
            while (to + 1 < y.length && y[to + 1] == value) {
                to++;
            }
            return Optional.of(new Interval(x[from], x[to]));
        }
        double at = solve(from - 1, value);
        return Optional.of(new Interval(at, at));
    }

    /** By halving, until no double lies between: the curve rises, but its slope may be 0 at a point. */
    private double solve(int piece, double value) {
        double below = x[piece];
        double above = x[piece + 1];
        for (double middle = (below + above) / 2; middle > below && middle < above; middle = (below + above) / 2) {
            if (inside(piece, middle) < value) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return above;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MonotoneCurve that
                && Arrays.equals(x, that.x)
                && Arrays.equals(y, that.y)
                && Arrays.equals(first, that.first)
                && Arrays.equals(last, that.last);
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(x), Arrays.hashCode(y));
    }

    /**
     * The curve as text.
     *
     * @return for example "monotone curve through 9 points from 7.99 to 20.0"
     */
    @Override
    public String toString() {
        return "monotone curve through " + x.length + (x.length == 1 ? " point at " : " points from ") + lowest()
                + (x.length == 1 ? "" : " to " + highest());
    }
}
