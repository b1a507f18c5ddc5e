package org.gritwright.core.conformance;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** An outsider's conveyor type that obeys every law, for others to break one. */
class LawfulConveyor implements ConveyorType {
    static final Parameter<Length> PITCH =
            Parameter.length("pitch", Amounts.of(10, SpreadingUnits.MILLIMETER), Amounts.of(1, SpreadingUnits.METER));
    static final Parameter<Dimensionless> TEETH = Parameter.wholeNumber("teeth", 3, 60);
    static final Parameter<Dimensionless> SHARE = Parameter.of(
                    "share",
                    Dimensionless.class,
                    Amounts.of(0, SpreadingUnits.PERCENT),
                    Amounts.of(50, SpreadingUnits.PERCENT))
            .withDefault(Amounts.of(5, SpreadingUnits.PERCENT));

    @Override
    public TypeId id() {
        return TypeId.of("example.org/lawful", 3);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(PITCH, TEETH, SHARE);
    }

    @Override
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double meters = meters(given);
        return area -> area * meters;
    }

    /** Travel per revolution, in m. */
    static double meters(Parameters given) {
        return given.si(TEETH) * given.si(PITCH) * (1 - given.si(SHARE));
    }
}
