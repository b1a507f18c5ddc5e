package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.LITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.MILLILITER_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump of which one knows the volume per revolution, from its plate or its data sheet.
 *
 * <p>V = D · (1 − s), with the displacement D and the share s of it that slips back. Slip is nearly the same flow at all speeds,
 * so that its share grows as the pump turns slower, and it grows with pressure and wear: one share holds about the speed and
 * pressure at which it was found. A pump that was measured at several speeds has {@link TablePump} for it.
 */
public final class DisplacementPump implements PumpType {
    /** The volume per revolution if nothing slipped back. */
    public static final Parameter<VolumePerRevolution> DISPLACEMENT = Parameter.of(
            "displacement",
            VolumePerRevolution.class,
            Amounts.of(0.1, MILLILITER_PER_REVOLUTION),
            Amounts.of(10, LITER_PER_REVOLUTION));

    /** The share of the displacement that slips back. */
    public static final Parameter<Dimensionless> SLIP = Parameter.of(
                    "slip", Dimensionless.class, Amounts.of(0, PERCENT), Amounts.of(60, PERCENT))
            .withDefault(Amounts.of(0, PERCENT));

    /** Made for a registry; all instances are alike. */
    public DisplacementPump() {}

    @Override
    public TypeId id() {
        return TypeId.of("displacement-pump", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(DISPLACEMENT, SLIP);
    }

    @Override
    public PumpOutput output(Parameters given) {
        double cubicMetersPerRevolution = given.si(DISPLACEMENT) * (1 - given.si(SLIP));
        return PumpOutput.of(given.get(DISPLACEMENT), revolutionsPerSecond -> cubicMetersPerRevolution);
    }
}
