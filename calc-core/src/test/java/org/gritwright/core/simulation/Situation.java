package org.gritwright.core.simulation;

/** The truck on which a mistake is made, and the dice that say where. */
record Situation(TrueTruck truck, Draw draw) {}
