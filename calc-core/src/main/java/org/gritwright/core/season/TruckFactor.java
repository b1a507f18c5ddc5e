package org.gritwright.core.season;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.check.Require;

/**
 * What a truck really takes for what it indicates, adjusted. Immutable, thread-safe, a value.
 *
 * @param truck the truck's id
 * @param factor true ÷ indicated; absent where nothing determines it
 * @param verification how much of the factor is that of the verification, as a share of 1
 * @param loads how much follows from its weighed loads
 * @param piles how much follows from the piles, through them also from all other trucks
 */
public record TruckFactor(
        String truck, Optional<Measured<Dimensionless>> factor, double verification, double loads, double piles)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    /**
     * Checks the shares.
     *
     * @throws org.gritwright.units.InvalidInputException if one isn't finite
     */
    public TruckFactor {
        Require.given(TruckFactor.class, truck, factor);
        Require.finite("share of the verification", verification);
        Require.finite("share of the loads", loads);
        Require.finite("share of the piles", piles);
    }

    /**
     * The calibration error that belongs to the factor: indicated ÷ true − 1, above zero for a truck that over-reports.
     *
     * @return the error, in percent; absent where the factor is, or isn't above zero
     */
    public Optional<Measured<Dimensionless>> calibrationError() {
        return factor.filter(one -> Amounts.si(Dimensionless.class, one.value()) > 0)
                .map(one -> {
                    double number = Amounts.si(Dimensionless.class, one.value());
                    double u = Amounts.si(
                            Dimensionless.class, one.standardUncertainty().orElseThrow());
                    return Words.percent(1 / number - 1, u / (number * number));
                });
    }
}
