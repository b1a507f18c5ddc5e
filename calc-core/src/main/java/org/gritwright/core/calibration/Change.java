package org.gritwright.core.calibration;

import java.time.LocalDate;
import org.gritwright.core.finding.Term;
import org.gritwright.units.check.Require;

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
        HYDRAULIC(Term.HYDRAULIC),
        /** The shaft sensor or its wheel. */
        SENSOR(Term.SENSOR),
        /** Tires, which change the pulses per distance. */
        TIRE(Term.TIRE),
        /** The material or its supplier. */
        MATERIAL(Term.MATERIAL),
        /** The gate, its scale or its marks. */
        GATE(Term.GATE),
        /** The conveyor: its chain, belt, auger or roller, or its gears. */
        CONVEYOR(Term.CONVEYOR);

        private final Term term;

        Part(Term term) {
            this.term = term;
        }

        /**
         * What it is called in findings.
         *
         * @return for example "hydraulic"
         */
        public Term term() {
            return term;
        }
    }

    /** Checks that both are given. */
    public Change {
        Require.given(Change.class, on, part);
    }
}
