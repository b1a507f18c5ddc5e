package org.gritwright.examples.fleetmemory;

/** What a file brings. */
sealed interface Arrival permits Filed, Replaced {}
