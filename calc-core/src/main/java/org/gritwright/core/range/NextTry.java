package org.gritwright.core.range;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.units.check.Require;

/**
 * Which command to try next, so that the start and the knee of a drive are found with the fewest tries: first that at which the
 * shaft starts (or, from above, stops), by halving what is left until one step is; then the highest; then that from which on the speed no
 * longer rises, by halving again. Immutable, thread-safe, a value.
 *
 * <p>For a scale of n steps that is at most log₂(n + 2) tries, rounded up, for each of the two, one for the
 * highest command, and a few more where a reading's resolution hides the knee at first.
 * Each command is to be reached in the direction that is asked about: before a lower one on the way up, go back to rest.
 *
 * @param command the command to try
 * @param purpose what for
 */
public record NextTry(Command command, Purpose purpose) implements Serializable {
    /** What a command is tried for. */
    public enum Purpose {
        /** To find the command at which the shaft starts or stops. */
        THRESHOLD,
        /** To find the command from which on the speed no longer rises. */
        KNEE
    }

    /** Checks that nothing is missing. */
    public NextTry {
        Require.given(NextTry.class, command, purpose);
    }

    /**
     * The next command, by all that was measured so far.
     *
     * @param soFar the measurement so far, possibly without a run
     * @param direction the direction that is asked about
     * @return the command to try; absent when both are found to one step, or the shaft doesn't turn at the highest command
     */
    public static Optional<NextTry> after(DriveMeasurement soFar, Direction direction) {
        Objects.requireNonNull(soFar, "soFar");
        Branch branch = new Branch(soFar, Objects.requireNonNull(direction, "direction"));
        CommandScale scale = soFar.scale();
        // As if it surely rested a step below the scale, and surely turned a step above it.
        int rest = branch.rest.map(scale::lastStepTo).orElse(-1);
        int turning = branch.turning.map(scale::firstStepFrom).orElse(scale.steps() + 1);
        Command middle = scale.afterSteps((rest + turning) / 2);
        // A shaft that sticks may both rest and turn at a command: trying that again would not end.
        boolean tried = branch.points.stream().anyMatch(point -> point.command().number() == middle.number());
        if (turning - rest > 1 && !tried) {
            return Optional.of(new NextTry(middle, Purpose.THRESHOLD));
        }
        return branch.rows.isEmpty() ? Optional.empty() : knee(soFar, branch);
    }

    private static Optional<NextTry> knee(DriveMeasurement soFar, Branch branch) {
        CommandScale scale = soFar.scale();
        List<MonotoneRegression.Row> rows = branch.rows;
        if (rows.get(rows.size() - 1).x() < scale.highest().number()) {
            return Optional.of(new NextTry(scale.highest(), Purpose.KNEE));
        }
        Knee knee = Knee.of(rows, Noise.of(soFar.resolution(), branch));
        if (knee.below() < 0) {
            return Optional.empty();
        }
        int below = scale.lastStepTo(scale.at(rows.get(knee.below()).x()));
        int first = scale.firstStepFrom(scale.at(rows.get(knee.first()).x()));
        return first - below > 1
                ? Optional.of(new NextTry(scale.afterSteps((below + first) / 2), Purpose.KNEE))
                : Optional.empty();
    }
}
