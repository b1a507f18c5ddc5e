package org.gritwright.core.fleet.day;

import java.util.List;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveRun;
import org.gritwright.units.check.Require;

/**
 * A run of commands in one direction, as it was written down. Immutable, thread-safe, a value.
 *
 * @param direction from which side each command was reached
 * @param points the points in the order they were measured
 */
public record DriveRunEntry(Direction direction, List<DrivePointEntry> points) {
    /** Copies the list. */
    public DriveRunEntry {
        Require.given(DriveRunEntry.class, direction, points);
        points = List.copyOf(points);
    }

    /**
     * The run to compute with.
     *
     * @return the run
     * @throws org.gritwright.units.InvalidInputException if a point can't be used, a command goes the other way than the
     *     direction, or there is no point
     */
    public DriveRun run() {
        return new DriveRun(
                direction, points.stream().map(DrivePointEntry::point).toList());
    }
}
