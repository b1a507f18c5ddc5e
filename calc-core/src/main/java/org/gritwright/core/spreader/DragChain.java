package org.gritwright.core.spreader;

import static org.gritwright.units.SpreadingUnits.METRE;
import static org.gritwright.units.SpreadingUnits.MILLIMETRE;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.ConveyorType;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SweptVolume;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/**
 * A chain with cross bars that drags material under the gate.
 *
 * <p>V = A · z · p: open area A times travel per revolution, which is the number of sprocket teeth z times the chain's
 * pitch p and not π times the pitch diameter (6 teeth × 2.609 in = 15.654 in; the pitch circle would give 16.393 in,
 * 4.72 % too much). Geometry of a chain on a sprocket; textbook form.
 */
public final class DragChain implements ConveyorType {
    /** Teeth of the drive sprocket that pull the chain. */
    public static final Parameter<Dimensionless> TEETH = Parameter.wholeNumber("teeth", 3, 60);

    /** Pitch of the chain: the travel per tooth. */
    public static final Parameter<Length> CHAIN_PITCH =
            Parameter.length("chainPitch", Amounts.of(10, MILLIMETRE), Amounts.of(0.5, METRE));

    /** Made for a registry; all instances are alike. */
    public DragChain() {}

    @Override
    public TypeId id() {
        return TypeId.of("drag-chain", 1);
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(TEETH, CHAIN_PITCH);
    }

    @Override
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double travelMetresPerRevolution = given.si(TEETH) * given.si(CHAIN_PITCH);
        return openAreaSquareMetres -> openAreaSquareMetres * travelMetresPerRevolution;
    }
}
