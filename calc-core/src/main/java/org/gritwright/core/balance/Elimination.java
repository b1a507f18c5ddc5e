package org.gritwright.core.balance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import org.gritwright.units.InvalidInputException;

/**
 * L·D·Lᵀ of a sparse symmetric matrix that may be indefinite and singular: whoever touches the fewest others goes first (minimum degree), one
 * node at a time or two, as soon as that is numerically safe (the threshold test of Duff and Reid, Harwell's MA27). Numbers are near 1,
 * because the matrix was equilibrated.
 *
 * <p>What is left without any number is determined by nothing, or depends on others: it becomes a step of its own that changes nothing.
 */
final class Elimination {
    /** A step is safe if no multiplier gets beyond its inverse. */
    private static final double THRESHOLD = 0.1;
    /** So many roundings are nothing. */
    private static final double NOTHING = 1e4;

    private final ActiveRow[] rows;
    private final boolean[] gone;
    private final PriorityQueue<Long> queue = new PriorityQueue<>();
    private final ActiveRow.Scratch scratch = new ActiveRow.Scratch();
    private final List<Pivot> pivots = new ArrayList<>();
    private int left;

    private Elimination(ActiveRow[] rows) {
        this.rows = rows;
        this.gone = new boolean[rows.length];
        this.left = rows.length;
    }

    /** Eliminates all; the rows are used up. */
    static List<Pivot> of(ActiveRow[] rows) {
        return new Elimination(rows).run();
    }

    private List<Pivot> run() {
        for (int node = 0; node < rows.length; node++) {
            enqueue(node);
        }
        while (left > 0) {
            Long next = queue.poll();
            // Of all that wait, the largest number is safe, as long as there are numbers (Bunch and Parlett).
            if (next == null) {
                throw new InvalidInputException(
                        "quantities of a network", "of sizes that can be computed with together", "too far apart");
            }
            int node = (int) (next & 0x7fffffff);
            if (!gone[node] && rows[node].length == (int) (next >>> 31)) {
                attempt(node);
            }
        }
        return pivots;
    }

    /** The degree in front, then the node. */
    private void enqueue(int node) {
        queue.add(((long) rows[node].length << 31) | node);
    }

    private void attempt(int node) {
        ActiveRow row = rows[node];
        double largest = row.largest();
        if (isNothing(row, largest)) {
            drop(node);
        } else if (Math.abs(row.diagonal) >= THRESHOLD * largest
                && Math.abs(row.diagonal) > NOTHING * row.diagonalNoise) {
            eliminate(node, -1);
        } else {
            int partner = partner(node, largest);
            if (partner >= 0) {
                eliminate(node, partner);
            }
            // Otherwise it waits until its row changes.
        }
    }

    private static boolean isNothing(ActiveRow row, double largest) {
        return Math.abs(row.diagonal) <= NOTHING * row.diagonalNoise && largest <= NOTHING * row.noise;
    }

    /** The one with the fewest others that goes with it safely; −1 if none does. */
    private int partner(int node, double largest) {
        ActiveRow row = rows[node];
        int best = -1;
        for (int i = 0; i < row.length; i++) {
            int other = row.node[i];
            if (Math.abs(row.number[i]) >= THRESHOLD * largest
                    && (best < 0 || rows[other].length < rows[best].length)
                    && isSafe(row, largest, rows[other], row.number[i])) {
                best = other;
            }
        }
        return best;
    }

    private static boolean isSafe(ActiveRow first, double largestOfFirst, ActiveRow second, double both) {
        double[] inverse = inverse(first.diagonal, both, second.diagonal);
        double largestOfSecond = second.largest();
        double byFirst = Math.abs(inverse[0]) * largestOfFirst + Math.abs(inverse[1]) * largestOfSecond;
        double bySecond = Math.abs(inverse[1]) * largestOfFirst + Math.abs(inverse[2]) * largestOfSecond;
        return Math.max(byFirst, bySecond) <= 2 / THRESHOLD;
    }

