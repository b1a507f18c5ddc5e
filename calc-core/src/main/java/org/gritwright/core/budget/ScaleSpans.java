package org.gritwright.core.budget;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.CaughtMass;

/**
 * How far off a weighted sum of catches may be by the spans of their scales, scale by scale in the order of their first catch:
 * the catches of one scale are off together. It grows by one catch at the cost of one pass over the scales. Immutable,
 * thread-safe.
 */
public final class ScaleSpans {
    /** Of no catch. */
    public static final ScaleSpans NONE = new ScaleSpans(Map.of());

    private final Map<ComponentKey, OptionalDouble> limits;

    /** Takes the map as it is: nobody else has it. */
    private ScaleSpans(Map<ComponentKey, OptionalDouble> limits) {
        this.limits = limits;
    }

    /**
     * The spans by scale.
     *
     * @return Σ weight × relative span limit by the key of the scale's span; none where nobody knows the limit of one of its catches
     */
    public Map<ComponentKey, OptionalDouble> limits() {
        return Collections.unmodifiableMap(limits);
    }

    /**
     * The spans in several catches.
     *
     * @param caught what was caught, catch by catch
     * @param weights of each catch
     * @return the spans
     */
    public static ScaleSpans of(List<CaughtMass> caught, double[] weights) {
        Map<ComponentKey, OptionalDouble> limits = new LinkedHashMap<>();
        for (int i = 0; i < weights.length; i++) {
            add(limits, caught.get(i), weights[i]);
        }
        return new ScaleSpans(limits);
    }

    /**
     * The same with one more catch.
     *
     * @param caught what was caught
     * @param weight its weight
     * @return the spans
     */
    public ScaleSpans plus(CaughtMass caught, double weight) {
        Map<ComponentKey, OptionalDouble> more = new LinkedHashMap<>(limits);
        add(more, caught, weight);
        return new ScaleSpans(more);
    }

    private static void add(Map<ComponentKey, OptionalDouble> limits, CaughtMass caught, double weight) {
        OptionalDouble limit = caught.relativeSpanLimit();
        limits.merge(
                ErrorSource.spanOf(caught.scale()),
                limit.isPresent() ? OptionalDouble.of(weight * limit.getAsDouble()) : limit,
                (a, b) -> a.isPresent() && b.isPresent()
                        ? OptionalDouble.of(a.getAsDouble() + b.getAsDouble())
                        : OptionalDouble.empty());
    }

    /**
     * The same as parts of a whole.
     *
     * @param total the sum of the weights
     * @return the spans, divided by it
     */
    public ScaleSpans over(double total) {
        Map<ComponentKey, OptionalDouble> parts = new LinkedHashMap<>();
        limits.forEach((key, limit) ->
                parts.put(key, limit.isPresent() ? OptionalDouble.of(limit.getAsDouble() / total) : limit));
        return new ScaleSpans(parts);
    }
}
