package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.spi.MeasuredTable;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump described by a table that somebody measured: the flow at each of several shaft speeds, so that slip at low speed is in
 * it.
 *
 * <p>Between two rows the flow is interpolated on a straight line; the volume per revolution is flow ÷ speed. Below the first
 * row and above the last nothing is guessed. Rows are in rising order of the speed, and the flow never falls. The largest volume
 * per revolution in the table counts as the displacement.
 */
public final class TablePump implements PumpType {
    private static final int FEWEST_ROWS = 2;
    private static final int MOST_ROWS = 100;

    /** The speeds of the pump's shaft, in rising order. */
    public static final Parameter<RotationalSpeed> SPEEDS = Parameter.of(
                    "speeds",
                    RotationalSpeed.class,
                    Amounts.of(1, REVOLUTION_PER_MINUTE),
                    Amounts.of(6000, REVOLUTION_PER_MINUTE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The flow in each row, never falling. */
    public static final Parameter<FlowRate> FLOWS = Parameter.of(
                    "flows", FlowRate.class, Amounts.of(0.001, LITER_PER_MINUTE), Amounts.of(2000, LITER_PER_MINUTE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** Made for a registry; all instances are alike. */
    public TablePump() {}

    @Override
    public TypeId id() {
        return TypeId.of("pump-table", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(SPEEDS, FLOWS);
    }

    @Override
    public PumpOutput output(Parameters given) {
        MeasuredTable flows = MeasuredTable.neverFalling(given, SPEEDS, FLOWS);
        double largest =
                flows.with((speed, flow) -> flow / speed).values().max().orElseThrow();
        List<Quantity<RotationalSpeed>> speeds = given.list(SPEEDS);
        Quantity<FlowRate> first = given.list(FLOWS).get(0);
        return PumpOutput.of(
                        Amounts.ofSi(largest, UnitSymbol.tradeUnit(VolumePerRevolution.class, first)),
                        revolutionsPerSecond -> flows.value(revolutionsPerSecond) / revolutionsPerSecond)
                .within(speeds.get(0), speeds.get(speeds.size() - 1));
    }
}
