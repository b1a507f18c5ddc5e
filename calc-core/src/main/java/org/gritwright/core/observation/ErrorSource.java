package org.gritwright.core.observation;

import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.weighing.Caught;
import org.gritwright.core.weighing.Graduate;
import org.gritwright.core.weighing.Scale;

/**
 * Where the uncertainty of what is caught comes from: the components of this library's budgets. A component is found by its
 * {@link #key}, for example {@code budget.component(ErrorSource.SPILLAGE.key())}; the codes of the keys are stable, the
 * printed words are not.
 */
public enum ErrorSource {
    /** How the catches scatter, as they show themselves, pooled with what was known before unless that is refuted. */
    SCATTER("scatter", "scatter of the catches", false),
    /** How single catches are assumed to scatter where nobody has stated it: {@link Repeatability#COMMON}. */
    ASSUMED_SCATTER("assumed-scatter", "scatter of catches, assumed", false),
    /** How single catches scatter, as is known from experience: a {@link Repeatability}. */
    REPEATABILITY("repeatability", "scatter of catches, from experience", false),
    /** The scatter of the catches about a discharge curve. */
    CURVE("curve", "curve through the catches", false),
    /** The rounding of scale and count together. */
    RESOLUTION("resolution", "resolution of scale and count", false),
    /** The rounding of the scale. */
    SCALE_ROUNDING("scale-rounding", "rounding of the scale", false),
    /** The count of revolutions. */
    COUNT("count", "count of revolutions", false),
    /** The step of a mass that is read from a display. */
    DISPLAY_STEP("display-step", "step of the displayed mass", false),
    /** The span error of one scale, which is the key's subject. */
    SCALE_SPAN("scale-span", "span of scale", true),
    /** The reading of a graduated container. */
    CONTAINER_READING("container-reading", "reading of the container", false),
    /** How far off the marks of one graduated container may be; it is the key's subject. */
    CONTAINER_MARKS("container-marks", "marks of container", true),
    /** The density with which a weighed liquid became a volume. */
    LIQUID_DENSITY("liquid-density", "density of the liquid", true),
    /** What misses the containers. */
    SPILLAGE("spillage", "spillage", true),
    /** What start and stop leave in a catch. */
    TRANSIENT("start-up-transient", "start-up transient", true),
    /** The moisture of the material. */
    MOISTURE("moisture", "moisture", true),
    /** The reading of the gate, where the gate is set again. */
    GATE_READING("gate-reading", "reading of the gate", false);

    private final String code;
    private final String words;
    private final boolean common;

    ErrorSource(String code, String words, boolean common) {
        this.code = code;
        this.words = words;
        this.common = common;
    }

    /**
     * The key of this source's component.
     *
     * @return the key; for {@link #SCALE_SPAN} and {@link #CONTAINER_MARKS} see {@link #spanOf(Caught)}
     */
    public ComponentKey key() {
        return ComponentKey.of(code);
    }

    /**
     * The key of the component for the span of a scale.
     *
     * @param scale the scale
     * @return the key, with the scale's id as its subject
     */
    public static ComponentKey spanOf(Scale scale) {
        return ComponentKey.of(SCALE_SPAN.code, scale.id());
    }

    /**
     * The key of the component for the marks of a container.
     *
     * @param container the container
     * @return the key, with the container's id as its subject
     */
    public static ComponentKey marksOf(Graduate container) {
        return ComponentKey.of(CONTAINER_MARKS.code, container.id());
    }

    /**
     * The key of the component for what was measured with: the span of a scale, the marks of a container.
     *
     * @param caught what was caught
     * @return the key, with the id of the scale or container as its subject
     */
    public static ComponentKey spanOf(Caught caught) {
        return ComponentKey.of((caught.isWeighed() ? SCALE_SPAN : CONTAINER_MARKS).code, caught.instrument());
    }

    /**
     * The source that a key is of.
     *
     * @param key the key of a component
     * @return the source; none for a key of your own
     */
    public static Optional<ErrorSource> of(ComponentKey key) {
        Objects.requireNonNull(key, "key");
        return Arrays.stream(values())
                .filter(source -> source.code.equals(key.code()))
                .findFirst();
    }

    /**
     * The name of this source's component, as it is printed and recorded.
     *
     * @param key the key of the component
     * @return for example "span of scale S-1"
     */
    public String name(ComponentKey key) {
        return key.subject().map(about -> words + " " + about).orElse(words);
    }

    /**
     * Whether all catches of a series have this error in common, so that more catches don't reduce it.
     *
     * @return true for the span of a scale, the marks of a container, the density of a liquid, spillage, start-up transient and moisture
     */
    public boolean isCommonToCatches() {
        return common;
    }
}
