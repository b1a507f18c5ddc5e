package org.gritwright.units;

/** The customary system that a unit belongs to, so that a report can speak the reader's units. */
public enum TradeSystem {
    /** US customary units: pounds, miles, US gallons, short tons. */
    US,
    /** Metric units: kilograms, kilometers, liters, tonnes. */
    METRIC,
    /** Imperial units that differ from the US ones: imperial gallons, long tons. */
    IMPERIAL,
    /** Units that every system shares: seconds, revolutions, pulses, percent. */
    ANY
}
