package org.gritwright.core.planning;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A way to catch, among others that might do: which container, and how long each step takes. Immutable, thread-safe, a value.
 *
 * @param name its name in the yard
 * @param amount how the amount becomes known
 * @param once how long setting up and cleaning up take, 0 or more
 * @param perCatch how long a catch takes beside its run and its containers, 0 or more
 * @param perContainer how long each container or fill takes to fill, to weigh or read, and to empty, 0 or more
 */
public record CatchMethod(
        String name, PlannedAmount amount, Quantity<Time> once, Quantity<Time> perCatch, Quantity<Time> perContainer) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank or a time negative
     */
    public CatchMethod {
        Require.given(CatchMethod.class, name, amount, once, perCatch, perContainer);
        Require.text("name of a method to catch", name);
        Require.notNegative("time that " + name + " takes once", Time.class, once);
        Require.notNegative("time that " + name + " takes per catch", Time.class, perCatch);
        Require.notNegative("time that " + name + " takes per container", Time.class, perContainer);
    }

    /**
     * How long planned catches take with it.
     *
     * @param series the catches
     * @param run how long one of them runs, 0 or more
     * @return once + repeats × (per catch + run + containers × per container), in minutes
     * @throws org.gritwright.units.InvalidInputException if the run is negative
     */
    public Quantity<Time> time(CatchSeries series, Quantity<Time> run) {
        Objects.requireNonNull(series, "series");
        Require.notNegative("run time", Time.class, run);
        double each = si(perCatch) + si(run) + series.containersToFill() * si(perContainer);
        return Amounts.ofSi(si(once) + series.repeats() * each, SpreadingUnits.MINUTE);
    }

    static double si(Quantity<Time> time) {
        return Amounts.si(Time.class, time);
    }
}
