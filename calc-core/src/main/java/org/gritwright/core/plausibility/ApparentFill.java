package org.gritwright.core.plausibility;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.several;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slip;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;

/**
 * The effective bulk density of the discharge over the loose bulk density of the material: m ÷ (V · ρ), with the mass m
 * and the swept volume V per revolution.
 *
 * <p>It is the check that no scale and no counter can give: a wrong gate reading or pulse count shows as a fill that
 * can't be. Immutable, thread-safe, a value.
 *
 * <p>It is as uncertain as the discharge is, and counts as unusual or impossible only where it is so by more than that.
 *
 * @param metering what is filled: of a pump the fill is its volumetric efficiency, of a flow meter the volume of a pulse over the
 *     volume it is rated for
 * @param value the apparent fill, greater than zero
 * @param relativeUncertainty the relative expanded uncertainty (95 %) of the discharge, 0 or more
 * @param limits the limits it was compared with
 * @param slips if it is unusual, every single slip of input that would explain it; none is picked
 */
public record ApparentFill(
        Metering.Kind metering, double value, double relativeUncertainty, FillLimits limits, List<Slip> slips) {
    /**
     * Copies the list.
     *
     * @throws org.gritwright.units.InvalidInputException if the fill is not finite and greater than zero
     */
    public ApparentFill {
        Require.given(ApparentFill.class, metering, limits, slips);
        Require.notNegative("relative uncertainty of the apparent fill", relativeUncertainty);
        Require.that(value > 0 && Double.isFinite(value), "apparent fill", "finite and greater than 0", value);
        slips = List.copyOf(slips);
    }

    /**
     * The apparent fill of a discharge.
     *
     * @param kilogramsPerRevolution the discharge per revolution of the sensed shaft, greater than zero
     * @param relativeUncertainty its relative expanded uncertainty (95 %)
     * @param inPulses whether the revolutions came from pulses, so that a wrong number of pulses per revolution may
     *     explain an unusual fill
     * @param point the calibration point
     * @param callersLimits the caller's limits; none for those of the conveyor's type
     * @return the apparent fill
     * @throws org.gritwright.units.InvalidInputException if the discharge is not greater than zero
     */
    public static ApparentFill of(
            double kilogramsPerRevolution,
            double relativeUncertainty,
            boolean inPulses,
            CalibrationPoint point,
            Optional<FillLimits> callersLimits) {
        FillLimits limits = callersLimits.orElseGet(point.metering()::fillLimits);
        double looseVolume = kilogramsPerRevolution
                / Amounts.si(BulkDensity.class, point.material().looseBulkDensity());
        double fill = looseVolume / point.metering().sweptCubicMetersPerRevolution(point.setting());
        List<Slip> slips = limits.isUsual(nearest(fill, relativeUncertainty, limits))
                ? List.of()
                : FillSlips.search(looseVolume, fill, inPulses, point, limits);
        return new ApparentFill(point.metering().kind(), fill, relativeUncertainty, limits, slips);
    }

    /** The fill that is nearest to the usual ones and still explained by the uncertainty. */
    private static double nearest(double fill, double relativeUncertainty, FillLimits limits) {
        if (fill > limits.highestUsual()) {
            return Math.max(limits.highestUsual(), fill / (1 + relativeUncertainty));
        }
        return fill < limits.lowestUsual() ? Math.min(limits.lowestUsual(), fill * (1 + relativeUncertainty)) : fill;
    }

    /**
     * The apparent fill as a quantity.
     *
     * @return a ratio
     */
    public Quantity<Dimensionless> quantity() {
        return Amounts.of(value, SpreadingUnits.ONE);
    }

    private FindingCode implausible() {
        return switch (metering) {
            case CONVEYOR -> FindingCode.FILL_IMPLAUSIBLE;
            case PUMP -> FindingCode.PUMPED_VOLUME_IMPLAUSIBLE;
            case FLOW_METER -> FindingCode.METERED_VOLUME_IMPLAUSIBLE;
        };
    }

    private FindingCode impossible() {
        return switch (metering) {
            case CONVEYOR -> FindingCode.FILL_IMPOSSIBLE;
            case PUMP -> FindingCode.PUMPED_VOLUME_IMPOSSIBLE;
            case FLOW_METER -> FindingCode.METERED_VOLUME_IMPOSSIBLE;
        };
    }

    /**
     * What a person should know about it.
     *
     * @return nothing for a usual fill; one finding otherwise
     */
    public Optional<Finding> finding() {
        double explained = nearest(value, relativeUncertainty, limits);
        if (limits.isUsual(explained)) {
            return Optional.empty();
        }
        boolean possible = limits.isPossible(explained);
        double lowest = possible ? limits.lowestUsual() : limits.lowestPossible();
        double highest = possible ? limits.highestUsual() : limits.highestPossible();
        return Optional.of(Finding.of(
                possible ? implausible() : impossible(),
                Map.of(
                        "fill", number(quantity()),
                        "lowest", number(Amounts.of(lowest, SpreadingUnits.ONE)),
                        "highest", number(Amounts.of(highest, SpreadingUnits.ONE)),
                        "slips", several(slips))));
    }
}
