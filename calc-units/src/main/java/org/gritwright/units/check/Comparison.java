package org.gritwright.units.check;

/** Compares numbers with limits so that a limit that is itself accepted isn't lost to rounding. */
public final class Comparison {
    /** Far above what a few operations on doubles lose, far below what anybody can measure. */
    private static final double ROUNDING = 1e-12;

    private Comparison() {}

    /**
     * Whether a number is above a limit by more than the rounding of double arithmetic. 62 rev/min for
     * 30 s are 31.000000000000004 revolutions in doubles, and no more than 31 for people.
     *
     * @param number a finite number
     * @param limit the limit
     * @return true if the number is above the limit by more than a part in 10¹² of the limit
     */
    public static boolean isAbove(double number, double limit) {
        return isAbove(number, limit, limit);
    }

    /**
     * Whether a difference is above a limit by more than the rounding of double arithmetic: 104 ÷ 100 − 1 is
     * 0.040000000000000036, and no more than 4 % for people.
     *
     * @param difference a finite number, made by subtraction
     * @param limit the limit
     * @param size the size of the numbers that were subtracted
     * @return true if the difference is above the limit by more than a part in 10¹² of the size
     */
    public static boolean isAbove(double difference, double limit, double size) {
        return difference - limit > ROUNDING * Math.abs(size);
    }
}
