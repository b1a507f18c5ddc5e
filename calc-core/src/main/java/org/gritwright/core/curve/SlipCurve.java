package org.gritwright.core.curve;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.PumpMetering;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;
import org.gritwright.units.quantity.VolumePerRevolution;

/**
 * A pump's volume per revolution as a function of its shaft's speed, from catches at one calibration point and one pressure.
 *
 * <p>What slips back through a pump's clearances is a flow that pressure and viscosity make and the speed doesn't, so that a slow pump
 * loses a larger part of its turns: v(n) = a − b/n. Whether the catches show such a leak is told as a {@link DischargeCurve} tells a
 * dead opening: a constant volume stays unless {@link LackOfFit} refuses it at 5 %; and then only if what fits better is a leak, with
 * b above 0. Since a passed test with few repeats proves nothing, the uncertainty of a constant volume also covers a leak. A model that
 * the test refuses and that stays has its misfit in its uncertainty. Immutable, thread-safe, a value.
 */
public final class SlipCurve {
    /**
     * How many times as fast as the slowest the fastest catch is at the least, for a leak to be told: as for a line through catches of
     * different lengths. Common practice, no source.
     */
    public static final double LEAST_RATIO_OF_SPEEDS = RatioEstimator.LEAST_RATIO_OF_LENGTHS;

    private final List<TimedCatch> catches;
    private final CatchLimits limits;
    private final Calibration constant;
    private final CaughtSpeeds data;
    private final Optional<LackOfFit> test;
    private final SlipModel model;
    private final CurveFit fit;
    private final FittedModel fitted;
    private final PredictionBudget<VolumePerRevolution> budgets;
    private final Unit<VolumePerRevolution> unit;
    private final List<Finding> findings;

    private SlipCurve(List<TimedCatch> catches, CatchLimits limits) {
        this.catches = List.copyOf(catches);
        this.limits = Objects.requireNonNull(limits, "limits");
        this.constant = constant(this.catches, limits);
        this.data = CaughtSpeeds.of(this.catches, limits.allowances());
        ModelFits fits = new ModelFits(data);
        this.test = isSpread() ? fits.test(CurveModel.PROPORTIONAL) : Optional.empty();
        boolean leaks = test.isPresent()
                && fits.shape() == CurveModel.DEAD_OPENING
                && fits.of(CurveModel.DEAD_OPENING).shift() > 0;
        this.model = leaks ? SlipModel.LEAK : SlipModel.CONSTANT;
        CurveModel shape = leaks ? CurveModel.DEAD_OPENING : CurveModel.PROPORTIONAL;
        this.fit = fits.of(shape);
        double misfit = fits.misfit(shape);
        Optional<CurveFit> rival = leaks || misfit > 0 || data.differentSpeeds() < 2
                ? Optional.empty()
                : fits.ifAny(CurveModel.DEAD_OPENING);
        this.fitted = new FittedShape(data, fit, rival, misfit);
        this.unit = UnitSymbol.tradeUnit(
                VolumePerRevolution.class, constant.dischargePerRevolution().value());
        this.budgets = new PredictionBudget<>(
                this.catches.stream().map(TimedCatch::made).toList(),
                fitted,
                limits.allowances(),
                VolumePerRevolution.class,
                unit);
        this.findings = findings(fits.test(shape));
    }

    private static Calibration constant(List<TimedCatch> catches, CatchLimits limits) {
        Calibration together =
                Calibration.from(catches.stream().map(TimedCatch::made).toList(), RatioEstimator.RATIO_OF_SUMS, limits);
        if (!(together.point().metering() instanceof PumpMetering)) {
            throw new InvalidInputException(
                    "metering of catches over shaft speeds",
                    "a pump",
                    together.point().metering().toString());
        }
        return together;
    }

    /**
     * A curve whose model is chosen by test, by the common limits.
     *
     * @param catches catches at one calibration point of a pump, one or more, all at the same pressure
     * @return the curve
     * @throws InvalidInputException as for the full form
     */
    public static SlipCurve chosenByTest(List<TimedCatch> catches) {
        return chosenByTest(catches, CatchLimits.COMMON);
    }

