package org.gritwright.core.verification;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * What a display showed at the end of a run: a mass or, of a liquid, a volume. Immutable, thread-safe, a value.
 *
 * @param shown the mass or volume shown, greater than zero
 * @param resolution the step in which the display shows it, of the same kind, greater than zero
 */
public record IndicatedAmount(Quantity<?> shown, Quantity<?> resolution) {
    /**
     * Checks the values.
     *
     * @throws InvalidInputException if they are neither masses nor volumes, or not of one kind, or not greater than zero
     */
    public IndicatedAmount {
        Require.given(IndicatedAmount.class, shown, resolution);
        if (isVolume(shown)) {
            Require.positive("indicated volume", Volume.class, shown.asType(Volume.class));
            Require.positive("resolution of the indicated volume", Volume.class, volume(resolution));
        } else {
            Require.positive("indicated mass", Mass.class, mass("indicated mass", shown));
            Require.positive(
                    "resolution of the indicated mass",
                    Mass.class,
                    mass("resolution of the indicated mass", resolution));
        }
    }

    private static boolean isVolume(Quantity<?> amount) {
        return UnitSymbol.of(amount.getUnit()).kind().equals(Volume.class);
    }

    private static Quantity<Volume> volume(Quantity<?> given) {
        if (!isVolume(given)) {
            throw new InvalidInputException(
                    "resolution of the indicated volume", "a volume, as what is shown", Amounts.format(given));
        }
        return given.asType(Volume.class);
    }

    private static Quantity<Mass> mass(String field, Quantity<?> given) {
        if (!UnitSymbol.of(given.getUnit()).kind().equals(Mass.class)) {
            throw new InvalidInputException(field, "a mass, or a volume of a liquid", Amounts.format(given));
        }
        return given.asType(Mass.class);
    }

    /**
     * Whether a volume was shown.
     *
     * @return true for a volume, false for a mass
     */
    public boolean isVolume() {
        return isVolume(shown);
    }

    /**
     * The step in relation to what was shown.
     *
     * @return resolution ÷ shown
     */
    public double relativeResolution() {
        return si(resolution) / si(shown);
    }

    /** An amount in the unit of another of its kind. */
    static Quantity<?> like(Quantity<?> other, Quantity<?> amount) {
        return Amounts.ofSi(si(amount), other.getUnit());
    }

    /** Kilograms or cubic meters. */
    static double si(Quantity<?> amount) {
        return isVolume(amount)
                ? Amounts.si(Volume.class, amount.asType(Volume.class))
                : Amounts.si(Mass.class, amount.asType(Mass.class));
    }
}
