package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.LITER_PER_MINUTE;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.MeasuredTable;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulsesPerVolume;
import org.gritwright.units.quantity.VolumePerPulse;

/**
 * A flow meter described by the table of its calibration: the K-factor at each of several flows.
 *
 * <p>A row gives flow × K pulses per second; between two rows these are interpolated on a straight line, and the volume per pulse
 * is the flow divided by them. Below the first row, the low-flow cut-off, and above the last nothing is guessed. Rows are in
 * rising order of the flow, and a row never gives fewer pulses per second than the one before. The middle between the largest and
 * the smallest K-factor counts as the nominal one.
 */
public final class TableFlowMeter implements FlowMeterType {
    private static final int FEWEST_ROWS = 2;
    private static final int MOST_ROWS = 100;

    /** The flows, in rising order. */
    public static final Parameter<FlowRate> METER_FLOWS = Parameter.of(
                    "meterFlows",
                    FlowRate.class,
                    Amounts.of(0.01, LITER_PER_MINUTE),
                    Amounts.of(5000, LITER_PER_MINUTE))
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** The K-factor in each row. */
    public static final Parameter<PulsesPerVolume> K_FACTORS = Parameter.of(
                    "kFactors", PulsesPerVolume.class, KFactorMeter.K_FACTOR.lowest(), KFactorMeter.K_FACTOR.highest())
            .asList(FEWEST_ROWS, MOST_ROWS);

    /** Made for a registry; all instances are alike. */
    public TableFlowMeter() {}

    @Override
    public TypeId id() {
        return TypeId.of("k-factor-table", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(METER_FLOWS, K_FACTORS);
    }

    @Override
    public PulseOutput output(Parameters given) {
        MeasuredTable factors = MeasuredTable.of(given, METER_FLOWS, K_FACTORS);
        MeasuredTable pulses = factors.with((flow, factor) -> flow * factor);
        List<Quantity<FlowRate>> flows = given.list(METER_FLOWS);
        List<Quantity<PulsesPerVolume>> rows = given.list(K_FACTORS);
        pulses.firstFall().ifPresent(i -> {
            throw new InvalidInputException(
                    K_FACTORS.name(),
                    "such that " + Amounts.format(flows.get(i)) + " gives no fewer pulses per second than "
                            + Amounts.format(flows.get(i - 1)) + " with " + Amounts.format(rows.get(i - 1)),
                    Amounts.format(rows.get(i)));
        });
        double middle =
                (factors.values().min().orElseThrow() + factors.values().max().orElseThrow()) / 2;
        return PulseOutput.of(
                        Amounts.ofSi(1 / middle, UnitSymbol.tradeUnit(VolumePerPulse.class, rows.get(0))),
                        cubicMetersPerSecond -> cubicMetersPerSecond / pulses.value(cubicMetersPerSecond))
                .within(flows.get(0), flows.get(flows.size() - 1));
    }
}
