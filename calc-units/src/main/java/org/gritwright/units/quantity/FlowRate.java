package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume discharged per time.
 *
 * <p>SI unit m³/s; trade units gal/min, L/min. Volume flow of a liquid.
 */
public interface FlowRate extends Quantity<FlowRate> {}
