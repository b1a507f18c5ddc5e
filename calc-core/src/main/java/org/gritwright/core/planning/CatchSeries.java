package org.gritwright.core.planning;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.RevolutionCount;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * Planned catches, all alike. Immutable, thread-safe, a value.
 *
 * @param repeats how many catches
 * @param revolutions the revolutions of the sensed or watched shaft in each
 * @param conveyorTurns the turns of the conveyor's or pump's own drive shaft in each: those revolutions ÷ the gear ratio
 * @param pulses the pulses in each, to the nearest whole one; none without a sensor
 * @param amountPerCatch the amount expected in each: a mass or, of a liquid, a volume
 * @param containersToFill the containers filled in each, or the fills of a graduated container
 * @param budget where the uncertainty of the mass per revolution comes from, as a part of it
 * @param assumptions what the budget assumes or omits, a sentence each
 */
public record CatchSeries(
        int repeats,
        Quantity<RevolutionCount> revolutions,
        Quantity<RevolutionCount> conveyorTurns,
        Optional<Quantity<PulseCount>> pulses,
        Quantity<?> amountPerCatch,
        int containersToFill,
        Budget<Dimensionless> budget,
        List<String> assumptions) {

    /** Copies the list. */
    public CatchSeries {
        Require.given(CatchSeries.class, revolutions, conveyorTurns, pulses, amountPerCatch, budget, assumptions);
        assumptions = List.copyOf(assumptions);
    }

    /**
     * All material that is caught.
     *
     * @return repeats × amount per catch
     */
    public Quantity<?> totalAmount() {
        return Amounts.of(repeats * amountPerCatch.getValue().doubleValue(), amountPerCatch.getUnit());
    }

    /**
     * The mass of grains expected in each catch.
     *
     * @return the amount per catch
     * @throws InvalidInputException if a liquid is caught, which is a volume
     */
    public Quantity<Mass> massPerCatch() {
        return mass(amountPerCatch);
    }

    /**
     * All grains that are caught.
     *
     * @return repeats × mass per catch
     * @throws InvalidInputException if a liquid is caught, which is a volume
     */
    public Quantity<Mass> totalMass() {
        return mass(totalAmount());
    }

    private static Quantity<Mass> mass(Quantity<?> amount) {
        Require.that(UnitSymbol.of(amount.getUnit()).kind().equals(Mass.class), "caught amount", "a mass", amount);
        return amount.asType(Mass.class);
    }

    /**
     * The relative expanded uncertainty (95 %) that is expected.
     *
     * @return a part of the mass per revolution
     */
    public Quantity<Dimensionless> expandedUncertainty() {
        return budget.result().expandedUncertainty(CatchModel.COVERAGE).orElseThrow();
    }

    /**
     * How long one catch runs.
     *
     * @param shaftSpeed the speed of the sensed or watched shaft, greater than zero
     * @return revolutions ÷ speed
     * @throws InvalidInputException if the speed is not greater than zero
     */
    public Quantity<Time> runTime(Quantity<RotationalSpeed> shaftSpeed) {
        double perSecond =
                Amounts.si(RotationalSpeed.class, Require.positive("shaft speed", RotationalSpeed.class, shaftSpeed));
        return Amounts.ofSi(Amounts.si(RevolutionCount.class, revolutions) / perSecond, SpreadingUnits.SECOND);
    }

    /**
     * How long one catch of a liquid runs.
     *
     * @param flow the flow, greater than zero
     * @return amount ÷ flow
     * @throws InvalidInputException if the flow is not greater than zero, or grains are caught, which have none
     */
    public Quantity<Time> runTimeAtFlow(Quantity<FlowRate> flow) {
        Require.that(
                UnitSymbol.of(amountPerCatch.getUnit()).kind().equals(Volume.class),
                "caught amount",
                "a volume, as a flow is one per time",
                amountPerCatch);
        double perSecond = Amounts.si(FlowRate.class, Require.positive("flow", FlowRate.class, flow));
        return Amounts.ofSi(
                Amounts.si(Volume.class, amountPerCatch.asType(Volume.class)) / perSecond, SpreadingUnits.SECOND);
    }
}
