package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Pulses that a shaft sensor gives per revolution of the sensed shaft.
 *
 * <p>SI unit pulse/rev; trade units pulse/rev. A fact of the sensor wheel.
 */
public interface PulsesPerRevolution extends Quantity<PulsesPerRevolution> {}
