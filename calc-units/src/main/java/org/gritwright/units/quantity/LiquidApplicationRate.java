package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquid per distance the truck travels.
 *
 * <p>SI unit m³/m; trade units gal/mi, L/km. Its dimension is that of an area. Raw JSR 385 code therefore can't
 * tell the two apart; the parser, the factories and the compiled conversions of this library take the kind and
 * can.
 */
public interface LiquidApplicationRate extends Quantity<LiquidApplicationRate> {}
