package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquid per lane distance.
 *
 * <p>SI unit m³/(lane·m); trade units gal/lane-mi, L/lane-km. Anti-icing tables that state mass of dry chemical
 * per lane distance are another kind, {@link LaneApplicationRate}.
 */
public interface LiquidLaneApplicationRate extends Quantity<LiquidLaneApplicationRate> {}
