package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Mass of material per area treated, also called dosage.
 *
 * <p>SI unit kg/m²; trade units g/m², lb/1000 ft², oz/yd². The acre is 43 560 square international feet.
 */
public interface ArealApplicationRate extends Quantity<ArealApplicationRate> {}
