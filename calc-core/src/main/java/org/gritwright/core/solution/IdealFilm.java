package org.gritwright.core.solution;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ArealApplicationRate;

/**
 * A solution that has taken up a film of water, or has melted all of a film of ice: how cold what is left could get before it
 * freezes. This is an ideal limit out of the phase diagram and NO ADVICE on how much to apply: it knows no traffic, no run-off, no
 * wind, no time for melting, no sun and no cold that the melting itself makes. A road freezes sooner. Immutable, thread-safe, a
 * value.
 *
 * @param applied the solution as it was applied
 * @param rate its mass per area of road, greater than zero
 * @param film the mass of water or ice per area of road, 0 or more: a film 0.1 mm thick has about 100 g/m²
 */
public record IdealFilm(Solution applied, Quantity<ArealApplicationRate> rate, Quantity<ArealApplicationRate> film) {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public IdealFilm {
        Require.given(IdealFilm.class, applied, rate, film);
        Require.positive("rate of the solution", ArealApplicationRate.class, rate);
        Require.notNegative("film of water or ice", ArealApplicationRate.class, film);
    }

    /**
     * What the solution has become.
     *
     * @return all of the salt in all of the water; the masses are taken as exact
     */
    public Solution diluted() {
        double own = Amounts.si(ArealApplicationRate.class, rate);
        double part = own / (own + Amounts.si(ArealApplicationRate.class, film));
        return new Solution(
                applied.salt(),
                new Contributions<>(SpreadingUnits.PERCENT)
                        .add(Solution.field(applied.salt()), Dimensionless.class, applied.share(), part)
                        .of(part * applied.ratio()));
    }

    /**
     * Where that would begin to freeze, ideally.
     *
     * @return the freezing point with its side
     * @throws org.gritwright.units.InvalidInputException if it isn't known
     */
    public FreezingPoint idealFreezingPoint() {
        return diluted().freezingPoint();
    }
}
