package org.gritwright.core.planning;

import java.time.LocalDate;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The equipment to catch with, and the expected discharge. Immutable, thread-safe, a value.
 *
 * @param scale the scale
 * @param weighedOn the day of weighing, as a test weight on the scale holds for its day
 * @param containers the containers
 * @param count how the revolutions become known
 * @param expected the expected discharge per revolution of the sensed or watched shaft, greater than zero
 * @param limits thresholds beyond which a catch is flagged, within which a planned one stays; and the allowances, with {@link
 *     Repeatability#COMMON} where no repeatability is known
 */
public record CatchSetup(
        Scale scale,
        LocalDate weighedOn,
        Containers containers,
        PlannedCount count,
        Quantity<DischargePerRevolution> expected,
        CatchLimits limits) {

    /**
     * Checks that all are given.
     *
     * @throws org.gritwright.units.InvalidInputException if the expected discharge is not greater than zero
     */
    public CatchSetup {
        Require.given(CatchSetup.class, scale, weighedOn, containers, count, expected, limits);
        Require.positive("expected discharge per revolution", DischargePerRevolution.class, expected);
    }

    /**
     * A setup with the common limits and no allowance except the common scatter.
     *
     * @param scale the scale
     * @param weighedOn the day of weighing
     * @param containers the containers
     * @param count how the revolutions become known
     * @param expected the expected discharge per revolution
     * @return the setup
     */
    public static CatchSetup of(
            Scale scale,
            LocalDate weighedOn,
            Containers containers,
            PlannedCount count,
            Quantity<DischargePerRevolution> expected) {
        return new CatchSetup(scale, weighedOn, containers, count, expected, CatchLimits.COMMON);
    }

    /**
     * The same with other allowances.
     *
     * @param other what is known about a catch's errors
     * @return the setup
     */
    public CatchSetup allowing(CatchAllowances other) {
        return new CatchSetup(scale, weighedOn, containers, count, expected, limits.withAllowances(other));
    }

    /**
     * The same for a verification catch after calibration catches: two of those or more show the scatter, each after the
     * first with one degree of freedom more; and moisture doesn't matter, because masses of one
     * material are compared.
     *
     * @param calibrationCatches how many, 0 or more
     * @return the setup
     */
    public CatchSetup afterCalibration(int calibrationCatches) {
        CatchAllowances known = limits.allowances();
        Optional<Repeatability> scatter = calibrationCatches > 1
                ? Optional.of(new Repeatability(
                        scatter().relativeDeviation(), scatter().degreesOfFreedom() + calibrationCatches - 1))
                : known.repeatability();
        return allowing(
                new CatchAllowances(known.greatestSpillage(), known.greatestTransient(), Optional.empty(), scatter));
    }

    /**
     * The same with another scale.
     *
     * @param other the scale
     * @return the setup
     */
    public CatchSetup withScale(Scale other) {
        return new CatchSetup(other, weighedOn, containers, count, expected, limits);
    }

    /**
     * The scatter of a catch that is planned with: what is known about it, or the common one.
     *
     * @return the repeatability
     */
    public Repeatability scatter() {
        return limits.allowances().scatter();
    }

    ErrorSource scatterSource() {
        return limits.allowances().repeatability().isPresent()
                ? ErrorSource.REPEATABILITY
                : ErrorSource.ASSUMED_SCATTER;
    }
}
