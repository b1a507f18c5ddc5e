package org.gritwright.core.solution;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * Solutions of one salt poured together, water among them ({@link Solution#water}). Masses add, and so does the salt; volumes don't.
 * For several salts there is {@link MixedSalts}. Immutable, thread-safe, a value.
 *
 * @param parts one or more, at most 100, all of one salt
 */
public record Mixture(List<Portion> parts) {
    private static final int MOST = 100;

    /**
     * Copies the list and compares the salts.
     *
     * @throws InvalidInputException if there is no part, more than 100, or another salt among them
     */
    public Mixture {
        Require.given(Mixture.class, parts);
        parts = List.copyOf(Require.noMoreThan(MOST, "parts of a mixture", parts));
        Require.that(!parts.isEmpty(), "parts of a mixture", "one or more", "none");
        Salt salt = parts.get(0).solution().salt();
        parts.forEach(part -> Require.that(
                part.solution().salt() == salt,
                "salt of a mixture",
                salt.words() + " in all parts, since of mixed salts neither density nor freezing point is computed",
                part.solution().salt().words()));
    }

    /**
     * A mixture.
     *
     * @param parts what is poured together
     * @return the mixture
     * @throws InvalidInputException as for the full form
     */
    public static Mixture of(Portion... parts) {
        return new Mixture(List.of(Objects.requireNonNull(parts, "parts")));
    }

    private double kilograms() {
        return parts.stream().mapToDouble(Portion::kilograms).sum();
    }

    /**
     * What comes out.
     *
     * @return all of the mass and all of the salt, in the unit of the first part; its share is as uncertain as the parts' shares, which
     *     are taken as independent
     */
    public Portion result() {
        double whole = kilograms();
        Contributions<Dimensionless> share = new Contributions<>(SpreadingUnits.PERCENT);
        for (int i = 0; i < parts.size(); i++) {
            Portion part = parts.get(i);
            share.add(
                    "share of part " + (i + 1),
                    Dimensionless.class,
                    part.solution().share(),
                    part.kilograms() / whole);
        }
        double salt = parts.stream().mapToDouble(Portion::saltKilograms).sum();
        Portion first = parts.get(0);
        return new Portion(
                new Solution(first.solution().salt(), share.of(salt / whole)),
                Amounts.ofSi(whole, first.mass().getUnit()));
    }

    /**
     * By how much the volumes of the parts are more than that of the mixture.
     *
     * @param temperature of the parts and of the mixture
     * @param unit the unit that is wanted
     * @return the difference; below zero if the mixture takes more room. It is small: the limits of the published densities, which
     *     hold for parts and mixture alike, are larger than that of most
     * @throws InvalidInputException if a density isn't known
     */
    public Quantity<Volume> shrinkage(Quantity<Temperature> temperature, Unit<Volume> unit) {
        Objects.requireNonNull(unit, "unit");
        double apart = parts.stream()
                .mapToDouble(part -> cubicMeters(part, temperature))
                .sum();
        return Amounts.ofSi(apart - cubicMeters(result(), temperature), unit);
    }

    private static double cubicMeters(Portion part, Quantity<Temperature> temperature) {
        Solution solution = part.solution();
        return part.kilograms() / solution.kilogramsPerCubicMeter(solution.celsius(temperature));
    }
}
