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
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.quantity.DischargePerRevolution;

/** What a person should know about the catches behind a discharge curve. */
record CurveFindings(CaughtOpenings data, CatchLimits limits, Unit<DischargePerRevolution> unit) {
    /** How often catches that are right would be called a misfit of the model. */
    static final double MISFIT_CHANCE = 0.05;

    /** How often a curve whose openings are all right would have one called wrong. */
    private static final double OPENING_CHANCE = 0.01;

    /** Far above the rounding of doubles, far below the scatter of any catch. */
    private static final double ROUNDING = 1e-9;

    /** The fewest openings that leave the others a curve with a dead opening that they can be held against. */
    private static final int OPENINGS_TO_TELL = 4;

    /** With as few openings as the model has parameters, or fewer, it fits whatever was caught. */
    Optional<Finding> tooFewOpenings(CurveModel model) {
        int openings = data.positions().length;
        return openings >= model.openingsToTest()
                ? Optional.empty()
                : Optional.of(Finding.of(
                        FindingCode.TOO_FEW_OPENINGS,
                        Map.of(
                                "openings", number(Amounts.of(openings, SpreadingUnits.ONE)),
                                "wanted", number(Amounts.of(model.openingsToTest(), SpreadingUnits.ONE)),
                                "model", model.term())));
    }

    Optional<Finding> misfit(CurveModel model, Optional<LackOfFit> test) {
        return test.filter(t -> t.chance() < MISFIT_CHANCE)
                .map(t -> Finding.of(
                        FindingCode.MODEL_MISFIT,
                        Map.of(
                                "chance", number(Amounts.ofSi(t.chance(), SpreadingUnits.PERCENT)),
                                "model", model.term())));
    }

    /** The test of the repeats may be missing; a scatter about the curve that no yard has shows all the same. */
    Optional<Finding> scatter(CurveModel model, CurveFit fit) {
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

    Optional<Finding> deadOpening(CurveFit fit) {
        double certain = fit.shiftUncertainty().isEmpty()
                ? 0
                : fit.shiftUncertainty().getAsDouble()
                        * Student.of(fit.degreesOfFreedom()).factorExceededWith(MISFIT_CHANCE / 2);
        return Comparison.isAbove(Math.abs(fit.shift()), certain, data.highestLimit())
                ? Optional.of(Finding.of(
                        FindingCode.DEAD_OPENING_FOUND, Map.of("deadOpening", number(data.difference(fit.shift())))))
                : Optional.empty();
    }

    /**
     * The opening that fits the others worst, if it misses the curve through them by more than chance allows: each in
     * turn is left out, the others give a curve with a dead opening, and the one left out is held against its prediction
     * by Student's t. The level is shared among the openings (Bonferroni).
     */
    Optional<Finding> openingMisfit() {
        double[] positions = data.positions();
        if (positions.length < OPENINGS_TO_TELL) {
            return Optional.empty();
        }
        List<Candidate> candidates = new ArrayList<>();
        for (double position : positions) {
            Candidate.of(data, position).ifPresent(candidates::add);
        }
        return candidates.stream()
                .max((a, b) -> Double.compare(a.excess(positions.length), b.excess(positions.length)))
                .filter(worst -> worst.excess(positions.length) > 1)
                .map(worst -> Finding.of(
                        FindingCode.OPENING_MISFIT,
                        Map.of(
                                "opening", number(data.difference(worst.position)),
                                "caught", number(Amounts.ofSi(worst.caught, unit)),
                                "predicted", number(Amounts.ofSi(worst.predicted, unit)))));
    }

    /** One opening against the curve through the others. */
    private record Candidate(double position, double caught, double predicted, double deviation, int degreesOfFreedom) {

        static Optional<Candidate> of(CaughtOpenings data, double position) {
            CurveFit others;
            double predicted;
            double curve;
            try {
                others = data.without(position).fit(CurveModel.DEAD_OPENING);
                predicted = others.at(position);
                if (others.degreesOfFreedom() < 1 || !(predicted > 0)) {
                    return Optional.empty();
                }
                curve = others.uncertaintyAt(position).orElseThrow() / predicted;
            } catch (InvalidInputException e) {
                // The others give no curve, or none that reaches here: they can't judge.
                return Optional.empty();
            }
            double caught = data.meanAt(position);
            double own = others.relativeDeviation().orElseThrow() / Math.sqrt(data.weightAt(position));
            return Optional.of(new Candidate(
                    position,
                    caught,
                    predicted,
                    Math.abs(caught / predicted - 1) / Math.max(Math.hypot(own, curve), ROUNDING),
                    others.degreesOfFreedom()));
        }

        /** The deviation as a multiple of what chance allows. */
        double excess(int openings) {
            return deviation / Student.of(degreesOfFreedom).factorExceededWith(OPENING_CHANCE / 2 / openings);
        }
    }

    Finding geometryAlone(Setting setting, double lowest, double highest) {
        return Finding.of(
                FindingCode.GEOMETRY_ALONE,
                Map.of(
                        "opening", number(setting.quantity().orElseThrow()),
                        "lowest", number(data.difference(lowest)),
                        "highest", number(data.difference(highest))));
    }
}
