package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass discharged per time.
 *
 * <p>SI unit kg/s; trade units lb/min, kg/min. Mass flow.
 */
public interface DischargeRate extends Quantity<DischargeRate> {}
