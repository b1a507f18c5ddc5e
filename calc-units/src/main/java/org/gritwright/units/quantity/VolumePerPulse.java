package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Volume of liquid that goes with one pulse of a flow meter or pump sensor.
 *
 * <p>SI unit m³/pulse; trade units gal/pulse, mL/pulse. The reciprocal of {@link PulsesPerVolume}.
 */
public interface VolumePerPulse extends Quantity<VolumePerPulse> {}
