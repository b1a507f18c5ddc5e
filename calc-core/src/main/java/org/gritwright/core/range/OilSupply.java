package org.gritwright.core.range;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump and the hydraulic motor that it feeds: how fast oil alone lets the motor turn, however far the valve is open. Displacement ×
 * speed is the flow of a pump or motor that doesn't leak; what leaks is lost (the usual definitions of fluid power). It grows with
 * pressure, wear and warmth, so this is a bound for a plausibility check and no measurement. Oil that a spinner or plow takes at the
 * same time is lacking too. Immutable, thread-safe, a value.
 *
 * @param pump the pump's displacement, greater than zero
 * @param pumpEfficiency the part of that flow which leaves the pump, its volumetric efficiency: above 0 % and at most 100 %
 * @param motor the motor's displacement, greater than zero
 * @param motorEfficiency the part of its flow which turns the motor, in the same range
 */
public record OilSupply(
        Quantity<VolumePerRevolution> pump,
        Quantity<Dimensionless> pumpEfficiency,
        Quantity<VolumePerRevolution> motor,
        Quantity<Dimensionless> motorEfficiency)
        implements Serializable {
    private static final int DIGITS = 4;

    private static final Quantity<Dimensionless> ALL = Amounts.of(100, SpreadingUnits.PERCENT);

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public OilSupply {
        Require.given(OilSupply.class, pump, pumpEfficiency, motor, motorEfficiency);
        Require.positive("displacement of the pump", VolumePerRevolution.class, pump);
        requireEfficiency("volumetric efficiency of the pump", pumpEfficiency);
        Require.positive("displacement of the motor", VolumePerRevolution.class, motor);
        requireEfficiency("volumetric efficiency of the motor", motorEfficiency);
    }

    /**
     * A pump and a motor that don't leak.
     *
     * @param pump the pump's displacement
     * @param motor the motor's
     * @return both
     * @throws org.gritwright.units.InvalidInputException if one isn't greater than zero
     */
    public static OilSupply tight(Quantity<VolumePerRevolution> pump, Quantity<VolumePerRevolution> motor) {
        return new OilSupply(pump, ALL, motor, ALL);
    }

    /**
     * The volumetric efficiency of a pump whose flow was measured: flow ÷ (displacement × speed). 100 % less this is its slippage.
     *
     * @param displacement of the pump, greater than zero
     * @param speed of the pump, greater than zero
     * @param measured the flow, 0 or more and no more than the pump gives if it is tight
     * @return the efficiency
     * @throws org.gritwright.units.InvalidInputException if a value is out of its range
     */
    public static Quantity<Dimensionless> volumetricEfficiency(
            Quantity<VolumePerRevolution> displacement, Quantity<RotationalSpeed> speed, Quantity<FlowRate> measured) {
        double tight = Amounts.si(
                        VolumePerRevolution.class,
                        Require.positive("displacement of the pump", VolumePerRevolution.class, displacement))
                * Amounts.si(RotationalSpeed.class, Require.positive("pump speed", RotationalSpeed.class, speed));
        double flow = Amounts.si(FlowRate.class, Require.notNegative("flow of the pump", FlowRate.class, measured));
        Require.that(
                !Comparison.isAbove(flow, tight),
                "flow of the pump",
                "no more than displacement × speed, " + Rounded.text(Amounts.ofSi(tight, measured.getUnit()), DIGITS),
                () -> Amounts.format(measured));
        return Amounts.ofSi(flow / tight, SpreadingUnits.PERCENT);
    }

    /**
     * What the pump gives.
     *
     * @param pumpSpeed the pump's speed, 0 or more: engine speed × the ratio of its drive
     * @return displacement × speed × efficiency, in the unit system of the displacement
     * @throws org.gritwright.units.InvalidInputException if the speed is negative
     */
    public Quantity<FlowRate> flow(Quantity<RotationalSpeed> pumpSpeed) {
        return Amounts.ofSi(
                perRevolution(pump)
                        * Amounts.si(
                                RotationalSpeed.class,
                                Require.notNegative("pump speed", RotationalSpeed.class, pumpSpeed))
                        * ratio(pumpEfficiency),
                UnitSymbol.tradeUnit(FlowRate.class, pump));
    }

    /**
     * How fast a flow turns the motor.
     *
     * @param flow the flow, 0 or more
     * @return flow × efficiency ÷ displacement
     * @throws org.gritwright.units.InvalidInputException if it is negative
     */
    public Quantity<RotationalSpeed> motorSpeed(Quantity<FlowRate> flow) {
        return Amounts.ofSi(
                Amounts.si(FlowRate.class, Require.notNegative("flow to the motor", FlowRate.class, flow))
                        * ratio(motorEfficiency)
                        / perRevolution(motor),
                SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    /**
     * How fast the motor turns at the most.
     *
     * @param pumpSpeed the pump's speed, 0 or more
     * @return the speed where all oil goes through the motor. A gear between motor and sensed shaft is the caller's to reckon with
     * @throws org.gritwright.units.InvalidInputException if the speed is negative
     */
    public Quantity<RotationalSpeed> fastestMotor(Quantity<RotationalSpeed> pumpSpeed) {
        return motorSpeed(flow(pumpSpeed));
    }

    /**
     * How fast the pump has to turn.
     *
     * @param motorSpeed the motor's speed, 0 or more
     * @return the lowest speed of the pump that gives oil for it
     * @throws org.gritwright.units.InvalidInputException if the speed is negative
     */
    public Quantity<RotationalSpeed> slowestPump(Quantity<RotationalSpeed> motorSpeed) {
        return Amounts.ofSi(
                Amounts.si(RotationalSpeed.class, Require.notNegative("motor speed", RotationalSpeed.class, motorSpeed))
                        * perRevolution(motor)
                        / (ratio(motorEfficiency) * perRevolution(pump) * ratio(pumpEfficiency)),
                SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    private static void requireEfficiency(String field, Quantity<Dimensionless> efficiency) {
        Require.positive(field, Dimensionless.class, efficiency);
        Require.that(
                !Comparison.isAbove(ratio(efficiency), 1), field, "at most 100 %", () -> Amounts.format(efficiency));
    }

    private static double perRevolution(Quantity<VolumePerRevolution> displacement) {
        return Amounts.si(VolumePerRevolution.class, displacement);
    }

    private static double ratio(Quantity<Dimensionless> ratio) {
        return Amounts.si(Dimensionless.class, ratio);
    }
}
