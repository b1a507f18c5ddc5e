package org.gritwright.examples.fleetmemory;

/**
 * A document that stood once.
 *
 * @param document the document
 * @param by the content of the one that took its place
 * @param why why
 */
record Replaced(Kept document, String by, String why) implements Arrival {}
