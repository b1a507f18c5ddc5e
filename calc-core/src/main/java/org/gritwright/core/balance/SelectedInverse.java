package org.gritwright.core.balance;

import java.util.Arrays;
import java.util.List;

/**
 * Those numbers of a sparse symmetric matrix's inverse where the matrix, or its factor, has one: the diagonal and more, for little more than
 * the price of the factor (Takahashi, Fagan and Chen 1973; Erisman and Tinney 1975).
 */
final class SelectedInverse {
    private final List<Pivot> pivots;
    private final int[] step;
    private final double[] diagonal;
    private final double[] size;
    /** Of the first and the second node of each step, with each other and with those below. */
    private final double[] both;

    private final double[][] first;
    private final double[][] second;

    SelectedInverse(int nodes, List<Pivot> pivots) {
        this.pivots = List.copyOf(pivots);
        int steps = pivots.size();
        this.step = new int[nodes];
        this.diagonal = new double[nodes];
        this.size = new double[nodes];
        this.both = new double[steps];
        this.first = new double[steps][];
        this.second = new double[steps][];
        for (int k = 0; k < steps; k++) {
            Pivot pivot = this.pivots.get(k);
            step[pivot.first] = k;
            if (pivot.isDouble()) {
                step[pivot.second] = k;
            }
        }
        for (int k = steps - 1; k >= 0; k--) {
            fill(k);
        }
    }

    private void fill(int k) {
        Pivot pivot = pivots.get(k);
        int count = pivot.below.length;
        double[] ofFirst = new double[count];
        double[] ofSecond = new double[pivot.isDouble() ? count : 0];
        for (int j = 0; j < count; j++) {
            spread(pivot, j, ofFirst, ofSecond);
        }
        first[k] = ofFirst;
        second[k] = ofSecond;
        double own = 0;
        double ownSize = 0;
        double shared = 0;
        double other = 0;
        double otherSize = 0;
        for (int i = 0; i < count; i++) {
            own -= pivot.byFirst[i] * ofFirst[i];
            ownSize += Math.abs(pivot.byFirst[i] * ofFirst[i]);
            if (pivot.isDouble()) {
                shared -= pivot.byFirst[i] * ofSecond[i];
                other -= pivot.bySecond[i] * ofSecond[i];
                otherSize += Math.abs(pivot.bySecond[i] * ofSecond[i]);
            }
        }
        diagonal[pivot.first] = pivot.inverseFirst + own;
        size[pivot.first] = Math.abs(pivot.inverseFirst) + ownSize;
        if (pivot.isDouble()) {
            both[k] = pivot.inverseBoth + shared;
            diagonal[pivot.second] = pivot.inverseSecond + other;
            size[pivot.second] = Math.abs(pivot.inverseSecond) + otherSize;
        }
    }

    /** What node j below, with itself and with those below that are eliminated after it, adds to the step's numbers. */
    private void spread(Pivot pivot, int j, double[] ofFirst, double[] ofSecond) {
        int node = pivot.below[j];
        add(pivot, j, j, diagonal[node], ofFirst, ofSecond);
        int later = step[node];
        Pivot its = pivots.get(later);
        double[] numbers = its.first == node ? first[later] : second[later];
        if (its.first == node && its.isDouble()) {
            int partner = Arrays.binarySearch(pivot.below, its.second);
            if (partner >= 0) {
                pair(pivot, j, partner, both[later], ofFirst, ofSecond);
            }
        }
        for (int i = 0; i < pivot.below.length; i++) {
            int place = Arrays.binarySearch(its.below, pivot.below[i]);
            if (place >= 0) {
                pair(pivot, j, i, numbers[place], ofFirst, ofSecond);
            }
        }
    }

    private static void pair(Pivot pivot, int i, int j, double number, double[] ofFirst, double[] ofSecond) {
        add(pivot, i, j, number, ofFirst, ofSecond);
        add(pivot, j, i, number, ofFirst, ofSecond);
    }

    private static void add(Pivot pivot, int to, int from, double number, double[] ofFirst, double[] ofSecond) {
        ofFirst[to] -= number * pivot.byFirst[from];
        if (pivot.isDouble()) {
            ofSecond[to] -= number * pivot.bySecond[from];
        }
    }

    double size(int node) {
        return size[node];
    }

    /** The inverse's number for two nodes that touch; for others that don't in the factor either, NaN. */
    double at(int one, int other) {
        if (one == other) {
            return diagonal[one];
        }
        if (step[one] == step[other]) {
            return both[step[one]];
        }
        int earlier = step[one] < step[other] ? one : other;
        int k = step[earlier];
        Pivot pivot = pivots.get(k);
        int place = Arrays.binarySearch(pivot.below, earlier == one ? other : one);
        if (place < 0) {
            // A step that determines nothing took no one along: its numbers are 0.
            return pivot.below.length == 0 ? 0 : Double.NaN;
        }
        return pivot.first == earlier ? first[k][place] : second[k][place];
    }
}
