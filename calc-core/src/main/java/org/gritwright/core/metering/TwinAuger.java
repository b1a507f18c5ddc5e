package org.gritwright.core.metering;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Two equal screws side by side that turn together; no gate meters them.
 *
 * <p>V = f · 2 · π/4 · (D² − d²) · pitch, twice a single {@link Auger} times the overlap factor f: 1 for screws that
 * don't mesh, less where the flights of one turn within the space of the other. The factor is the union of the two
 * swept cylinders over their sum; textbook form of the single screw, the factor by definition. Holds as for a single
 * screw.
 */
public final class TwinAuger implements ConveyorType {
    /** The room that both screws sweep together over the sum of what each would sweep alone. */
    public static final Parameter<Dimensionless> OVERLAP_FACTOR = Parameter.of(
                    "overlapFactor",
                    Dimensionless.class,
                    Amounts.of(0.5, SpreadingUnits.ONE),
                    Amounts.of(1, SpreadingUnits.ONE))
            .withDefault(Amounts.of(1, SpreadingUnits.ONE));

    /** Made for a registry; all instances are alike. */
    public TwinAuger() {}

    @Override
    public TypeId id() {
        return TypeId.of("twin-auger", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(Auger.SCREW_DIAMETER, Auger.SHAFT_DIAMETER, Auger.PITCH, OVERLAP_FACTOR);
    }

    @Override
    public boolean meteredByGate() {
        return false;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double cubicMetersPerRevolution = 2 * Auger.screwCubicMetersPerRevolution(given) * given.si(OVERLAP_FACTOR);
        return openAreaSquareMeters -> cubicMetersPerRevolution;
    }

    @Override
    public FillLimits fillLimits() {
        return Auger.FILL;
    }
}
