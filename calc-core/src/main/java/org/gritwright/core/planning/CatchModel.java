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
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.PulseCount;
import org.gritwright.units.quantity.PulsesPerRevolution;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * How uncertain catches of a given number of revolutions will be, relative to the mass or volume per revolution.
 *
 * <p>A catch scatters by s = √(s₀² + rounding² + count²): its own scatter, the scale's rounding of gross and tare of each
 * container or that of each fill of a graduated container, the count. Of n catches the random part is s ÷ √n. How much they scatter themselves, s₀, is known with the degrees
 * of freedom that it is stated with, or usual, and n − 1 more that the catches will show. The span of the scale, the marks
 * of a graduated container, the density of a liquid, spillage, transient and moisture are the same in every catch, and repeats don't shrink them.
 */
final class CatchModel {
    static final double COVERAGE = 0.95;

    /** The keys of what all catches have in common beside the scale or container. */
    private static final Map<Cause, ComponentKey> KEYS = Map.of(
            Cause.DENSITY, ErrorSource.LIQUID_DENSITY.key(),
            Cause.SPILLAGE, ErrorSource.SPILLAGE.key(),
            Cause.TRANSIENT, ErrorSource.TRANSIENT.key(),
            Cause.MOISTURE, ErrorSource.MOISTURE.key());

    private static final double LEAST_FACTOR =
            Student.of(Double.POSITIVE_INFINITY).coverageFactor(COVERAGE);

    private final CatchSetup setup;
    private final AmountModel amount;
    private final double perRevolution;
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
     * @param rounding relative standard uncertainty by the rounding of the scale or of the container
     * @param count relative standard uncertainty by the count; 0 where nobody knows
     * @param span relative standard uncertainty by the scale's span or the container's marks
     * @param isSpanAssumed whether nobody knows how good the scale or container is
     */
    record Catch(
            double revolutions, int containers, double rounding, double count, double span, boolean isSpanAssumed) {}

    CatchModel(CatchSetup setup) {
        this.setup = setup;
        this.amount = AmountModel.of(setup.amount());
        this.perRevolution = setup.expectedSi();
        this.countRevolutions = setup.count().uncertaintyRevolutions();
        this.revolutionsPerTurn = Amounts.si(Dimensionless.class, setup.count().gearRatio());
        this.ownScatter = Amounts.si(Dimensionless.class, setup.scatter().relativeDeviation());
        this.common =
                common().values().stream().mapToDouble(part -> part * part).sum();
        this.fewestRevolutions = fewestRevolutions();
        this.mostRevolutions = Require.finite("revolutions that fill the containers", amount.most() / perRevolution);
        if (Comparison.isAbove(fewestRevolutions, mostRevolutions)) {
            throw new InvalidInputException(
                    "containers",
                    "able to hold the smallest sensible catch, " + counted(fewestRevolutions)
                            + (revolutionsPerTurn == 1
                                    ? ""
                                    : " (" + text(fewestRevolutions / revolutionsPerTurn) + " of the "
                                            + (setup.amount().isOfLiquid() ? "pump" : "conveyor") + " shaft)")
                            + " or "
                            + text(amount(fewestRevolutions)),
                    text(amount(mostRevolutions)) + " in all");
        }
    }

    /** Revolutions; of a liquid pulses where there are any, as a flow meter has no revolutions. */
    String counted(double revolutions) {
        return setup.count() instanceof PlannedCount.Pulses sensor
                        && setup.amount().isOfLiquid()
                ? text(pulses(revolutions, sensor))
                : text(revolutions);
    }

    private static String text(double revolutions) {
        return text(Amounts.of(revolutions, SpreadingUnits.REVOLUTION));
    }

    /** Of any kind, as rounding doesn't change it. */
    @SuppressWarnings({"unchecked", "rawtypes"})
    private static String text(Quantity<?> quantity) {
        return Rounded.text((Quantity) quantity, 3);
    }

    private static Quantity<PulseCount> pulses(double revolutions, PlannedCount.Pulses sensor) {
        return Amounts.of(
                revolutions * Amounts.si(PulsesPerRevolution.class, sensor.perRevolution()), SpreadingUnits.PULSE);
    }

    /** With fewer a catch would get a finding. */
    private double fewestRevolutions() {
        CatchLimits limits = setup.limits();
        double fewest = Math.max(
                Amounts.si(RevolutionCount.class, limits.fewestRevolutions()) * revolutionsPerTurn,
                limits.fewestDivisions() * amount.division() / perRevolution);
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

    /** Kilograms or, of a liquid, cubic meters. */
    double perRevolution() {
        return perRevolution;
    }

    Catch at(double revolutions) {
        double caught = revolutions * perRevolution;
        int containers = amount.containers(caught);
        OptionalDouble limit = amount.limit().of(caught, containers);
        return new Catch(
                revolutions,
                containers,
                amount.rounding(caught, containers),
                countRevolutions.orElse(0) / revolutions,
                Distribution.RECTANGULAR.standardUncertainty(limit.orElse(amount.assumedLimit())),
                limit.isEmpty());
    }

    private double scatterSquared(Catch one) {
        return ownScatter * ownScatter + one.rounding() * one.rounding() + one.count() * one.count();
    }

    /** The relative standard uncertainty of the mean of n catches. */
    private double standard(Catch one, int n) {
        return Math.sqrt(scatterSquared(one) / n + common + one.span() * one.span());
    }

    /** What no number of catches gets below: all that scatters would be gone, and its degrees of freedom without limit. */
    double floor(Catch one) {
        return LEAST_FACTOR * Math.sqrt(common + one.span() * one.span());
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
                        Math.rint(Amounts.si(PulseCount.class, pulses(one.revolutions(), sensor))),
                        SpreadingUnits.PULSE))
                : Optional.empty();
        return new CatchSeries(
                n,
                Amounts.of(one.revolutions(), SpreadingUnits.REVOLUTION),
                Amounts.of(one.revolutions() / revolutionsPerTurn, SpreadingUnits.REVOLUTION),
                pulses,
                amount(one.revolutions()),
                one.containers(),
                budget(one, n),
                assumptions(one, n));
    }

    private Quantity<?> amount(double revolutions) {
        return setup.amount(revolutions * perRevolution);
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
        AmountModel.Names names = amount.names();
        rows.add(row(names.ofReading(), names.reading().key(), Distribution.NORMAL, one.rounding() / root));
        if (countRevolutions.isPresent()) {
            boolean pulses = setup.count() instanceof PlannedCount.Pulses;
            rows.add(row(
                    Cause.COUNT,
                    ErrorSource.COUNT.key(),
                    pulses && n == 1 ? Distribution.TRIANGULAR : Distribution.NORMAL,
                    one.count() / root));
        }
        rows.add(row(names.ofInstrument(), names.instrument(), Distribution.RECTANGULAR, one.span()));
        common().forEach((cause, uncertainty) -> {
            if (uncertainty > 0) {
                rows.add(row(
                        cause,
                        Objects.requireNonNull(KEYS.get(cause)),
                        cause == Cause.DENSITY ? Distribution.NORMAL : Distribution.RECTANGULAR,
                        uncertainty));
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
        parts.put(Cause.DENSITY, amount.density());
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
        parts.put(amount.names().ofReading(), one.rounding() / root);
        parts.put(Cause.COUNT, one.count() / root);
        parts.put(amount.names().ofInstrument(), one.span());
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
            assumptions.add(amount.names().assumed());
        }
        if (countRevolutions.isEmpty()) {
            assumptions.add("The uncertainty of the revolutions is not included: nothing counts them.");
        }
        return assumptions;
    }
}
