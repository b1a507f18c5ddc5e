package org.gritwright.core.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.budget.SystematicErrors;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * Where the uncertainty of the error of one catch or several comes from, apart in what another catch would have anew and
 * what it would have again.
 *
 * <p>Where the calibration has three catches or more, their scatter is that of these catches too, pooled with what the
 * catches themselves show from the second on; without a calibration three catches show their own. Such a scatter holds the
 * rounding of scale and count of the catches that it was found from; where these catches are rounded more coarsely, the
 * rest is a component of its own. The moisture is left out: what is compared are masses of the same material.
 */
final class ErrorBudget {
    private final int catches;
    private final double error;
    private final List<VerificationCatch> sources;
    /** Of each catch, the part of the whole. */
    private final double[] shares;

    private final List<Component<Dimensionless>> random = new ArrayList<>();
    private final List<Component<Dimensionless>> systematic;
    private final List<Argument.Unknown> unknown = new ArrayList<>();

    /**
     * A budget.
     *
     * @param sources the catches, one or more
     * @param errors the error of each, a ratio − 1
     * @param error the error of them together
     */
    ErrorBudget(
            List<VerificationCatch> sources,
            double[] errors,
            double error,
            Optional<Calibration> calibration,
            CatchAllowances allowances) {
        this.sources = sources;
        this.catches = sources.size();
        this.error = error;
        double total = sources.stream().mapToDouble(s -> s.caught().kilograms()).sum();
        this.shares = sources.stream()
                .mapToDouble(s -> s.caught().kilograms() / total)
                .toArray();
        addRandom(scatter(errors, calibration), allowances.repeatability());
        CatchAllowances withoutMoisture = new CatchAllowances(
                allowances.greatestSpillage(),
                allowances.greatestTransient(),
                Optional.empty(),
                allowances.repeatability());
        SystematicErrors<Dimensionless> common = SystematicErrors.of(
                sources.stream().map(VerificationCatch::caught).toList(), shares, withoutMoisture, this::percent);
        this.systematic = common.components();
        unknown.addAll(common.unknown());
        if (sources.stream()
                .anyMatch(s -> s.revolutions().isEmpty() && s.run().runTime().isPresent())) {
            unknown.add(Argument.Unknown.of(Term.RUN_TIME));
        }
    }

    /** What is known of how single catches scatter, relative: the variance, and what of it is rounding of scale and count. */
    private record Scatter(double variance, double rounding, double degreesOfFreedom) {}

    private Optional<Scatter> scatter(double[] errors, Optional<Calibration> calibration) {
        double variance = 0;
        double rounding = 0;
        double degrees = 0;
        if (calibration.isPresent() && calibration.get().catches().size() >= Repeatability.FEWEST_CATCHES) {
            Calibration known = calibration.get();
            degrees = known.scatterDegreesOfFreedom();
            variance = degrees * square(known.relativeScatter().orElse(0));
            rounding = degrees * square(known.relativeResolution());
        }
        if (catches >= Repeatability.FEWEST_CATCHES || (catches > 1 && degrees > 0)) {
            for (double one : errors) {
                variance += square((1 + one) / (1 + error) - 1);
            }
            rounding += (catches - 1) * resolution();
            degrees += catches - 1;
        }
        return degrees > 0
                ? Optional.of(new Scatter(variance / degrees, rounding / degrees, degrees))
                : Optional.empty();
    }

    private static double square(double number) {
        return number * number;
    }

    /** What a relative error of the masses contributes to the error in per cent. */
    private Quantity<Dimensionless> percent(double relative) {
        return Amounts.ofSi(relative * (1 + error), SpreadingUnits.PERCENT);
    }

    private static double rounding(VerificationCatch source) {
        return source.caught().roundingKilograms() / source.caught().kilograms();
    }

    /** Relative; of a count or of the display's step. */
    private static OptionalDouble count(VerificationCatch source) {
        if (source.counted().isPresent()) {
            OptionalDouble revolutions = source.observation().uncertaintyRevolutions();
            return revolutions.isPresent()
                    ? OptionalDouble.of(
                            revolutions.getAsDouble() / source.revolutions().getAsDouble())
                    : revolutions;
        }
        return source.indicated().isPresent()
                ? OptionalDouble.of(displayStep(source) / source.shownKilograms())
                : OptionalDouble.of(0);
    }

    private static double displayStep(VerificationCatch source) {
        double step = Amounts.si(Mass.class, source.indicated().orElseThrow().resolution());
        return Distribution.RECTANGULAR.standardUncertainty(step / 2);
    }

