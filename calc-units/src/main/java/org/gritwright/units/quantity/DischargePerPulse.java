package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass leaving the spreader per pulse of the shaft sensor.
 *
 * <p>SI unit kg/pulse; trade units lb/pulse, g/pulse. One of the four forms in which a display may keep a
 * calibration.
 */
public interface DischargePerPulse extends Quantity<DischargePerPulse> {}
