package org.gritwright.core.boom;

import java.io.Serializable;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * A boom whose rate is kept by pressure alone, set up with one liquid and running another: at the same pressure it delivers √(ρ₁ ÷ ρ₂)
 * of the volume. Set up with water and run with 23.3 % sodium chloride brine (specific gravity 1.1779) that is 7.9 % less. A flow
 * meter in a closed loop makes up for it with more pressure, unless the meter itself answers to density. Immutable, thread-safe, a
 * value.
 *
 * @param setUpWith the density of the liquid that the pressure was set with, greater than zero
 * @param runsWith the density of the liquid that runs now, greater than zero
 */
public record PressureSetUp(Quantity<BulkDensity> setUpWith, Quantity<BulkDensity> runsWith) implements Serializable {
    /**
     * Checks the densities.
     *
     * @throws org.gritwright.units.InvalidInputException if one is not greater than zero
     */
    public PressureSetUp {
        Require.given(PressureSetUp.class, setUpWith, runsWith);
        Nozzle.density("density of the liquid at set-up", setUpWith);
        Nozzle.density("density of the liquid", runsWith);
    }

    /**
     * How much more or less volume it delivers than it was set up for: √(ρ₁ ÷ ρ₂) − 1.
     *
     * @return in percent, negative for less
     */
    public Quantity<Dimensionless> error() {
        return Amounts.ofSi(errorRatio(), SpreadingUnits.PERCENT);
    }

    private double errorRatio() {
        return Math.sqrt(lighterBy()) - 1;
    }

    /**
     * By what the pressure is multiplied so that it delivers the volume that it was set up for: ρ₂ ÷ ρ₁. The nozzles must be made for
     * that pressure.
     *
     * @return a ratio, above 1 for a heavier liquid
     */
    public Quantity<Dimensionless> pressureFactor() {
        return Amounts.of(1 / lighterBy(), SpreadingUnits.ONE);
    }

    private double lighterBy() {
        return Amounts.si(BulkDensity.class, setUpWith) / Amounts.si(BulkDensity.class, runsWith);
    }

    /**
     * What a person should know.
     *
     * @param tolerance how far the rate may be off, such as {@link NozzleCatches#OF_RATE}
     * @return a finding if the density alone takes the rate farther off, else none
     */
    public List<Finding> findings(Tolerance tolerance) {
        return tolerance.acceptsRatio(errorRatio())
                ? List.of()
                : List.of(Finding.of(
                        FindingCode.BOOM_LIQUID_CHANGED,
                        Map.of(
                                "setUp", Argument.number(setUpWith),
                                "running", Argument.number(runsWith),
                                "error", Argument.number(error()))));
    }
}
