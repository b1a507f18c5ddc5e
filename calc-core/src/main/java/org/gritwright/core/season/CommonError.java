package org.gritwright.core.season;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * An error that several masses share: that of a scale in all that was weighed on it, that of a bulk density in all surveys that were computed
 * with it. Immutable, thread-safe, a value.
 *
 * @param name what people call its source, such as "loader 3" or "density of the survey crew"
 * @param standardUncertainty of the scale or the density, relative to the mass; greater than 0, kept in percent
 */
public record CommonError(String name, Quantity<Dimensionless> standardUncertainty) implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank or the uncertainty isn't greater than 0
     */
    public CommonError {
        Require.given(CommonError.class, name, standardUncertainty);
        Require.text("name of a scale or density", name);
        Require.positive("standard uncertainty of " + name, Dimensionless.class, standardUncertainty);
        standardUncertainty =
                Amounts.of(Amounts.in(standardUncertainty, SpreadingUnits.PERCENT), SpreadingUnits.PERCENT);
    }

    double ratio() {
        return Amounts.si(Dimensionless.class, standardUncertainty);
    }
}
