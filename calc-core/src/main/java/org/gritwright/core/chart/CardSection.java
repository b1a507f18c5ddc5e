package org.gritwright.core.chart;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * The part of a card for one material at one gate setting: what to set, and what then holds. Immutable, thread-safe, a value.
 *
 * @param material the material's name
 * @param gate where to set the gate; {@link Setting#none()} where there is nothing to set
 * @param display the value that the display must hold; none for a truck without one
 * @param lines one for each rate, 0 to 100; none where nobody has measured what the drive holds
 */
public record CardSection(String material, Setting gate, Optional<CalibrationFactor> display, List<CardLine<?>> lines) {
    private static final int MOST_LINES = 100;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the material is blank, or there are too many lines
     */
    public CardSection {
        Require.given(CardSection.class, material, gate, display, lines);
        Require.text("material", material);
        lines = List.copyOf(Require.noMoreThan(MOST_LINES, "rates of a card", lines));
    }
}
