package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Revolutions of the sensed shaft that discharge a mass.
 *
 * <p>SI unit rev/kg; trade units rev/lb, rev/kg. The reciprocal of {@link DischargePerRevolution}.
 */
public interface RevolutionsPerMass extends Quantity<RevolutionsPerMass> {}
