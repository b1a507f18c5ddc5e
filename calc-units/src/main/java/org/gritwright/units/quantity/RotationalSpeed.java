package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Revolutions of a shaft per time.
 *
 * <p>SI unit rev/s; trade units rev/min. A revolution is counted, not an angle and not the number one: revolutions
 * per minute can't pass for hertz.
 */
public interface RotationalSpeed extends Quantity<RotationalSpeed> {}
