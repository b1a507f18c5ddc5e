package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass of material per distance the truck travels, whatever number of lanes is treated in the pass.
 *
 * <p>SI unit kg/m; trade units lb/mi, kg/km. A rate per lane distance is a different kind, {@link
 * LaneApplicationRate}: the number of lanes treated in the pass lies between them.
 */
public interface ApplicationRate extends Quantity<ApplicationRate> {}
