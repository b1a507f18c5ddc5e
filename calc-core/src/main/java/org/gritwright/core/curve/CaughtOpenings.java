package org.gritwright.core.curve;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.OpeningReading;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.metering.SweptByOpening;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.MonotoneTable;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.units.InvalidInputException;

/** The catches of a curve as arrays: openings, discharge per revolution and weights, catch by catch. */
final class CaughtOpenings {
    private final SweptByOpening geometry;
    private final ContinuedGeometry continued;
    private final Quantity<?> like;
    private final double[] openings;
    private final double[] kilogramsPerRevolution;
    private final double[] weights;

    private CaughtOpenings(
            SweptByOpening geometry,
            Quantity<?> like,
            double[] openings,
            double[] kilogramsPerRevolution,
            double[] weights) {
        this.geometry = geometry;
        this.continued = new ContinuedGeometry(geometry);
        this.like = like;
        this.openings = openings;
        this.kilogramsPerRevolution = kilogramsPerRevolution;
        this.weights = weights;
    }

    /**
     * Catches at one position count as at one number, that of the first of them, whatever unit they were read in. The
     * weights make the value of a curve through one opening that of the opening's calibration: revolutions for the ratio
     * of sums, equal for the mean of ratios.
     */
    static CaughtOpenings of(
            Spreader spreader, List<CalibrationCatch> catches, RatioEstimator estimator, CatchAllowances allowances) {
        if (catches.isEmpty()) {
            throw new InvalidInputException("calibration catches", "one or more", "none");
        }
        if (estimator == RatioEstimator.LINE_WITH_INTERCEPT) {
            throw new InvalidInputException(
                    "estimator of a discharge curve", "ratio of sums or mean of ratios", "line with intercept");
        }
        SweptByOpening geometry = spreader.sweptByOpening();
        int n = catches.size();
        double[] openings = new double[n];
        double[] ratios = new double[n];
        double[] weights = new double[n];
        Map<OpeningReading.Position, Double> positions = new HashMap<>();
        for (int i = 0; i < n; i++) {
            CalibrationCatch one = catches.get(i);
            // Checks the opening, and that something is swept at it.
            spreader.sweptCubicMetresPerRevolution(one.opening());
            Quantity<?> opening = one.opening().orElseThrow();
            double revolutions = one.counted().revolutions(spreader.feedback());
            openings[i] = positions.computeIfAbsent(OpeningReading.position(opening), at -> OpeningReading.si(opening));
            ratios[i] = one.caught().kilograms() * allowances.spillageFactor() / revolutions;
            weights[i] = estimator == RatioEstimator.RATIO_OF_SUMS ? revolutions : 1;
        }
        return new CaughtOpenings(geometry, catches.get(0).opening().orElseThrow(), openings, ratios, weights);
    }

    /** The different openings in rising order. */
    double[] positions() {
        return Arrays.stream(openings).sorted().distinct().toArray();
    }

    /** The weighted mean discharge at one opening. */
    double meanAt(double opening) {
        double sum = 0;
        double weight = 0;
        for (int i = 0; i < openings.length; i++) {
            if (openings[i] == opening) {
                sum += weights[i] * kilogramsPerRevolution[i];
                weight += weights[i];
            }
        }
        return sum / weight;
    }

    /** The weight of the catches at one opening, where a catch of the other openings weighs 1 on average. */
    double weightAt(double opening) {
        double weight = 0;
        double others = 0;
        int numberOfOthers = 0;
        for (int i = 0; i < openings.length; i++) {
            if (openings[i] == opening) {
                weight += weights[i];
            } else {
                others += weights[i];
                numberOfOthers++;
            }
        }
        return weight * numberOfOthers / others;
    }

    SweptByOpening geometry() {
        return geometry;
    }

    /** The first catch's opening, whose kind and unit results take. */
    Quantity<?> like() {
        return like;
    }

    MonotoneTable table() {
        return MonotoneTable.fit(Arrays.stream(openings).map(geometry).toArray(), kilogramsPerRevolution, weights);
    }

    CurveFit fit(CurveModel model) {
        return model == CurveModel.PROPORTIONAL
                ? CurveFit.proportional(continued, openings, kilogramsPerRevolution, weights)
                : CurveFit.shifted(continued, lowestLimit(), highestLimit(), openings, kilogramsPerRevolution, weights);
    }

    Optional<LackOfFit> test(CurveFit fit) {
        return LackOfFit.test(openings, kilogramsPerRevolution, weights, fit::at, fit.parameters());
    }

    Quantity<?> quantity(double opening) {
        return OpeningReading.ofSi(opening, like);
    }

    /** The least opening at which a curve has a value, once its dead opening is taken off. */
    double lowestLimit() {
        return continued.lowest();
    }

    double highestLimit() {
        return continued.highest();
    }

    /** The same with one catch's discharge a little larger. */
    CaughtOpenings nudged(int index, double relative) {
        double[] changed = kilogramsPerRevolution.clone();
        changed[index] *= 1 + relative;
        return new CaughtOpenings(geometry, like, openings, changed, weights);
    }

    /** The same without the catches at one opening. */
    CaughtOpenings without(double opening) {
        int[] kept = IntStream.range(0, openings.length)
                .filter(i -> openings[i] != opening)
                .toArray();
        return new CaughtOpenings(
                geometry, like, at(openings, kept), at(kilogramsPerRevolution, kept), at(weights, kept));
    }

    private static double[] at(double[] values, int[] indices) {
        return Arrays.stream(indices).mapToDouble(i -> values[i]).toArray();
    }
}
