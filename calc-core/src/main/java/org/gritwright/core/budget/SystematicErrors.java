package org.gritwright.core.budget;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The errors that catches have in common and that repeats therefore don't shrink: the spans of their scales, and what the
 * caller allows for.
 *
 * @param <Q> the kind of the result
 * @param components the components of the result's budget
 * @param unknown what can't be put into the budget because nobody knows it
 */
public record SystematicErrors<Q extends Quantity<Q>>(List<Component<Q>> components, List<Argument.Unknown> unknown) {
    private static final String SPAN = "span of scale ";
    private static final String SPILLAGE = "spillage";
    private static final String TRANSIENT = "start-up transient";
    private static final String MOISTURE = "moisture";

    /** Copies the lists. */
    public SystematicErrors {
        components = List.copyOf(components);
        unknown = List.copyOf(unknown);
    }

    /**
     * The common errors of a result that rises in proportion to the caught masses.
     *
     * @param <Q> the kind of the result
     * @param caught what was caught, catch by catch
     * @param shares which part of the result each catch makes up; they sum to 1
     * @param allowances what the caller allows for
     * @param ofRelative what a relative error contributes to the result
     * @return the errors
     */
    public static <Q extends Quantity<Q>> SystematicErrors<Q> of(
            List<CaughtMass> caught,
            double[] shares,
            CatchAllowances allowances,
            DoubleFunction<Quantity<Q>> ofRelative) {
        List<Component<Q>> components = new ArrayList<>();
        List<Argument.Unknown> unknown = new ArrayList<>();
        Map<String, OptionalDouble> spans = new LinkedHashMap<>();
        for (int i = 0; i < shares.length; i++) {
            double share = shares[i];
            OptionalDouble limit = caught.get(i).relativeSpanLimit();
            spans.merge(
                    caught.get(i).scale().id(),
                    limit.isPresent() ? OptionalDouble.of(share * limit.getAsDouble()) : limit,
                    (a, b) -> a.isPresent() && b.isPresent()
                            ? OptionalDouble.of(a.getAsDouble() + b.getAsDouble())
                            : OptionalDouble.empty());
        }
        spans.forEach((id, limit) -> {
            if (limit.isPresent()) {
                // By a line with an intercept a short catch makes up a negative part of the slope.
                double relative = Distribution.RECTANGULAR.standardUncertainty(Math.abs(limit.getAsDouble()));
                components.add(rectangular(SPAN + id, relative, ofRelative));
            } else {
                unknown.add(Argument.Unknown.accuracyOfScale(id));
            }
        });
        add(components, SPILLAGE, allowances.spillageUncertainty(), ofRelative);
        add(components, TRANSIENT, allowances.transientUncertainty(), ofRelative);
        add(components, MOISTURE, allowances.moistureUncertainty(), ofRelative);
        return new SystematicErrors<>(components, unknown);
    }

    /**
     * The names of the errors that two lots of catches, made in the same way, have in common: they are in the difference of
     * neither.
     *
     * @param some what was caught
     * @param others what was caught otherwise
     * @return the spans of the scales that both were weighed on, and all that is allowed for
     */
    public static Set<String> shared(List<CaughtMass> some, List<CaughtMass> others) {
        Set<String> names = spans(some);
        names.retainAll(spans(others));
        names.addAll(List.of(SPILLAGE, TRANSIENT, MOISTURE));
        return Set.copyOf(names);
    }

    private static Set<String> spans(List<CaughtMass> caught) {
        return caught.stream().map(one -> spanOf(one.scale())).collect(Collectors.toCollection(HashSet::new));
    }

    /**
     * The name of the component that a scale's span is.
     *
     * @param scale the scale
     * @return the name
     */
    public static String spanOf(Scale scale) {
        return SPAN + scale.id();
    }

    private static <Q extends Quantity<Q>> void add(
            List<Component<Q>> components, String name, double relative, DoubleFunction<Quantity<Q>> ofRelative) {
        if (relative > 0) {
            components.add(rectangular(name, relative, ofRelative));
        }
    }

    private static <Q extends Quantity<Q>> Component<Q> rectangular(
            String name, double relative, DoubleFunction<Quantity<Q>> ofRelative) {
        return Component.typeB(
                name,
                Distribution.RECTANGULAR,
                Amounts.ofSi(relative, SpreadingUnits.PERCENT),
                ofRelative.apply(relative));
    }
}
