/**
 * The main job as a small program: reads a fleet's calibration day, assesses every truck, and writes calibration
 * records, a table and a report. Start at {@link org.gritwright.examples.fleetday.FleetDayCommand}.
 */
@NullMarked
package org.gritwright.examples.fleetday;

import org.jspecify.annotations.NullMarked;
