package org.gritwright.core.record;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * How large masses of a kind usually are, and which number would be so in another unit. All limits are ours (common practice, no source).
 *
 * @param kilograms their median; 0 where too few say it
 * @param near how many times as large or small a mass in the right unit may be where the unit that was written is that of another
 *     order, as pounds for tons
 * @param alike whether they lie so close together that a pound for a kilogram stands out too
 */
record UsualMass(double kilograms, double near, boolean alike) {
    private static final List<Unit<Mass>> UNITS =
            List.of(SpreadingUnits.POUND, SpreadingUnits.KILOGRAM, SpreadingUnits.SHORT_TON, SpreadingUnits.TONNE);

    /** So many of a kind say what is usual. */
    private static final int FEW = 5;

    /** What no load is of another; the smallest factor of such a slip is that of kilograms for short tons, 907. */
    private static final double FAR = 300;

    /** Of a load. */
    private static final double NEAR = 10;

    /** What a truck draws differs from month to month, and from truck to truck. */
    private static final double NEAR_UNLIKE = 30;

    /** A kilogram is 2.2 pounds, and half a load a half. */
    private static final double POUNDS = 2.1;

    /** So near to the median lies half of those that are alike. */
    private static final double ALIKE = 1.1;

    /** Of loads that come full. */
    static UsualMass of(Stream<Quantity<Mass>> masses) {
        double[] sorted = sorted(masses);
        int count = sorted.length;
        double median = median(sorted);
        boolean alike = median > 0
                && apart(sorted[count / 4], median) < ALIKE
                && apart(sorted[count - 1 - count / 4], median) < ALIKE;
        return new UsualMass(median, NEAR, alike);
    }

    /** Of masses that differ. */
    static UsualMass ofUnlike(Stream<Quantity<Mass>> masses) {
        return new UsualMass(median(sorted(masses)), NEAR_UNLIKE, false);
    }

    /** Of a mass that another one should be as large as. */
    static UsualMass only(Quantity<Mass> mass) {
        return new UsualMass(Amounts.si(Mass.class, mass), NEAR, true);
    }

    private static double[] sorted(Stream<Quantity<Mass>> masses) {
        return masses.mapToDouble(mass -> Amounts.si(Mass.class, mass)).sorted().toArray();
    }

    /** Of too few it is 0, which nothing is near. */
    private static double median(double[] sorted) {
        int count = sorted.length;
        return count < FEW ? 0 : sorted[(count - 1) / 2] / 2 + sorted[count / 2] / 2;
    }

    /** How many times as large the larger is. */
    private static double apart(double one, double other) {
        return Math.max(one / other, other / one);
    }

    /** The same number in the unit in which it would be as usual; none where it is usual, or would be in no unit. */
    Optional<Quantity<Mass>> inOtherUnit(Quantity<Mass> mass) {
        double off = apart(Amounts.si(Mass.class, mass), kilograms);
        if (!(off >= FAR || (alike && off >= POUNDS))) {
            return Optional.empty();
        }
        double within = off >= FAR ? near : ALIKE * ALIKE;
        // Without a quantity until it is near: a number of pounds may be more tons than a number can be.
        double number = mass.getValue().doubleValue();
        return UNITS.stream()
                .min(Comparator.comparingDouble(unit -> apart(number * kilograms(unit), kilograms)))
                .filter(unit -> apart(number * kilograms(unit), kilograms) <= within)
                .map(unit -> Amounts.of(number, unit));
    }

    Quantity<Mass> in(Unit<Mass> unit) {
        return Amounts.of(kilograms / kilograms(unit), unit);
    }

    static double kilograms(Unit<Mass> unit) {
        return Amounts.si(Mass.class, Amounts.of(1, unit));
    }
}
