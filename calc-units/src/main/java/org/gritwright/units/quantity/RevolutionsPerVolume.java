package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Revolutions of a pump's shaft that go with a volume of liquid.
 *
 * <p>SI unit rev/m³; trade units rev/gal, rev/L. The reciprocal of {@link VolumePerRevolution}.
 */
public interface RevolutionsPerVolume extends Quantity<RevolutionsPerVolume> {}
