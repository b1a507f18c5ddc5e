package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass of loose material per volume it takes up, voids included.
 *
 * <p>SI unit kg/m³; trade units lb/ft³, t/m³. Also used for the density of a liquid.
 */
public interface BulkDensity extends Quantity<BulkDensity> {}
