package org.gritwright.core.lateral;

import org.gritwright.units.check.Require;

/**
 * A setting of the spinner and the pattern that it made. Immutable, thread-safe, a value.
 *
 * @param name what was set, for example "speed 4, chute back"
 * @param pattern what was caught with it
 */
public record SpinnerSetting(String name, SpreadPattern pattern) {
    /**
     * Checks the name.
     *
     * @throws org.gritwright.units.InvalidInputException if it is blank
     */
    public SpinnerSetting {
        Require.given(SpinnerSetting.class, name, pattern);
        Require.text("spinner setting", name);
    }
}
