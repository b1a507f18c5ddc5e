package org.gritwright.core.curve;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.DischargePerRevolution;

/** What a person should know about the catches behind a discharge curve. */
record CurveFindings(CaughtOpenings data, CatchLimits limits, Unit<DischargePerRevolution> unit) {

    /** All about a curve; predictions have findings of their own. */
    List<Finding> of(ModelFits fits, CurveModel model, boolean chosenByTest, List<Finding> ofBudget) {
        List<Finding> found = new ArrayList<>();
        Optional<CurveFit> fit = fits.ifAny(model);
        tooFewOpenings(model).ifPresent(found::add);
        misfit(model, fits.test(model)).ifPresent(found::add);
        fit.flatMap(f -> scatter(model, f)).ifPresent(found::add);
        if (model == CurveModel.DEAD_OPENING) {
            fit.flatMap(this::deadOpening).ifPresent(found::add);
        }
        if (chosenByTest && model == CurveModel.TABLE) {
            // A discharge that doesn't rise has no dead opening that a test could refuse: what was refused is then the
            // proportion.
            CurveModel refused =
                    fits.ifAny(CurveModel.DEAD_OPENING).isPresent() ? CurveModel.DEAD_OPENING : CurveModel.PROPORTIONAL;
            misfit(refused, fits.test(refused)).ifPresent(found::add);
        }
        new OpeningMisfit(data).find(fits).map(this::openingMisfit).ifPresent(found::add);
        found.addAll(ofBudget);
        return List.copyOf(found);
    }

    /** With as few openings as the model has parameters, or fewer, it fits whatever was caught. */
    private Optional<Finding> tooFewOpenings(CurveModel model) {
        int openings = data.openings().size();
        return openings >= model.openingsToTest()
                ? Optional.empty()
                : Optional.of(Finding.of(
                        FindingCode.TOO_FEW_OPENINGS,
                        Map.of(
                                "openings", number(Amounts.of(openings, SpreadingUnits.ONE)),
                                "wanted", number(Amounts.of(model.openingsToTest(), SpreadingUnits.ONE)),
                                "model", model.term())));
    }

    private Optional<Finding> misfit(CurveModel model, Optional<LackOfFit> test) {
        return test.filter(t -> t.chance() < ModelFits.MISFIT_CHANCE)
                .map(t -> Finding.of(
                        FindingCode.MODEL_MISFIT,
                        Map.of(
                                "chance", number(Amounts.ofSi(t.chance(), SpreadingUnits.PERCENT)),
                                "model", model.term())));
    }

    /**
     * The test of the repeats may be missing; a scatter about the curve that is larger than in any yard shows anyway.
     */
    private Optional<Finding> scatter(CurveModel model, CurveFit fit) {
        double limit = Amounts.si(Dimensionless.class, limits.greatestScatter());
        return fit.relativeDeviation().isPresent()
                        && Comparison.isAbove(fit.relativeDeviation().getAsDouble(), limit)
                ? Optional.of(Finding.of(
                        FindingCode.CURVE_SCATTER,
                        Map.of(
                                "scatter",
                                number(Amounts.ofSi(fit.relativeDeviation().getAsDouble(), SpreadingUnits.PERCENT)),
                                "limit",
                                number(limits.greatestScatter()),
                                "model",
                                model.term())))
                : Optional.empty();
    }

    private Optional<Finding> deadOpening(CurveFit fit) {
        double certain = fit.shiftUncertainty().isEmpty()
                ? 0
                : fit.shiftUncertainty().getAsDouble()
                        * Student.of(fit.degreesOfFreedom()).factorExceededWith(ModelFits.MISFIT_CHANCE / 2);
        return Comparison.isAbove(Math.abs(fit.shift()), certain, data.highestLimit())
                ? Optional.of(Finding.of(
                        FindingCode.DEAD_OPENING_FOUND, Map.of("deadOpening", number(data.difference(fit.shift())))))
                : Optional.empty();
    }

    private Finding openingMisfit(OpeningMisfit.Candidate worst) {
        return Finding.of(
                FindingCode.OPENING_MISFIT,
                Map.of(
                        "opening", number(data.difference(worst.opening().at())),
                        "caught", number(Amounts.ofSi(worst.opening().mean(), unit)),
                        "predicted", number(Amounts.ofSi(worst.predicted(), unit))));
    }

    Finding geometryAlone(Setting setting) {
        return Finding.of(
                FindingCode.GEOMETRY_ALONE,
                Map.of(
                        "opening", number(setting.quantity().orElseThrow()),
                        "lowest", number(data.difference(data.lowest())),
                        "highest", number(data.difference(data.highest()))));
    }
}
