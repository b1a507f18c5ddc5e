package org.gritwright.core.planning;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.Scale;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * How uncertain catches of a given number of revolutions will be, relative to the mass per revolution.
 *
 * <p>A catch scatters by s = √(s₀² + rounding² + count²): its own scatter, the scale's rounding of gross and tare of each
 * container, the count. Of n catches the random part is s ÷ √n. How much they scatter themselves, s₀, is known with the degrees
 * of freedom that it is stated with, or usual, and n − 1 more that the catches will show. The span of the scale, spillage,
 * transient and moisture are the same in every catch, and repeats don't shrink them.
 */
final class CatchModel {
    static final double COVERAGE = 0.95;

    /** The keys of what the caller allows for. */
    private static final Map<Cause, ComponentKey> KEYS = Map.of(
            Cause.SPILLAGE, ErrorSource.SPILLAGE.key(),
            Cause.TRANSIENT, ErrorSource.TRANSIENT.key(),
            Cause.MOISTURE, ErrorSource.MOISTURE.key());

    private static final double LEAST_FACTOR =
            Student.of(Double.POSITIVE_INFINITY).coverageFactor(COVERAGE);

    /** Part of a container by which a mass may exceed what the containers hold: rounding of doubles. */
    private static final double ROUNDING = 1e-9;

    private final CatchSetup setup;
    private final double kilogramsPerRevolution;
    private final double capacityKilograms;
    private final double containerKilograms;
    private final double tareKilograms;
    private final OptionalDouble countRevolutions;
    private final double revolutionsPerTurn;
    private final double ownScatter;
    private final double common;
    private final double fewestRevolutions;
    private final double mostRevolutions;

    /**
     * Catches of a given number of revolutions.
     *
     * @param revolutions the revolutions of each
     * @param containers the fewest containers that hold it
     * @param rounding relative standard uncertainty by the scale's rounding
     * @param count relative standard uncertainty by the count; 0 where nobody knows
     * @param span relative standard uncertainty by the scale's span
     * @param isSpanAssumed whether nobody knows how good the scale is
     */
    record Catch(
            double revolutions, int containers, double rounding, double count, double span, boolean isSpanAssumed) {}

    CatchModel(CatchSetup setup) {
        this.setup = setup;
        this.kilogramsPerRevolution = Amounts.si(DischargePerRevolution.class, setup.expected());
        this.tareKilograms = Amounts.si(Mass.class, setup.containers().tare());
        this.capacityKilograms = Amounts.si(Mass.class, setup.scale().capacity());
        if (!(tareKilograms < capacityKilograms)) {
            throw new InvalidInputException(
                    "tare of a container",
                    "below the capacity of scale " + setup.scale().id() + ", "
                            + Amounts.format(setup.scale().capacity()),
                    Amounts.format(setup.containers().tare()));
        }
        this.containerKilograms =
                Math.min(Amounts.si(Mass.class, setup.containers().holds()), capacityKilograms - tareKilograms);
        this.countRevolutions = setup.count().uncertaintyRevolutions();
        this.revolutionsPerTurn = Amounts.si(Dimensionless.class, setup.count().gearRatio());
        this.ownScatter = Amounts.si(Dimensionless.class, setup.scatter().relativeDeviation());
        this.common =
                common().values().stream().mapToDouble(part -> part * part).sum();
        this.fewestRevolutions = fewestRevolutions();
        this.mostRevolutions = Require.finite(
                "revolutions that fill the containers",
                setup.containers().howMany() * containerKilograms / kilogramsPerRevolution);
        if (Comparison.isAbove(fewestRevolutions, mostRevolutions)) {
            throw new InvalidInputException(
                    "containers",
                    "able to hold the smallest sensible catch, " + text(fewestRevolutions)
                            + (revolutionsPerTurn == 1
                                    ? ""
                                    : " (" + text(fewestRevolutions / revolutionsPerTurn) + " of the conveyor shaft)")
                            + " or "
                            + Rounded.text(mass(fewestRevolutions), 3),
                    Rounded.text(mass(mostRevolutions), 3) + " in all");
        }
    }

