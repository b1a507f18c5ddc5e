package org.gritwright.core.season;

import java.io.Serializable;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * A mass as it was weighed, surveyed or estimated. Immutable, thread-safe, a value. That it isn't negative is checked where it belongs to
 * something that has a name.
 *
 * @param mass as it was written down
 * @param standardUncertainty of this mass alone, without what it shares with others; 0 where it is exact, as that of an empty yard
 * @param common the error that it shares with others, if any
 */
public record StatedMass(Quantity<Mass> mass, Quantity<Mass> standardUncertainty, Optional<CommonError> common)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final double SURVEY = 0.02;

    /**
     * Checks the uncertainty.
     *
     * @throws org.gritwright.units.InvalidInputException if it is negative, or 0 where an error is shared
     */
    public StatedMass {
        Require.given(StatedMass.class, mass, standardUncertainty, common);
        Amounts.si(Mass.class, mass);
        Require.notNegative("standard uncertainty of a mass", Mass.class, standardUncertainty);
        if (common.isPresent() && Amounts.si(Mass.class, mass) != 0) {
            Require.positive("standard uncertainty of a mass that shares an error", Mass.class, standardUncertainty);
        }
    }

    /**
     * A mass that shares no error.
     *
     * @param mass as it was written down
     * @param standardUncertainty 0 or more
     * @return the mass
     * @throws org.gritwright.units.InvalidInputException if the uncertainty is negative
     */
    public static StatedMass of(Quantity<Mass> mass, Quantity<Mass> standardUncertainty) {
        return new StatedMass(mass, standardUncertainty, Optional.empty());
    }

    /**
     * A pile whose volume was surveyed, where nothing better is known: a standard uncertainty of 2 % of the mass. Joint Transportation
     * Research Program (Purdue University), report 1832: volumes of salt piles, surveyed by laser, are good to 1 % to 3 %; 2 % is
     * the middle of it. A density that isn't well known comes on top: {@link #sharing}.
     *
     * @param mass as it was computed from the volume
     * @return the mass
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public static StatedMass surveyed(Quantity<Mass> mass) {
        Objects.requireNonNull(mass, "mass");
        return of(mass, Amounts.of(SURVEY * mass.getValue().doubleValue(), mass.getUnit()));
    }

    /**
     * The same mass with an error that others share.
     *
     * @param error the scale's, or the density's
     * @return the changed copy
     * @throws org.gritwright.units.InvalidInputException if the mass has no uncertainty of its own
     */
    public StatedMass sharing(CommonError error) {
        return new StatedMass(mass, standardUncertainty, Optional.of(error));
    }

    double kilograms() {
        return Amounts.si(Mass.class, mass);
    }

    double uncertainty() {
        return Amounts.si(Mass.class, standardUncertainty);
    }

    /** Of this mass with what it shares. */
    double wholeUncertainty() {
        return Math.hypot(
                uncertainty(), common.map(error -> error.ratio() * kilograms()).orElse(0.0));
    }

    StatedMass requireNotNegative(String field) {
        Require.notNegative(field, Mass.class, mass);
        return this;
    }
}
