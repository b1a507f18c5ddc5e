package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.SQUARE_CENTIMETER;

import java.util.List;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
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
 * A roller with pockets under the hopper; each pocket fills and empties once per revolution, and no gate meters it.
 *
 * <p>V = n · a · l, with n pockets of cross-section a and length l. Geometry; textbook form. Holds while the pockets fill
 * and empty whole: damp material sticks in them, and a fast roller leaves them no time. The usual apparent fill is common
 * practice, no source.
 */
public final class FeedRoller implements ConveyorType {
    /** Number of pockets around the roller. */
    public static final Parameter<Dimensionless> POCKETS = Parameter.wholeNumber("pockets", 1, 200);

    /** Cross-section of one pocket. */
    public static final Parameter<Area> POCKET_AREA = Parameter.of(
            "pocketArea", Area.class, Amounts.of(0.1, SQUARE_CENTIMETER), Amounts.of(500, SQUARE_CENTIMETER));

    /** Length of the pockets along the roller. */
    public static final Parameter<Length> ROLLER_LENGTH =
            Parameter.length("rollerLength", Amounts.of(50, MILLIMETER), Amounts.of(3, METER));

    private static final FillLimits FILL = new FillLimits(0.25, 0.5, 1.05, 1.25);

    /** Made for a registry; all instances are alike. */
    public FeedRoller() {}

    @Override
    public TypeId id() {
        return TypeId.of("feed-roller", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(POCKETS, POCKET_AREA, ROLLER_LENGTH);
    }

    @Override
    public boolean meteredByGate() {
        return false;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double cubicMetersPerRevolution = given.si(POCKETS) * given.si(POCKET_AREA) * given.si(ROLLER_LENGTH);
        return openAreaSquareMeters -> cubicMetersPerRevolution;
    }

    @Override
    public FillLimits fillLimits() {
        return FILL;
    }
}
