package org.gritwright.core.balance;

/**
 * One step of an elimination: one node, or two at once, taken out of those that are left. Nodes that nothing determines have an inverse of
 * 0 and nothing below.
 */
final class Pivot {
    final int first;
    /** The other node; −1 for a step of one. */
    final int second;
    /** The inverse of the step's diagonal block: of the first, of both, of the second. */
    final double inverseFirst;

    final double inverseBoth;
    final double inverseSecond;
    /** The nodes that it touched, ascending, and the multipliers of each. */
    final int[] below;

    final double[] byFirst;
    final double[] bySecond;

    Pivot(int first, int second, double[] inverse, int[] below, double[] byFirst, double[] bySecond) {
        this.first = first;
        this.second = second;
        this.inverseFirst = inverse[0];
        this.inverseBoth = inverse[1];
        this.inverseSecond = inverse[2];
        this.below = below;
        this.byFirst = byFirst;
        this.bySecond = bySecond;
    }

    boolean isDouble() {
        return second >= 0;
    }
}
