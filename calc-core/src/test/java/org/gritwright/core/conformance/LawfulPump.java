package org.gritwright.core.conformance;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.PumpOutput;
import org.gritwright.core.spi.PumpType;
import org.gritwright.core.spi.PumpedVolume;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/** A pump type that obeys the laws: a share of its displacement slips back at its lowest speed, and the same flow at any other. */
class LawfulPump implements PumpType {
    static final Parameter<VolumePerRevolution> SIZE = Parameter.of(
            "size",
            VolumePerRevolution.class,
            Amounts.of(1, SpreadingUnits.MILLILITER_PER_REVOLUTION),
            Amounts.of(500, SpreadingUnits.MILLILITER_PER_REVOLUTION));
    static final Parameter<RotationalSpeed> TOP = Parameter.of(
            "top",
            RotationalSpeed.class,
            Amounts.of(100, SpreadingUnits.REVOLUTION_PER_MINUTE),
            Amounts.of(3000, SpreadingUnits.REVOLUTION_PER_MINUTE));
    static final Parameter<Dimensionless> SLIP = Parameter.of(
                    "slip",
                    Dimensionless.class,
                    Amounts.of(0, SpreadingUnits.PERCENT),
                    Amounts.of(50, SpreadingUnits.PERCENT))
            .withDefault(Amounts.of(5, SpreadingUnits.PERCENT));

    @Override
    public TypeId id() {
        return TypeId.of("example.org/lawful-pump", 2);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(SIZE, TOP, SLIP);
    }

    @Override
    public PumpOutput output(Parameters given) {
        return output(given, volume(given.si(SIZE), given.si(SLIP)));
    }

    /** From 1 rev/s. */
    static PumpOutput output(Parameters given, PumpedVolume volume) {
        given.si(SLIP);
        return PumpOutput.of(given.get(SIZE), volume)
                .within(Amounts.of(1, SpreadingUnits.REVOLUTION_PER_SECOND), given.get(TOP));
    }

    static PumpedVolume volume(double size, double slip) {
        return speed -> size * (1 - slip / speed);
    }
}
