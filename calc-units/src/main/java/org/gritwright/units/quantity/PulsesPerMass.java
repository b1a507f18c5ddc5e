package org.gritwright.units.quantity;

import javax.measure.Quantity;

/**
 * Pulses of the shaft sensor that go with a discharged mass.
 *
 * <p>SI unit pulse/kg; trade units pulse/lb, pulse/kg. The reciprocal of {@link DischargePerPulse}.
 */
public interface PulsesPerMass extends Quantity<PulsesPerMass> {}
