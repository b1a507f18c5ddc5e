package org.gritwright.core.planning;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.VolumePerPulse;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * The equipment to catch with, and the expected discharge. Immutable, thread-safe, a value.
 *
 * @param amount how the amount becomes known, and how much may be caught
 * @param count how the revolutions become known
 * @param expected the expected discharge per revolution of the sensed or watched shaft, greater than zero: a mass or, of a liquid, a
 *     volume; of a flow meter the volume per pulse, as its pulses stand in the place of revolutions
 * @param limits thresholds beyond which a catch is flagged, within which a planned one stays; and the allowances, with {@link
 *     Repeatability#COMMON} where no repeatability is known
 */
public record CatchSetup(PlannedAmount amount, PlannedCount count, Quantity<?> expected, CatchLimits limits) {
    private static final Set<Class<?>> VOLUMES = Set.of(VolumePerRevolution.class, VolumePerPulse.class);

    /**
     * Checks that all are given.
     *
     * @throws InvalidInputException if the expected discharge is not greater than zero, or a mass where a liquid is caught or the
     *     other way round
     */
    public CatchSetup {
        Require.given(CatchSetup.class, amount, count, expected, limits);
        Class<?> kind = UnitSymbol.of(expected.getUnit()).kind();
        boolean isVolume = VOLUMES.contains(kind);
        if (isVolume != amount.isOfLiquid() || !(isVolume || kind.equals(DischargePerRevolution.class))) {
            throw new InvalidInputException(
                    "expected discharge per revolution",
                    amount.isOfLiquid() ? "a volume, as a liquid is caught" : "a mass, as grains are caught",
                    Amounts.format(expected));
        }
        Require.that(
                siOf(expected) > 0 && Double.isFinite(siOf(expected)),
                "expected discharge per revolution",
                "greater than 0",
                expected);
    }

    /**
     * A setup of grains that are weighed.
     *
     * @param scale the scale
     * @param weighedOn the day of weighing
     * @param containers the containers
     * @param count how the revolutions become known
     * @param expected the expected discharge per revolution
     * @param limits as of the record
     * @throws InvalidInputException if the expected discharge is not greater than zero
     */
    public CatchSetup(
            Scale scale,
            LocalDate weighedOn,
            Containers containers,
            PlannedCount count,
            Quantity<DischargePerRevolution> expected,
            CatchLimits limits) {
        this(new PlannedAmount.Weighed(scale, weighedOn, containers), count, expected, limits);
    }

    /**
     * A setup at a calibration point.
     *
     * @param point the point
     * @param amount how the amount becomes known
     * @param count how the revolutions become known
     * @param expected the expected discharge per revolution, from a calibration in force or {@link PredictedDischarge}; of a liquid its
     *     mass at the density that the material is stated with, which becomes a volume here
     * @param limits as of the record
     * @return the setup
     * @throws InvalidInputException if the amount doesn't go with the material, or the expected discharge is not greater than zero
     */
    public static CatchSetup at(
            CalibrationPoint point,
            PlannedAmount amount,
            PlannedCount count,
            Quantity<DischargePerRevolution> expected,
            CatchLimits limits) {
        Material material = Objects.requireNonNull(point, "point").material();
        Objects.requireNonNull(expected, "expected");
        return new CatchSetup(
                amount,
                count,
                material.isLiquid()
                        ? Amounts.ofSi(
                                siOf(expected) / material.kilogramsPerAmount(),
                                UnitSymbol.tradeUnit(VolumePerRevolution.class, expected))
                        : expected,
                limits);
    }

    /**
     * A setup with the common limits and no allowance except the common scatter.
     *
     * @param amount how the amount becomes known
     * @param count how the revolutions become known
     * @param expected the expected discharge per revolution or, of a flow meter, per pulse
     * @return the setup
     * @throws InvalidInputException as for the record
     */
    public static CatchSetup of(PlannedAmount amount, PlannedCount count, Quantity<?> expected) {
        return new CatchSetup(amount, count, expected, CatchLimits.COMMON);
    }

    /**
     * A setup of grains that are weighed, with the common limits and no allowance except the common scatter.
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
        return new CatchSetup(amount, count, expected, limits.withAllowances(other));
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
     * The same with the amount measured otherwise.
     *
     * @param other how the amount becomes known
     * @return the setup
     * @throws InvalidInputException if the expected discharge is a mass and the other is for liquids, or the other way round
     */
    public CatchSetup with(PlannedAmount other) {
        return new CatchSetup(Objects.requireNonNull(other, "other"), count, expected, limits);
    }

    /**
     * The scatter of a catch that is planned with: what is known about it, or the common one.
     *
     * @return the repeatability
     */
    public Repeatability scatter() {
        return limits.allowances().scatter();
    }

    /** Kilograms or, of a liquid, cubic meters. */
    double expectedSi() {
        return siOf(expected);
    }

    /** Of a kind that was checked, or will be. */
    @SuppressWarnings({"unchecked", "rawtypes"})
    private static double siOf(Quantity<?> quantity) {
        return Amounts.si((Class) UnitSymbol.of(quantity.getUnit()).kind(), (Quantity) quantity);
    }

    /** A quantity of what counts, in the unit system of the expected discharge. */
    Quantity<?> amount(double si) {
        return amount.isOfLiquid()
                ? Amounts.ofSi(si, UnitSymbol.tradeUnit(Volume.class, expected))
                : Amounts.ofSi(si, UnitSymbol.tradeUnit(Mass.class, expected));
    }

    ErrorSource scatterSource() {
        return limits.allowances().repeatability().isPresent()
                ? ErrorSource.REPEATABILITY
                : ErrorSource.ASSUMED_SCATTER;
    }
}
