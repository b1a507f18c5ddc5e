package org.gritwright.core.fleet.assessment;

import java.util.Optional;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.metering.OpeningReading;

/**
 * What a calibration is for: a material and a gate opening. 2 in and 50.8 mm are one place.
 *
 * @param material the material's name
 * @param position where the gate stands; none for a spreader without a gate to set
 */
public record Place(String material, Optional<OpeningReading.Position> position) {

    /**
     * The place of a catch.
     *
     * @param entry the catch
     * @return its material and gate opening
     */
    public static Place of(CatchEntry entry) {
        return new Place(entry.material(), entry.opening().map(OpeningReading::position));
    }
}
