package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Width of one traffic lane: length per lane.
 *
 * <p>SI unit m/lane; trade units ft/lane. With it a rate per lane distance becomes a rate per area.
 */
public interface LaneWidth extends Quantity<LaneWidth> {}