    private static String text(double revolutions) {
        return Rounded.text(Amounts.of(revolutions, SpreadingUnits.REVOLUTION), 3);
    }

    /** With fewer a catch would get a finding. */
    private double fewestRevolutions() {
        CatchLimits limits = setup.limits();
        double fewest = Math.max(
                Amounts.si(RevolutionCount.class, limits.fewestRevolutions()) * revolutionsPerTurn,
                limits.fewestDivisions() * Amounts.si(Mass.class, setup.scale().division()) / kilogramsPerRevolution);
        if (setup.count() instanceof PlannedCount.Pulses pulses) {
            return Math.max(
                    fewest,
                    Amounts.si(PulseCount.class, limits.fewestPulses())
                            / Amounts.si(PulsesPerRevolution.class, pulses.perRevolution()));
        }
        return Math.max(
                fewest,
                countRevolutions.orElse(0) / Amounts.si(Dimensionless.class, limits.greatestCountUncertainty()));
    }

    double fewest() {
        return fewestRevolutions;
    }

    double most() {
        return mostRevolutions;
    }

    double kilogramsPerRevolution() {
        return kilogramsPerRevolution;
    }

    Catch at(double revolutions) {
        double kilograms = revolutions * kilogramsPerRevolution;
        int containers = Math.max(1, (int) Math.ceil(kilograms / containerKilograms * (1 - ROUNDING)));
        // A full container may come out a rounding error above the capacity.
        double gross = Math.min(kilograms / containers + tareKilograms, capacityKilograms);
        OptionalDouble limit =
                setup.scale().relativeSpanLimit(Amounts.of(gross, SpreadingUnits.KILOGRAM), setup.weighedOn());
        return new Catch(
                revolutions,
                containers,
                setup.scale().roundingKilograms() * Math.sqrt(2.0 * containers) / kilograms,
                countRevolutions.orElse(0) / revolutions,
                Distribution.RECTANGULAR.standardUncertainty(limit.orElse(Scale.COMMON_SPAN_LIMIT)),
                limit.isEmpty());
    }

    private double scatterSquared(Catch one) {
        return ownScatter * ownScatter + one.rounding() * one.rounding() + one.count() * one.count();
    }

    /** The relative standard uncertainty of the mean of n catches. */
    private double standard(Catch one, int n) {
        return Math.sqrt(scatterSquared(one) / n + common + one.span() * one.span());
    }

    /** A bound that costs no quantile. */
    boolean isAbove(Catch one, int n, double expanded) {
        return Comparison.isAbove(LEAST_FACTOR * standard(one, n), expanded);
    }

    /** The relative expanded uncertainty (95 %), as the budget gives it. */
    double expanded(Catch one, int n) {
        double variance = standard(one, n) * standard(one, n);
        double part = ownScatter * ownScatter / n / variance;
        double effective = part > 0 ? scatterDegrees(n) / (part * part) : Double.POSITIVE_INFINITY;
        return Student.of(Math.max(1, effective)).coverageFactor(COVERAGE) * Math.sqrt(variance);
    }

    /** What is known before, pooled with what the catches will show. */
    private double scatterDegrees(int n) {
        return setup.scatter().degreesOfFreedom() + n - 1;
    }

    CatchSeries series(Catch one, int n) {
        Optional<Quantity<PulseCount>> pulses = setup.count() instanceof PlannedCount.Pulses sensor
                ? Optional.of(Amounts.of(
                        Math.rint(one.revolutions() * Amounts.si(PulsesPerRevolution.class, sensor.perRevolution())),
                        SpreadingUnits.PULSE))
                : Optional.empty();
        return new CatchSeries(
                n,
                Amounts.of(one.revolutions(), SpreadingUnits.REVOLUTION),
                Amounts.of(one.revolutions() / revolutionsPerTurn, SpreadingUnits.REVOLUTION),
                pulses,
                mass(one.revolutions()),
                one.containers(),
                budget(one, n),
                assumptions(one, n));
    }

