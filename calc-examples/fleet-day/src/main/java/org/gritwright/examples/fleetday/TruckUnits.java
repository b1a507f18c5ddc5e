package org.gritwright.examples.fleetday;

import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.units.Amounts;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;

/**
 * The units of one truck's worksheet: metric throughout, or US throughout, as its display is.
 *
 * @param like a quantity in the truck's own units
 */
record TruckUnits(Quantity<?> like) {
    private static final int DIGITS = 3;

    static TruckUnits of(TruckPlan truck) {
        return new TruckUnits(truck.points().get(0).expected());
    }

    /** As it was written down if that is in the truck's units, or else converted, for example "24.1 km/h". */
    String text(Quantity<?> quantity) {
        return isOwn(quantity)
                ? Amounts.format(quantity)
                : Figures.otherSystem(quantity, DIGITS).orElseGet(() -> Amounts.format(quantity));
    }

    /** The symbol of the truck's unit for a kind of quantity, for example "km/h". */
    <Q extends Quantity<Q>> String symbol(Class<Q> kind) {
        return symbol(UnitSymbol.tradeUnit(kind, like));
    }

    /** Whether a quantity is in the truck's units, or in those that all share. */
    boolean isOwn(Quantity<?> quantity) {
        TradeSystem system = UnitSymbol.of(quantity.getUnit()).system();
        return system == TradeSystem.ANY
                || isMetric(system) == isMetric(UnitSymbol.of(like.getUnit()).system());
    }

    private static boolean isMetric(TradeSystem system) {
        return system == TradeSystem.METRIC;
    }

    /** The symbol of a quantity's own unit; empty for a plain number. */
    static String symbolOf(Quantity<?> quantity) {
        return symbol(quantity.getUnit());
    }

    private static String symbol(Unit<?> unit) {
        return UnitSymbol.of(unit).symbol();
    }
}
