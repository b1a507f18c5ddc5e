package org.gritwright.core.curve;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.gritwright.core.statistics.CurveFit;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.InvalidInputException;

/**
 * The opening that fits the others worst, if it misses the curve through them by more than chance allows: each in turn is left
 * out, the others give a curve with a dead opening, and the one left out is compared with its prediction by Student's t. The
 * level is shared among the openings (Bonferroni).
 *
 * <p>A curve for each opening through all the others would cost as much as the square of their number. So with more than {@value
 * #TRIED} openings only the worst {@value #TRIED} are left out in turn: those with the largest deleted residuals of the curve
 * through all of them, studentized with the scatter of the others (R. D. Cook and S. Weisberg, Residuals and Influence in
 * Regression, 1982, 2.2; from memory), which for a straight line are the same t as the refitted curve gives. Where all of them
 * together give no curve, they are the openings whose discharge per swept volume is farthest from the median.
 */
final class OpeningMisfit {
    /** How often a curve whose openings are all right would have one called wrong. */
    private static final double OPENING_CHANCE = 0.01;

    /** Far above the rounding of doubles, far below the scatter of any catch. */
    private static final double ROUNDING = 1e-9;

    /** The fewest openings that leave the others a curve with a dead opening that they can be compared with. */
    private static final int OPENINGS_TO_TELL = 4;

    static final int TRIED = 8;

    private final CaughtOpenings data;
    private final int tried;
    private final int openings;

    OpeningMisfit(CaughtOpenings data) {
        this(data, TRIED);
    }

    OpeningMisfit(CaughtOpenings data, int tried) {
        this.data = data;
        this.tried = tried;
        this.openings = data.openings().size();
    }

    /** One opening against the curve through the others. */
    record Candidate(CaughtOpenings.Opening opening, double predicted, double excess) {}

    /**
     * The worst opening.
     *
     * @param fits the fits to all openings
     * @return none if no opening misses the others by more than chance allows
     */
    Optional<Candidate> find(ModelFits fits) {
        if (openings < OPENINGS_TO_TELL) {
            return Optional.empty();
        }
        return suspects(fits).stream()
                .flatMap(opening -> leftOut(opening).stream())
                .max(Comparator.comparingDouble(Candidate::excess))
                .filter(worst -> worst.excess > 1);
    }

    private List<CaughtOpenings.Opening> suspects(ModelFits fits) {
        if (openings <= tried) {
            return data.openings();
        }
        ToDoubleFunction<CaughtOpenings.Opening> off =
                fits.ifAny(CurveModel.DEAD_OPENING).map(this::deletedResiduals).orElseGet(this::distancesFromMedian);
        return data.openings().stream()
                .map(opening -> new Suspect(opening, off.applyAsDouble(opening)))
                .sorted(Comparator.comparingDouble(Suspect::off).reversed())
                .limit(tried)
                .map(Suspect::opening)
                .toList();
    }

    private record Suspect(CaughtOpenings.Opening opening, double off) {}

    /** The residuals' t, as multiples of what chance allows. */
    private ToDoubleFunction<CaughtOpenings.Opening> deletedResiduals(CurveFit all) {
        Map<Double, Double> squares = data.squares(all::at);
        double total =
                squares.values().stream().mapToDouble(Double::doubleValue).sum();
        Map<Integer, Double> allowed = new HashMap<>();
        return opening -> {
            int degreesOfFreedom = data.others(opening) - all.parameters();
            if (degreesOfFreedom < 1) {
                return 0;
            }
            double residual = opening.mean() / all.at(opening.at()) - 1;
            double square = opening.weight() * residual * residual;
            double kept = Math.max(ROUNDING, 1 - opening.weight() / data.meanWeight() * all.leverageAt(opening.at()));
            double others =
                    (total - squares.getOrDefault(opening.at(), 0.0) + square - square / kept) / degreesOfFreedom;
            double t = Math.sqrt(square / kept / Math.max(others, ROUNDING * ROUNDING * data.meanWeight()));
            return t / allowed.computeIfAbsent(degreesOfFreedom, this::allowed);
        };
    }

    private ToDoubleFunction<CaughtOpenings.Opening> distancesFromMedian() {
        double[] sorted = data.openings().stream()
                .mapToDouble(this::perSweptVolume)
                .sorted()
                .toArray();
        double median = sorted[sorted.length / 2];
        return opening -> Math.abs(perSweptVolume(opening) - median);
    }

    /** As a logarithm. */
    private double perSweptVolume(CaughtOpenings.Opening opening) {
        return Math.log(opening.mean() / data.geometry().applyAsDouble(opening.at()));
    }

    private Optional<Candidate> leftOut(CaughtOpenings.Opening opening) {
        CurveFit others;
        double predicted;
        double curve;
        try {
            others = data.without(opening).fit(CurveModel.DEAD_OPENING);
            predicted = others.at(opening.at());
            if (others.degreesOfFreedom() < 1 || !(predicted > 0)) {
                return Optional.empty();
            }
            curve = others.uncertaintyAt(opening.at()).orElseThrow() / predicted;
        } catch (InvalidInputException e) {
            // The others give no curve, or none that reaches here: they can't judge.
            return Optional.empty();
        }
        double own = others.relativeDeviation().orElseThrow() / Math.sqrt(data.relativeWeight(opening));
        double deviation = Math.abs(opening.mean() / predicted - 1) / Math.max(Math.hypot(own, curve), ROUNDING);
        return Optional.of(new Candidate(opening, predicted, deviation / allowed(others.degreesOfFreedom())));
    }

    /** The multiple of its uncertainty that chance allows a deviation. */
    private double allowed(int degreesOfFreedom) {
        return Student.of(degreesOfFreedom).factorExceededWith(OPENING_CHANCE / 2 / openings);
    }
}
