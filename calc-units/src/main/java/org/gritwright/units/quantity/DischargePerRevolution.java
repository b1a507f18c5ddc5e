package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass leaving the spreader per revolution of the sensed shaft.
 *
 * <p>SI unit kg/rev; trade units lb/rev, kg/rev. One of the four forms in which a display may keep a calibration.
 */
public interface DischargePerRevolution extends Quantity<DischargePerRevolution> {}
