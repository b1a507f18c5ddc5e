package org.gritwright.core.weighing;

import java.util.Locale;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * The accuracy class on a scale's plate, and how far off its handbook lets it be.
 *
 * <p>Sources: NIST Handbook 44, section 2.20, table 6 (classes III and IIII; III L; acceptance tolerances are half of the
 * maintenance tolerances); OIML R 76-1, 3.5.1 (initial verification), as in the UK's SI 1995/1907, schedule 2, with twice
 * as much in service. IIII and III L of Handbook 44 from memory. The verification interval e is taken to be the division.
 */
public enum AccuracyClass {
    /** Handbook 44, class III: up to 500, 2 000, 4 000 and more divisions 1, 2, 3 and 5 divisions in service. */
    HB44_III(500, 2_000, 4_000, 5),
    /** Handbook 44, class III L, of vehicle scales: one division for each 500 divisions or fraction in service. */
    HB44_IIIL(0, 0, 0, 0),
    /** Handbook 44, class IIII: up to 50, 200, 400 and more divisions 1, 2, 3 and 5 divisions in service. */
    HB44_IIII(50, 200, 400, 5),
    /** OIML R 76, class I: up to 50 000, 200 000 and more divisions 1, 2 and 3 divisions in service. */
    R76_I(50_000, 200_000, Double.POSITIVE_INFINITY, Double.NaN),
    /** OIML R 76, class II: up to 5 000, 20 000 and 100 000 divisions 1, 2 and 3 divisions in service. */
    R76_II(5_000, 20_000, 100_000, Double.NaN),
    /** OIML R 76, class III: up to 500, 2 000 and 10 000 divisions 1, 2 and 3 divisions in service. */
    R76_III(500, 2_000, 10_000, Double.NaN),
    /** OIML R 76, class IIII: up to 50, 200 and 1 000 divisions 1, 2 and 3 divisions in service. */
    R76_IIII(50, 200, 1_000, Double.NaN);

    private static final double DIVISIONS_A_STEP = 500;

    private final double oneUpTo;
    private final double twoUpTo;
    private final double threeUpTo;
    private final double beyond;

    /** Loads in divisions up to which 1, 2 and 3 divisions hold, and what holds beyond; NaN for nothing beyond. */
    AccuracyClass(double oneUpTo, double twoUpTo, double threeUpTo, double beyond) {
        this.oneUpTo = oneUpTo;
        this.twoUpTo = twoUpTo;
        this.threeUpTo = threeUpTo;
        this.beyond = beyond;
    }

    /** Which of a handbook's two tolerances holds. */
    public enum Stage {
        /** Acceptance (Handbook 44) or initial verification (R 76): new or newly repaired. */
        NEW,
        /** Maintenance (Handbook 44) or in service (R 76): twice that of a new scale. */
        IN_SERVICE
    }

    /**
     * How far a reading may be off.
     *
     * @param loadDivisions the load, in divisions of the scale, 0 or more
     * @param stage which tolerance
     * @return the tolerance, in divisions
     * @throws org.gritwright.units.InvalidInputException if the load is negative, not finite, or beyond the table of the class
     */
    public double tolerance(double loadDivisions, Stage stage) {
        Require.that(
                loadDivisions >= 0 && Double.isFinite(loadDivisions), "load in divisions", "0 or more", loadDivisions);
        double divisions = this == HB44_IIIL ? byStep(loadDivisions) : byTable(loadDivisions);
        return stage == Stage.IN_SERVICE ? divisions : divisions / 2;
    }

    private static double byStep(double load) {
        double steps = Math.ceil(load / DIVISIONS_A_STEP);
        // A load of just 500 divisions may come out a rounding error above.
        boolean atLimit = !Comparison.isAbove(load, (steps - 1) * DIVISIONS_A_STEP);
        return Math.max(1, atLimit ? steps - 1 : steps);
    }

    private double byTable(double load) {
        if (!Comparison.isAbove(load, oneUpTo)) {
            return 1;
        }
        if (!Comparison.isAbove(load, twoUpTo)) {
            return 2;
        }
        if (!Comparison.isAbove(load, threeUpTo)) {
            return 3;
        }
        Require.that(
                !Double.isNaN(beyond),
                "load on a scale of class " + id(),
                "at most " + threeUpTo + " divisions",
                () -> load + " divisions");
        return beyond;
    }

    /**
     * The class as it stands in documents.
     *
     * @return for example "hb44-iii"; stable
     */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
