package org.gritwright.examples.telemetry;

/**
 * A row as a truck would send it.
 *
 * @param gateInches NaN where nothing is set
 */
record InventedRow(long millis, long shaftPulses, long roadPulses, double gateInches, String slot, int mode) {}
