package org.gritwright.core.solution;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;

/** The budget of a result, input by input; without an uncertainty as soon as that of an input isn't known. */
final class Contributions<R extends Quantity<R>> {
    private final Unit<R> unit;
    private final List<Component<R>> components = new ArrayList<>();
    private boolean complete = true;

    /** In a unit that differs from SI by a factor only. */
    Contributions(Unit<R> unit) {
        this.unit = unit;
    }

    /** An input, with the change of the result in SI per SI unit of it. */
    <Q extends Quantity<Q>> Contributions<R> add(String name, Class<Q> kind, Measured<Q> input, double sensitivity) {
        if (input.standardUncertainty().isEmpty()) {
            complete = false;
            return this;
        }
        Quantity<Q> u = input.standardUncertainty().get();
        components.add(Component.typeA(
                name,
                u,
                Amounts.ofSi(Amounts.si(kind, u) * sensitivity, unit),
                input.degreesOfFreedom().orElseThrow()));
        return this;
    }

    /** What is equally probable anywhere within half a width of the result, in SI. */
    Contributions<R> limits(String name, double halfWidth) {
        Quantity<R> u = Amounts.ofSi(Distribution.RECTANGULAR.standardUncertainty(Math.abs(halfWidth)), unit);
        components.add(Component.typeB(name, Distribution.RECTANGULAR, u, u));
        return this;
    }

    Measured<R> of(double si) {
        Quantity<R> value = Amounts.ofSi(si, unit);
        return complete ? Budget.of(value, components).result() : Measured.once(value);
    }

    static <Q extends Quantity<Q>> Measured<Q> exactly(Quantity<Q> value) {
        return Measured.of(value, Amounts.of(0, value.getUnit()), Double.POSITIVE_INFINITY);
    }
}
