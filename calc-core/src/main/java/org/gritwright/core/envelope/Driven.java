package org.gritwright.core.envelope;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * What was put down over a drive cycle: put down = asked − under + over. Immutable, thread-safe, a value.
 *
 * @param asked the mass that the rate asked for over the distance
 * @param delivered the mass put down
 * @param under what was missing where a limit kept the flow down, or the shaft stood still
 * @param over what was too much where the shaft turned no more slowly
 * @param beyond for how long a limit was met
 */
public record Driven(
        Quantity<Mass> asked,
        Quantity<Mass> delivered,
        Quantity<Mass> under,
        Quantity<Mass> over,
        Quantity<Time> beyond) {
    /** Checks that nothing is null. */
    public Driven {
        Require.given(Driven.class, asked, delivered, under, over, beyond);
    }

    /**
     * What is missing, as a part of what was asked for.
     *
     * @return the share in percent; 0 % where nothing was asked for
     */
    public Quantity<Dimensionless> shareUnder() {
        return share(under);
    }

    /**
     * What is too much, as a part of what was asked for.
     *
     * @return the share in percent; 0 % where nothing was asked for
     */
    public Quantity<Dimensionless> shareOver() {
        return share(over);
    }

    private Quantity<Dimensionless> share(Quantity<Mass> part) {
        double whole = Amounts.si(Mass.class, asked);
        return Amounts.ofSi(whole > 0 ? Amounts.si(Mass.class, part) / whole : 0, SpreadingUnits.PERCENT);
    }
}
