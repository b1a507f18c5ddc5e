package org.gritwright.core.calibration;

import javax.measure.Quantity;
import org.gritwright.units.quantity.DischargePerPulse;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerMass;
import org.gritwright.units.quantity.RevolutionsPerMass;

/** The four ways in which a display may keep the same calibration. */
public enum FactorForm {
    /** Mass per revolution, for example 5.23 lb/rev. */
    MASS_PER_REVOLUTION(DischargePerRevolution.class, false, false),
    /** Mass per pulse, for example 0.0523 lb/pulse. */
    MASS_PER_PULSE(DischargePerPulse.class, true, false),
    /** Revolutions per mass, for example 0.1912 rev/lb. */
    REVOLUTIONS_PER_MASS(RevolutionsPerMass.class, false, true),
    /** Pulses per mass, for example 19.12 pulse/lb. */
    PULSES_PER_MASS(PulsesPerMass.class, true, true);

    private final Class<? extends Quantity<?>> kind;
    private final boolean byPulse;
    private final boolean reciprocal;

    FactorForm(Class<? extends Quantity<?>> kind, boolean byPulse, boolean reciprocal) {
        this.kind = kind;
        this.byPulse = byPulse;
        this.reciprocal = reciprocal;
    }

    /**
     * The kind of quantity of this form.
     *
     * @return the kind
     */
    public Class<? extends Quantity<?>> kind() {
        return kind;
    }

    /**
     * Whether the form counts pulses instead of revolutions, so that it needs the sensor's pulses per revolution.
     *
     * @return true for the forms by pulse
     */
    public boolean isByPulse() {
        return byPulse;
    }

    /**
     * Whether the form is a count per mass instead of a mass per count.
     *
     * @return true for the forms per mass
     */
    public boolean isReciprocal() {
        return reciprocal;
    }
}
