package org.gritwright.core.fleet;

import java.util.Optional;
import org.gritwright.core.spreader.OpeningReading;

/**
 * What a calibration is for: a material and a gate opening. 2 in and 50.8 mm are one place.
 *
 * @param material the material's name
 * @param position where the gate stands; none for a spreader without a gate to set
 */
record Place(String material, Optional<OpeningReading.Position> position) {

    static Place of(CatchEntry entry) {
        return new Place(entry.material(), entry.opening().map(OpeningReading::position));
    }
}
