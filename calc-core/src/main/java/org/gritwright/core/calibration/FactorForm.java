package org.gritwright.core.calibration;

import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerPulse;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerMass;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.RevolutionsPerMass;
import org.gritwright.units.quantity.RevolutionsPerVolume;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/** The ways in which a display may keep the same calibration: four by mass, and of a liquid four by volume. */
public enum FactorForm {
    /** Mass per revolution, for example 27.24 lb/rev. */
    MASS_PER_REVOLUTION(DischargePerRevolution.class, false, false, false),
    /** Mass per pulse, for example 0.454 lb/pulse. */
    MASS_PER_PULSE(DischargePerPulse.class, true, false, false),
    /** Revolutions per mass, for example 0.0367 rev/lb. */
    REVOLUTIONS_PER_MASS(RevolutionsPerMass.class, false, true, false),
    /** Pulses per mass, for example 2.203 pulse/lb. */
    PULSES_PER_MASS(PulsesPerMass.class, true, true, false),
    /** Volume per revolution, for example 0.0731 gal/rev. */
    VOLUME_PER_REVOLUTION(VolumePerRevolution.class, false, false, true),
    /** Volume per pulse, for example 3.15 mL/pulse. */
    VOLUME_PER_PULSE(VolumePerPulse.class, true, false, true),
    /** Revolutions per volume, for example 13.68 rev/gal. */
    REVOLUTIONS_PER_VOLUME(RevolutionsPerVolume.class, false, true, true),
    /** Pulses per volume, the K factor of a flow meter, for example 1200 pulse/gal. */
    PULSES_PER_VOLUME(PulsesPerVolume.class, true, true, true);

    private final Class<? extends Quantity<?>> kind;
    private final boolean byPulse;
    private final boolean reciprocal;
    private final boolean byVolume;

    FactorForm(Class<? extends Quantity<?>> kind, boolean byPulse, boolean reciprocal, boolean byVolume) {
        this.kind = kind;
        this.byPulse = byPulse;
        this.reciprocal = reciprocal;
        this.byVolume = byVolume;
    }

    /** The form of a value, which its unit says. */
    static FactorForm of(Quantity<?> value) {
        Class<?> kind = UnitSymbol.of(value.getUnit()).kind();
        for (FactorForm form : values()) {
            if (form.kind.equals(kind)) {
                return form;
            }
        }
        throw new InvalidInputException(
                "calibration",
                "a mass or volume per revolution or pulse, or revolutions or pulses per mass or volume",
                Amounts.format(value));
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
     * Whether the form is by volume, so that it is for liquids.
     *
     * @return true for the forms with a volume
     */
    public boolean isByVolume() {
        return byVolume;
    }

    /**
     * Whether the form is a count per mass or volume instead of a mass or volume per count.
     *
     * @return true for the forms per mass or volume
     */
    public boolean isReciprocal() {
        return reciprocal;
    }
}
