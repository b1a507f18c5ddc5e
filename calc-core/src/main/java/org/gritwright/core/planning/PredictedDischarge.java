package org.gritwright.core.planning;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.envelope.GateFit;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What geometry alone says of a discharge nobody has caught yet: swept volume × loose bulk density × apparent fill, and of the fill
 * no more is known than which is usual. Good enough to choose what to catch, and how much of it; never to spread by. Immutable,
 * thread-safe, a value.
 *
 * @param lowest at the lowest usual fill, greater than zero
 * @param highest at the highest, not below it
 */
public record PredictedDischarge(Quantity<DischargePerRevolution> lowest, Quantity<DischargePerRevolution> highest)
        implements Serializable {
    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if the lowest isn't greater than zero or the highest is below it
     */
    public PredictedDischarge {
        Require.given(PredictedDischarge.class, lowest, highest);
        Require.positive("lowest predicted discharge", DischargePerRevolution.class, lowest);
        Require.atLeast("highest predicted discharge", DischargePerRevolution.class, highest, lowest);
    }

    /**
     * Predicts for a calibration point.
     *
     * @param point the point
     * @return the discharge per revolution of the sensed or watched shaft, in the density's unit system
     */
    public static PredictedDischarge of(CalibrationPoint point) {
        FillLimits fill = point.metering().fillLimits();
        double full = point.metering().sweptCubicMetersPerRevolution(point.setting())
                * Amounts.si(BulkDensity.class, point.material().looseBulkDensity());
        Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, point.material().looseBulkDensity());
        return new PredictedDischarge(
                Amounts.ofSi(full * fill.lowestUsual(), unit), Amounts.ofSi(full * fill.highestUsual(), unit));
    }

    /**
     * The middle, to plan with.
     *
     * @return the mean of lowest and highest, in the unit of the lowest
     */
    public Quantity<DischargePerRevolution> expected() {
        return Amounts.ofSi(middle(), lowest.getUnit());
    }

    /**
     * How far from the middle the discharge may be, as a part of it.
     *
     * @return 0 or more and below 100 %, either way
     */
    public Quantity<Dimensionless> within() {
        return Amounts.ofSi((si(highest) - middle()) / middle(), SpreadingUnits.PERCENT);
    }

    /**
     * The middle with its uncertainty, every discharge between lowest and highest being as likely (GUM 4.3.7).
     *
     * @return a value that an {@link org.gritwright.core.envelope.Envelope} takes
     */
    public Measured<DischargePerRevolution> measured() {
        double u = Distribution.RECTANGULAR.standardUncertainty(si(highest) - middle());
        return Measured.of(expected(), Amounts.ofSi(u, lowest.getUnit()), Double.POSITIVE_INFINITY);
    }

    /**
     * How many catches confirm that a gate setting, whose discharge is only predicted, serves what is demanded, or that it doesn't.
     * With a margin of 1.25 all is served from the predicted discharge ÷ 1.25 to × 1.25, so one that is known to within 20 % and comes
     * out as predicted decides it. One that comes out otherwise changes the margin: then compare again, with what was caught.
     *
     * @param fit the fit of the setting, from the {@link #expected()} discharge
     * @param planner plans its catches
     * @return what it takes
     * @throws org.gritwright.units.InvalidInputException if the margin is exactly 1: the shaft is at its limit, and nothing can confirm on
     *     which side
     */
    public Confirmation confirmedBy(GateFit fit, CatchPlanner planner) {
        double margin = Amounts.si(
                Dimensionless.class, Require.positive("margin of the gate setting", Dimensionless.class, fit.margin()));
        Quantity<Dimensionless> wanted = Amounts.ofSi(1 - Math.min(margin, 1 / margin), SpreadingUnits.PERCENT);
        Require.positive("distance of the gate setting from its limit", Dimensionless.class, wanted);
        boolean tells =
                !Comparison.isAbove(Amounts.si(Dimensionless.class, within()), Amounts.si(Dimensionless.class, wanted));
        return new Confirmation(
                fit.setting(), within(), wanted, tells ? Optional.empty() : Optional.of(planner.plan(wanted)));
    }

    private double middle() {
        return (si(lowest) + si(highest)) / 2;
    }

    private static double si(Quantity<DischargePerRevolution> discharge) {
        return Amounts.si(DischargePerRevolution.class, discharge);
    }
}