    /**
     * A curve whose model is chosen by test. The test needs a repeat and two shaft speeds that are at least {@value
     * #LEAST_RATIO_OF_SPEEDS} times apart; else the volume per revolution is taken to be constant, and a finding says so. Catches weigh
     * by their revolutions, so that a constant volume is that of {@link Calibration}.
     *
     * @param catches catches at one calibration point of a pump, one or more, all at the same pressure
     * @param limits thresholds beyond which catches are flagged
     * @return the curve
     * @throws InvalidInputException if there is no catch, the points differ, or what meters isn't a pump
     */
    public static SlipCurve chosenByTest(List<TimedCatch> catches, CatchLimits limits) {
        return new SlipCurve(Objects.requireNonNull(catches, "catches"), limits);
    }

    private boolean isSpread() {
        return !Comparison.isAbove(LEAST_RATIO_OF_SPEEDS * data.slowest(), data.fastest());
    }

    private List<Finding> findings(Optional<LackOfFit> ofModel) {
        List<Finding> found = new ArrayList<>();
        if (test.isEmpty()) {
            found.add(Finding.of(
                    FindingCode.LEAK_UNTESTED,
                    Map.of(
                            "catches", number(Amounts.of(catches.size(), SpreadingUnits.ONE)),
                            "speeds", number(Amounts.of(data.differentSpeeds(), SpreadingUnits.ONE)),
                            "lowest", number(lowestSpeed()),
                            "highest", number(highestSpeed()),
                            "ratio", number(Amounts.of(LEAST_RATIO_OF_SPEEDS, SpreadingUnits.ONE)))));
        }
        leak().ifPresent(leak -> found.add(Finding.of(
                FindingCode.LEAK_FOUND,
                Map.of(
                        "leak", number(leak.value()),
                        "lowest", number(lowestSpeed()),
                        "slow", number(errorOfConstant(lowestSpeed())),
                        "highest", number(highestSpeed()),
                        "fast", number(errorOfConstant(highestSpeed()))))));
        ofModel.filter(t -> t.chance() < ModelFits.MISFIT_CHANCE)
                .ifPresent(t -> found.add(Finding.of(
                        FindingCode.SPEED_MISFIT,
                        Map.of(
                                "chance", number(Amounts.ofSi(t.chance(), SpreadingUnits.PERCENT)),
                                "model", model.term()))));
        double limit = Amounts.si(Dimensionless.class, limits.greatestScatter());
        fit.relativeDeviation().ifPresent(scatter -> {
            if (Comparison.isAbove(scatter, limit)) {
                found.add(Finding.of(
                        FindingCode.CATCHES_SCATTER,
                        Map.of(
                                "scatter", number(Amounts.ofSi(scatter, SpreadingUnits.PERCENT)),
                                "limit", number(limits.greatestScatter()))));
            }
        });
        found.addAll(budgets.findings());
        return List.copyOf(found);
    }

    /**
     * The model.
     *
     * @return the model in use
     */
    public SlipModel model() {
        return model;
    }

    /**
     * The test of a constant volume per revolution, by which the model was chosen.
     *
     * @return the test; none without a repeat, or where the speeds are too few or too near each other
     */
    public Optional<LackOfFit> test() {
        return test;
    }

    /**
     * The volume per revolution of the sensed or watched shaft at a speed of that shaft.
     *
     * @param speed a speed within those of the catches
     * @return the volume, with the budget's combined standard uncertainty
     * @throws InvalidInputException if the speed is outside: there nothing tells how the pump goes on
     */
    public Measured<VolumePerRevolution> volumePerRevolution(Quantity<RotationalSpeed> speed) {
        return budget(speed).result();
    }

    /**
     * Where the uncertainty of the volume per revolution at a speed comes from.
     *
     * @param speed a speed within those of the catches
     * @return the budget
     * @throws InvalidInputException if the speed is outside
     */
    public Budget<VolumePerRevolution> budget(Quantity<RotationalSpeed> speed) {
        double at = within(speed);
        FittedModel.Value flow = fitted.value(at);
        OptionalDouble uncertainty = flow.uncertainty().isPresent()
                ? OptionalDouble.of(flow.uncertainty().getAsDouble() / at)
                : OptionalDouble.empty();
        return budgets.of(
                        DischargeCurve.measured(unit, flow.y() / at, uncertainty, flow.degreesOfFreedom()),
                        at,
                        Optional.empty())
                .orElseThrow();
    }

