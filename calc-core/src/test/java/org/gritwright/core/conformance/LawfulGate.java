package org.gritwright.core.conformance;

import java.util.List;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.OpenArea;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** An outsider's gate type that obeys every law, for others to break one. */
class LawfulGate implements GateType {
    static final Parameter<Length> WIDTH =
            Parameter.length("width", Amounts.of(2, SpreadingUnits.INCH), Amounts.of(5, SpreadingUnits.FOOT));
    static final Parameter<Length> DEAD =
            Parameter.length("dead", Amounts.of(0, SpreadingUnits.INCH), Amounts.of(3, SpreadingUnits.INCH));

    @Override
    public TypeId id() {
        return TypeId.of("example.org/lawful-gate", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(WIDTH, DEAD);
    }

    @Override
    public GateShape shape(Parameters given) {
        return shape(given, area(given.si(WIDTH), given.si(DEAD)));
    }

    /** From 0 to 12 in, closed up to the dead opening. */
    static GateShape.Adjustable shape(Parameters given, OpenArea area) {
        return GateShape.byOpening(Amounts.of(0, SpreadingUnits.INCH), Amounts.of(12, SpreadingUnits.INCH), area)
                .closedAt(given.get(DEAD));
    }

    static OpenArea area(double width, double dead) {
        return opening -> width * Math.max(0, opening - dead);
    }
}
