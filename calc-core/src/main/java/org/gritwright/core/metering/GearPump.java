package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.MILLIMETER;

import java.util.List;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump of two equal meshing gears in a housing, by its measures.
 *
 * <p>V = π/2 · w · (d² − a²), with the gears' width w, the diameter d over the tips of the teeth, and the distance a of the
 * shafts: twice the ring between a gear's pitch circle, whose diameter is that distance, and its tips. The form that repair
 * shops use to name a worn pump; an approximation, good to some percent. What slips back is not in it: a catch shows that.
 */
public final class GearPump implements PumpType {
    /** Width of the gears, along their shafts. */
    public static final Parameter<Length> GEAR_WIDTH =
            Parameter.length("gearWidth", Amounts.of(2, MILLIMETER), Amounts.of(300, MILLIMETER));

    /** Diameter of a gear over the tips of its teeth. */
    public static final Parameter<Length> TIP_DIAMETER =
            Parameter.length("tipDiameter", Amounts.of(10, MILLIMETER), Amounts.of(400, MILLIMETER));

    /** Distance between the centers of the two shafts. */
    public static final Parameter<Length> CENTER_DISTANCE =
            Parameter.length("centerDistance", Amounts.of(8, MILLIMETER), Amounts.of(350, MILLIMETER));

    /** Made for a registry; all instances are alike. */
    public GearPump() {}

    @Override
    public TypeId id() {
        return TypeId.of("gear-pump", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(GEAR_WIDTH, TIP_DIAMETER, CENTER_DISTANCE);
    }

    @Override
    public PumpOutput output(Parameters given) {
        double width = given.si(GEAR_WIDTH);
        double tips = given.si(TIP_DIAMETER);
        double centers = given.si(CENTER_DISTANCE);
        if (!(tips > centers && tips < 2 * centers)) {
            throw new InvalidInputException(
                    TIP_DIAMETER.name(),
                    "above " + CENTER_DISTANCE.name() + ", else the teeth don't mesh, and below twice as much, "
                            + Amounts.format(given.get(CENTER_DISTANCE)),
                    Amounts.format(given.get(TIP_DIAMETER)));
        }
        double cubicMeters = Math.PI / 2 * width * (tips * tips - centers * centers);
        return PumpOutput.constant(
                Amounts.ofSi(cubicMeters, UnitSymbol.tradeUnit(VolumePerRevolution.class, given.get(GEAR_WIDTH))));
    }
}
