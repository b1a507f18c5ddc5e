package org.gritwright.core.range;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.units.check.Comparison;

/**
 * Where the speed stops rising: the last row that is still slower than the plateau above it by more than noise, the first row on
 * the plateau, and how far up the command at which it begins may lie.
 *
 * @param below the last row below the plateau, counted from 0; -1 if there is none
 * @param first the first row on it; the last of all if the speed rises to the end
 * @param end the highest command at which the plateau may begin
 */
record Knee(int below, int first, double end) {
    /** The chance that a plateau is taken for a rise somewhere. */
    private static final double CHANCE = 0.025;

    static Knee of(List<MonotoneRegression.Row> rows, Noise noise) {
        int last = rows.size() - 1;
        double weight = rows.get(last).weight();
        double mean = rows.get(last).mean();
        double end = rows.get(last).x();
        int first = last;
        while (first > 0) {
            MonotoneRegression.Row next = rows.get(first - 1);
            double allowance = noise.allowance(weight, next.weight(), CHANCE / last);
            if (Comparison.isAbove(mean - next.mean(), allowance)) {
                break;
            }
            first--;
            end = Math.min(rows.get(last).x(), next.x() + stillMissing(rows, first, mean - next.mean() + allowance));
            mean = (weight * mean + next.weight() * next.mean()) / (weight + next.weight());
            weight += next.weight();
        }
        return new Knee(first - 1, first, end);
    }

    /**
     * How much command it may take from a row to the plateau, if a speed within noise is missing: with the least gain that was
     * seen below.
     */
    private static double stillMissing(List<MonotoneRegression.Row> rows, int row, double missing) {
        if (row == 0) {
            return 0;
        }
        double gain = gain(rows, row - 1);
        if (row > 1 && gain(rows, row - 2) > 0) {
            gain = Math.min(gain, gain(rows, row - 2));
        }
        // Without a rise to go by, anything up to the end.
        return gain > 0 ? Math.max(0, missing / gain) : Double.POSITIVE_INFINITY;
    }

    private static double gain(List<MonotoneRegression.Row> rows, int row) {
        MonotoneRegression.Row from = rows.get(row);
        MonotoneRegression.Row to = rows.get(row + 1);
        return (to.mean() - from.mean()) / (to.x() - from.x());
    }

    /**
     * The commands between which the plateau begins; absent if the speed rises to the end, or may: a slow rise in small steps looks
     * like a plateau.
     */
    Optional<CommandInterval> interval(
            List<MonotoneRegression.Row> rows, CommandScale scale, CommandInterval threshold) {
        return !Comparison.isAbove(rows.get(rows.size() - 1).x(), end)
                ? Optional.empty()
                : Optional.of(new CommandInterval(
                        below < 0 ? threshold.from() : scale.at(rows.get(below).x()), scale.at(end)));
    }
}
