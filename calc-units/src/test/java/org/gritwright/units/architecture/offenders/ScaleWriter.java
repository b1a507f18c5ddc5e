package org.gritwright.units.architecture.offenders;

import javax.measure.IncommensurableException;
import javax.measure.Quantity.Scale;
import javax.measure.quantity.Mass;
import tech.units.indriya.AbstractUnit;

/** Asks for converters with a scale, on purpose, and for one without. */
public final class ScaleWriter {
    private ScaleWriter() {}

    static Object write(AbstractUnit<Mass> unit) throws IncommensurableException {
        return new Object[] {
            unit.getConverterTo(unit, Scale.RELATIVE),
            unit.getConverterToAny(unit, Scale.RELATIVE),
            unit.getConverterTo(unit)
        };
    }
}
