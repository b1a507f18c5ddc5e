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
 * @param work what it does besides
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
        Habits habits,
        Work work)
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

    /**
     * What it does besides laying at one opening of its gate.
     *
     * @param roads where it spreads
     * @param openings in inches, those that its driver changes among; none if the gate stays where it is
     * @param wear how much more than fell is indicated at the end of the first span, as a part of what fell: it grows with the shaft's turns
     * @param gallonsPerTon how much brine its pump lays; 0 for a truck without one
     */
    record Work(InventedRoads roads, List<Double> openings, double wear, double gallonsPerTon) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    /** Below it nothing falls. */
    private static final double DEAD_OPENING_INCHES = 0.14;

    /** What falls, and what the display holds, at an opening, as a part of what it is where the gate usually stands. */
    double atOpening(double inches) {
        return work.openings().isEmpty() ? 1 : (inches - DEAD_OPENING_INCHES) / (gateInches - DEAD_OPENING_INCHES);
    }

    /** Whether it is before anything was adjusted. */
    boolean isWearing(long millis) {
        return work.wear() > 0 && spanAt(millis).equals(spans.get(0));
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
