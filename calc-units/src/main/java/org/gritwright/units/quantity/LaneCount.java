package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * A number of traffic lanes treated side by side in one pass.
 *
 * <p>SI unit lane; trade units lane. Counted; a dimension of its own. It need not be whole: a pass may cover a
 * lane and a half.
 */
public interface LaneCount extends Quantity<LaneCount> {}
