package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume that a conveyor sweeps, or a pump moves, per revolution of its shaft.
 *
 * <p>SI unit m³/rev; trade units in³/rev, L/rev. Of a conveyor a geometric volume; the mass that really leaves is this
 * times an effective bulk density.
 */
public interface VolumePerRevolution extends Quantity<VolumePerRevolution> {}
