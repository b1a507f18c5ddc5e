package org.gritwright.core.lateral;

import static org.gritwright.core.finding.Argument.number;

import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * What the pans account for beside what was asked of the truck: mass is conserved, so that a difference lies beyond the row,
 * bounced out of the pans, or was never laid. Immutable, thread-safe, a value.
 *
 * @param asked the rate that the truck was to lay, greater than zero
 * @param accounted the rate by the pans, integrated across the road
 */
public record Recovery(Quantity<ApplicationRate> asked, Measured<ApplicationRate> accounted) {
    /** A tenth may be missing or too much before anybody is told (common practice, no source). */
    private static final double LIMIT = 0.1;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the rate that was asked for is not greater than zero
     */
    public Recovery {
        Require.given(Recovery.class, asked, accounted);
        Require.positive("rate asked for", ApplicationRate.class, asked);
    }

    /**
     * The recovered share.
     *
     * @return by the pans ÷ asked, in percent
     */
    public Quantity<Dimensionless> share() {
        return Amounts.ofSi(ratio(), SpreadingUnits.PERCENT);
    }

    private double ratio() {
        return Amounts.si(ApplicationRate.class, accounted.value()) / Amounts.si(ApplicationRate.class, asked);
    }

    /**
     * What a person should know.
     *
     * @return a finding if the share is more than a tenth from 1
     */
    public List<Finding> findings() {
        return Comparison.isAbove(Math.abs(ratio() - 1), LIMIT, 1)
                ? List.of(Finding.of(
                        FindingCode.PAN_RECOVERY_OFF,
                        Map.of(
                                "accounted", number(accounted.value()),
                                "asked", number(asked),
                                "share", number(share()))))
                : List.of();
    }
}
