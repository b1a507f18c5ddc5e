package org.gritwright.core.planning;

import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.TradeSystem;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargeRate;

/**
 * A conveyor that comes up to speed from rest as a first-order lag does: of the steady flow it has 1 − e^(−t/τ) after the
 * time t. A run of T delivers what the steady flow does in T − τ·(1 − e^(−T/τ)); shaft and mass lag together, so the mass
 * per revolution is none the worse. Derived from the definition of the lag. Immutable, thread-safe, a value.
 *
 * @param timeConstant τ, greater than zero
 */
public record FirstOrderStart(Quantity<Time> timeConstant) {
    /**
     * Checks the value.
     *
     * @throws org.gritwright.units.InvalidInputException if it is not greater than zero
     */
    public FirstOrderStart {
        Require.positive("time constant of the start", Time.class, timeConstant);
    }

    /**
     * How long it takes from a tenth to nine tenths of the steady flow.
     *
     * @return τ · ln 9, in the unit of τ
     */
    public Quantity<Time> riseTime() {
        return Amounts.ofSi(tau() * Math.log(9), timeConstant.getUnit());
    }

    /**
     * What a run delivers.
     *
     * @param steadyFlow the flow once it is steady, greater than zero
     * @param runTime the run's time from rest, greater than zero
     * @return flow × (T − τ·(1 − e^(−T/τ))), in pounds or kilograms as the flow is given
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public Quantity<Mass> delivered(Quantity<DischargeRate> steadyFlow, Quantity<Time> runTime) {
        Require.positive("steady flow", DischargeRate.class, steadyFlow);
        TradeSystem system = UnitSymbol.of(steadyFlow.getUnit()).system();
        return Amounts.ofSi(
                Amounts.si(DischargeRate.class, steadyFlow) * steadySeconds(seconds(runTime)),
                UnitSymbol.tradeUnit(Mass.class, system));
    }

    /**
     * The part of the steady flow's mass that a run misses.
     *
     * @param runTime the run's time from rest, greater than zero
     * @return τ·(1 − e^(−T/τ)) ÷ T
     * @throws org.gritwright.units.InvalidInputException if the time is not greater than zero
     */
    public Quantity<Dimensionless> lostPart(Quantity<Time> runTime) {
        return Amounts.ofSi(lostPart(seconds(runTime)), SpreadingUnits.PERCENT);
    }

    /**
     * How long a run must be to miss no more than a part.
     *
     * @param part the greatest part, greater than zero and below 100 %
     * @return the time, in the unit of τ
     * @throws org.gritwright.units.InvalidInputException if the part is out of its range
     */
    public Quantity<Time> shortestRun(Quantity<Dimensionless> part) {
        double wanted = Amounts.si(Dimensionless.class, Require.fraction("part lost by the start", part));
        // The lost part falls as the run gets longer, and is below τ/T: halve the interval until it holds no other
        // double.
        double low = 0;
        double high = tau() / wanted;
        double middle = high / 2;
        while (middle > low && middle < high) {
            if (lostPart(middle) > wanted) {
                low = middle;
            } else {
                high = middle;
            }
            middle = low + (high - low) / 2;
        }
        return Amounts.ofSi(high, timeConstant.getUnit());
    }

    double lostPart(double seconds) {
        return -tau() * Math.expm1(-seconds / tau()) / seconds;
    }

    /** The time in which the steady flow delivers as much. */
    double steadySeconds(double seconds) {
        return seconds + tau() * Math.expm1(-seconds / tau());
    }

    private double tau() {
        return Amounts.si(Time.class, timeConstant);
    }

    private static double seconds(Quantity<Time> runTime) {
        return Amounts.si(Time.class, Require.positive("run time", Time.class, runTime));
    }
}
