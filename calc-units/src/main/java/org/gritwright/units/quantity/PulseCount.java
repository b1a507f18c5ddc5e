package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * A number of sensor pulses.
 *
 * <p>SI unit pulse; trade units pulse. Counted; a dimension of its own.
 */
public interface PulseCount extends Quantity<PulseCount> {}
