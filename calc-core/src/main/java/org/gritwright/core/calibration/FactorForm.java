package org.gritwright.core.calibration;

import java.util.Arrays;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerPulse;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulsesPerMass;
import org.gritwright.units.quantity.RevolutionsPerMass;

/** The four ways in which a display may keep the same calibration. */
public enum FactorForm {
    /** Mass per revolution, for example 27.24 lb/rev. */
    MASS_PER_REVOLUTION(DischargePerRevolution.class, false, false),
    /** Mass per pulse, for example 0.454 lb/pulse. */
    MASS_PER_PULSE(DischargePerPulse.class, true, false),
    /** Revolutions per mass, for example 0.0367 rev/lb. */
    REVOLUTIONS_PER_MASS(RevolutionsPerMass.class, false, true),
    /** Pulses per mass, for example 2.203 pulse/lb. */
    PULSES_PER_MASS(PulsesPerMass.class, true, true);

    private final Class<? extends Quantity<?>> kind;
    private final boolean byPulse;
    private final boolean reciprocal;

    FactorForm(Class<? extends Quantity<?>> kind, boolean byPulse, boolean reciprocal) {
        this.kind = kind;
        this.byPulse = byPulse;
        this.reciprocal = reciprocal;
    }

    /** The form of a value, which its unit says. */
    static FactorForm of(Quantity<?> value) {
        Class<?> kind = UnitSymbol.of(value.getUnit()).kind();
        return Arrays.stream(values())
                .filter(form -> form.kind.equals(kind))
                .findFirst()
                .orElseThrow(() -> new InvalidInputException(
                        "calibration",
                        "a mass per revolution or pulse, or revolutions or pulses per mass",
                        Amounts.format(value)));
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
