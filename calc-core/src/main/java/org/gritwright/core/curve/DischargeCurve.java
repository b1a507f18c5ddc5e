package org.gritwright.core.curve;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.budget.GateReading;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.Rounded;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * Discharge per revolution as a function of the gate opening, from catches at one opening or several, so that a
 * calibration made at some openings serves at others.
 *
 * <p>The geometry g(h) is known from the spreader's types; the catches give what it lacks: an effective bulk density k
 * and, where they show one, a dead opening h₀ ({@link CurveModel}). The scatter of catches is taken to be relative. A
 * curve is fitted with a model that the caller names ({@link #fit}), or with the first of k·g(h) and k·g(h − h₀) that a
 * lack-of-fit test at 5 % doesn't refuse, or a rising table where the test refuses them at 1 % and an opening is missed by
 * more than 2 % ({@link #chosenByTest}). Immutable, a value; thread-safe if the types behind it are.
 */
public final class DischargeCurve {
    private static final int DIGITS = 4;

    private final List<CalibrationCatch> catches;
    private final CurveModel model;
    private final boolean chosenByTest;
    private final RatioEstimator estimator;
    private final CatchLimits limits;
    private final CaughtOpenings data;
    private final Optional<CurveFit> fit;
    private final Optional<LackOfFit> test;
    private final FittedModel fitted;
    private final PredictionBudget<DischargePerRevolution> budgets;
    private final CurveFindings about;
    private final Unit<DischargePerRevolution> unit;
    private final List<Finding> findings;

    private DischargeCurve(
            List<CalibrationCatch> catches,
            CaughtOpenings data,
            ModelFits fits,
            CurveModel model,
            boolean chosenByTest,
            RatioEstimator estimator,
            CatchLimits limits) {
        this.catches = List.copyOf(catches);
        this.model = model;
        this.chosenByTest = chosenByTest;
        this.estimator = estimator;
        this.limits = limits;
        this.data = data;
        this.unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, catches.get(0).caught().total());
        this.fitted = fitted(data, fits, model, chosenByTest);
        this.fit = fits.ifAny(model);
        this.test = fits.test(model);
        this.budgets =
                new PredictionBudget<>(this.catches, fitted, limits.allowances(), DischargePerRevolution.class, unit);
        this.about = new CurveFindings(data, limits, unit);
        this.findings = about.of(fits, model, chosenByTest, budgets.findings());
    }

    private static FittedModel fitted(CaughtOpenings data, ModelFits fits, CurveModel model, boolean chosenByTest) {
        if (model == CurveModel.TABLE) {
            return new FittedTable(data.geometry(), data.table());
        }
        Optional<CurveFit> rival = chosenByTest && model == CurveModel.PROPORTIONAL
                ? fits.ifAny(CurveModel.DEAD_OPENING)
                : Optional.empty();
        return new FittedShape(data, fits.of(model), rival, fits.misfit(model));
    }

    /**
     * A curve with a stated model, by the default estimator and the common limits.
     *
     * @param catches calibration catches of one material at one setting or several, of a conveyor that an adjustable gate
     *     meters
     * @param model the model
     * @return the curve
     * @throws InvalidInputException as for the full form
     */
    public static DischargeCurve fit(List<CalibrationCatch> catches, CurveModel model) {
        return fit(catches, model, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
    }

    /**
     * A curve with a stated model.
     *
     * @param catches calibration catches of one material at one setting or several, of a conveyor that an adjustable gate
     *     meters
     * @param model the model
     * @param estimator how catches weigh: by their revolutions for the ratio of sums, equally for the mean of ratios; a line
     *     with an intercept is refused
     * @param limits thresholds beyond which catches are flagged
     * @return the curve
     * @throws InvalidInputException if there is no catch, an opening is missing, out of the gate's limits or closed,
     *     pulses were counted and the drive has no sensor, no adjustable gate meters the conveyor, or the model can't be
     *     fitted: a dead opening to fewer than two openings or to a discharge that doesn't rise
     */
    public static DischargeCurve fit(
            List<CalibrationCatch> catches, CurveModel model, RatioEstimator estimator, CatchLimits limits) {
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(estimator, "estimator");
        CaughtOpenings data = CaughtOpenings.of(catches, estimator, limits.allowances());
        return new DischargeCurve(catches, data, new ModelFits(data), model, false, estimator, limits);
    }

    /**
     * A curve whose model is chosen by test, by the default estimator and the common limits.
     *
     * @param catches calibration catches of one material at one setting or several, of a conveyor that an adjustable gate
     *     meters
     * @param untested the model to take where no test can be made
     * @return the curve
     * @throws InvalidInputException as for {@link #fit}
     */
    public static DischargeCurve chosenByTest(List<CalibrationCatch> catches, CurveModel untested) {
        return chosenByTest(catches, untested, RatioEstimator.RATIO_OF_SUMS, CatchLimits.COMMON);
    }

    /**
     * A curve whose model is chosen by test: k·g(h), unless {@link LackOfFit} refuses it at 5 %; then k·g(h − h₀), if that
     * can be fitted. A rising table takes the place of that model only where the test refuses it at 1 % and it misses an
     * opening by more than 2 % (common practice, no source); else a refused model is kept, and its misfit is in the uncertainty of its predictions.
     * The test needs repeats at an opening, and two openings or more. Since a passed test with few repeats proves nothing, the uncertainty of predictions by k·g(h)
     * then covers k·g(h − h₀) as well: it is the larger of the two models' uncertainties, together with their difference.
     *
     * @param catches calibration catches of one material at one setting or several, of a conveyor that an adjustable gate
     *     meters
     * @param untested the model to take where no test can be made
     * @param estimator how catches weigh: by their revolutions for the ratio of sums, equally for the mean of ratios; a line
     *     with an intercept is refused
     * @param limits thresholds beyond which catches are flagged
     * @return the curve
     * @throws InvalidInputException as for {@link #fit}
     */
    public static DischargeCurve chosenByTest(
            List<CalibrationCatch> catches, CurveModel untested, RatioEstimator estimator, CatchLimits limits) {
        Objects.requireNonNull(untested, "untested");
        Objects.requireNonNull(estimator, "estimator");
        CaughtOpenings data = CaughtOpenings.of(catches, estimator, limits.allowances());
        ModelFits fits = new ModelFits(data);
        boolean testable = fits.isTestable();
        return new DischargeCurve(
                catches, data, fits, testable ? fits.chosen() : untested, testable, estimator, limits);
    }

    /**
     * The discharge per revolution at a setting, assumed to be set as exactly as it was for the catches.
     *
     * @param setting a setting within the gate's limits
     * @return the prediction; with a finding if it is outside the caught settings and so is geometry alone, by a table without
     *     uncertainty
     * @throws InvalidInputException if the setting is on another scale, outside the gate's limits, or one at which, by
     *     the curve, nothing is discharged: at or below the dead opening, or closed
     */
    public DischargePrediction predict(Setting setting) {
        return predict(setting, Optional.empty());
    }

    /**
     * The discharge per revolution at a setting that is set by reading a scale or a tape.
     *
     * @param setting a setting within the gate's limits
     * @param reading how far the gate may be from what was read, either way, greater than 0: its limits are taken to be
     *     those of a rectangular distribution
     * @return the prediction
     * @throws InvalidInputException as for {@link #predict(Setting)}, or if the reading is on another scale or not greater
     *     than 0
     */
    public DischargePrediction predict(Setting setting, Quantity<?> reading) {
        return predict(setting, Optional.of(reading));
    }

    private DischargePrediction predict(Setting setting, Optional<Quantity<?>> reading) {
        double at = data.geometry().number(setting);
        boolean outside = Comparison.isAbove(data.lowest(), at) || Comparison.isAbove(at, data.highest());
        FittedModel.Value value = value(setting, at);
        Measured<DischargePerRevolution> byCurve =
                measured(unit, value.y(), value.uncertainty(), value.degreesOfFreedom());
        Optional<Component<DischargePerRevolution>> ofGate = reading.map(r -> GateReading.component(
                r, setting, at, changed -> value(setting, changed).y(), unit));
        // Beyond its rows nothing tells how wrong a table is.
        Optional<Budget<DischargePerRevolution>> budget =
                outside && model == CurveModel.TABLE ? Optional.empty() : budgets.of(byCurve, at, ofGate);
        return new DischargePrediction(
                setting,
                budget.map(Budget::result).orElse(byCurve),
                budget,
                outside ? List.of(about.geometryAlone(setting)) : List.of());
    }

    /**
     * The lowest setting at which something was caught.
     *
     * @return a setting on the gate's scale
     */
    public Setting lowestCaught() {
        return catches.get(0).point().setting().withSi(data.lowest());
    }

    /**
     * The highest setting at which something was caught.
     *
     * @return a setting on the gate's scale
     */
    public Setting highestCaught() {
        return catches.get(0).point().setting().withSi(data.highest());
    }

    private FittedModel.Value value(Setting setting, double at) {
        if (!fitted.discharges(at)) {
            throw new InvalidInputException(
                    Setting.FIELD,
                    model == CurveModel.DEAD_OPENING
                            ? "one at which material is discharged; the fitted curve has a dead opening of "
                                    + Rounded.text(
                                            data.difference(fit.orElseThrow().shift()), DIGITS)
                            : "above the closed position",
                    setting.toString());
        }
        return fitted.value(at);
    }

    static <Q extends Quantity<Q>> Measured<Q> measured(
            Unit<Q> unit, double value, OptionalDouble uncertainty, int degreesOfFreedom) {
        Quantity<Q> quantity = Amounts.ofSi(value, unit);
        return uncertainty.isPresent()
                ? Measured.of(quantity, Amounts.ofSi(uncertainty.getAsDouble(), unit), degreesOfFreedom)
                : Measured.once(quantity);
    }

    /**
     * A prediction entered into a display, for a setting at which no catch has to have been made.
     *
     * @param setting the setting
     * @param displayStep the step in which the display takes its value; its unit says the form
     * @return the calibration in force, with the value rounded to the step
     * @throws InvalidInputException as for {@link #predict}, or if the form needs a sensor that isn't there
     */
    public CalibrationInForce entered(Setting setting, Quantity<?> displayStep) {
        double kilogramsPerRevolution = Amounts.si(
                DischargePerRevolution.class,
                predict(setting).dischargePerRevolution().value());
        CalibrationPoint point = CalibrationPoint.of(material(), metering(), setting);
        CalibrationFactor factor = CalibrationFactor.ofDischarge(kilogramsPerRevolution, point, displayStep.getUnit())
                .roundedTo(displayStep);
        return CalibrationInForce.of(point, factor, Optional.of(displayStep));
    }

    /**
     * The factor k, which is an effective bulk density: discharged mass over swept volume.
     *
     * @return k with its standard uncertainty; none for a table
     */
    public Optional<Measured<BulkDensity>> effectiveBulkDensity() {
        Unit<BulkDensity> densityUnit = material().looseBulkDensity().getUnit();
        return fit.map(f -> measured(densityUnit, f.scale(), f.scaleUncertainty(), f.degreesOfFreedom()));
    }

    /**
     * The fitted dead opening h₀.
     *
     * @return how far the gate's reading is off, of either sign: the opening at which discharge starts, if by the
     *     geometry it would start at 0; with its standard uncertainty, in the unit of the first catch's opening; none for
     *     another model
     */
    public Optional<Measured<?>> deadOpening() {
        return fit.filter(f -> model == CurveModel.DEAD_OPENING)
                .map(f -> deadOpening(data.like().quantity().orElseThrow(), f));
    }

    private static <Q extends Quantity<Q>> Measured<Q> deadOpening(Quantity<Q> like, CurveFit fit) {
        return measured(like.getUnit(), fit.shift(), fit.shiftUncertainty(), fit.degreesOfFreedom());
    }

    /**
     * The lack-of-fit test of the model in use.
     *
     * @return the test; none without repeats, with too few openings, or for a table
     */
    public Optional<LackOfFit> test() {
        return test;
    }

    /**
     * The model.
     *
     * @return the model in use
     */
    public CurveModel model() {
        return model;
    }

    /**
     * The settings at which catches were made.
     *
     * @return the settings in rising order, in the unit of the first catch's
     */
    public List<Setting> settings() {
        return data.openings().stream()
                .map(opening -> data.setting(opening.at()))
                .toList();
    }

    /**
     * What doses the material.
     *
     * @return the metering
     */
    public Metering metering() {
        return catches.get(0).point().metering();
    }

    /**
     * The material.
     *
     * @return the material
     */
    public Material material() {
        return catches.get(0).point().material();
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
     * What a person should know about the curve; predictions have findings of their own.
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
                || (other instanceof DischargeCurve that
                        && catches.equals(that.catches)
                        && model == that.model
                        && chosenByTest == that.chosenByTest
                        && estimator == that.estimator
                        && limits.equals(that.limits));
    }

    @Override
    public int hashCode() {
        return Objects.hash(catches, model, chosenByTest, estimator, limits);
    }
}
