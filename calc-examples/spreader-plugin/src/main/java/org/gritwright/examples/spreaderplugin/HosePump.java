package org.gritwright.examples.spreaderplugin;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump whose rollers run along a bent hose and push before them what is in it.
 *
 * <p>V = π/4 · d² · π · D · (1 − r), with the hose's inner diameter d, the diameter D of the circle along which its middle lies,
 * and the share r of that circle at which rollers press the hose flat. Geometry. The rollers close the hose, so hardly anything
 * slips back; but a hose that is turned too fast has no time to become round again, which is why the highest speed is asked for.
 * Old hose is less round than new: a catch shows that.
 */
public final class HosePump implements PumpType {
    /** Inner diameter of the hose. */
    public static final Parameter<Length> HOSE_DIAMETER =
            Parameter.length("hoseDiameter", Amounts.of(2, MILLIMETER), Amounts.of(100, MILLIMETER));

    /** Diameter of the circle along which the middle of the hose lies. */
    public static final Parameter<Length> CIRCLE =
            Parameter.length("circle", Amounts.of(20, MILLIMETER), Amounts.of(1, METER));

    /** The share of the circle at which rollers press the hose flat. */
    public static final Parameter<Dimensionless> ROLLERS = Parameter.of(
                    "rollers", Dimensionless.class, Amounts.of(0, PERCENT), Amounts.of(60, PERCENT))
            .withDefault(Amounts.of(20, PERCENT));

    /** The highest speed at which the hose becomes round again between two rollers. */
    public static final Parameter<RotationalSpeed> HIGHEST_SPEED = Parameter.of(
                    "highestSpeed",
                    RotationalSpeed.class,
                    Amounts.of(1, REVOLUTION_PER_MINUTE),
                    Amounts.of(600, REVOLUTION_PER_MINUTE))
            .withDefault(Amounts.of(100, REVOLUTION_PER_MINUTE));

    /** The service loader's. */
    public HosePump() {}

    @Override
    public TypeId id() {
        return TypeId.of("example.org/hose-pump", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(HOSE_DIAMETER, CIRCLE, ROLLERS, HIGHEST_SPEED);
    }

    @Override
    public PumpOutput output(Parameters given) {
        double hose = given.si(HOSE_DIAMETER);
        double squareMeters = Math.PI / 4 * hose * hose;
        double cubicMeters = squareMeters * Math.PI * given.si(CIRCLE) * (1 - given.si(ROLLERS));
        return PumpOutput.constant(Amounts.ofSi(
                        cubicMeters, UnitSymbol.tradeUnit(VolumePerRevolution.class, given.get(HOSE_DIAMETER))))
                .within(Amounts.of(0, REVOLUTION_PER_MINUTE), given.get(HIGHEST_SPEED));
    }

    @Override
    public FillLimits fillLimits() {
        return new FillLimits(0.5, 0.8, 1.05, 1.15);
    }
}
