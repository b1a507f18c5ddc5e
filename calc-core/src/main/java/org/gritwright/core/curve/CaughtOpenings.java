package org.gritwright.core.curve;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.metering.SweptByOpening;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.CatchAllowances;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.LackOfFit;
import org.gritwright.core.statistics.MonotoneTable;
import org.gritwright.core.statistics.RatioEstimator;
import org.gritwright.core.statistics.Scatter;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The catches of a curve as arrays: openings, discharge per revolution and weights, catch by catch, and summed up opening by
 * opening.
 */
final class CaughtOpenings implements FittedData {
    private final SweptByOpening geometry;
    private final ContinuedGeometry continued;
    private final Setting like;
    private final double[] openings;
    private final double[] kilogramsPerRevolution;
    private final double[] weights;
    /** In rising order. */
    private final List<Opening> distinct;

    private final double totalWeight;

    /**
     * The catches at one opening.
     *
     * @param at the opening
     * @param catches how many
     * @param weight the sum of their weights
     * @param mean the weighted mean of their discharges
     */
    record Opening(double at, int catches, double weight, double mean) {}

    private CaughtOpenings(
            SweptByOpening geometry,
            ContinuedGeometry continued,
            Setting like,
            double[] openings,
            double[] kilogramsPerRevolution,
            double[] weights) {
        this.geometry = geometry;
        this.continued = continued;
        this.like = like;
        this.openings = openings;
        this.kilogramsPerRevolution = kilogramsPerRevolution;
        this.weights = weights;
        this.distinct = distinct();
        this.totalWeight = Arrays.stream(weights).sum();
    }

    private List<Opening> distinct() {
        // While catches are added, the mean holds a sum.
        Map<Double, Opening> sums = new TreeMap<>();
        for (int i = 0; i < openings.length; i++) {
            sums.merge(
                    openings[i],
                    new Opening(openings[i], 1, weights[i], weights[i] * kilogramsPerRevolution[i]),
                    (a, b) -> new Opening(a.at, a.catches + b.catches, a.weight + b.weight, a.mean + b.mean));
        }
        return sums.values().stream()
                .map(sum -> new Opening(sum.at, sum.catches, sum.weight, sum.mean / sum.weight))
                .toList();
    }

    /**
     * Catches at one position count as at one number, that of the first of them, whatever unit they were read in. The
     * weights make the value of a curve through one opening equal to that of the opening's calibration: revolutions for
     * the ratio of sums, equal for the mean of ratios.
     */
    static CaughtOpenings of(List<CalibrationCatch> catches, RatioEstimator estimator, CatchAllowances allowances) {
        Require.that(!catches.isEmpty(), "calibration catches", "one or more", "none");
        Require.that(
                estimator != RatioEstimator.LINE_WITH_INTERCEPT,
                "estimator of a discharge curve",
                "ratio of sums or mean of ratios",
                "line with intercept");
        SweptByOpening geometry = requireOneMetering(catches).sweptByOpening();
        int n = catches.size();
        double[] openings = new double[n];
        double[] ratios = new double[n];
        double[] weights = new double[n];
        Map<Setting.Position, Double> positions = new HashMap<>();
        for (int i = 0; i < n; i++) {
            CalibrationCatch one = catches.get(i);
            Setting setting = one.point().setting();
            double revolutions = one.revolutions();
            openings[i] = positions.computeIfAbsent(setting.position(), at -> setting.si());
            ratios[i] = one.observation().kilograms() * allowances.spillageFactor() / revolutions;
            weights[i] = estimator == RatioEstimator.RATIO_OF_SUMS ? revolutions : 1;
        }
        return new CaughtOpenings(
                geometry,
                new ContinuedGeometry(geometry),
                catches.get(0).point().setting(),
                openings,
                ratios,
                weights);
    }

    private static Metering requireOneMetering(List<CalibrationCatch> catches) {
        CalibrationPoint first = catches.get(0).point();
        for (CalibrationCatch one : catches) {
            if (!one.point().metering().equals(first.metering())
                    || !one.point().material().name().equals(first.material().name())) {
                throw new InvalidInputException(
                        "catches of a discharge curve",
                        "made with one metering and one material, "
                                + first.material().name(),
                        one.point().material().name()
                                + (one.point().metering().equals(first.metering()) ? "" : ", another metering"));
            }
        }
        return first.metering();
    }

    /** The different openings in rising order. */
    List<Opening> openings() {
        return distinct;
    }

    double lowest() {
        return distinct.get(0).at;
    }

    double highest() {
        return distinct.get(distinct.size() - 1).at;
    }

    /** How many catches there are at the other openings. */
    int others(Opening opening) {
        return openings.length - opening.catches;
    }

    /** The weight of the catches at one opening, where a catch of the other openings weighs 1 on average. */
    double relativeWeight(Opening opening) {
        return opening.weight * others(opening) / (totalWeight - opening.weight);
    }

    /** The average weight of a catch. */
    double meanWeight() {
        return totalWeight / openings.length;
    }

    /**
     * The squared deviations of all catches from a curve, relative, each by its weight.
     *
     * @return the sum by the opening
     */
    Map<Double, Double> squares(DoubleUnaryOperator curve) {
        Map<Double, Double> squares = new HashMap<>();
        for (int i = 0; i < openings.length; i++) {
            double deviation = kilogramsPerRevolution[i] / curve.applyAsDouble(openings[i]) - 1;
            squares.merge(openings[i], weights[i] * deviation * deviation, Double::sum);
        }
        return squares;
    }

    SweptByOpening geometry() {
        return geometry;
    }

    /** The first catch's opening, whose kind and unit results take. */
    Setting like() {
        return like;
    }

    MonotoneTable table() {
        return MonotoneTable.fit(Arrays.stream(openings).map(geometry).toArray(), kilogramsPerRevolution, weights);
    }

    @Override
    public CurveFit fit(CurveModel model) {
        return model == CurveModel.PROPORTIONAL
                ? CurveFit.proportional(continued, openings, kilogramsPerRevolution, weights)
                : CurveFit.shifted(continued, lowestLimit(), highestLimit(), openings, kilogramsPerRevolution, weights);
    }

    @Override
    public Optional<LackOfFit> test(CurveFit fit) {
        return LackOfFit.test(Scatter.RELATIVE, openings, kilogramsPerRevolution, weights, fit::at, fit.parameters());
    }

    @Override
    public double worstMisfit(CurveFit fit) {
        return distinct.stream()
                .mapToDouble(opening -> Math.abs(opening.mean / fit.at(opening.at) - 1))
                .max()
                .orElseThrow();
    }

    Setting setting(double opening) {
        return like.withSi(opening);
    }

    /** A difference of openings, which may be negative as no setting is. */
    Quantity<?> difference(double openings) {
        return inUnitOf(like.quantity().orElseThrow(), openings);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> inUnitOf(Quantity<Q> reading, double si) {
        return Amounts.ofSi(si, reading.getUnit());
    }

    @Override
    public double lowestLimit() {
        return continued.lowest();
    }

    @Override
    public double highestLimit() {
        return continued.highest();
    }

    /** The same without the catches at one opening. */
    CaughtOpenings without(Opening opening) {
        int[] kept = IntStream.range(0, openings.length)
                .filter(i -> openings[i] != opening.at)
                .toArray();
        return new CaughtOpenings(
                geometry, continued, like, at(openings, kept), at(kilogramsPerRevolution, kept), at(weights, kept));
    }

    private static double[] at(double[] values, int[] indices) {
        return Arrays.stream(indices).mapToDouble(i -> values[i]).toArray();
    }
}
