package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.time.Instant;
import java.util.List;

/**
 * An invented truck: what it is, what its display holds, and what truly falls.
 *
 * @param gateInches where its gate stands; NaN where nothing is set
 * @param slot the slot that the driver uses
 * @param pulsesPerRevolution of the sensed shaft
 * @param pulsesPerMile of its road-speed sensor, in truth
 * @param fastestShaft what its oil allows, in rev/min
 * @param poundsPerMile what it is asked to lay
 * @param spans what its display holds, and what truly falls, from when on
 * @param habits what happens to it
 */
record InventedTruck(
        String id,
        double gateInches,
        String slot,
        double pulsesPerRevolution,
        double pulsesPerMile,
        double fastestShaft,
        double poundsPerMile,
        List<Span> spans,
        Habits habits)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * What holds from a time on, in lb/rev of the sensed shaft.
     *
     * @param held by the display
     * @param fallen in truth
     */
    record Span(Instant from, double held, double fallen) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    /**
     * What happens to it.
     *
     * @param startsAtZero its counters begin anew whenever the key is turned
     * @param reboots its controller drops out now and then
     * @param losesRadio rows are missing for minutes
     * @param swapsRows rows come in the wrong order, twice, or with the date of a dead clock battery
     * @param usesSpareSlot its driver now and then takes a slot that nobody calibrated
     */
    record Habits(boolean startsAtZero, boolean reboots, boolean losesRadio, boolean swapsRows, boolean usesSpareSlot)
            implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    Span spanAt(long millis) {
        Span span = spans.get(0);
        for (Span one : spans) {
            if (one.from().toEpochMilli() <= millis) {
                span = one;
            }
        }
        return span;
    }
}
