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
 * A round hole that a straight-edged slide uncovers from one side: the open area at opening h is the circular segment of
 * that height.
 *
 * <p>With radius r and the angle θ = 2·acos(1 − h/r): A = r²/2 · (θ − sin θ), from 0 at h = 0 to π·r² at h = 2r. Geometry
 * of the circle; textbook form.
 */
public final class RoundGate implements GateType {
    /** Diameter of the hole, and the largest opening. */
    public static final Parameter<Length> DIAMETER =
            Parameter.length("diameter", Amounts.of(20, MILLIMETER), Amounts.of(1, METER));

    /** Below this angle the closed form loses more digits than its series leaves out. */
    private static final double SMALL_ANGLE = 0.05;

    /** Made for a registry; all instances are alike. */
    public RoundGate() {}

    @Override
    public TypeId id() {
        return TypeId.of("round-opening", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(DIAMETER);
    }

    @Override
    public GateShape shape(Parameters given) {
        double radius = given.si(DIAMETER) / 2;
        Quantity<Length> highest = given.get(DIAMETER);
        Quantity<Length> closed = Amounts.of(0, highest.getUnit());
        return GateShape.byOpening(closed, highest, openingMeters -> segment(radius, openingMeters))
                .closedAt(closed);
    }

    /** acos(1 − x) is 2·asin(√(x/2)), which keeps its digits near 0. */
    private static double segment(double radius, double height) {
        double angle = 4 * Math.asin(Math.sqrt(Math.min(1, height / (2 * radius))));
        double square = angle * angle;
        double angleMinusSine = angle < SMALL_ANGLE
                ? angle * square / 6 * (1 - square / 20 * (1 - square / 42))
                : angle - Math.sin(angle);
        return radius * radius / 2 * angleMinusSine;
    }
}
