package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Pulses of a flow meter or pump sensor that go with a volume of liquid: what flow meters' data sheets call the K-factor.
 *
 * <p>SI unit pulse/m³; trade units pulse/gal, pulse/L. The reciprocal of {@link VolumePerPulse}.
 */
public interface PulsesPerVolume extends Quantity<PulsesPerVolume> {}
