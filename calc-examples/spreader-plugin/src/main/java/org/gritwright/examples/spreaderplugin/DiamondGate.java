package org.gritwright.examples.spreaderplugin;

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
 * A square hole that stands on a corner, uncovered from that corner upwards by a straight-edged plate.
 *
 * <p>With the diagonal d and the opening h along it: A = h² up to the middle, and d²/2 − (d − h)² above. Geometry of the
 * square.
 */
public final class DiamondGate implements GateType {
    /** The square's diagonal, and the largest opening. */
    public static final Parameter<Length> DIAGONAL =
            Parameter.length("diagonal", Amounts.of(40, MILLIMETER), Amounts.of(1, METER));

    /** The service loader's. */
    public DiamondGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("example.org/diamond-gate", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(DIAGONAL);
    }

    @Override
    public GateShape shape(Parameters given) {
        double diagonal = given.si(DIAGONAL);
        Quantity<Length> highest = given.get(DIAGONAL);
        Quantity<Length> closed = Amounts.of(0, highest.getUnit());
        return GateShape.byOpening(closed, highest, opening -> openSquareMeters(diagonal, opening))
                .closedAt(closed);
    }

    private static double openSquareMeters(double diagonal, double opening) {
        double covered = diagonal - opening;
        return opening <= diagonal / 2 ? opening * opening : diagonal * diagonal / 2 - covered * covered;
    }
}
