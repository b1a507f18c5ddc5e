package org.gritwright.core.solution;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * Solutions of several salts poured together. The mass, the water and each salt add up, and that is all that is said: we know no
 * method for volume, density and freezing point of mixed salts, and a hydrometer doesn't tell one salt from another. They have to
 * be measured. Immutable, thread-safe, a value.
 *
 * @param parts one or more, at most 100, of any salts
 */
public record MixedSalts(List<Portion> parts) {
    private static final int MOST = 100;

    /**
     * Copies the list.
     *
     * @throws InvalidInputException if there is no part, or more than 100
     */
    public MixedSalts {
        Require.given(MixedSalts.class, parts);
        parts = List.copyOf(Require.noMoreThan(MOST, "parts of a mixture", parts));
        Require.that(!parts.isEmpty(), "parts of a mixture", "one or more", "none");
    }

    /**
     * A mixture.
     *
     * @param parts what is poured together
     * @return the mixture
     * @throws InvalidInputException as for the full form
     */
    public static MixedSalts of(Portion... parts) {
        return new MixedSalts(List.of(Objects.requireNonNull(parts, "parts")));
    }

    private double kilograms() {
        return parts.stream().mapToDouble(Portion::kilograms).sum();
    }

    private double kilograms(Salt salt) {
        return parts.stream()
                .filter(part -> part.solution().salt() == salt)
                .mapToDouble(Portion::saltKilograms)
                .sum();
    }

    private Quantity<Mass> mass(double kilograms) {
        return Amounts.ofSi(kilograms, parts.get(0).mass().getUnit());
    }

    /**
     * The mass.
     *
     * @return the sum of the parts, in the unit of the first
     */
    public Quantity<Mass> mass() {
        return mass(kilograms());
    }

    /**
     * One salt in it.
     *
     * @param salt the salt
     * @return its mass without crystal water, in the unit of the first part; 0 if no part has it
     */
    public Quantity<Mass> massOf(Salt salt) {
        return mass(kilograms(Objects.requireNonNull(salt, "salt")));
    }

    /**
     * One salt's part of the mass.
     *
     * @param salt the salt
     * @return its mass ÷ that of the mixture, in percent
     */
    public Quantity<Dimensionless> shareOf(Salt salt) {
        return Amounts.ofSi(kilograms(Objects.requireNonNull(salt, "salt")) / kilograms(), SpreadingUnits.PERCENT);
    }

    /**
     * The water in it.
     *
     * @return the mass less all salts, in the unit of the first part
     */
    public Quantity<Mass> water() {
        double salts = parts.stream().mapToDouble(Portion::saltKilograms).sum();
        return mass(kilograms() - salts);
    }
}