    private static double[] inverse(double first, double both, double second) {
        double determinant = Math.fma(first, second, -both * both);
        return new double[] {second / determinant, -both / determinant, first / determinant};
    }

    private void drop(int node) {
        ActiveRow row = rows[node];
        for (int i = 0; i < row.length; i++) {
            rows[row.node[i]].remove(node);
            enqueue(row.node[i]);
        }
        take(node);
        pivots.add(new Pivot(node, -1, new double[3], new int[0], new double[0], new double[0]));
    }

    private void take(int node) {
        gone[node] = true;
        left--;
        rows[node].node = new int[0];
        rows[node].number = new double[0];
        rows[node].length = 0;
    }

    private void eliminate(int first, int second) {
        Step step = second < 0 ? single(first) : pair(first, second);
        double[] inverse = second < 0
                ? new double[] {1 / rows[first].diagonal, 0, 0}
                : inverse(rows[first].diagonal, rows[first].at(second), rows[second].diagonal);
        int count = step.below.length;
        double[] byFirst = new double[count];
        double[] bySecond = new double[count];
        for (int i = 0; i < count; i++) {
            byFirst[i] = inverse[0] * step.ofFirst[i] + inverse[1] * step.ofSecond[i];
            bySecond[i] = inverse[1] * step.ofFirst[i] + inverse[2] * step.ofSecond[i];
        }
        for (int i = 0; i < count; i++) {
            // A row that is far off may count little: each with its own.
            double inherited = Math.abs(byFirst[i]) * step.noiseOfFirst + Math.abs(bySecond[i]) * step.noiseOfSecond;
            rows[step.below[i]].subtract(step.below[i], step, byFirst[i], bySecond[i], inherited, scratch);
            enqueue(step.below[i]);
        }
        take(first);
        if (second >= 0) {
            take(second);
        }
        pivots.add(new Pivot(first, second, inverse, step.below, byFirst, second < 0 ? new double[0] : bySecond));
    }

    private Step single(int node) {
        ActiveRow row = rows[node];
        int[] below = Arrays.copyOf(row.node, row.length);
        return new Step(node, -1, row.noise, 0, below, Arrays.copyOf(row.number, row.length), new double[row.length]);
    }

    private Step pair(int first, int second) {
        ActiveRow one = rows[first];
        ActiveRow two = rows[second];
        int[] below = new int[one.length + two.length];
        double[] ofFirst = new double[below.length];
        double[] ofSecond = new double[below.length];
        int used = 0;
        int i = 0;
        int j = 0;
        while (i < one.length || j < two.length) {
            int mine = i < one.length ? one.node[i] : Integer.MAX_VALUE;
            int theirs = j < two.length ? two.node[j] : Integer.MAX_VALUE;
            int node = Math.min(mine, theirs);
            double ofMine = mine == node ? one.number[i++] : 0;
            double ofTheirs = theirs == node ? two.number[j++] : 0;
            if (node != first && node != second) {
                below[used] = node;
                ofFirst[used] = ofMine;
                ofSecond[used++] = ofTheirs;
            }
        }
        return new Step(
                first,
                second,
                one.noise,
                two.noise,
                Arrays.copyOf(below, used),
                Arrays.copyOf(ofFirst, used),
                Arrays.copyOf(ofSecond, used));
    }

    /** A step before it is taken: its nodes, about how far rounding has their rows off, those below, and the numbers of both rows. */
    static final class Step {
        final int first;
        final int second;
        final double noiseOfFirst;
        final double noiseOfSecond;
        final int[] below;
        final double[] ofFirst;
        final double[] ofSecond;

        private Step(
                int first,
                int second,
                double noiseOfFirst,
                double noiseOfSecond,
                int[] below,
                double[] ofFirst,
                double[] ofSecond) {
            this.first = first;
            this.second = second;
            this.noiseOfFirst = noiseOfFirst;
            this.noiseOfSecond = noiseOfSecond;
            this.below = below;
            this.ofFirst = ofFirst;
            this.ofSecond = ofSecond;
        }
    }
}
