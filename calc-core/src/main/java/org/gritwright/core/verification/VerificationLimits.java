package org.gritwright.core.verification;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * Thresholds beyond which a verification is flagged. Immutable, thread-safe, a value.
 *
 * @param catches limits that hold for any catch
 * @param greatestCorrection beyond this calibration error a fault is to be found before anything is corrected
 */
public record VerificationLimits(CatchLimits catches, Quantity<Dimensionless> greatestCorrection) {

    /** The common catch limits, and no correction beyond 15 % (common practice, no source). */
    public static final VerificationLimits COMMON =
            new VerificationLimits(CatchLimits.COMMON, Amounts.of(15, SpreadingUnits.PERCENT));

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the greatest correction is not greater than zero
     */
    public VerificationLimits {
        Objects.requireNonNull(catches, "catches");
        Require.positive("greatest correction", Dimensionless.class, greatestCorrection);
    }
}
