package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquid per area treated.
 *
 * <p>SI unit m³/m²; trade units mL/m², gal/1000 ft². Its dimension is that of a length. Raw JSR 385 code therefore
 * can't tell the two apart; the parser, the factories and the compiled conversions of this library take the kind
 * and can.
 */
public interface LiquidArealApplicationRate extends Quantity<LiquidArealApplicationRate> {}
