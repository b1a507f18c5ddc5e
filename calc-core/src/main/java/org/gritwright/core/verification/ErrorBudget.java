package org.gritwright.core.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.calibration.CatchAllowances;
import org.gritwright.core.calibration.SystematicErrors;
import org.gritwright.core.measurement.Budget;
import org.gritwright.core.measurement.Component;
import org.gritwright.core.measurement.Distribution;
import org.gritwright.core.spreader.ShaftCount;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * Where the uncertainty of one catch's error comes from, apart in what another catch would have anew and what it would
 * have again.
 *
 * <p>One catch says nothing of its own scatter. Where the calibration has three catches or more, their scatter is that of
 * this catch too; it holds the rounding of scale and count, but is never below what those alone would give. The moisture
 * is left out: what is compared are masses of the same material on the same day.
 */
final class ErrorBudget {
    private static final int FEWEST_FOR_SCATTER = 3;

    private final double error;
    private final List<Component<Dimensionless>> random = new ArrayList<>();
    private final List<Component<Dimensionless>> systematic;
    private final List<String> unknown = new ArrayList<>();

    ErrorBudget(VerificationCatch source, double error, Optional<Calibration> calibration, CatchAllowances allowances) {
        this.error = error;
        CaughtMass caught = source.caught();
        double rounding = caught.roundingKilograms() / caught.kilograms();
        List<Component<Dimensionless>> resolution = new ArrayList<>();
        resolution.add(Component.typeB(
                "rounding of the scale",
                caught.weighings().size() == 1 ? Distribution.TRIANGULAR : Distribution.NORMAL,
                rounding(caught),
                percent(rounding)));
        count(source).ifPresent(resolution::add);
        addRandom(resolution, scatter(calibration), allowances);
        CatchAllowances withoutMoisture = new CatchAllowances(
                allowances.greatestSpillage(),
                allowances.greatestTransient(),
                Optional.empty(),
                allowances.repeatability());
        SystematicErrors<Dimensionless> common =
                SystematicErrors.of(List.of(caught), new double[] {1}, withoutMoisture, this::percent);
        this.systematic = common.components();
        unknown.addAll(common.unknown());
    }

    /** What a relative error of the masses contributes to the error in per cent. */
    private Quantity<Dimensionless> percent(double relative) {
        return Amounts.ofSi(relative * (1 + error), SpreadingUnits.PERCENT);
    }

    private static Quantity<Mass> rounding(CaughtMass caught) {
        return Amounts.ofSi(
                caught.scale().roundingKilograms(), caught.scale().division().getUnit());
    }

    private static Optional<Calibration> scatter(Optional<Calibration> calibration) {
        return calibration.filter(c -> c.catches().size() >= FEWEST_FOR_SCATTER && c.scatterDegreesOfFreedom() > 0);
    }

    private Optional<Component<Dimensionless>> count(VerificationCatch source) {
        if (source.counted().isPresent()) {
            ShaftCount counted = source.counted().get();
            OptionalDouble uncertainty =
                    counted.uncertaintyRevolutions(source.inForce().spreader().feedback());
            if (uncertainty.isEmpty()) {
                unknown.add("how sure the count is");
                return Optional.empty();
            }
            Quantity<RevolutionCount> revolutions = Amounts.ofSi(uncertainty.getAsDouble(), SpreadingUnits.REVOLUTION);
            return Optional.of(Component.typeB(
                    "count of revolutions",
                    counted.isInPulses() ? Distribution.TRIANGULAR : Distribution.NORMAL,
                    revolutions,
                    percent(uncertainty.getAsDouble() / source.revolutions().getAsDouble())));
        }
        return source.indicated().map(display -> {
            double half = Amounts.si(Mass.class, display.resolution()) / 2;
            double step = Distribution.RECTANGULAR.standardUncertainty(half);
            return Component.typeB(
                    "step of the displayed mass",
                    Distribution.RECTANGULAR,
                    Amounts.ofSi(step, display.resolution().getUnit()),
                    percent(step / source.shownKilograms()));
        });
    }

    private void addRandom(
            List<Component<Dimensionless>> resolution, Optional<Calibration> scattered, CatchAllowances allowances) {
        if (scattered.isPresent()) {
            double relative = scattered.get().relativeScatter().getAsDouble();
            double least = resolution.stream()
                    .mapToDouble(c -> Amounts.si(Dimensionless.class, c.contribution()) / (1 + error))
                    .reduce(0, Math::hypot);
            Quantity<Dimensionless> larger = percent(Math.max(relative, least));
            random.add(
                    relative >= least
                            ? Component.typeA(
                                    "scatter of the catches",
                                    larger,
                                    larger,
                                    scattered.get().scatterDegreesOfFreedom())
                            : Component.typeB("resolution of scale and count", Distribution.NORMAL, larger, larger));
            return;
        }
        random.addAll(resolution);
        allowances
                .repeatability()
                .ifPresentOrElse(
                        r -> random.add(r.component(percent(r.relative()))), () -> unknown.add("how catches scatter"));
    }

    Budget<Dimensionless> budget() {
        return ofCatches(1);
    }

    /** What is not in the budget because nobody knows it, in words. */
    List<String> unknown() {
        return List.copyOf(unknown);
    }

    /** The budget of the mean error of several catches like this one. */
    Budget<Dimensionless> ofCatches(int catches) {
        Stream<Component<Dimensionless>> shrunk = random.stream()
                .map(c -> new Component<>(
                        c.name(),
                        c.evaluation(),
                        catches == 1 ? c.distribution() : Distribution.NORMAL,
                        c.standardUncertainty(),
                        Amounts.ofSi(
                                Amounts.si(Dimensionless.class, c.contribution()) / Math.sqrt(catches),
                                SpreadingUnits.PERCENT),
                        // Each further catch tells a little more of the scatter.
                        c.degreesOfFreedom() + catches - 1,
                        c.group()));
        return Budget.of(
                Amounts.ofSi(error, SpreadingUnits.PERCENT),
                Stream.concat(shrunk, systematic.stream()).toList());
    }
}
