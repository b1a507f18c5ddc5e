package org.gritwright.core.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.budget.SystematicErrors;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Term;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.statistics.RatioEstimate;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
import org.gritwright.core.weighing.CaughtMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Where the uncertainty of a calibration comes from.
 *
 * <p>Nothing is counted twice: from three catches on, their scatter already holds the rounding of the scale and of the
 * count. So it stands for both, but never below what those two alone would give. With one or two catches the two stand in
 * for the scatter, which nobody knows but from experience.
 */
final class CalibrationBudget {
    private final List<CalibrationCatch> catches;
    private final RatioEstimate estimate;
    private final CatchAllowances allowances;
    private final Unit<DischargePerRevolution> unit;
    /** By how much the estimate rises per kilogram of each catch. */
    private final double[] perKilogram;

    private final List<Component<DischargePerRevolution>> components = new ArrayList<>();
    private final List<Argument.Unknown> unknown = new ArrayList<>();

    CalibrationBudget(
            List<CalibrationCatch> catches,
            RatioEstimator estimator,
            RatioEstimate estimate,
            CatchAllowances allowances,
            Unit<DischargePerRevolution> unit) {
        this.catches = catches;
        this.estimate = estimate;
        this.allowances = allowances;
        this.unit = unit;
        double[] revolutions =
                catches.stream().mapToDouble(CalibrationCatch::revolutions).toArray();
        this.perKilogram = estimator.sensitivities(revolutions);
        boolean countKnown = catches.stream()
                .allMatch(c -> c.observation().uncertaintyRevolutions().isPresent());
        if (catches.size() >= Repeatability.FEWEST_CATCHES
                && estimate.standardUncertainty().isPresent()) {
            addScatter(estimate.standardUncertainty().getAsDouble());
        } else {
            addResolution(countKnown);
        }
        if (!countKnown) {
            unknown.add(Argument.Unknown.of(Term.COUNT));
        }
        addSystematic();
    }

    private void addScatter(double ofEstimate) {
        double resolution = Math.hypot(rounding(), counting());
        Quantity<DischargePerRevolution> larger = Amounts.ofSi(Math.max(ofEstimate, resolution), unit);
        components.add(
                ofEstimate >= resolution
                        ? Component.typeA("scatter of the catches", larger, larger, estimate.degreesOfFreedom())
                        : Component.typeB("resolution of scale and count", Distribution.NORMAL, larger, larger));
    }

    /** Two roundings alike are triangular together; what more of them sum up to is near to normal. */
    private void addResolution(boolean countKnown) {
        CaughtMass first = catches.get(0).caught();
        boolean single = catches.size() == 1;
        components.add(Component.typeB(
                "rounding of the scale",
                single && first.weighings().size() == 1 ? Distribution.TRIANGULAR : Distribution.NORMAL,
                Amounts.ofSi(
                        first.scale().roundingKilograms(),
                        first.scale().division().getUnit()),
                Amounts.ofSi(rounding(), unit)));
        if (countKnown) {
            double ofFirst =
                    catches.get(0).observation().uncertaintyRevolutions().getAsDouble();
            components.add(Component.typeB(
                    "count of revolutions",
                    single && catches.get(0).counted().isInPulses() ? Distribution.TRIANGULAR : Distribution.NORMAL,
                    Amounts.ofSi(ofFirst, SpreadingUnits.REVOLUTION),
                    Amounts.ofSi(counting(), unit)));
        }
        allowances
                .repeatability()
                .ifPresentOrElse(
                        r -> components.add(
                                r.component(Amounts.ofSi(together(i -> r.relative() * discharged(i)), unit))),
                        () -> unknown.add(Argument.Unknown.of(Term.SCATTER)));
    }

    private void addSystematic() {
        double[] shares = new double[perKilogram.length];
        for (int i = 0; i < shares.length; i++) {
            shares[i] = perKilogram[i] * discharged(i) / estimate.ratio();
        }
        SystematicErrors<DischargePerRevolution> common = SystematicErrors.of(
                catches.stream().map(CalibrationCatch::caught).toList(),
                shares,
                allowances,
                relative -> Amounts.ofSi(relative * estimate.ratio(), unit));
        components.addAll(common.components());
        unknown.addAll(common.unknown());
    }

    private double discharged(int i) {
        return catches.get(i).caught().kilograms() * allowances.spillageFactor();
    }

    private double rounding() {
        return together(i -> catches.get(i).caught().roundingKilograms() * allowances.spillageFactor());
    }

    /** A revolution too many does what the mass of a revolution too little would do. */
    private double counting() {
        return together(i -> estimate.ratio()
                * catches.get(i).observation().uncertaintyRevolutions().orElse(0));
    }

    /** What independent uncertainties of the catches' masses make of the estimate's. */
    private double together(IntToDoubleFunction kilograms) {
        double squares = 0;
        for (int i = 0; i < perKilogram.length; i++) {
            double part = perKilogram[i] * kilograms.applyAsDouble(i);
            squares += part * part;
        }
        return Math.sqrt(squares);
    }

    /** What the rounding of scale and count makes of the intercept of a line, in kg. */
    double resolutionOfStart() {
        double[] revolutions =
                catches.stream().mapToDouble(CalibrationCatch::revolutions).toArray();
        double mean = Arrays.stream(revolutions).average().orElseThrow();
        double squares = 0;
        for (int i = 0; i < revolutions.length; i++) {
            // The line goes through the means: what a catch does to the mean, less what it does to the slope.
            double sensitivity = 1.0 / revolutions.length - mean * perKilogram[i];
            double resolution = Math.hypot(
                    catches.get(i).caught().roundingKilograms() * allowances.spillageFactor(),
                    estimate.ratio()
                            * catches.get(i)
                                    .observation()
                                    .uncertaintyRevolutions()
                                    .orElse(0));
            squares += sensitivity * sensitivity * resolution * resolution;
        }
        return Math.sqrt(squares);
    }

    Budget<DischargePerRevolution> budget() {
        return Budget.of(Amounts.ofSi(estimate.ratio(), unit), components);
    }

    /** What is not in the budget because nobody knows it. */
    List<Argument.Unknown> unknown() {
        return List.copyOf(unknown);
    }
}
