package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import java.util.List;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/** A rectangular opening that can't be set: open area A = width · height. */
public final class FixedGate implements GateType {
    /** Clear width of the opening. */
    public static final Parameter<Length> WIDTH =
            Parameter.length("width", Amounts.of(10, MILLIMETER), Amounts.of(3, METER));

    /** Clear height of the opening above the conveyor. */
    public static final Parameter<Length> HEIGHT =
            Parameter.length("height", Amounts.of(5, MILLIMETER), Amounts.of(2, METER));

    /** Made for a registry; all instances are alike. */
    public FixedGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("fixed-opening", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(WIDTH, HEIGHT);
    }

    @Override
    public GateShape shape(Parameters given) {
        return GateShape.fixed(Amounts.of(given.si(WIDTH) * given.si(HEIGHT), SQUARE_METER));
    }
}
