package org.gritwright.core.metering;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;

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

/**
 * A chain with cross bars that drags material under the gate.
 *
 * <p>V = A · z · p: open area A times travel per revolution, which is the number of sprocket teeth z times the chain's
 * pitch p and not π times the pitch diameter (6 teeth × 2.609 in = 15.654 in; the pitch circle would give 16.393 in,
 * 4.72 % too much). Geometry of a chain on a sprocket; textbook form. Bars in the open area take up room that the
 * material then lacks: with their share s of the area, V = A · z · p · (1 − s); the default 0 counts them as part of
 * the fill.
 *
 * <p>Holds while the chain doesn't slip on the sprocket and the layer under the gate moves with the bars; a layer that is
 * much higher than the bars shears and shows as a low apparent fill.
 */
public final class DragChain implements ConveyorType {
    /** Teeth of the drive sprocket that pull the chain. */
    public static final Parameter<Dimensionless> TEETH = Parameter.wholeNumber("teeth", 3, 60);

    /** Pitch of the chain: the travel per tooth. */
    public static final Parameter<Length> CHAIN_PITCH =
            Parameter.length("chainPitch", Amounts.of(10, MILLIMETER), Amounts.of(0.5, METER));

    /** The share of the open area that the bars take, on average over the chain's length. */
    public static final Parameter<Dimensionless> BAR_SHARE = Parameter.of(
                    "barShare",
                    Dimensionless.class,
                    Amounts.of(0, SpreadingUnits.PERCENT),
                    Amounts.of(50, SpreadingUnits.PERCENT))
            .withDefault(Amounts.of(0, SpreadingUnits.PERCENT));

    /** Made for a registry; all instances are alike. */
    public DragChain() {}

    @Override
    public TypeId id() {
        return TypeId.of("drag-chain", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(TEETH, CHAIN_PITCH, BAR_SHARE);
    }

    @Override
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double travelMetersPerRevolution = given.si(TEETH) * given.si(CHAIN_PITCH) * (1 - given.si(BAR_SHARE));
        return openAreaSquareMeters -> openAreaSquareMeters * travelMetersPerRevolution;
    }
}
