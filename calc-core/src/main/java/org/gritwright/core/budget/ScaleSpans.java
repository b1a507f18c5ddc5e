package org.gritwright.core.budget;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.Caught;

/**
 * How far off a weighted sum of catches may be by what they were measured with: by the span of each scale or the marks of each
 * container, in the order of their first catch, and by the density of a liquid that was weighed. The catches of one scale are off
 * together. It grows by one catch at the cost of one pass over the scales. Immutable, thread-safe.
 */
public final class ScaleSpans {
    private final Map<ComponentKey, Limit> limits;
    private final double density;

    /** Takes the map as it is: nobody else has it. */
    private ScaleSpans(Map<ComponentKey, Limit> limits, double density) {
        this.limits = limits;
        this.density = density;
    }

    /**
     * How far off a weighted sum may be by one scale.
     *
     * @param relative Σ weight × relative span limit
     * @param isAssumed whether nobody knows the accuracy of the scale in one of its catches
     */
    public record Limit(double relative, boolean isAssumed) {
        private Limit plus(Limit other) {
            return new Limit(relative + other.relative, isAssumed || other.isAssumed);
        }
    }

    /**
     * The spans by scale.
     *
     * @return the limits by the key of the scale's span
     */
    public Map<ComponentKey, Limit> limits() {
        return Collections.unmodifiableMap(limits);
    }

    /**
     * How uncertain the sum is by the density of a liquid that was weighed, which is taken to be the same in all catches.
     *
     * @return Σ weight × relative standard uncertainty
     */
    public double density() {
        return Math.abs(density);
    }

    /**
     * The spans in several catches.
     *
     * @param caught what was caught, catch by catch
     * @param weights of each catch
     * @return the spans
     */
    public static ScaleSpans of(List<? extends Caught> caught, double[] weights) {
        Map<ComponentKey, Limit> limits = new LinkedHashMap<>();
        double density = 0;
        for (int i = 0; i < weights.length; i++) {
            OptionalDouble known = caught.get(i).relativeSpanLimit();
            limits.merge(
                    ErrorSource.spanOf(caught.get(i)),
                    new Limit(weights[i] * known.orElse(caught.get(i).assumedSpanLimit()), known.isEmpty()),
                    Limit::plus);
            density += weights[i] * caught.get(i).relativeDensityUncertainty();
        }
        return new ScaleSpans(limits, density);
    }

    /**
     * These and others.
     *
     * @param others the spans in other catches
     * @return the spans in all of them
     */
    public ScaleSpans plus(ScaleSpans others) {
        Map<ComponentKey, Limit> all = new LinkedHashMap<>(limits);
        others.limits.forEach((key, limit) -> all.merge(key, limit, Limit::plus));
        return new ScaleSpans(all, density + others.density);
    }

    /**
     * The same as parts of a whole.
     *
     * @param total the sum of the weights
     * @return the spans, divided by it
     */
    public ScaleSpans over(double total) {
        Map<ComponentKey, Limit> parts = new LinkedHashMap<>();
        limits.forEach((key, limit) -> parts.put(key, new Limit(limit.relative / total, limit.isAssumed)));
        return new ScaleSpans(parts, density / total);
    }
}
