package org.gritwright.core.weighing;

import java.math.BigDecimal;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.check.Require;

/**
 * One container weighed full and empty. Immutable, thread-safe, a value.
 *
 * @param container the container's name, for messages
 * @param gross the mass with what was caught, 0 or more
 * @param tare the mass of the empty container, 0 or more; there is no default: zero must be stated
 */
public record Weighing(String container, Quantity<Mass> gross, Quantity<Mass> tare) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a mass is negative or the gross is below the tare; it names the container
     */
    public Weighing {
        Require.text("container", container);
        Require.notNegative("tare of container " + container, Mass.class, tare);
        Require.notNegative("gross of container " + container, Mass.class, gross);
        if (decimal(gross, gross.getUnit()).compareTo(decimal(tare, gross.getUnit())) < 0) {
            String written = Amounts.format(gross);
            String empty = Amounts.format(tare);
            throw new InvalidInputException(
                            RefusalCode.INCONSISTENT,
                            "gross of container " + container,
                            "at least its tare, " + empty,
                            written,
                            empty)
                    .withWords(container + ": gross " + written + " is below its tare " + empty + ". Swapped?");
        }
    }

    /**
     * What was caught in the container. Subtracted in decimals: 236.1 lb − 4.3 lb is 231.8 lb, not the
     * 231.79999999999998 lb of binary numbers.
     *
     * @return gross − tare, in the unit of the gross
     */
    public Quantity<Mass> net() {
        Unit<Mass> unit = gross.getUnit();
        return Amounts.of(decimal(gross, unit).subtract(decimal(tare, unit)).doubleValue(), unit);
    }

    /** The number of a mass in a unit, as the decimal that a person would write. */
    static BigDecimal decimal(Quantity<Mass> mass, Unit<Mass> unit) {
        return BigDecimal.valueOf(Amounts.in(mass, unit));
    }
}
