package org.gritwright.core.blend;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** The budget of a share, input by input; without a result as soon as the uncertainty of an input isn't known. */
final class Contributions {
    private final List<Component<Dimensionless>> components = new ArrayList<>();
    private boolean complete = true;

    /** An input, with the change of the share per SI unit of it. */
    <Q extends Quantity<Q>> void add(String name, Class<Q> kind, Measured<Q> input, double sensitivity) {
        if (input.standardUncertainty().isEmpty()) {
            complete = false;
            return;
        }
        Quantity<Q> u = input.standardUncertainty().get();
        components.add(Component.typeA(
                name,
                u,
                percent(Amounts.si(kind, u) * sensitivity),
                input.degreesOfFreedom().orElseThrow()));
    }

    /** A moisture, with the change of the share per dry part; equally probable anywhere between its limits. */
    void add(String name, Moisture moisture, double sensitivity) {
        double u = Distribution.RECTANGULAR.standardUncertainty(moisture.relativeHalfWidth() * moisture.dryPart());
        limits(name, percent(u), u * sensitivity);
    }

    /** A reading rounded to a division, with the change of the share per SI unit of it. */
    <Q extends Quantity<Q>> void rounded(String name, Class<Q> kind, Quantity<Q> division, double sensitivity) {
        double u = Distribution.RECTANGULAR.standardUncertainty(Amounts.si(kind, division) / 2);
        Unit<Q> unit = division.getUnit();
        limits(name, Amounts.ofSi(u, unit), u * sensitivity);
    }

    private void limits(String name, Quantity<?> u, double contribution) {
        components.add(Component.typeB(name, Distribution.RECTANGULAR, u, percent(contribution)));
    }

    Measured<Dimensionless> of(double share) {
        return complete ? Budget.of(percent(share), components).result() : Measured.once(percent(share));
    }

    static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }
}
