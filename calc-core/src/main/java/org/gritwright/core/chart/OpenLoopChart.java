package org.gritwright.core.chart;

import java.util.List;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Speed;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.rate.Rates;

/**
 * The chart of a spreader without feedback, for one material and gate setting: a row for each control setting, a column for each
 * road speed, and in the cells the rate: discharge per revolution × shaft speed ÷ road speed, rounded once. The shaft doesn't follow
 * the truck, so every speed has its own best setting. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 * @param subject what the chart is for
 * @param discharge the discharge per revolution of the watched shaft, greater than zero
 * @param settings of the rows, all read in one unit and each listed once, 1 to 1000 in any order; kept rising
 * @param speeds of the columns, each greater than zero and listed once, 1 to 1000 in any order; kept rising
 * @param basis what the rates are stated for
 * @param unit the unit of the rates
 */
public record OpenLoopChart<Q extends Quantity<Q>>(
        ChartSubject subject,
        Measured<DischargePerRevolution> discharge,
        List<ControlSetting> settings,
        List<Quantity<Speed>> speeds,
        RateBasis<Q> basis,
        Unit<Q> unit) {
    /**
     * Checks the values and sorts settings and speeds.
     *
     * @throws org.gritwright.units.InvalidInputException if the discharge isn't greater than zero, there are no settings or speeds,
     *     too many, or one twice, or one is out of its range
     */
    public OpenLoopChart {
        Require.given(OpenLoopChart.class, subject, discharge, settings, speeds, basis, unit);
        Require.positive("discharge per revolution", DischargePerRevolution.class, discharge.value());
        settings = ControlSetting.sorted(settings);
        speeds = Axis.of("road speed", Speed.class, speeds);
        Require.positive("one unit of the rates", basis.kind(), Amounts.of(1, unit));
    }

    /**
     * A cell.
     *
     * @param row which control setting, from 0
     * @param column which road speed, from 0
     * @return what the setting gives at the speed
     * @throws IndexOutOfBoundsException if there is no such row or column
     */
    public OpenLoopCell<Q> cell(int row, int column) {
        return cell(settings.get(row), speeds.get(column));
    }

    private OpenLoopCell<Q> cell(ControlSetting setting, Quantity<Speed> speed) {
        Measured<Q> rate = Carried.by(discharge, setting.shaftSpeed(), turning -> rate(turning, speed));
        boolean isAllKnown = discharge.standardUncertainty().isPresent()
                && setting.shaftSpeed().standardUncertainty().isPresent();
        return new OpenLoopCell<>(new CellValue<>(rate), !isAllKnown);
    }

    private Quantity<Q> rate(Quantity<RotationalSpeed> shaftSpeed, Quantity<Speed> speed) {
        return basis.stated(Rates.rateFromShaftSpeed(discharge.value(), shaftSpeed, speed), unit);
    }

    /**
     * The cells of a control setting.
     *
     * @param row which control setting, from 0
     * @return its cells, one for each road speed
     * @throws IndexOutOfBoundsException if there is no such row
     */
    public List<OpenLoopCell<Q>> row(int row) {
        return IntStream.range(0, speeds.size())
                .mapToObj(column -> cell(row, column))
                .toList();
    }

    /**
     * The setting that comes nearest to a rate at a road speed. Of two that are equally near it is the lower one, which puts down
     * less or, on a plateau of the drive, the same.
     *
     * @param rate the rate, greater than zero
     * @param speed the road speed, greater than zero; it needn't be one of the chart's
     * @return one of the chart's settings, what it gives, and the error it leaves
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public BestSetting<Q> best(Quantity<Q> rate, Quantity<Speed> speed) {
        double asked = Amounts.si(basis.kind(), Require.positive("rate", basis.kind(), rate));
        Require.positive("road speed", Speed.class, speed);
        ControlSetting best = settings.get(0);
        double least = error(best, asked, speed);
        for (ControlSetting other : settings) {
            double error = error(other, asked, speed);
            if (Comparison.isAbove(Math.abs(least) - Math.abs(error), 0, 1)) {
                best = other;
                least = error;
            }
        }
        return new BestSetting<>(best, cell(best, speed), Amounts.ofSi(least, SpreadingUnits.PERCENT));
    }

    private double error(ControlSetting setting, double asked, Quantity<Speed> speed) {
        return Amounts.si(basis.kind(), rate(setting.shaftSpeed().value(), speed)) / asked - 1;
    }
}
