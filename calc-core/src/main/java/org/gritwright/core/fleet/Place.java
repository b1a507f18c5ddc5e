package org.gritwright.core.fleet;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;

/**
 * What a calibration is for: a material and a gate opening. 2 in and 50.8 mm are one place.
 *
 * @param material the material's name
 * @param openingNanometres the gate opening; none for a spreader without a gate to set
 */
record Place(String material, Optional<Long> openingNanometres) {
    private static final double NANOMETRES_PER_METRE = 1e9;

    static Place of(CatchEntry entry) {
        return of(entry.material(), entry.opening());
    }

    static Place of(String material, Optional<Quantity<Length>> opening) {
        return new Place(material, opening.map(o -> Math.round(Amounts.si(Length.class, o) * NANOMETRES_PER_METRE)));
    }
}
