/**
 * A fleet's records, kept for years in a database. Start at {@link org.gritwright.examples.fleetmemory.FleetMemoryCommand}.
 */
@NullMarked
package org.gritwright.examples.fleetmemory;

import org.jspecify.annotations.NullMarked;
