package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Pulses that a road-speed sensor gives per distance traveled.
 *
 * <p>SI unit pulse/m; trade units pulse/mi, pulse/km. Depends on tires and gearing, so it is measured over a
 * course.
 */
public interface PulsesPerDistance extends Quantity<PulsesPerDistance> {}
