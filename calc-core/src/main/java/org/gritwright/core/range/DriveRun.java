package org.gritwright.core.range;

import java.io.Serializable;
import java.util.List;
import java.util.Objects;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * Points measured one after the other in one direction: each command was reached from that of the point before, and the first
 * one from rest or from the highest command. Whoever turns back begins another run. Immutable, thread-safe, a value.
 *
 * @param direction the direction
 * @param points the points in the order they were measured, one or more
 */
public record DriveRun(Direction direction, List<DrivePoint> points) implements Serializable {
    /**
     * Checks that the commands go the way that is declared: in a rising run none is below the one before it, in a falling one
     * none above; the same command again is a repeat. What the speeds do is no matter of input.
     *
     * @throws InvalidInputException if a command goes the other way or is of another kind, or there is no point
     */
    public DriveRun {
        Require.given(DriveRun.class, direction, points);
        points = List.copyOf(points);
        Require.that(!points.isEmpty(), "points of a run", "one or more", "none");
        for (int i = 1; i < points.size(); i++) {
            Command before = points.get(i - 1).command();
            Command command = points.get(i).command();
            boolean rises = direction == Direction.RISING;
            double change = command.number() - before.number();
            Require.that(
                    command.in() == before.in() && (rises ? change >= 0 : change <= 0),
                    "command " + (i + 1) + " of a " + direction.term().words() + " run",
                    before.in().noun() + (rises ? ", at least " : ", at most ") + before,
                    command);
        }
    }

    /**
     * A run.
     *
     * @param direction the direction
     * @param points the points in the order they were measured, one or more
     * @return the run
     * @throws InvalidInputException as the constructor
     */
    public static DriveRun of(Direction direction, DrivePoint... points) {
        return new DriveRun(direction, List.of(Objects.requireNonNull(points, "points")));
    }
}
