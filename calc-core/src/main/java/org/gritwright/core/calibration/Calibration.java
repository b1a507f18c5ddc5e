package org.gritwright.core.calibration;

import static org.gritwright.core.finding.Argument.number;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.budget.GateReading;
import org.gritwright.core.budget.SharedErrors;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.SweptByOpening;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchFindings;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.ErrorSource;
import org.gritwright.core.plausibility.ApparentFill;
import org.gritwright.core.statistics.RatioEstimate;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.statistics.Sample;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.ComponentKey;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.core.uncertainty.NormalizedError;
import org.gritwright.core.weighing.Caught;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A calibration: catches at one calibration point become the discharge per revolution of the sensed shaft, with its
 * uncertainty, the apparent fill and findings.
 *
 * <p>The catches share one point: the mean over different settings would belong to none of them. Immutable, thread-safe;
 * everything is computed when it is made. Two are equal when catches, estimator and limits are.
 */
public final class Calibration {
    private final List<CalibrationCatch> catches;
    private final RatioEstimator estimator;
    private final CatchLimits limits;
    private final double kilogramsPerRevolution;
    private final double relativeResolution;
    private final int scatterDegreesOfFreedom;
    private final Set<ComponentKey> instruments;
    private final Budget<DischargePerRevolution> budget;
    private final Optional<Quantity<DischargePerRevolution>> sampleDeviation;
    private final Optional<Measured<Mass>> massPerStart;
    private final ApparentFill apparentFill;
    private final List<Finding> findings;
    private final boolean doubted;

