package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * A number of shaft revolutions, whole or not.
 *
 * <p>SI unit rev; trade units rev. Counted; a dimension of its own.
 */
public interface RevolutionCount extends Quantity<RevolutionCount> {}
