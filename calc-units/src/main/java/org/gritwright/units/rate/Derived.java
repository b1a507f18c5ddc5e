package org.gritwright.units.rate;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.LaneCount;
import org.gritwright.units.quantity.LaneWidth;

/** Checked arguments as SI doubles, and results in the units of the asker's system. */
final class Derived {

    private Derived() {}

    static <Q extends Quantity<Q>> double positive(String field, Class<Q> kind, Quantity<Q> quantity) {
        return Amounts.si(kind, Require.positive(field, kind, quantity));
    }

    static <Q extends Quantity<Q>> double notNegative(String field, Class<Q> kind, Quantity<Q> quantity) {
        return Amounts.si(kind, Require.notNegative(field, kind, quantity));
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
        return Amounts.si(Dimensionless.class, Require.within(field, Dimensionless.class, quantity, none, all));
    }

    /** A result in the trade's usual unit of the system that the first argument was given in. */
    static <R extends Quantity<R>> Quantity<R> like(Quantity<?> firstArgument, Class<R> kind, double si) {
        return Amounts.ofSi(si, UnitSymbol.tradeUnit(kind, firstArgument));
    }
}