    private Calibration(List<CalibrationCatch> catches, RatioEstimator estimator, CatchLimits limits) {
        this.catches = List.copyOf(catches);
        this.estimator = Objects.requireNonNull(estimator, "estimator");
        this.limits = Objects.requireNonNull(limits, "limits");
        CalibrationPoint point = commonPoint(this.catches);

        double spillageFactor = limits.allowances().spillageFactor();
        double[] kilograms = this.catches.stream()
                .mapToDouble(c -> c.observation().kilograms() * spillageFactor)
                .toArray();
        double[] revolutions =
                this.catches.stream().mapToDouble(CalibrationCatch::revolutions).toArray();
        RatioEstimate estimate = estimator.estimate(kilograms, revolutions);
        this.kilogramsPerRevolution = estimate.ratio();

        Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, this.catches.get(0).caught().total());
        CalibrationBudget budgeting =
                new CalibrationBudget(this.catches, estimator, estimate, limits.allowances(), unit);
        this.budget = budgeting.budget();
        this.relativeResolution = relativeResolution(this.catches);
        this.instruments = this.catches.stream()
                .map(one -> ErrorSource.spanOf(one.caught()))
                .collect(Collectors.toUnmodifiableSet());
        this.scatterDegreesOfFreedom = Math.max(0, estimate.degreesOfFreedom());
        this.sampleDeviation = estimate.sampleDeviation().isPresent()
                ? Optional.of(Amounts.ofSi(estimate.sampleDeviation().getAsDouble(), unit))
                : Optional.empty();
        this.massPerStart = massPerStart(
                estimate,
                budgeting.resolutionOfStart(),
                this.catches.get(0).observation().massUnit());
        this.apparentFill = ApparentFill.of(
                estimate.ratio(),
                relativeUncertainty(),
                this.catches.stream().anyMatch(c -> c.counted().isInPulses()),
                point,
                limits.fill());
        this.findings = findings(estimate, budgeting.findings());
        this.doubted = findings.stream().anyMatch(f -> f.code().doubtsData());
    }

    /**
     * A calibration by the default estimator and the common limits.
     *
     * @param catches one or more catches at one calibration point
     * @return the calibration
     * @throws InvalidInputException as for the full form
     */
    public static Calibration from(List<CalibrationCatch> catches) {
        return from(catches, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
    }

    /**
     * A calibration.
     *
     * @param catches one or more catches at one calibration point
     * @param estimator how the catches become one ratio
     * @param limits thresholds beyond which a catch is flagged
     * @return the calibration
     * @throws InvalidInputException if there is no catch or the points differ; for a line with an intercept also if the
     *     catches are too much of one length
     */
    public static Calibration from(List<CalibrationCatch> catches, RatioEstimator estimator, CatchLimits limits) {
        return new Calibration(Objects.requireNonNull(catches, "catches"), estimator, limits);
    }

    private static CalibrationPoint commonPoint(List<CalibrationCatch> catches) {
        Require.that(!catches.isEmpty(), "calibration catches", "one or more", "none");
        CalibrationPoint first = catches.get(0).point();
        for (CalibrationCatch other : catches) {
            if (!first.equals(other.point())) {
                throw new InvalidInputException(
                        "calibration point of a catch",
                        "the same in all catches of one calibration, " + first,
                        first.toString().equals(other.point().toString())
                                ? "another metering"
                                : other.point().toString());
            }
        }
        return first;
    }

    private static Optional<Measured<Mass>> massPerStart(RatioEstimate estimate, double resolution, Unit<Mass> unit) {
        if (estimate.intercept().isEmpty()) {
            return Optional.empty();
        }
        double scattered = estimate.interceptUncertainty().orElse(0);
        return Optional.of(Measured.of(
                Amounts.ofSi(estimate.intercept().getAsDouble(), unit),
                Amounts.ofSi(Math.max(scattered, resolution), unit),
                scattered >= resolution && scattered > 0 ? estimate.degreesOfFreedom() : Double.POSITIVE_INFINITY));
    }

    private List<Finding> findings(RatioEstimate estimate, List<Finding> ofBudget) {
        // A set: three catches on one unchecked scale are one finding, not three.
        Set<Finding> found = new LinkedHashSet<>();
        DriveFeedback feedback = point().metering().feedback();
        apparentFill.finding().ifPresent(found::add);
        for (CalibrationCatch one : catches) {
            if (!one.primed()) {
                found.add(Finding.of(FindingCode.CONVEYOR_NOT_PRIMED));
            }
            if (!one.coasting().isSameWindow()) {
                found.add(Finding.of(
                        FindingCode.COASTING_MISMATCH,
                        Map.of("coasting", one.coasting().term())));
            }
            found.addAll(CatchFindings.ofAmount(one.observation(), limits));
            found.addAll(CatchFindings.ofCount(one.counted(), feedback, limits));
        }
        found.addAll(CatchFindings.ofConditions(
                catches.stream().map(one -> one.observation().conditions()).toList()));
        if (catches.size() == 1) {
            found.add(Finding.of(FindingCode.SINGLE_CATCH));
        } else if (estimate.sampleDeviation().isPresent()) {
            double scatter = estimate.sampleDeviation().getAsDouble() / estimate.ratio();
            double limit = Amounts.si(Dimensionless.class, limits.greatestScatter());
            if (Comparison.isAbove(scatter, excess(scatterDegreesOfFreedom) * Math.hypot(limit, relativeResolution))) {
                found.add(Finding.of(
                        FindingCode.CATCHES_SCATTER,
                        Map.of(
                                "scatter", number(Amounts.ofSi(scatter, SpreadingUnits.PERCENT)),
                                "limit", number(limits.greatestScatter()))));
            }
        }
        if (estimate.intercept().isEmpty()) {
            // With a line, the ratios depend on the length of the run, and the test isn't made for a line's residuals.
            OutlyingCatch.among(catches, budget.result().value().getUnit()).ifPresent(found::add);
        }
        found.addAll(ofBudget);
        return List.copyOf(found);
    }

    private double relativeUncertainty() {
        return Amounts.si(
                        DischargePerRevolution.class,
                        budget.result().expandedUncertainty(0.95).orElseThrow())
                / kilogramsPerRevolution;
    }

    /** By what factor a sample deviation may exceed the true one by chance, in all but 5 % of cases. */
    private static double excess(int degreesOfFreedom) {
        return Sample.deviationFactor(degreesOfFreedom, 0.05);
    }

    /**
     * The discharge per revolution of the sensed shaft.
     *
     * @return the value, corrected for spillage, with the budget's combined standard uncertainty and effective degrees of
     *     freedom, in lb/rev or kg/rev as the first catch was weighed
     */
    public Measured<DischargePerRevolution> dischargePerRevolution() {
        return budget.result();
    }

    /**
     * The volume of a liquid per revolution of the pump's sensed shaft, or per pulse of a flow meter.
     *
     * @return the value with its uncertainty: the mass per revolution ÷ the density stated for the material, which counts as
     *     exact; none of a granular material
     */
    public Optional<Measured<VolumePerRevolution>> volumePerRevolution() {
        if (!point().material().isLiquid()) {
            return Optional.empty();
        }
        Measured<DischargePerRevolution> mass = budget.result();
        double density = point().material().kilogramsPerAmount();
        Unit<VolumePerRevolution> unit = UnitSymbol.tradeUnit(VolumePerRevolution.class, mass.value());
        return Optional.of(Measured.of(
                Amounts.ofSi(kilogramsPerRevolution / density, unit),
                Amounts.ofSi(
                        Amounts.si(
                                        DischargePerRevolution.class,
                                        mass.standardUncertainty().orElseThrow())
                                / density,
                        unit),
                mass.degreesOfFreedom().orElseThrow()));
    }

    /**
     * Where the uncertainty of the discharge per revolution comes from.
     *
     * @return the budget; what nobody knows is not in it, and a finding says so
     */
    public Budget<DischargePerRevolution> budget() {
        return budget;
    }

    /**
     * The discharge per revolution once the gate has been moved and is set to its opening again, by reading it.
     *
     * @param reading how far the set opening may be from what is read, either way, greater than 0
     * @return the budget, with the reading of the gate in it
     * @throws InvalidInputException if no adjustable gate meters the conveyor, or the reading is of another kind than the
     *     opening or not greater than 0
     */
    public Budget<DischargePerRevolution> budgetOfGateSetAgain(Quantity<?> reading) {
        SweptByOpening geometry = point().metering().sweptByOpening();
        double at = geometry.number(point().setting());
        double density = kilogramsPerRevolution / geometry.applyAsDouble(at);
        Component<DischargePerRevolution> ofGate = GateReading.component(
                reading,
                point().setting(),
                at,
                changed -> density * geometry.applyAsDouble(changed),
                budget.result().value().getUnit());
        return Budget.of(
                budget.result().value(),
                Stream.concat(budget.components().stream(), Stream.of(ofGate)).toList());
    }

    /**
     * Compares this calibration with another one made in the same way, such as last season's. An error common to both,
     * such as the span of a shared scale or an allowance, cancels in the difference and is left out.
     *
     * @param other another calibration
     * @return the normalized error, this one's value less the other's
     * @throws InvalidInputException if neither has any uncertainty
     */
    public NormalizedError comparedWith(Calibration other) {
        Set<ComponentKey> shared = SharedErrors.of(caught(), other.caught());
        return NormalizedError.between(
                budget.without(shared).result(), other.budget.without(shared).result());
    }

    private List<Caught> caught() {
        return catches.stream().map(CalibrationCatch::caught).toList();
    }

    /**
     * How the catches spread: the sample standard deviation of their ratios, with a line after the mass per start is
     * subtracted.
     *
     * @return the deviation; absent, not zero, for one catch, and for two with a line
     */
    public Optional<Quantity<DischargePerRevolution>> sampleDeviation() {
        return sampleDeviation;
    }

    /**
     * What a start adds to a catch, whatever the catch's length; negative for a loss, for example when the conveyor
     * turns and is counted before it is full. It doesn't include what the drive loses until it is up to speed; in
     * verification, the line of count over run time shows that.
     *
     * @return the mass, in the unit of the first catch, with its standard uncertainty: by the scatter about the line, never
     *     below what the rounding of scale and count alone would give; none by an estimator without an intercept
     */
    public Optional<Measured<Mass>> massPerStart() {
        return massPerStart;
    }

    /**
     * How the catches spread, relative to their mean.
     *
     * @return sample deviation ÷ discharge per revolution; none for one catch
     */
    public OptionalDouble relativeScatter() {
        return sampleDeviation.isPresent()
                ? OptionalDouble.of(
                        Amounts.si(DischargePerRevolution.class, sampleDeviation.get()) / kilogramsPerRevolution)
                : OptionalDouble.empty();
    }

    /**
     * The part of the catches' spread that comes from the rounding of scale and count.
     *
     * @return relative standard uncertainty of an average catch; counts of unknown uncertainty add nothing
     */
    public double relativeResolution() {
        return relativeResolution;
    }

    private static double relativeResolution(List<CalibrationCatch> catches) {
        double squares = catches.stream()
                .mapToDouble(CalibrationCatch::relativeResolution)
                .map(one -> one * one)
                .sum();
        return Math.sqrt(squares / catches.size());
    }

    /**
     * The degrees of freedom of the catches' spread.
     *
     * @return n − 1, n − 2 by a line with an intercept; 0 where nothing is known about the spread
     */
    public int scatterDegreesOfFreedom() {
        return scatterDegreesOfFreedom;
    }

    /**
     * The value for a display, in any of its forms.
     *
     * @param unit a unit of mass per revolution or pulse, or of revolutions or pulses per mass; of a liquid, of volume instead
     *     of mass
     * @return the factor, not rounded
     * @throws InvalidInputException if the form needs a sensor that isn't there or doesn't go with the material
     */
    public CalibrationFactor factor(Unit<?> unit) {
        return CalibrationFactor.ofDischarge(kilogramsPerRevolution, point(), unit);
    }

    /**
     * This calibration entered into a display.
     *
     * @param displayStep the step in which the display takes its value; its unit says the form
     * @return the calibration in force, with the value rounded to the step
     * @throws InvalidInputException if the form needs a sensor that isn't there
     */
    public CalibrationInForce entered(Quantity<?> displayStep) {
        CalibrationFactor rounded = factor(displayStep.getUnit()).roundedTo(displayStep);
        return CalibrationInForce.of(point(), rounded, Optional.of(displayStep));
    }

    /**
     * The apparent fill.
     *
     * @return the fill with the limits it was compared with
     */
    public ApparentFill apparentFill() {
        return apparentFill;
    }

    /**
     * The calibration point.
     *
     * @return that of the first catch; all catches take its spelling of the setting
     */
    public CalibrationPoint point() {
        return catches.get(0).point();
    }

    /**
     * The catches.
     *
     * @return the catches, as given
     */
    public List<CalibrationCatch> catches() {
        return catches;
    }

    /**
     * What the catches were measured with.
     *
     * @return the keys of the components for the spans of the scales and the marks of the containers
     */
    public Set<ComponentKey> instruments() {
        return instruments;
    }

    /**
     * How the catches became one ratio.
     *
     * @return the estimator
     */
    public RatioEstimator estimator() {
        return estimator;
    }

    /**
     * What a person should know.
     *
     * @return the findings, possibly none
     */
    public List<Finding> findings() {
        return findings;
    }

    /**
     * Whether a finding doubts the data: then no correction is proposed.
     *
     * @return true if one does
     */
    public boolean isDoubted() {
        return doubted;
    }

    /** Everything else follows from these. */
    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof Calibration that
                        && catches.equals(that.catches)
                        && estimator == that.estimator
                        && limits.equals(that.limits));
    }

    @Override
    public int hashCode() {
        return Objects.hash(catches, estimator, limits);
    }

    /**
     * The point and what it came to.
     *
     * @return for example "road salt at 2 in: 27.24 lb/rev (u 0.25 lb/rev, 12 degrees of freedom)"
     */
    @Override
    public String toString() {
        return point() + ": " + dischargePerRevolution();
    }
}
