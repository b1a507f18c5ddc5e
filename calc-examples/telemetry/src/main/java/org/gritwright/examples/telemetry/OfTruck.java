package org.gritwright.examples.telemetry;

/** What is of one truck. */
interface OfTruck {
    String truck();
}
