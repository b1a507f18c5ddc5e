package org.gritwright.core.metering;

import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.PulsesPerVolume;

/**
 * A flow meter that meters a liquid by its pulses, whatever pump moves it. Immutable, thread-safe, a value.
 *
 * <p>A flow meter turns no shaft that anybody counts: wherever this library says revolutions, they are its pulses.
 *
 * @param meter the flow meter
 */
public record FlowMetering(FlowMeter meter) implements Metering {
    private static final DriveFeedback PULSES = new MeterPulses();

    /** Checks that there is one. */
    public FlowMetering {
        Require.given(FlowMetering.class, meter);
    }

    @Override
    public Kind kind() {
        return Kind.FLOW_METER;
    }

    @Override
    public DriveFeedback feedback() {
        return PULSES;
    }

    /**
     * The pulses that the meter is rated to give per volume: its K factor.
     *
     * @return 1 ÷ its nominal volume per pulse, in pulses per gallon or liter as that is given
     */
    public Quantity<PulsesPerVolume> pulsesPerVolume() {
        return Amounts.ofSi(
                1 / meter.cubicMetersPerPulse(), UnitSymbol.tradeUnit(PulsesPerVolume.class, meter.nominal()));
    }

    /**
     * The volume that a pulse is rated for.
     *
     * @param setting {@link Setting#none()}
     * @return m³ per pulse, greater than zero
     * @throws InvalidInputException if there is a setting
     */
    @Override
    public double sweptCubicMetersPerRevolution(Setting setting) {
        NoSetting.require(setting, "a flow meter");
        return meter.cubicMetersPerPulse();
    }

    @Override
    public Optional<Boolean> isGoodFor(double cubicMetersPerSecond, double revolutionsPerSecond) {
        double highest = meter.highestFlow()
                .map(flow -> Amounts.si(FlowRate.class, flow))
                .orElse(Double.POSITIVE_INFINITY);
        return Optional.of(!Comparison.isAbove(Amounts.si(FlowRate.class, meter.lowestFlow()), cubicMetersPerSecond)
                && !Comparison.isAbove(cubicMetersPerSecond, highest));
    }

    @Override
    public FillLimits fillLimits() {
        return meter.fillLimits();
    }

    /**
     * The flow meter.
     *
     * @return for example "flow-meter, version 1 {…}"
     */
    @Override
    public String toString() {
        return meter.toString();
    }
}
