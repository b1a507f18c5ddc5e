package org.gritwright.core.solution;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.quantity.Temperature;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/**
 * Where a solution begins to freeze, and on which side of the eutectic that is. Immutable, thread-safe, a value.
 *
 * @param side the side
 * @param temperature the temperature at which the first crystal is at home: ice up to the eutectic, salt with crystal water
 *     beyond it; a solution may be cooled some degrees further before one forms. Its uncertainty, a difference of temperatures, is
 *     by how much tables differ and that of the share; it is absent beyond the eutectic, where one table alone was read. The
 *     temperature is absent between the eutectics of two sources, and where no table was read
 */
public record FreezingPoint(Side side, Optional<Measured<Temperature>> temperature) implements Serializable {
    /** Checks that all is given. */
    public FreezingPoint {
        Require.given(FreezingPoint.class, side, temperature);
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
}
