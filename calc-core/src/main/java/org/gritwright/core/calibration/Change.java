package org.gritwright.core.calibration;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Objects;

/**
 * Something on the truck or in the heap that was changed, so that a calibration made before may no longer hold.
 *
 * @param on the day
 * @param part what was changed
 */
public record Change(LocalDate on, Part part) {

    /** What was changed. */
    public enum Part {
        /** Pump, valve, motor, hoses. */
        HYDRAULIC,
        /** The shaft sensor or its wheel. */
        SENSOR,
        /** Tyres, which change the pulses per distance. */
        TYRE,
        /** The material or its supplier. */
        MATERIAL;

        /**
         * In words, for sentences.
         *
         * @return for example "hydraulic"
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Checks that both are given. */
    public Change {
        Objects.requireNonNull(on, "on");
        Objects.requireNonNull(part, "part");
    }
}
