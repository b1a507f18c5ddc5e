package org.gritwright.core.budget;

import static org.gritwright.core.finding.Argument.several;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.Variance;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * A budget of catches while it is drawn up, and the one place that makes its components: their keys, names and
 * distributions. Callers say what contributes how much, as an SI number of the result's kind.
 *
 * @param <Q> the kind of the result
 */
public final class BudgetDraft<Q extends Quantity<Q>> {
    private final Unit<Q> unit;
    private final List<Component<Q>> components = new ArrayList<>();
    private final List<Argument.Unknown> unknown = new ArrayList<>();
    private final List<Argument.Unknown> assumed = new ArrayList<>();

    /**
     * An empty draft.
     *
     * @param unit the result's unit
     */
    public BudgetDraft(Unit<Q> unit) {
        this.unit = unit;
    }

    private Quantity<Q> contribution(double si) {
        return Amounts.ofSi(si, unit);
    }

    private void addTypeA(ErrorSource source, Quantity<?> input, Quantity<Q> contribution, double degreesOfFreedom) {
        ComponentKey key = source.key();
        components.add(Component.typeA(key, source.name(key), input, contribution, degreesOfFreedom));
    }

    private void addTypeB(ErrorSource source, Distribution distribution, Quantity<?> input, Quantity<Q> contribution) {
        addTypeB(source, source.key(), distribution, input, contribution);
    }

    private void addTypeB(
            ErrorSource source,
            ComponentKey key,
            Distribution distribution,
            Quantity<?> input,
            Quantity<Q> contribution) {
        components.add(Component.typeB(key, source.name(key), distribution, input, contribution));
    }

    /**
     * What the catches' scatter contributes, or their resolution where that is more. The scatter already holds the rounding
     * of scale and count, so it stands for both, but never below what those two alone give.
     *
     * @param source {@link ErrorSource#SCATTER} or {@link ErrorSource#CURVE}
     * @param scatter what the scatter contributes
     * @param degreesOfFreedom of the scatter
     * @param resolution what the rounding of scale and count contributes
     */
    public void addScatter(ErrorSource source, Quantity<Q> scatter, double degreesOfFreedom, double resolution) {
        Quantity<Q> rounded = contribution(resolution);
        if (Amounts.in(scatter, unit) >= Amounts.in(rounded, unit)) {
            addTypeA(source, scatter, scatter, degreesOfFreedom);
        } else {
            addResolution(resolution);
        }
    }

    /** As the other form, with the contribution of the scatter as a number. */
    public void addScatter(ErrorSource source, double scatter, double degreesOfFreedom, double resolution) {
        addScatter(source, contribution(scatter), degreesOfFreedom, resolution);
    }

    /** The rounding of scale and count together. */
    public void addResolution(double contribution) {
        Quantity<Q> rounded = contribution(contribution);
        addTypeB(ErrorSource.RESOLUTION, Distribution.NORMAL, rounded, rounded);
    }

    /**
     * The rounding of what was read. One reading is rectangular, two equal ones together are triangular; more of them are close
     * to normal.
     *
     * @param first what was caught first
     * @param isSingle whether it is the only catch
     * @param contribution of all catches
     */
    public void addRounding(Caught first, boolean isSingle, double contribution) {
        addTypeB(
                first.isWeighed() ? ErrorSource.SCALE_ROUNDING : ErrorSource.CONTAINER_READING,
                isSingle ? ofReadings(first.readings()) : Distribution.NORMAL,
                first.readingUncertainty(),
                contribution(contribution));
    }

    private static Distribution ofReadings(int readings) {
        if (readings == 1) {
            return Distribution.RECTANGULAR;
        }
        return readings == 2 ? Distribution.TRIANGULAR : Distribution.NORMAL;
    }

    /**
     * The count of revolutions.
     *
     * @param first the first catch, with a count whose uncertainty is known
     * @param isSingle whether it is the only catch
     * @param contribution of all catches
     */
    public void addCount(Observation first, boolean isSingle, double contribution) {
        boolean inPulses = first.counted().filter(ShaftCount::isInPulses).isPresent();
        addTypeB(
                ErrorSource.COUNT,
                isSingle && inPulses ? Distribution.TRIANGULAR : Distribution.NORMAL,
                Amounts.ofSi(first.uncertaintyRevolutions().orElseThrow(), SpreadingUnits.REVOLUTION),
                contribution(contribution));
    }

    /**
     * The step of a mass that is read from a display.
     *
     * @param reading the standard uncertainty of one reading
     * @param isSingle whether there is one catch only
     * @param contribution of all catches
     */
    public void addDisplayStep(Quantity<?> reading, boolean isSingle, double contribution) {
        addTypeB(
                ErrorSource.DISPLAY_STEP,
                isSingle ? Distribution.RECTANGULAR : Distribution.NORMAL,
                reading,
                contribution(contribution));
    }

