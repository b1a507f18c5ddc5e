package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.GateType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/**
 * A plate that slides up and leaves a rectangle: open area A = width · (h − h₀) at the opening h as read, 0 below.
 *
 * <p>The dead opening h₀ is what the scale on the gate reads when the gate just closes; negative if the gate is open a
 * little when it reads zero. It is for a known offset of the reading; a dead opening that only the catches show is found
 * by fitting them.
 */
public final class SlidingGate implements GateType {
    /** Clear width of the opening. */
    public static final Parameter<Length> WIDTH =
            Parameter.length("width", Amounts.of(50, MILLIMETER), Amounts.of(3, METER));

    /** The largest opening that can be set. */
    public static final Parameter<Length> HIGHEST_OPENING = Parameter.length(
                    "highestOpening", Amounts.of(10, MILLIMETER), Amounts.of(2, METER))
            .withDefault(Amounts.of(1, METER));

    /** The reading at which the gate closes; of either sign, below the largest opening. */
    public static final Parameter<Length> DEAD_OPENING = Parameter.length(
                    "deadOpening", Amounts.of(-100, MILLIMETER), Amounts.of(100, MILLIMETER))
            .withDefault(Amounts.of(0, MILLIMETER));

    /** Made for a registry; all instances are alike. */
    public SlidingGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("sliding-gate", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(WIDTH, HIGHEST_OPENING, DEAD_OPENING);
    }

    @Override
    public GateShape shape(Parameters given) {
        double widthMeters = given.si(WIDTH);
        double deadMeters = given.si(DEAD_OPENING);
        Quantity<Length> highest = given.get(HIGHEST_OPENING);
        GateShape.Adjustable shape = GateShape.byOpening(
                Amounts.of(0, highest.getUnit()),
                highest,
                openingMeters -> widthMeters * Math.max(0, openingMeters - deadMeters));
        // With a negative dead opening no position that can be set is closed.
        return deadMeters < 0 ? shape : shape.closedAt(given.get(DEAD_OPENING));
    }
}
