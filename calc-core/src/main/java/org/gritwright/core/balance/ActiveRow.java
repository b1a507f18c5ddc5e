package org.gritwright.core.balance;

import java.util.Arrays;

/** What is left of a symmetric matrix's row while others are eliminated: its diagonal, and the rest in the order of nodes. */
final class ActiveRow {
    private static final double ROUNDING = 0x1p-53;

    int[] node;
    double[] number;
    int length;
    double diagonal;
    /** About how far rounding has the diagonal off, and any other number. */
    double diagonalNoise;

    double noise;

    ActiveRow(int[] node, double[] number, double diagonal) {
        this.node = node;
        this.number = number;
        this.length = node.length;
        this.diagonal = diagonal;
    }

    int place(int of) {
        return Arrays.binarySearch(node, 0, length, of);
    }

    double at(int of) {
        int place = place(of);
        return place < 0 ? 0 : number[place];
    }

    double largest() {
        double largest = 0;
        for (int i = 0; i < length; i++) {
            largest = Math.max(largest, Math.abs(number[i]));
        }
        return largest;
    }

    /** Takes out a node that is there. */
    void remove(int of) {
        int place = place(of);
        length--;
        System.arraycopy(node, place + 1, node, place, length - place);
        System.arraycopy(number, place + 1, number, place, length - place);
    }

    /**
     * Subtracts multiples of an eliminated step's rows.
     *
     * @param self this row's node
     * @param pivot the step, whose nodes leave this row
     * @param byFirst how much of the row of the step's first node
     * @param bySecond how much of that of its second
     * @param inherited how far rounding has these multiples off
     * @param scratch room
     */
    void subtract(
            int self, Elimination.Step pivot, double byFirst, double bySecond, double inherited, Scratch scratch) {
        int[] below = pivot.below;
        diagonalNoise = Math.max(diagonalNoise, inherited);
        noise = Math.max(noise, inherited);
        scratch.ensure(length + below.length);
        int[] nodes = scratch.nodes;
        double[] numbers = scratch.numbers;
        int used = 0;
        int i = 0;
        int j = 0;
        while (i < length || j < below.length) {
            int mine = i < length ? node[i] : Integer.MAX_VALUE;
            int theirs = j < below.length ? below[j] : Integer.MAX_VALUE;
            if (mine < theirs) {
                if (mine != pivot.first && mine != pivot.second) {
                    nodes[used] = mine;
                    numbers[used++] = number[i];
                }
                i++;
                continue;
            }
            double ofFirst = byFirst * pivot.ofFirst[j];
            double ofSecond = bySecond * pivot.ofSecond[j];
            double change = ofFirst + ofSecond;
            // Where both cancel, what they were rounded by stays.
            double rounded = ROUNDING * (Math.abs(ofFirst) + Math.abs(ofSecond));
            if (theirs == self) {
                diagonal -= change;
                diagonalNoise = Math.max(diagonalNoise, rounded);
            } else {
                nodes[used] = theirs;
                numbers[used++] = mine == theirs ? number[i] - change : -change;
                noise = Math.max(noise, rounded);
            }
            if (mine == theirs) {
                i++;
            }
            j++;
        }
        if (used > node.length) {
            node = new int[2 * used];
            number = new double[2 * used];
        }
        System.arraycopy(nodes, 0, node, 0, used);
        System.arraycopy(numbers, 0, number, 0, used);
        length = used;
    }

    /** Room to merge rows in. */
    static final class Scratch {
        int[] nodes = new int[64];
        double[] numbers = new double[64];

        void ensure(int length) {
            if (nodes.length < length) {
                nodes = new int[2 * length];
                numbers = new double[2 * length];
            }
        }
    }
}
