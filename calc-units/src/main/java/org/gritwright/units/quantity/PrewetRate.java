package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquid added per mass of dry material.
 *
 * <p>SI unit m³/kg; trade units gal/ton (US gallon per short ton), L/t. The mass is that of the dry solid.
 */
public interface PrewetRate extends Quantity<PrewetRate> {}
