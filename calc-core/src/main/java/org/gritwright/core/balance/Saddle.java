package org.gritwright.core.balance;

import java.util.Arrays;
import java.util.List;
import java.util.ListIterator;

/**
 * The equations of the least misfit: for each error its own value and what its rows pull, for each unknown that its rows pull evenly, for each
 * row that it adds up. With e, x and the pulls p: (I 0 Aᵀ; 0 0 Bᵀ; A B 0)(e, x, p) = (0, 0, right side). Of the inverse, the block of
 * the unknowns is their covariance, and minus the block of the rows says what a change of right sides does to the misfit.
 */
final class Saddle {
    private static final int SWEEPS = 12;
    private static final int REFINEMENTS = 2;

    private static final double LEAST = 1e-3;

    private final Layout layout;
    private final double[] scale;
    private final List<Pivot> pivots;
    private final SelectedInverse inverse;

    Saddle(Layout layout) {
        this.layout = layout;
        int n = layout.nodes();
        int[] degree = new int[n];
        for (int column : layout.column) {
            degree[column]++;
        }
        int[][] node = new int[n][];
        double[][] number = new double[n][];
        for (int i = 0; i < n; i++) {
            node[i] = new int[degree[i]];
            number[i] = new double[degree[i]];
        }
        Arrays.fill(degree, 0);
        // Rows have the highest nodes and ascend, so that every column's come in their order; a row's own are sorted.
        for (int r = 0; r < layout.rows; r++) {
            int at = layout.nodeOfRow(r);
            int[] sorted = Arrays.copyOfRange(layout.column, layout.start[r], layout.start[r + 1]);
            Arrays.sort(sorted);
            node[at] = sorted;
            number[at] = new double[sorted.length];
            for (int k = layout.start[r]; k < layout.start[r + 1]; k++) {
                int column = layout.column[k];
                number[at][Arrays.binarySearch(sorted, column)] = layout.coefficient[k];
                node[column][degree[column]] = at;
                number[column][degree[column]++] = layout.coefficient[k];
            }
        }
        this.scale = equilibrated(node, number);
        ActiveRow[] rows = new ActiveRow[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < node[i].length; k++) {
                number[i][k] *= scale[i] * scale[node[i][k]];
            }
            rows[i] = new ActiveRow(node[i], number[i], i < layout.errors ? 1 : 0);
        }
        this.pivots = Elimination.of(rows);
        this.inverse = new SelectedInverse(n, pivots);
    }

    /**
     * Measures each quantity that was read in its standard uncertainty, and each balance in the largest of its terms that were: then
     * whatever was read may go as soon as it touches few others, and the factor stays sparse. What wasn't read, and balances of only
     * such quantities, are brought near 1 (Ruiz). By powers of 2, which round nothing.
     */
    private double[] equilibrated(int[][] node, double[][] number) {
        int n = node.length;
        int firstRow = layout.nodeOfRow(0);
        double[] factor = new double[n];
        boolean[] settled = new boolean[n];
        Arrays.fill(factor, 0, layout.errors, 1);
        for (int i = layout.errors; i < firstRow; i++) {
            factor[i] = Math.sqrt(layout.readingVariance(i));
            settled[i] = factor[i] > 0;
        }
        for (int i = firstRow; i < n; i++) {
            double largest = largest(i, node, number, factor);
            if (largest > 0) {
                factor[i] = 1 / largest;
                settled[i] = true;
            }
        }
        for (int i = layout.errors; i < n; i++) {
            if (!settled[i]) {
                factor[i] = 1;
            }
        }
        double[] root = new double[n];
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            for (int i = layout.errors; i < n; i++) {
                double largest = settled[i] ? 0 : factor[i] * largest(i, node, number, factor);
                root[i] = largest > 0 ? 1 / Math.sqrt(largest) : 1;
            }
            for (int i = layout.errors; i < n; i++) {
                factor[i] *= root[i];
            }
        }
        for (int i = 0; i < n; i++) {
            factor[i] = Math.scalb(1.0, Math.getExponent(factor[i]));
        }
        return factor;
    }

    private static double largest(int i, int[][] node, double[][] number, double[] factor) {
        double largest = 0;
        for (int k = 0; k < node[i].length; k++) {
            largest = Math.max(largest, Math.abs(number[i][k]) * factor[node[i][k]]);
        }
        return largest;
    }

    /** The solution for right sides of all nodes, refined with sums in twice the precision. */
    double[] solve(double[] rightSide) {
        double[] solution = rough(rightSide);
        for (int i = 0; i < REFINEMENTS; i++) {
            double[] correction = rough(residual(rightSide, solution));
            for (int k = 0; k < solution.length; k++) {
                solution[k] += correction[k];
            }
        }
        return solution;
    }

    /** A column of the inverse. */
    double[] column(int node) {
        double[] unit = new double[layout.nodes()];
        unit[node] = 1;
        return solve(unit);
    }

    private double[] rough(double[] rightSide) {
        double[] solution = new double[rightSide.length];
        for (int i = 0; i < solution.length; i++) {
            solution[i] = rightSide[i] * scale[i];
        }
        for (Pivot pivot : pivots) {
            double first = solution[pivot.first];
            double second = pivot.isDouble() ? solution[pivot.second] : 0;
            for (int i = 0; i < pivot.below.length; i++) {
                solution[pivot.below[i]] -=
                        pivot.byFirst[i] * first + (pivot.isDouble() ? pivot.bySecond[i] * second : 0);
            }
            solution[pivot.first] = pivot.inverseFirst * first + pivot.inverseBoth * second;
            if (pivot.isDouble()) {
                solution[pivot.second] = pivot.inverseBoth * first + pivot.inverseSecond * second;
            }
        }
        back(solution);
        for (int i = 0; i < solution.length; i++) {
            solution[i] *= scale[i];
        }
        return solution;
    }

    private void back(double[] solution) {
        for (ListIterator<Pivot> steps = pivots.listIterator(pivots.size()); steps.hasPrevious(); ) {
            Pivot pivot = steps.previous();
            double first = 0;
            double second = 0;
            for (int i = 0; i < pivot.below.length; i++) {
                double known = solution[pivot.below[i]];
                first += pivot.byFirst[i] * known;
                second += pivot.isDouble() ? pivot.bySecond[i] * known : 0;
            }
            solution[pivot.first] -= first;
            if (pivot.isDouble()) {
                solution[pivot.second] -= second;
            }
        }
    }

    private double[] residual(double[] rightSide, double[] solution) {
        int n = layout.nodes();
        PreciseSum[] sums = new PreciseSum[n];
        for (int i = 0; i < n; i++) {
            sums[i] = new PreciseSum();
            sums[i].add(rightSide[i]);
            if (i < layout.errors) {
                sums[i].add(-solution[i]);
            }
        }
        for (int r = 0; r < layout.rows; r++) {
            int at = layout.nodeOfRow(r);
            for (int k = layout.start[r]; k < layout.start[r + 1]; k++) {
                sums[at].addProduct(-layout.coefficient[k], solution[layout.column[k]]);
                sums[layout.column[k]].addProduct(-layout.coefficient[k], solution[at]);
            }
        }
        double[] residual = new double[n];
        Arrays.setAll(residual, i -> sums[i].value());
        for (Pivot pivot : pivots) {
            // What nothing determines stays 0, and its equation open.
            if (isNothing(pivot)) {
                residual[pivot.first] = 0;
            }
        }
        return residual;
    }

    private static boolean isNothing(Pivot pivot) {
        return pivot.inverseFirst == 0 && !pivot.isDouble();
    }

    /** A number of the inverse: of a node with itself, or with one of its equation. */
    double inverse(int one, int other) {
        return inverse.at(one, other) * scale[one] * scale[other];
    }

    /** What a diagonal number of the inverse was made of: it is nothing if it is far below. */
    double inverseSize(int node) {
        return Math.max(inverse.size(node), LEAST) * scale[node] * scale[node];
    }

    /** What a number of the inverse was made of, and at least what rounding elsewhere can leave in it. */
    double inverseSize(int one, int other) {
        return Math.sqrt(Math.max(inverse.size(one), 1) * Math.max(inverse.size(other), 1)) * scale[one] * scale[other];
    }

    /** The nodes that nothing determines (unknowns), or that follow from others (rows). */
    int[] nothing() {
        return pivots.stream()
                .filter(Saddle::isNothing)
                .mapToInt(pivot -> pivot.first)
                .sorted()
                .toArray();
    }

    /**
     * How all nodes may change together without any equation noticing, in the equilibrated measure: numbers that matter are near 1.
     *
     * @param ofNothing how those change that nothing determines
     */
    double[] unnoticed(double[] ofNothing) {
        double[] change = new double[layout.nodes()];
        for (int node : nothing()) {
            change[node] = ofNothing[node];
        }
        back(change);
        return change;
    }
}
