package org.gritwright.core.uncertainty;

import static org.gritwright.core.Samples.pounds;

import java.util.Optional;
import javax.measure.quantity.Mass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Made-up components of a mass in pounds. */
final class Components {
    private Components() {}

    static Component<Mass> a(String name, double contribution, double degreesOfFreedom) {
        return Component.typeA(name, pounds(Math.abs(contribution)), pounds(contribution), degreesOfFreedom);
    }

    static Component<Mass> b(String name, Distribution distribution, double contribution) {
        return Component.typeB(name, distribution, pounds(Math.abs(contribution)), pounds(contribution));
    }

    static Component<Mass> normal(String name, double contribution) {
        return b(name, Distribution.NORMAL, contribution);
    }

    /** The same in kilograms. */
    static Component<Mass> inKilograms(Component<Mass> component) {
        return new Component<>(
                component.key(),
                component.name(),
                component.evaluation(),
                component.distribution(),
                component.standardUncertainty(),
                Amounts.of(Amounts.in(component.contribution(), SpreadingUnits.KILOGRAM), SpreadingUnits.KILOGRAM),
                component.degreesOfFreedom(),
                component.group());
    }

    static Component<Mass> times(double factor, Component<Mass> component) {
        return new Component<>(
                component.key(),
                component.name(),
                component.evaluation(),
                component.distribution(),
                component.standardUncertainty(),
                pounds(factor * component.contribution().getValue().doubleValue()),
                component.degreesOfFreedom(),
                Optional.empty());
    }

    static double u(Budget<Mass> budget) {
        return budget.result().standardUncertainty().orElseThrow().getValue().doubleValue();
    }

    static double degrees(Budget<Mass> budget) {
        return budget.result().degreesOfFreedom().orElseThrow();
    }
}