    /** The relative variance by the rounding of scale and count, of one catch as they are on average. */
    private double resolution() {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < catches; i++) {
            VerificationCatch source = sources.get(i);
            sum += square(shares[i])
                    * (square(rounding(source)) + square(count(source).orElse(0)));
            squares += square(shares[i]);
        }
        return sum / squares;
    }

    /** How much less the errors together scatter than one of them. */
    private double shrinking() {
        double squares = 0;
        for (double share : shares) {
            squares += square(share);
        }
        return Math.sqrt(squares);
    }

    private void addRandom(Optional<Scatter> scatter, Optional<Repeatability> repeatability) {
        boolean countKnown = sources.stream().allMatch(s -> count(s).isPresent());
        if (!countKnown) {
            unknown.add(Argument.Unknown.of(Term.COUNT));
        }
        if (scatter.isPresent()) {
            Scatter known = scatter.get();
            boolean shown = known.variance() >= known.rounding();
            Quantity<Dimensionless> larger =
                    percent(Math.sqrt(Math.max(known.variance(), known.rounding())) * shrinking());
            random.add(
                    shown
                            ? Component.typeA("scatter of the catches", larger, larger, known.degreesOfFreedom())
                            : Component.typeB("resolution of scale and count", Distribution.NORMAL, larger, larger));
            double coarser = Math.sqrt(Math.max(0, resolution() - known.rounding()));
            if (coarser > 0) {
                Quantity<Dimensionless> rest = percent(coarser * shrinking());
                random.add(Component.typeB("coarser scale and count", Distribution.NORMAL, rest, rest));
            }
            return;
        }
        addResolution(countKnown);
        repeatability.ifPresentOrElse(
                r -> random.add(r.component(percent(r.relative() * shrinking()))),
                () -> unknown.add(Argument.Unknown.of(Term.SCATTER)));
    }

    /** Two roundings alike are triangular together; what more of them sum up to is near to normal. */
    private void addResolution(boolean countKnown) {
        VerificationCatch first = sources.get(0);
        CaughtMass caught = first.caught();
        boolean single = catches == 1;
        double ofMass = 0;
        double ofCount = 0;
        for (int i = 0; i < catches; i++) {
            ofMass = Math.hypot(ofMass, shares[i] * rounding(sources.get(i)));
            ofCount = Math.hypot(ofCount, shares[i] * count(sources.get(i)).orElse(0));
        }
        random.add(Component.typeB(
                "rounding of the scale",
                single && caught.weighings().size() == 1 ? Distribution.TRIANGULAR : Distribution.NORMAL,
                Amounts.ofSi(
                        caught.scale().roundingKilograms(),
                        caught.scale().division().getUnit()),
                percent(ofMass)));
        if (!countKnown || ofCount == 0) {
            return;
        }
        if (first.counted().isPresent()) {
            ShaftCount counted = first.counted().get();
            random.add(Component.typeB(
                    "count of revolutions",
                    single && counted.isInPulses() ? Distribution.TRIANGULAR : Distribution.NORMAL,
                    Amounts.ofSi(
                            count(first).getAsDouble() * first.revolutions().getAsDouble(), SpreadingUnits.REVOLUTION),
                    percent(ofCount)));
        } else {
            random.add(Component.typeB(
                    "step of the displayed mass",
                    single ? Distribution.RECTANGULAR : Distribution.NORMAL,
                    Amounts.ofSi(
                            displayStep(first),
                            first.indicated().orElseThrow().resolution().getUnit()),
                    percent(ofCount)));
        }
    }

    /** Whether further catches would have it again. */
    boolean isSystematic(Component<Dimensionless> component) {
        return systematic.contains(component);
    }

    int catches() {
        return catches;
    }

    Budget<Dimensionless> budget() {
        return ofCatches(catches);
    }

    /** What is not in the budget because nobody knows it, in words. */
    List<Argument.Unknown> unknown() {
        return List.copyOf(unknown);
    }

    /** The budget of the mean error of more catches like these, if it comes out the same. */
    Budget<Dimensionless> ofCatches(int wanted) {
        double shrinking = Math.sqrt((double) catches / wanted);
        Stream<Component<Dimensionless>> shrunk = random.stream()
                .map(c -> new Component<>(
                        c.name(),
                        c.evaluation(),
                        wanted == catches ? c.distribution() : Distribution.NORMAL,
                        c.standardUncertainty(),
                        Amounts.ofSi(
                                Amounts.si(Dimensionless.class, c.contribution()) * shrinking, SpreadingUnits.PERCENT),
                        // Each further catch tells a little more of the scatter.
                        c.degreesOfFreedom() + wanted - catches,
                        c.group()));
        return Budget.of(
                Amounts.ofSi(error, SpreadingUnits.PERCENT),
                Stream.concat(shrunk, systematic.stream()).toList());
    }
}
