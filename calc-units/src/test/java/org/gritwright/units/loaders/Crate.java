package org.gritwright.units.loaders;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.InvalidInputException;

/**
 * What an application ships: a serializable class of its own that holds quantities.
 *
 * @param quantities one in every unit
 * @param units every unit
 * @param conversion a conversion
 * @param refusal an error
 */
public record Crate(
        List<Quantity<?>> quantities, List<Unit<?>> units, Conversion conversion, InvalidInputException refusal)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    static {
        Amounts.prepare();
    }

    /** Copies the lists. */
    public Crate {
        quantities = List.copyOf(quantities);
        units = List.copyOf(units);
    }
}
