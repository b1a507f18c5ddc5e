package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume that a conveyor sweeps per revolution of its shaft.
 *
 * <p>SI unit m³/rev; trade units in³/rev, L/rev. A geometric volume; what really leaves is this times an effective
 * bulk density.
 */
public interface VolumePerRevolution extends Quantity<VolumePerRevolution> {}
