package org.gritwright.core.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * Plans calibration catches: the repeats and the whole revolutions of each that reach a wanted expanded uncertainty
 * with the least material; among equal plans, the one with the fewest catches.
 *
 * <p>All numbers of revolutions are tried, from the least that gets no finding to what the containers and the scale take:
 * one more container rounds once more, so a larger catch may be the worse one. Where more than {@value #MOST_TRIED} would
 * have to be tried, as with a hopper of several tons, only multiples of 10, 100, … are.
 *
 * <p>In simulated days the truth was within the wanted uncertainty in 95 % of them or more, and half of the days or more
 * found no larger one. That holds for a machine that scatters as was assumed. Of one that scatters twice as much, two
 * catches that were to reach 3 % did so in 72 % of the days and showed nothing of it; five showed it. Plan with three or
 * more where the scatter is not known from experience.
 *
 * <p>The effective degrees of freedom have an edge: what is known well weighs less in them, so that with three catches
 * or more a more accurate scale may call for one catch more. That is a property of the method, not of the scale.
 *
 * <p>Immutable, thread-safe.
 */
public final class CatchPlanner {
    /** More repeats than this fit into nobody's day (common practice, no source). */
    public static final int MOST_REPEATS = 10;

    /** The lines of a table for the yard: 1, 1.5, 2, 3, 4 and 5 %. */
    public static final List<Quantity<Dimensionless>> USUAL = DoubleStream.of(1, 1.5, 2, 3, 4, 5)
            .mapToObj(percent -> Amounts.of(percent, SpreadingUnits.PERCENT))
            .toList();

    static final int MOST_TRIED = 20_000;
    private static final double ROUNDING = 1e-12;

    private final CatchModel model;
    private final int fewestRepeats;
    private final int mostRepeats;
    private final List<CatchModel.Catch> tried;

    private CatchPlanner(CatchSetup setup, int fewestRepeats, int mostRepeats) {
        requireRepeats(fewestRepeats, mostRepeats);
        this.model = new CatchModel(Objects.requireNonNull(setup, "setup"));
        this.fewestRepeats = fewestRepeats;
        this.mostRepeats = mostRepeats;
        this.tried = tried(model);
    }

    /**
     * A planner for one to {@value #MOST_REPEATS} catches.
     *
     * @param setup what is there
     * @return the planner
     * @throws InvalidInputException if the containers or the scale can't take even the smallest sensible catch
     */
    public static CatchPlanner of(CatchSetup setup) {
        return of(setup, 1, MOST_REPEATS);
    }

    /**
     * A planner.
     *
     * @param setup what is there
     * @param fewestRepeats the fewest catches, 1 or more
     * @param mostRepeats the most catches, not below the fewest, at most 1000
     * @return the planner
     * @throws InvalidInputException if a number is out of its range, or the containers or the scale can't take even the
     *     smallest sensible catch
     */
    public static CatchPlanner of(CatchSetup setup, int fewestRepeats, int mostRepeats) {
        return new CatchPlanner(setup, fewestRepeats, mostRepeats);
    }

    static void requireRepeats(int fewestRepeats, int mostRepeats) {
        Require.that(fewestRepeats >= 1, "fewest repeats", "1 or more", fewestRepeats);
        Require.that(
                mostRepeats >= fewestRepeats && mostRepeats <= 1000,
                "most repeats",
                "from the fewest, " + fewestRepeats + ", to 1000",
                mostRepeats);
    }

    private static List<CatchModel.Catch> tried(CatchModel model) {
        double step = step(model.most());
        List<CatchModel.Catch> tried = new ArrayList<>();
        // Rounding must not cost a revolution at either end.
        double first = Math.ceil(model.fewest() / step * (1 - ROUNDING));
        double last = Math.floor(model.most() / step * (1 + ROUNDING));
        for (double steps = Math.max(1, first); steps <= last; steps++) {
            tried.add(model.at(steps * step));
        }
        if (tried.isEmpty()) {
            throw new InvalidInputException(
                    "containers",
                    "able to hold a whole number of revolutions, " + model.counted(Math.max(1, first) * step)
                            + " or more",
                    model.counted(model.most()));
        }
        return tried;
    }

    /** The steps in which the numbers up to a most are tried. */
    static double step(double most) {
        double step = 1;
        while (most / step > MOST_TRIED) {
            step *= 10;
        }
        return step;
    }

    /**
     * Plans catches.
     *
     * @param wanted the relative expanded uncertainty (95 %), greater than zero and below 100 %
     * @return the catches, or why there are none
     * @throws InvalidInputException if the wanted uncertainty is out of its range
     */
    public PlanResult plan(Quantity<Dimensionless> wanted) {
        double limit = Amounts.si(Dimensionless.class, Require.fraction("wanted uncertainty", wanted));
        CatchModel.Catch best = null;
        int repeats = 0;
        for (int n = fewestRepeats; n <= mostRepeats; n++) {
            double revolutions = best == null ? Double.POSITIVE_INFINITY : repeats * best.revolutions();
            for (CatchModel.Catch one : tried) {
                // No more material, or just as much in more catches.
                if (!Comparison.isAbove(revolutions, n * one.revolutions())) {
                    break;
                }
                if (!model.isAbove(one, n, limit) && !Comparison.isAbove(model.expanded(one, n), limit)) {
                    best = one;
                    repeats = n;
                    break;
                }
            }
        }
        return best == null ? outOfReach(wanted) : new PlanResult.Reached(wanted, model.series(best, repeats));
    }

    /** Of the most catches, which are never worse than fewer: what scatters shrinks, and is better known. */
    private PlanResult outOfReach(Quantity<Dimensionless> wanted) {
        CatchModel.Catch best = tried.get(tried.size() - 1);
        double least = model.expanded(best, mostRepeats);
        double floor = Double.POSITIVE_INFINITY;
        for (CatchModel.Catch one : tried) {
            floor = Math.min(floor, model.floor(one));
            if (!model.isAbove(one, mostRepeats, least)) {
                double expanded = model.expanded(one, mostRepeats);
                if (expanded < least) {
                    best = one;
                    least = expanded;
                }
            }
        }
        return new PlanResult.OutOfReach(
                wanted, model.series(best, mostRepeats), model.mainCause(best, mostRepeats), CatchModel.percent(floor));
    }

    /**
     * The table "target uncertainty against mass to catch".
     *
     * @param wanted the uncertainties, for example {@link #USUAL}
     * @return a plan each
     * @throws InvalidInputException if one is out of its range
     */
    public List<PlanResult> table(List<Quantity<Dimensionless>> wanted) {
        return wanted.stream().map(this::plan).toList();
    }
}
