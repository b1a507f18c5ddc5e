package org.gritwright.examples.spreaderplugin;

import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.MILLIMETER;
import static org.gritwright.units.SpreadingUnits.PERCENT;

import java.util.List;
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
 * A floor of slats that carries the load forward by one stroke, all slats together, and then draws the slats back a few
 * at a time under a load that stays where it is. A crank that turns once per stroke is counted.
 *
 * <p>V = A · s · (1 − l), with the open area A, the stroke s and the share l of a stroke by which the load slides back with
 * the slats. Geometry; the share is to be measured.
 */
public final class ReciprocatingFloor implements ConveyorType {
    /** How far the slats move. */
    public static final Parameter<Length> STROKE =
            Parameter.length("stroke", Amounts.of(20, MILLIMETER), Amounts.of(1, METER));

    /** The share of a stroke by which the load slides back. */
    public static final Parameter<Dimensionless> SLIDE_BACK = Parameter.of(
                    "slideBack", Dimensionless.class, Amounts.of(0, PERCENT), Amounts.of(50, PERCENT))
            .withDefault(Amounts.of(0, PERCENT));

    /** The service loader's. */
    public ReciprocatingFloor() {}

    @Override
    public TypeId id() {
        return TypeId.of("example.org/reciprocating-floor", 1);
    }

    @Override
    public int spiLevel() {
        return Spi.LEVEL;
    }

    @Override
    public List<Parameter<?>> parameters() {
        return List.of(STROKE, SLIDE_BACK);
    }

    @Override
    public boolean meteredByGate() {
        return true;
    }

    @Override
    public SweptVolume sweptVolume(Parameters given) {
        double metersPerRevolution = given.si(STROKE) * (1 - given.si(SLIDE_BACK));
        return openAreaSquareMeters -> openAreaSquareMeters * metersPerRevolution;
    }

    @Override
    public FillLimits fillLimits() {
        return new FillLimits(0.3, 0.6, 1.1, 1.3);
    }
}
