package org.gritwright.core.solution;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Temperature;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * The solution that freezes last of all, as one source gives it. A weaker one freezes warmer, and so does a stronger one. Immutable,
 * thread-safe, a value.
 *
 * @param share the salt's part of the mass
 * @param temperature where it freezes
 * @param source who says so
 */
public record Eutectic(Quantity<Dimensionless> share, Quantity<Temperature> temperature, String source)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the share is not greater than 0 and below 100 %, or the source blank
     */
    public Eutectic {
        Require.given(Eutectic.class, share, temperature, source);
        Require.fraction("share of a eutectic", share);
        Require.notNegative("temperature of a eutectic", Temperature.class, temperature);
        Require.text("source of a eutectic", source);
    }

    static Eutectic of(double percent, double celsius, String source) {
        return new Eutectic(
                Amounts.of(percent, SpreadingUnits.PERCENT), Amounts.of(celsius, SpreadingUnits.CELSIUS), source);
    }
}
