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
import org.gritwright.units.InvalidInputException;

/**
 * A single screw in a trough under the hopper, which fills itself; no gate meters it.
 *
 * <p>V = π/4 · (D² − d²) · pitch, with screw diameter D and shaft diameter d; textbook form. A metering auger under a
 * hopper runs nearly full; the trough loadings of conveying augers (15, 30, 45 %) are a different matter. Holds for a
 * screw that is covered along its inlet, and at speeds at which the flights fill; the usual apparent fill is common
 * practice, no source.
 */
public final class Auger implements ConveyorType {
    /** Outer diameter of the screw. */
    public static final Parameter<Length> SCREW_DIAMETER =
            Parameter.length("screwDiameter", Amounts.of(30, MILLIMETER), Amounts.of(1, METER));

    /** Diameter of the shaft that carries the screw, smaller than the screw. */
    public static final Parameter<Length> SHAFT_DIAMETER =
            Parameter.length("shaftDiameter", Amounts.of(0, MILLIMETER), Amounts.of(0.5, METER));

    /** Advance of the screw per revolution. */
    public static final Parameter<Length> PITCH =
            Parameter.length("pitch", Amounts.of(10, MILLIMETER), Amounts.of(1, METER));

    /** The twin auger's too. */
    static final FillLimits FILL = new FillLimits(0.25, 0.5, 1.05, 1.25);

    /** Made for a registry; all instances are alike. */
    public Auger() {}

    @Override
    public TypeId id() {
        return TypeId.of("auger", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(SCREW_DIAMETER, SHAFT_DIAMETER, PITCH);
    }

    @Override
    public boolean meteredByGate() {
        return false;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double cubicMetersPerRevolution = screwCubicMetersPerRevolution(given);
        return openAreaSquareMeters -> cubicMetersPerRevolution;
    }

    /** One screw's swept volume, shared with the twin auger, whose parameters hold these three. */
    static double screwCubicMetersPerRevolution(Parameters given) {
        double screw = given.si(SCREW_DIAMETER);
        double shaft = given.si(SHAFT_DIAMETER);
        if (!(shaft < screw)) {
            throw new InvalidInputException(
                    SHAFT_DIAMETER.name(),
                    "smaller than " + SCREW_DIAMETER.name() + ", " + Amounts.format(given.get(SCREW_DIAMETER)),
                    Amounts.format(given.get(SHAFT_DIAMETER)));
        }
        return Math.PI / 4 * (screw * screw - shaft * shaft) * given.si(PITCH);
    }

    @Override
    public FillLimits fillLimits() {
        return FILL;
    }
}
