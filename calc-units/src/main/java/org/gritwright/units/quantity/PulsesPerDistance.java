package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Pulses that a road-speed sensor gives per distance travelled.
 *
 * <p>SI unit pulse/m; trade units pulse/mi, pulse/km. Depends on tyres and gearing, so it is measured over a
 * course.
 */
public interface PulsesPerDistance extends Quantity<PulsesPerDistance> {}
