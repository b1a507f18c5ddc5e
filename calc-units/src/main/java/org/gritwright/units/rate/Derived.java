package org.gritwright.units.rate;

import java.util.Objects;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.ArealApplicationRate;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargeRate;
import org.gritwright.units.quantity.LaneApplicationRate;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;

/** Checked arguments as SI doubles, and results in the units of the asker's system. */
final class Derived {
    private static final Set<Class<?>> MASS_LIKE = Set.of(
            Mass.class,
            ApplicationRate.class,
            LaneApplicationRate.class,
            ArealApplicationRate.class,
            DischargeRate.class);

    private Derived() {}

    static <Q extends Quantity<Q>> double positive(String field, Class<Q> kind, Quantity<Q> quantity) {
        return Amounts.si(kind, Require.positive(field, kind, quantity));
    }

    static <Q extends Quantity<Q>> double notNegative(String field, Class<Q> kind, Quantity<Q> quantity) {
        return Amounts.si(kind, Require.notNegative(field, kind, quantity));
    }

    /** Checks that a quantity is a mass or one of its rates, not negative; the parts of such a thing are of its own kind. */
    static <Q extends Quantity<Q>> void massLike(String field, Quantity<Q> quantity) {
        Class<Q> kind =
                UnitSymbol.of(Objects.requireNonNull(quantity, field).getUnit()).kind();
        if (!MASS_LIKE.contains(kind)) {
            throw new InvalidInputException(
                    RefusalCode.WRONG_KIND,
                    field,
                    "a mass, or a mass per distance, lane distance, area or time",
                    Amounts.format(quantity),
                    UnitSymbol.kindName(Mass.class));
        }
        Require.notNegative(field, kind, quantity);
    }

    static double density(Quantity<BulkDensity> density) {
        return positive("density of the liquid", BulkDensity.class, density);
    }

    static double lanes(Quantity<LaneCount> lanes) {
        return positive("lanes treated", LaneCount.class, lanes);
    }

    static double laneWidth(Quantity<LaneWidth> laneWidth) {
        return positive("lane width", LaneWidth.class, laneWidth);
    }

    static double treatedWidth(Quantity<Length> treatedWidth) {
        return positive("treated width", Length.class, treatedWidth);
    }

    static double roadSpeed(Quantity<Speed> roadSpeed) {
        return positive("road speed", Speed.class, roadSpeed);
    }

    static double fraction(String field, Quantity<Dimensionless> quantity) {
        Quantity<Dimensionless> none = Amounts.of(0, SpreadingUnits.PERCENT);
        Quantity<Dimensionless> all = Amounts.of(100, SpreadingUnits.PERCENT);
        double ratio = Amounts.si(Dimensionless.class, Require.within(field, Dimensionless.class, quantity, none, all));
        // What is 100 % but for rounding is accepted, and leaves nothing below 0.
        return Math.min(ratio, 1);
    }

    /** A result in the trade's usual unit of the system that the first argument was given in. */
    static <R extends Quantity<R>> Quantity<R> like(Quantity<?> firstArgument, Class<R> kind, double si) {
        return Amounts.ofSi(si, UnitSymbol.tradeUnit(kind, firstArgument));
    }
}