    private Quantity<Mass> mass(double revolutions) {
        Unit<Mass> unit = UnitSymbol.tradeUnit(Mass.class, setup.expected());
        return Amounts.ofSi(revolutions * kilogramsPerRevolution, unit);
    }

    Budget<Dimensionless> budget(Catch one, int n) {
        List<Component<Dimensionless>> rows = new ArrayList<>();
        double root = Math.sqrt(n);
        Quantity<Dimensionless> scatter = percent(ownScatter / root);
        boolean pooled = n > 1 && !Double.isInfinite(setup.scatter().degreesOfFreedom());
        rows.add(new Component<>(
                (pooled ? ErrorSource.SCATTER : setup.scatterSource()).key(),
                Cause.SCATTER.words(),
                pooled ? Component.Evaluation.TYPE_A : Component.Evaluation.TYPE_B,
                Distribution.NORMAL,
                scatter,
                scatter,
                scatterDegrees(n),
                Optional.empty()));
        rows.add(row(Cause.ROUNDING, ErrorSource.SCALE_ROUNDING.key(), Distribution.NORMAL, one.rounding() / root));
        if (countRevolutions.isPresent()) {
            boolean pulses = setup.count() instanceof PlannedCount.Pulses;
            rows.add(row(
                    Cause.COUNT,
                    ErrorSource.COUNT.key(),
                    pulses && n == 1 ? Distribution.TRIANGULAR : Distribution.NORMAL,
                    one.count() / root));
        }
        ComponentKey ofSpan = ErrorSource.spanOf(setup.scale());
        rows.add(row(Cause.SPAN, ofSpan, Distribution.RECTANGULAR, one.span()));
        common().forEach((cause, uncertainty) -> {
            if (uncertainty > 0) {
                rows.add(row(cause, Objects.requireNonNull(KEYS.get(cause)), Distribution.RECTANGULAR, uncertainty));
            }
        });
        return Budget.of(percent(1), rows);
    }

    private static Component<Dimensionless> row(
            Cause cause, ComponentKey key, Distribution distribution, double relative) {
        return Component.typeB(key, cause.words(), distribution, percent(relative), percent(relative));
    }

    static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }

    private Map<Cause, Double> common() {
        Map<Cause, Double> parts = new EnumMap<>(Cause.class);
        parts.put(Cause.SPILLAGE, setup.limits().allowances().spillageUncertainty());
        parts.put(Cause.TRANSIENT, setup.limits().allowances().transientUncertainty());
        parts.put(Cause.MOISTURE, setup.limits().allowances().moistureUncertainty());
        return parts;
    }

    /** The largest row of the budget. */
    Cause mainCause(Catch one, int n) {
        double root = Math.sqrt(n);
        Map<Cause, Double> parts = common();
        parts.put(Cause.SCATTER, ownScatter / root);
        parts.put(Cause.ROUNDING, one.rounding() / root);
        parts.put(Cause.COUNT, one.count() / root);
        parts.put(Cause.SPAN, one.span());
        return Collections.max(parts.entrySet(), Map.Entry.comparingByValue()).getKey();
    }

    private List<String> assumptions(Catch one, int n) {
        List<String> assumptions = new ArrayList<>();
        String scatter = Amounts.format(setup.scatter().relativeDeviation());
        assumptions.add((setup.limits().allowances().repeatability().isPresent()
                        ? "One catch is taken to scatter by " + scatter + ", as stated"
                        : "Nothing is stated about how catches scatter; one is assumed to scatter by " + scatter
                                + " (common practice, no source)")
                + (n > 1 ? "; the catches themselves will show more." : "; one catch can't show whether it does."));
        if (one.isSpanAssumed()) {
            assumptions.add(
                    "The error of scale " + setup.scale().id()
                            + " is assumed to be at most "
                            + Amounts.format(percent(Scale.COMMON_SPAN_LIMIT))
                            + " (common practice, no source): its accuracy is not known, and there is no test weight near the load.");
        }
        if (countRevolutions.isEmpty()) {
            assumptions.add("The uncertainty of the revolutions is not included: nothing counts them.");
        }
        return assumptions;
    }
}