    private double within(Quantity<RotationalSpeed> speed) {
        double at = Amounts.si(RotationalSpeed.class, Require.positive("shaft speed", RotationalSpeed.class, speed));
        Require.that(
                !Comparison.isAbove(data.slowest(), at) && !Comparison.isAbove(at, data.fastest()),
                "shaft speed",
                "within those of the catches, " + Amounts.format(lowestSpeed()) + " to "
                        + Amounts.format(highestSpeed()),
                speed);
        return at;
    }

    /**
     * The slowest catch.
     *
     * @return the shaft speed, in revolutions per minute
     */
    public Quantity<RotationalSpeed> lowestSpeed() {
        return Amounts.ofSi(data.slowest(), SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    /**
     * The fastest catch.
     *
     * @return the shaft speed, in revolutions per minute
     */
    public Quantity<RotationalSpeed> highestSpeed() {
        return Amounts.ofSi(data.fastest(), SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    /**
     * What a revolution would give if nothing leaked.
     *
     * @return a, with its standard uncertainty by the catches' scatter; none for a constant volume per revolution
     */
    public Optional<Measured<VolumePerRevolution>> withoutLeak() {
        return ifLeaking(unit, fit.scale(), fit.scaleUncertainty());
    }

    /**
     * What leaks back.
     *
     * @return b, with its standard uncertainty by the catches' scatter; none for a constant volume per revolution
     */
    public Optional<Measured<FlowRate>> leak() {
        // The flow at a stand is −b: for this shape the fit holds there too.
        OptionalDouble uncertainty = fit.uncertaintyAt(0);
        return ifLeaking(
                UnitSymbol.tradeUnit(FlowRate.class, Amounts.ofSi(fit.scale(), unit)),
                -fit.at(0),
                uncertainty.isPresent()
                        ? OptionalDouble.of(Math.abs(uncertainty.getAsDouble()))
                        : OptionalDouble.empty());
    }

    private <Q extends Quantity<Q>> Optional<Measured<Q>> ifLeaking(
            Unit<Q> in, double value, OptionalDouble uncertainty) {
        return model == SlipModel.LEAK
                ? Optional.of(DischargeCurve.measured(in, value, uncertainty, fit.degreesOfFreedom()))
                : Optional.empty();
    }

    /**
     * The calibration by the same catches with a constant volume per revolution. Where the pump leaks, its catches scatter by that
     * too.
     *
     * @return the calibration, with what a person should know of each catch
     */
    public Calibration constant() {
        return constant;
    }

    /**
     * How wrong a constant volume per revolution is at a speed, if this curve is right.
     *
     * @param speed a speed within those of the catches
     * @return the calibration error, constant ÷ curve − 1, in percent: above 0 where less is laid than indicated
     * @throws InvalidInputException if the speed is outside
     */
    public Quantity<Dimensionless> errorOfConstant(Quantity<RotationalSpeed> speed) {
        double at = within(speed);
        double same = Amounts.si(
                VolumePerRevolution.class,
                constant.volumePerRevolution().orElseThrow().value());
        return Amounts.ofSi(same * at / fitted.value(at).y() - 1, SpreadingUnits.PERCENT);
    }

    /**
     * The catches.
     *
     * @return the catches, as given
     */
    public List<TimedCatch> catches() {
        return catches;
    }

    /**
     * What a person should know about the curve; what there is to know of each catch stands in {@link #constant()}.
     *
     * @return the findings, possibly none
     */
    public List<Finding> findings() {
        return findings;
    }

    /** Everything else follows from these. */
    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof SlipCurve that && catches.equals(that.catches) && limits.equals(that.limits));
    }

    @Override
    public int hashCode() {
        return Objects.hash(catches, limits);
    }
}