    /**
     * How single catches scatter beyond the rounding of scale and count: as stated or usual, pooled with what the catches show
     * themselves. Where an F test shows that they scatter more, they hold alone.
     *
     * @param allowances what is stated
     * @param ofRelative what a relative standard deviation of single catches contributes
     * @param shown the square of what the catches' own scatter contributes, with the rounding in it; none for one catch
     * @param rounding the square of what the rounding of scale and count contributes to that
     */
    public void addScatter(
            CatchAllowances allowances, DoubleUnaryOperator ofRelative, Optional<Variance> shown, double rounding) {
        Repeatability known = allowances.scatter();
        double contributed = ofRelative.applyAsDouble(known.relative());
        Variance stated = new Variance(contributed * contributed, known.degreesOfFreedom());
        Optional<Variance> own =
                shown.map(all -> new Variance(Math.max(0, all.value() - rounding), all.degreesOfFreedom()));
        boolean refuted = shown.filter(new Variance(stated.value() + rounding, stated.degreesOfFreedom())::isExceededBy)
                .isPresent();
        if (own.isPresent() && (refuted || !Double.isInfinite(stated.degreesOfFreedom()))) {
            Variance scatter = refuted ? own.get() : stated.pooledWith(own.get());
            Quantity<Q> together = contribution(Math.sqrt(scatter.value()));
            addTypeA(ErrorSource.SCATTER, together, together, scatter.degreesOfFreedom());
        } else {
            addRepeatability(allowances, contribution(contributed));
        }
        if (allowances.repeatability().isEmpty()
                && shown.filter(all -> all.degreesOfFreedom() >= known.degreesOfFreedom())
                        .isEmpty()) {
            assumed.add(Argument.Unknown.of(Term.SCATTER));
        }
    }

    private void addRepeatability(CatchAllowances allowances, Quantity<Q> contribution) {
        Repeatability known = allowances.scatter();
        ErrorSource source =
                allowances.repeatability().isPresent() ? ErrorSource.REPEATABILITY : ErrorSource.ASSUMED_SCATTER;
        if (Double.isInfinite(known.degreesOfFreedom())) {
            addTypeB(source, Distribution.NORMAL, known.relativeDeviation(), contribution);
        } else {
            addTypeA(source, known.relativeDeviation(), contribution, known.degreesOfFreedom());
        }
    }

    /**
     * The errors that the catches have in common, so that repeats don't shrink them: the spans of their scales or the marks of their
     * containers, the density of a weighed liquid, and what the caller allows for. The result rises in proportion to the caught masses.
     *
     * @param spans the spans of the scales, as parts of the result
     * @param allowances what the caller allows for
     * @param moisture the relative standard uncertainty by the moisture; 0 where masses of the same material are compared
     * @param perRelative what a relative error of 1 contributes
     */
    public void addCommon(ScaleSpans spans, CatchAllowances allowances, double moisture, double perRelative) {
        spans.limits().forEach((key, limit) -> {
            // With an intercept, a short catch contributes negatively to the slope.
            double relative = Distribution.RECTANGULAR.standardUncertainty(Math.abs(limit.relative()));
            addCommon(ErrorSource.of(key).orElseThrow(), key, relative, perRelative);
            if (limit.isAssumed()) {
                String subject = key.subject().orElseThrow();
                assumed.add(
                        ErrorSource.of(key)
                                        .filter(ErrorSource.CONTAINER_MARKS::equals)
                                        .isPresent()
                                ? Argument.Unknown.toleranceOfContainer(subject)
                                : Argument.Unknown.accuracyOfScale(subject));
            }
        });
        if (spans.density() > 0) {
            addTypeB(
                    ErrorSource.LIQUID_DENSITY,
                    Distribution.NORMAL,
                    Amounts.ofSi(spans.density(), SpreadingUnits.PERCENT),
                    contribution(spans.density() * perRelative));
        }
        addAllowance(ErrorSource.SPILLAGE, allowances.spillageUncertainty(), perRelative);
        addAllowance(ErrorSource.TRANSIENT, allowances.transientUncertainty(), perRelative);
        addAllowance(ErrorSource.MOISTURE, moisture, perRelative);
    }

    private void addAllowance(ErrorSource source, double relative, double perRelative) {
        if (relative > 0) {
            addCommon(source, source.key(), relative, perRelative);
        }
    }

    private void addCommon(ErrorSource source, ComponentKey key, double relative, double perRelative) {
        addTypeB(
                source,
                key,
                Distribution.RECTANGULAR,
                Amounts.ofSi(relative, SpreadingUnits.PERCENT),
                contribution(relative * perRelative));
    }

    /** A component that was made elsewhere. */
    public void add(Component<Q> component) {
        components.add(component);
    }

    /** What is not in the budget because nobody knows it. */
    public void addUnknown(Term what) {
        unknown.add(Argument.Unknown.of(what));
    }

    /** The components so far, in the order in which they were added. */
    public List<Component<Q>> components() {
        return List.copyOf(components);
    }

    /** What is assumed in the budget, and what is not in it, because nobody has stated it. */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        if (!assumed.isEmpty()) {
            findings.add(Finding.of(FindingCode.UNCERTAINTY_ASSUMED, Map.of("unknown", several(assumed))));
        }
        if (!unknown.isEmpty()) {
            findings.add(Finding.of(FindingCode.UNCERTAINTY_INCOMPLETE, Map.of("unknown", several(unknown))));
        }
        return findings;
    }

    /** The budget of a value. */
    public Budget<Q> budget(Quantity<Q> value) {
        return Budget.of(value, components);
    }
}
