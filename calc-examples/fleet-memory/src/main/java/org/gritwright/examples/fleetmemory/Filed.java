package org.gritwright.examples.fleetmemory;

/**
 * A document that is to be kept.
 *
 * @param from where it was read, for messages
 */
record Filed(Kept document, String from) implements Arrival {}
