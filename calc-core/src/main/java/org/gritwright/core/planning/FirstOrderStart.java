package org.gritwright.core.planning;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargeRate;

/**
 * A conveyor that comes up to speed from rest as a first-order lag: at time t the flow is 1 − e^(−t/τ) of the steady flow.
 *
 * <p>A run of length T delivers what the steady flow would deliver in T − τ·(1 − e^(−T/τ)). Shaft and mass lag together, so
 * the mass per revolution is unaffected. Derived from the definition of the lag. Immutable, thread-safe, a value.
 *
 * @param timeConstant τ, the time from rest to 63.2 % (1 − 1/e) of the steady flow; greater than zero
 */
public record FirstOrderStart(Quantity<Time> timeConstant) implements Serializable {
    /**
     * Checks the value.
     *
     * @throws InvalidInputException if it is not greater than zero
     */
    public FirstOrderStart {
        Require.positive("time constant of the start", Time.class, timeConstant);
    }

    /**
     * The start with a measured rise time.
     *
     * @param riseTime how long the flow takes from 10 % to 90 % of the steady flow, greater than zero
     * @return the start, with τ = rise time ÷ ln 9 in the unit of the rise time
     * @throws InvalidInputException if the time is not greater than zero
     */
    public static FirstOrderStart fromRiseTime(Quantity<Time> riseTime) {
        return inLags("rise time of the start", riseTime, Math.log(9));
    }

    /**
     * The start with a measured time for the flow to reach a part of the steady flow. The time to 63.2 % is τ itself:
     * for that one, call the constructor.
     *
     * @param part the part, greater than zero and below 100 %, for example 90 %
     * @param time how long the flow takes to it from rest, greater than zero
     * @return the start, with τ = time ÷ −ln(1 − part) in the unit of the time
     * @throws InvalidInputException if a value is out of its range
     */
    public static FirstOrderStart fromTimeToReach(Quantity<Dimensionless> part, Quantity<Time> time) {
        double reached = Amounts.si(Dimensionless.class, Require.fraction("part of the steady flow", part));
        return inLags("time to reach " + Amounts.format(part) + " of the steady flow", time, -Math.log1p(-reached));
    }

    /** A time as a multiple of τ. */
    private static FirstOrderStart inLags(String field, Quantity<Time> time, double lags) {
        Require.positive(field, Time.class, time);
        return new FirstOrderStart(Amounts.of(time.getValue().doubleValue() / lags, time.getUnit()));
    }

    /**
     * The rise time: how long the flow takes from 10 % to 90 % of the steady flow.
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
     * @param runTime T, the length of the run from rest, greater than zero
     * @return flow × (T − τ·(1 − e^(−T/τ))), in pounds or kilograms as the flow is given
     * @throws InvalidInputException if a value is out of its range
     */
    public Quantity<Mass> delivered(Quantity<DischargeRate> steadyFlow, Quantity<Time> runTime) {
        Require.positive("steady flow", DischargeRate.class, steadyFlow);
        return Amounts.ofSi(
                Amounts.si(DischargeRate.class, steadyFlow) * steadySeconds(seconds(runTime)),
                UnitSymbol.tradeUnit(Mass.class, steadyFlow));
    }

    /**
     * How much a run falls short of the mass that the steady flow would deliver in the same time.
     *
     * @param runTime T, the length of the run from rest, greater than zero
     * @return τ·(1 − e^(−T/τ)) ÷ T
     * @throws InvalidInputException if the time is not greater than zero
     */
    public Quantity<Dimensionless> lostPart(Quantity<Time> runTime) {
        return Amounts.ofSi(lostPart(seconds(runTime)), SpreadingUnits.PERCENT);
    }

    /**
     * How long a run must be so that the start costs it no more than a given part of its mass.
     *
     * @param part the largest part, greater than zero and below 100 %
     * @return the time, in the unit of τ
     * @throws InvalidInputException if the part is out of its range
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

    /**
     * The start as text.
     *
     * @return for example "start with a time constant of 0.8 s"
     */
    @Override
    public String toString() {
        return "start with a time constant of " + Amounts.format(timeConstant);
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
