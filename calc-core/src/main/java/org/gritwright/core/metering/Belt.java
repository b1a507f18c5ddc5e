package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;

import java.util.List;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/**
 * A belt that carries the material under the gate.
 *
 * <p>V = A · π · (D + t): open area A times travel per revolution, with the drive pulley's diameter D and the belt's
 * thickness t, since the belt's middle runs at half its thickness outside the pulley. Geometry of a belt on a pulley;
 * textbook form. Holds while the belt doesn't slip; the usual apparent fill is common practice, no source.
 */
public final class Belt implements ConveyorType {
    /** Diameter of the drive pulley, lagging included. */
    public static final Parameter<Length> PULLEY_DIAMETER =
            Parameter.length("pulleyDiameter", Amounts.of(40, MILLIMETER), Amounts.of(1, METER));

    /** Thickness of the belt. */
    public static final Parameter<Length> BELT_THICKNESS =
            Parameter.length("beltThickness", Amounts.of(0, MILLIMETER), Amounts.of(50, MILLIMETER));

    private static final FillLimits FILL = new FillLimits(0.35, 0.6, 1.15, 1.3);

    /** Made for a registry; all instances are alike. */
    public Belt() {}

    @Override
    public TypeId id() {
        return TypeId.of("belt", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(PULLEY_DIAMETER, BELT_THICKNESS);
    }

    @Override
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double travelMetersPerRevolution = Math.PI * (given.si(PULLEY_DIAMETER) + given.si(BELT_THICKNESS));
        return openAreaSquareMeters -> openAreaSquareMeters * travelMetersPerRevolution;
    }

    @Override
    public FillLimits fillLimits() {
        return FILL;
    }
}
