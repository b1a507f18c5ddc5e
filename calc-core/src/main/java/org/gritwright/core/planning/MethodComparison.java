package org.gritwright.core.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.gritwright.core.observation.CatchLimits;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.FlowRate;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What each of several ways to catch comes to, so that one can be chosen: which container, for example. Immutable, thread-safe, a
 * value.
 *
 * @param results one for each method, in the order in which they were given
 */
public record MethodComparison(List<Result> results) {
    /**
     * What one way to catch comes to.
     *
     * @param method the method
     * @param refusal why nothing can be planned with it; none if something can
     * @param plan the catches, or why the wanted uncertainty is out of reach; none with a refusal
     * @param time how long they take; none where the wanted uncertainty isn't reached
     */
    public record Result(
            CatchMethod method, Optional<String> refusal, Optional<PlanResult> plan, Optional<Quantity<Time>> time) {
        /** Checks that nothing is null. */
        public Result {
            Require.given(Result.class, method, refusal, plan, time);
        }
    }

    /** Copies the list. */
    public MethodComparison {
        Require.given(MethodComparison.class, results);
        results = List.copyOf(results);
    }

    /**
     * What is wanted of each method.
     *
     * @param count how the revolutions become known
     * @param expected the expected discharge per revolution, as of {@link CatchSetup}
     * @param limits as of {@link CatchSetup}
     * @param fewestRepeats the fewest catches, 1 or more
     * @param mostRepeats the most catches, not below the fewest, at most 1000
     * @param wanted the relative expanded uncertainty (95 %), greater than zero and below 100 %
     * @param pace at what the catches run: a speed of the sensed or watched shaft or, of a liquid, a flow; none where the run isn't
     *     counted in the time
     */
    public record Wish(
            PlannedCount count,
            Quantity<?> expected,
            CatchLimits limits,
            int fewestRepeats,
            int mostRepeats,
            Quantity<Dimensionless> wanted,
            Optional<Quantity<?>> pace) {
        /**
         * Checks the values that are the same for all methods.
         *
         * @throws InvalidInputException if one is out of its range
         */
        public Wish {
            Require.given(Wish.class, count, expected, limits, wanted, pace);
            CatchPlanner.requireRepeats(fewestRepeats, mostRepeats);
            Require.fraction("wanted uncertainty", wanted);
            pace.ifPresent(Wish::requirePace);
        }

        private static boolean isFlow(Quantity<?> pace) {
            return UnitSymbol.of(pace.getUnit()).kind().equals(FlowRate.class);
        }

        private static void requirePace(Quantity<?> pace) {
            if (isFlow(pace)) {
                Require.positive("flow", FlowRate.class, pace.asType(FlowRate.class));
            } else {
                Require.that(
                        UnitSymbol.of(pace.getUnit()).kind().equals(RotationalSpeed.class),
                        "pace of the catches",
                        "a shaft speed or a flow",
                        pace);
                Require.positive("shaft speed", RotationalSpeed.class, pace.asType(RotationalSpeed.class));
            }
        }

        private Quantity<Time> run(CatchSeries series) {
            if (pace.isEmpty()) {
                return Amounts.of(0, SpreadingUnits.SECOND);
            }
            Quantity<?> given = pace.get();
            return isFlow(given)
                    ? series.runTimeAtFlow(given.asType(FlowRate.class))
                    : series.runTime(given.asType(RotationalSpeed.class));
        }

        private Result result(CatchMethod method) {
            try {
                CatchSetup setup = new CatchSetup(method.amount(), count, expected, limits);
                PlanResult plan =
                        CatchPlanner.of(setup, fewestRepeats, mostRepeats).plan(wanted);
                return new Result(
                        method,
                        Optional.empty(),
                        Optional.of(plan),
                        plan instanceof PlanResult.Reached reached
                                ? Optional.of(method.time(reached.series(), run(reached.series())))
                                : Optional.empty());
            } catch (InvalidInputException e) {
                return new Result(method, Optional.of(e.getMessage()), Optional.empty(), Optional.empty());
            }
        }
    }

    /**
     * Plans the catches with each method. One that can't take even the smallest sensible catch doesn't stop the others.
     *
     * @param methods the methods, one or more, each with its own name
     * @param wish what is wanted of each
     * @return what each comes to
     * @throws InvalidInputException if there is no method, or one of a name twice
     */
    public static MethodComparison of(List<CatchMethod> methods, Wish wish) {
        Objects.requireNonNull(methods, "methods");
        Objects.requireNonNull(wish, "wish");
        Require.that(!methods.isEmpty(), "methods to catch", "one or more", "none");
        Set<String> names = new HashSet<>();
        List<Result> results = new ArrayList<>();
        for (CatchMethod method : methods) {
            Require.that(names.add(method.name()), "method to catch", "listed once", () -> "\"" + method.name() + "\"");
            results.add(wish.result(method));
        }
        return new MethodComparison(results);
    }

    /**
     * The method that reaches the wanted uncertainty in the least time; of equally quick ones the first.
     *
     * @return what it comes to; none if no method reaches it
     */
    public Optional<Result> quickest() {
        return results.stream()
                .filter(result -> result.time().isPresent())
                .min(Comparator.comparingDouble(
                        result -> CatchMethod.si(result.time().orElseThrow())));
    }
}
