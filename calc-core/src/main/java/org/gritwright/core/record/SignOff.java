package org.gritwright.core.record;

import java.time.LocalDate;
import java.util.Optional;
import org.gritwright.units.check.Require;

/**
 * Who stands behind a calibration record.
 *
 * @param name the person
 * @param role the person's role, if it is stated
 * @param on the day of the signature
 */
public record SignOff(String name, Optional<String> role, LocalDate on) {
    /**
     * Checks that the person is named.
     *
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public SignOff {
        Require.given(SignOff.class, name, role, on);
        Require.text("name of who signs off", name);
    }
}
