package org.gritwright.core.spreader;

import static org.gritwright.units.SpreadingUnits.METRE;
import static org.gritwright.units.SpreadingUnits.MILLIMETRE;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateOpening;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/** A plate that slides up and leaves a rectangle: open area A = width · opening. */
public final class SlidingGate implements GateType {
    /** Clear width of the opening. */
    public static final Parameter<Length> WIDTH =
            Parameter.length("width", Amounts.of(50, MILLIMETRE), Amounts.of(3, METRE));

    /** The largest opening that can be set. */
    public static final Parameter<Length> HIGHEST_OPENING = Parameter.length(
                    "highestOpening", Amounts.of(10, MILLIMETRE), Amounts.of(2, METRE))
            .withDefault(Amounts.of(1, METRE));

    /** Made for a registry; all instances are alike. */
    public SlidingGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("sliding-gate", 1);
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(WIDTH, HIGHEST_OPENING);
    }

    @Override
    public Optional<GateOpening> opening(Parameters given) {
        double widthMetres = given.si(WIDTH);
        Quantity<Length> highest = given.get(HIGHEST_OPENING);
        Quantity<Length> closed = Amounts.of(0, highest.getUnit());
        return Optional.of(new GateOpening(closed, highest, openingMetres -> widthMetres * openingMetres));
    }
}
