package org.gritwright.core.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.budget.GateReading;
import org.gritwright.core.budget.SystematicErrors;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Term;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.observation.CatchFindings;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.MonotoneTable;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.uncertainty.Budget;
import org.gritwright.core.uncertainty.Component;
import org.gritwright.core.uncertainty.Distribution;
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
 * curve is fitted with a model that the caller names ({@link #fit}), or with the first of k·g(h), k·g(h − h₀) and a rising
 * table that a lack-of-fit test at 5 % doesn't refuse ({@link #chosenByTest}). Immutable, as thread-safe as the types
 * behind it.
 */
public final class DischargeCurve {
    private static final String ABOVE_CLOSED = "above the closed position";
    private static final int DIGITS = 4;

    /** Small enough for a derivative, far above rounding. */
    private static final double NUDGE = 1e-4;

    private final List<CalibrationCatch> catches;
    private final CurveModel model;
    private final CaughtOpenings data;
    private final Optional<CurveFit> fit;
    private final Optional<MonotoneTable> table;
    private final Optional<CurveFit> rival;
    private final Optional<LackOfFit> test;
    private final Unit<DischargePerRevolution> unit;
    private final CatchAllowances allowances;
    private final CatchLimits limits;
    private final DoubleUnaryOperator values;
    /** The curve again for each catch, with that catch's discharge a little larger. */
    private final List<DoubleUnaryOperator> nudged;

    private final List<Finding> findings;

    private DischargeCurve(
            List<CalibrationCatch> catches,
            CaughtOpenings data,
            CurveModel model,
            boolean chosenByTest,
            CatchLimits limits) {
        this.catches = List.copyOf(catches);
        this.data = data;
        this.model = model;
        this.unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class,
                UnitSymbol.of(catches.get(0).caught().total().getUnit()).system());
        this.limits = limits;
        this.allowances = limits.allowances();
        boolean isTable = model == CurveModel.TABLE;
        this.fit = isTable ? Optional.empty() : Optional.of(data.fit(model));
        this.table = isTable ? Optional.of(data.table()) : Optional.empty();
        this.rival =
                chosenByTest && model == CurveModel.PROPORTIONAL ? fitIfAny(CurveModel.DEAD_OPENING) : Optional.empty();
        this.test = fit.flatMap(data::test);
        this.values = values(data);
        this.nudged = IntStream.range(0, catches.size()).mapToObj(this::nudged).toList();
        this.findings = findings(chosenByTest, limits);
    }

    /** kg/rev by opening, of the model in use. */
    private DoubleUnaryOperator values(CaughtOpenings changed) {
        if (model == CurveModel.TABLE) {
            MonotoneTable rows = changed.table();
            return at -> byTable(rows, changed.geometry().applyAsDouble(at));
        }
        return changed.fit(model)::at;
    }

    private DoubleUnaryOperator nudged(int index) {
        try {
            return values(data.nudged(index, NUDGE));
        } catch (InvalidInputException e) {
            // A curve at the very edge of what can be fitted: then the catch has its share and no more.
            return at -> values.applyAsDouble(at) * (1 + NUDGE / catches.size());
        }
    }

    private static double byTable(MonotoneTable rows, double swept) {
        double row = Math.max(rows.lowest(), Math.min(rows.highest(), swept));
        return swept / row * rows.at(row);
    }

    /** A model that can't be fitted at all, as to a discharge that doesn't rise, is no rival. */
    private Optional<CurveFit> fitIfAny(CurveModel other) {
        try {
            return Optional.of(data.fit(other));
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
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
     * @param limits where catches begin to be remarkable
     * @return the curve
     * @throws InvalidInputException if there is no catch, an opening is missing, out of the gate's limits or closed,
     *     pulses were counted and the drive has no sensor, no adjustable gate meters the conveyor, or the model can't be
     *     fitted: a dead opening to fewer than two openings or to a discharge that doesn't rise
     */
    public static DischargeCurve fit(
            List<CalibrationCatch> catches, CurveModel model, RatioEstimator estimator, CatchLimits limits) {
        CaughtOpenings data = CaughtOpenings.of(catches, estimator, limits.allowances());
        return new DischargeCurve(catches, data, model, false, limits);
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
     * A curve whose model is chosen by test: k·g(h), unless {@link LackOfFit} refuses it at 5 %; then k·g(h − h₀), unless
     * that is refused as well or can't be fitted; then a rising table. The test needs repeats at an opening, and two
     * openings or more. Since a passed test with few repeats proves nothing, the uncertainty of predictions by k·g(h)
     * then covers k·g(h − h₀) as well: it is the larger of the two models' uncertainties, together with their difference.
     *
     * @param catches calibration catches of one material at one setting or several, of a conveyor that an adjustable gate
     *     meters
     * @param untested the model to take where no test can be made
     * @param estimator how catches weigh: by their revolutions for the ratio of sums, equally for the mean of ratios; a line
     *     with an intercept is refused
     * @param limits where catches begin to be remarkable
     * @return the curve
     * @throws InvalidInputException as for {@link #fit}
     */
    public static DischargeCurve chosenByTest(
            List<CalibrationCatch> catches, CurveModel untested, RatioEstimator estimator, CatchLimits limits) {
        CaughtOpenings data = CaughtOpenings.of(catches, estimator, limits.allowances());
        Optional<LackOfFit> proportional = data.test(data.fit(CurveModel.PROPORTIONAL));
        if (proportional.isEmpty()) {
            return new DischargeCurve(catches, data, untested, false, limits);
        }
        CurveModel chosen = isRefused(proportional) ? steeper(data) : CurveModel.PROPORTIONAL;
        return new DischargeCurve(catches, data, chosen, true, limits);
    }

    private static CurveModel steeper(CaughtOpenings data) {
        try {
            return isRefused(data.test(data.fit(CurveModel.DEAD_OPENING))) ? CurveModel.TABLE : CurveModel.DEAD_OPENING;
        } catch (InvalidInputException e) {
            return CurveModel.TABLE;
        }
    }

    private static boolean isRefused(Optional<LackOfFit> test) {
        return test.filter(t -> t.chance() < CurveFindings.MISFIT_CHANCE).isPresent();
    }

    private List<Finding> findings(boolean chosenByTest, CatchLimits limits) {
        CurveFindings about = new CurveFindings(data, limits, unit);
        List<Finding> found = new ArrayList<>();
        about.tooFewOpenings(model).ifPresent(found::add);
        about.misfit(model, test).ifPresent(found::add);
        fit.flatMap(f -> about.scatter(model, f)).ifPresent(found::add);
        if (model == CurveModel.DEAD_OPENING) {
            fit.flatMap(about::deadOpening).ifPresent(found::add);
        }
        if (chosenByTest && model == CurveModel.TABLE) {
            // A discharge that doesn't rise has no dead opening to be refused: then it is the proportion that was.
            CurveModel refused =
                    fitIfAny(CurveModel.DEAD_OPENING).isPresent() ? CurveModel.DEAD_OPENING : CurveModel.PROPORTIONAL;
            about.misfit(refused, data.test(data.fit(refused))).ifPresent(found::add);
        }
        about.openingMisfit().ifPresent(found::add);
        List<Argument.Unknown> unknown = new ArrayList<>(systematic(1).unknown());
        if (degreesOfFreedom() < 1 && allowances.repeatability().isEmpty()) {
            unknown.add(Argument.Unknown.of(Term.SCATTER));
        }
        CatchFindings.ofUnknown(unknown).ifPresent(found::add);
        return List.copyOf(found);
    }

    /**
     * The discharge per revolution at a setting, taken to be set as exactly as the catches' was.
     *
     * @param setting a setting within the gate's limits
     * @return the prediction; with a finding if it is outside the caught settings and so is geometry alone
     * @throws InvalidInputException if the setting is on another scale, outside the gate's limits, or one at which by the
     *     curve nothing is discharged: at or below the dead opening, or closed
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
        double[] caught = data.positions();
        double lowest = caught[0];
        double highest = caught[caught.length - 1];
        boolean outside = Comparison.isAbove(lowest, at) || Comparison.isAbove(at, highest);
        Measured<DischargePerRevolution> byCurve = byCurve(setting, at);
        Optional<Component<DischargePerRevolution>> ofGate =
                reading.map(r -> GateReading.component(r, setting, at, changed -> siByCurve(setting, changed), unit));
        Optional<Budget<DischargePerRevolution>> budget = budget(byCurve, at, ofGate);
        return new DischargePrediction(
                setting,
                budget.map(Budget::result).orElse(byCurve),
                budget,
                outside
                        ? List.of(new CurveFindings(data, limits, unit).geometryAlone(setting, lowest, highest))
                        : List.of());
    }

    /** None where nothing is known of how the catches scatter: what is left would look like more than it is. */
    private Optional<Budget<DischargePerRevolution>> budget(
            Measured<DischargePerRevolution> byCurve, double at, Optional<Component<DischargePerRevolution>> ofGate) {
        double value = Amounts.si(DischargePerRevolution.class, byCurve.value());
        Quantity<DischargePerRevolution> resolution =
                Amounts.ofSi(together(at, CalibrationCatch::relativeResolution) * value, unit);
        List<Component<DischargePerRevolution>> components = new ArrayList<>();
        Optional<Quantity<DischargePerRevolution>> scattered = byCurve.standardUncertainty();
        if (scattered.isPresent()) {
            boolean larger = Amounts.si(DischargePerRevolution.class, scattered.get())
                    >= Amounts.si(DischargePerRevolution.class, resolution);
            components.add(
                    larger
                            ? Component.typeA(
                                    "curve through the catches",
                                    scattered.get(),
                                    scattered.get(),
                                    byCurve.degreesOfFreedom().orElseThrow())
                            : Component.typeB(
                                    "resolution of scale and count", Distribution.NORMAL, resolution, resolution));
        } else if (allowances.repeatability().isPresent()) {
            Repeatability known = allowances.repeatability().get();
            components.add(
                    Component.typeB("resolution of scale and count", Distribution.NORMAL, resolution, resolution));
            components.add(known.component(Amounts.ofSi(together(at, one -> known.relative()) * value, unit)));
        } else {
            return Optional.empty();
        }
        components.addAll(systematic(value).components());
        ofGate.ifPresent(components::add);
        return Optional.of(Budget.of(byCurve.value(), components));
    }

    /** What independent relative uncertainties of the catches make of a prediction's, by nudging one after the other. */
    private double together(double at, ToDoubleFunction<CalibrationCatch> relative) {
        double here = values.applyAsDouble(at);
        double squares = 0;
        for (int i = 0; i < nudged.size(); i++) {
            double sensitivity = (nudged.get(i).applyAsDouble(at) / here - 1) / NUDGE;
            double part = sensitivity * relative.applyAsDouble(catches.get(i));
            squares += part * part;
        }
        return Math.sqrt(squares);
    }

    private int degreesOfFreedom() {
        return table.map(MonotoneTable::degreesOfFreedom)
                .orElseGet(() -> fit.orElseThrow().degreesOfFreedom());
    }

    /** The catches' scales share in a prediction as their masses do in the catches. */
    private SystematicErrors<DischargePerRevolution> systematic(double kilogramsPerRevolution) {
        double total = catches.stream().mapToDouble(c -> c.caught().kilograms()).sum();
        return SystematicErrors.of(
                catches.stream().map(CalibrationCatch::caught).toList(),
                catches.stream()
                        .mapToDouble(c -> c.caught().kilograms() / total)
                        .toArray(),
                allowances,
                relative -> Amounts.ofSi(relative * kilogramsPerRevolution, unit));
    }

    private double siByCurve(Setting setting, double at) {
        return Amounts.si(DischargePerRevolution.class, byCurve(setting, at).value());
    }

    private Measured<DischargePerRevolution> byCurve(Setting setting, double at) {
        return table.isPresent() ? byTable(table.get(), setting, at) : byShape(fit.orElseThrow(), setting, at);
    }

    private Measured<DischargePerRevolution> byShape(CurveFit curve, Setting setting, double at) {
        double argument = at - curve.shift();
        boolean discharges = !Comparison.isAbove(data.lowestLimit(), argument)
                && !Comparison.isAbove(argument, data.highestLimit())
                && curve.at(at) > 0;
        if (!discharges) {
            throw new InvalidInputException(
                    Setting.FIELD,
                    model == CurveModel.PROPORTIONAL
                            ? ABOVE_CLOSED
                            : "one at which the fitted curve, with a dead opening of "
                                    + Rounded.text(data.difference(curve.shift()), DIGITS) + ", discharges",
                    setting.toString());
        }
        return rival.map(other -> coveringBoth(curve, other, at))
                .orElseGet(() -> measured(curve.at(at), curve.uncertaintyAt(at), curve.degreesOfFreedom()));
    }

    /**
     * The prediction of a curve that a test didn't refuse, with an uncertainty that covers a rival which the test can't
     * refuse either: the larger uncertainty of the two, together with their difference. A rival says nothing below its
     * dead opening, and beyond the geometry's end it keeps its last value.
     */
    private Measured<DischargePerRevolution> coveringBoth(CurveFit curve, CurveFit other, double at) {
        double argument = Math.min(at - other.shift(), data.highestLimit());
        double rivalAt = argument + other.shift();
        boolean discharges = argument > data.lowestLimit() && other.at(rivalAt) > 0;
        double value = curve.at(at);
        double difference = value - (discharges ? other.at(rivalAt) : 0);
        double own = curve.uncertaintyAt(at).orElseThrow();
        double larger = discharges ? Math.max(own, other.uncertaintyAt(rivalAt).orElse(own)) : own;
        return measured(
                value, OptionalDouble.of(Math.hypot(larger, difference)), Math.max(1, other.degreesOfFreedom()));
    }

    /** Beyond its rows the table goes on in proportion to the geometry. */
    private Measured<DischargePerRevolution> byTable(MonotoneTable rows, Setting setting, double at) {
        double swept = data.geometry().applyAsDouble(at);
        if (!(swept > 0)) {
            throw new InvalidInputException(Setting.FIELD, ABOVE_CLOSED, setting.toString());
        }
        double row = Math.max(rows.lowest(), Math.min(rows.highest(), swept));
        double factor = swept / row;
        OptionalDouble uncertainty = rows.uncertaintyAt(row);
        return measured(
                byTable(rows, swept),
                uncertainty.isPresent() ? OptionalDouble.of(factor * uncertainty.getAsDouble()) : uncertainty,
                rows.degreesOfFreedom());
    }

    private Measured<DischargePerRevolution> measured(double value, OptionalDouble uncertainty, int degreesOfFreedom) {
        return measured(unit, value, uncertainty, degreesOfFreedom);
    }

    private static <Q extends Quantity<Q>> Measured<Q> measured(
            Unit<Q> unit, double value, OptionalDouble uncertainty, int degreesOfFreedom) {
        Quantity<Q> quantity = Amounts.ofSi(value, unit);
        return uncertainty.isPresent()
                ? Measured.of(quantity, Amounts.ofSi(uncertainty.getAsDouble(), unit), degreesOfFreedom)
                : Measured.once(quantity);
    }

    /**
     * A prediction entered into a display, for a setting at which nothing need have been caught.
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
        CalibrationFactor factor = CalibrationFactor.ofDischarge(
                        kilogramsPerRevolution, metering().feedback(), displayStep.getUnit())
                .roundedTo(displayStep);
        return CalibrationInForce.of(
                CalibrationPoint.of(material(), metering(), setting), factor, Optional.of(displayStep));
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
     * The settings at which was caught.
     *
     * @return the settings in rising order, in the unit of the first catch's
     */
    public List<Setting> settings() {
        return Arrays.stream(data.positions()).mapToObj(data::setting).toList();
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
}
