package org.gritwright.core.spi;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * From where to where a type answers, in words and in SI.
 *
 * @param field what is limited, in the trade's words
 * @param highest none if the type knows no highest value
 */
record Limits<Q extends Quantity<Q>>(String field, Class<Q> kind, Quantity<Q> lowest, Optional<Quantity<Q>> highest) {
    Limits {
        lowest = copy(Require.notNegative("lowest " + field, kind, lowest));
        if (highest.isPresent()) {
            String name = "highest " + field;
            Quantity<Q> given = Require.positive(name, kind, highest.get());
            highest = Optional.of(copy(Require.atLeast(name, kind, given, lowest)));
        }
    }

    /** Our own copy: somebody else's quantity may answer otherwise, or throw, when it is asked again. */
    static <Q extends Quantity<Q>> Quantity<Q> copy(Quantity<Q> quantity) {
        return Amounts.of(quantity.getValue().doubleValue(), quantity.getUnit());
    }

    /** A value within the limits, or off them by no more than rounding, in SI and brought within. */
    double number(Quantity<Q> value) {
        Quantity<Q> checked = highest.isPresent()
                ? Require.within(field, kind, value, lowest, highest.get())
                : Require.atLeast(field, kind, value, lowest);
        double si = Amounts.si(kind, checked);
        double low = Amounts.si(kind, lowest);
        return Math.max(
                low, highest.map(most -> Math.min(Amounts.si(kind, most), si)).orElse(si));
    }

    /** The same for a number in SI. */
    double number(double si) {
        return number(Amounts.ofSi(Require.finite(field, si), lowest.getUnit()));
    }

    @Override
    public String toString() {
        return highest.map(most -> "from " + Amounts.format(lowest) + " to " + Amounts.format(most))
                .orElse("from " + Amounts.format(lowest));
    }
}
