package org.gritwright.examples.spreaderplugin;

import static org.gritwright.units.SpreadingUnits.FOOT_PER_MINUTE;
import static org.gritwright.units.SpreadingUnits.METER_PER_SECOND;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import org.gritwright.core.spi.FlowMeterType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PulseOutput;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.VolumePerPulse;

/**
 * A wheel with vanes that the liquid in a pipe turns; each vane that passes the sensor is a pulse.
 *
 * <p>With the pipe's cross-section A, the liquid's speed v = q ÷ A, the wheel's diameter D over the vanes' tips and its number n of
 * vanes: the tips move at s · (v − v₀), where s says how much of the liquid's speed they take and v₀ is lost to the bearing's
 * friction, so that there are n · s · (v − v₀) ÷ (π · D) pulses per second, and a pulse stands for more liquid the slower that
 * is. Without friction, which is the nominal volume, it stands for A · π · D ÷ (n · s). A simple model: the share and the friction
 * are to be measured. Below the lowest speed, at which the wheel surely turns, nothing is known.
 */
public final class PaddleWheelMeter implements FlowMeterType {
    /** Inner diameter of the pipe. */
    public static final Parameter<Length> PIPE_DIAMETER =
            Parameter.length("pipeDiameter", Amounts.of(5, MILLIMETER), Amounts.of(150, MILLIMETER));

    /** Diameter of the wheel over the tips of its vanes. */
    public static final Parameter<Length> WHEEL_DIAMETER =
            Parameter.length("wheelDiameter", Amounts.of(5, MILLIMETER), Amounts.of(100, MILLIMETER));

    /** Number of vanes. */
    public static final Parameter<Dimensionless> VANES = Parameter.wholeNumber("vanes", 2, 24);

    /** How much of the liquid's speed the tips take. */
    public static final Parameter<Dimensionless> TIP_SHARE = Parameter.of(
                    "tipShare", Dimensionless.class, Amounts.of(10, PERCENT), Amounts.of(100, PERCENT))
            .withDefault(Amounts.of(80, PERCENT));

    /** The liquid's speed that is lost to the bearing's friction. */
    public static final Parameter<Speed> FRICTION = Parameter.of(
                    "friction", Speed.class, Amounts.of(0, METER_PER_SECOND), Amounts.of(0.3, METER_PER_SECOND))
            .withDefault(Amounts.of(0.03, METER_PER_SECOND));

    /** The liquid's lowest speed at which the wheel surely turns. */
    public static final Parameter<Speed> LOWEST_SPEED = Parameter.of(
                    "lowestSpeed", Speed.class, Amounts.of(1, FOOT_PER_MINUTE), Amounts.of(2, METER_PER_SECOND))
            .withDefault(Amounts.of(0.3, METER_PER_SECOND));

    /** The service loader's. */
    public PaddleWheelMeter() {}

    @Override
    public TypeId id() {
        return TypeId.of("example.org/paddle-wheel", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(PIPE_DIAMETER, WHEEL_DIAMETER, VANES, TIP_SHARE, FRICTION, LOWEST_SPEED);
    }

    @Override
    public PulseOutput output(Parameters given) {
        double lowestSpeed = given.si(LOWEST_SPEED);
        double friction = given.si(FRICTION);
        if (!(lowestSpeed > friction)) {
            throw new InvalidInputException(
                    LOWEST_SPEED.name(),
                    "above " + FRICTION.name() + ", " + Amounts.format(given.get(FRICTION)),
                    Amounts.format(given.get(LOWEST_SPEED)));
        }
        double squareMeters = Math.PI / 4 * given.si(PIPE_DIAMETER) * given.si(PIPE_DIAMETER);
        double nominal = squareMeters * Math.PI * given.si(WHEEL_DIAMETER) / (given.si(VANES) * given.si(TIP_SHARE));
        double lost = friction * squareMeters;
        return PulseOutput.of(
                        Amounts.ofSi(nominal, UnitSymbol.tradeUnit(VolumePerPulse.class, given.get(PIPE_DIAMETER))),
                        flow -> nominal * flow / (flow - lost))
                .from(Amounts.ofSi(
                        lowestSpeed * squareMeters, UnitSymbol.tradeUnit(FlowRate.class, given.get(PIPE_DIAMETER))));
    }
}
