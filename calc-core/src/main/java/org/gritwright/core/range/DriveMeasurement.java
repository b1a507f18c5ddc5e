package org.gritwright.core.range;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * What was measured of a conveyor's drive, as it was written down. Immutable, thread-safe, a value.
 *
 * @param scale the commands that the valve can be given
 * @param speedResolution to which step the speed can be read, 0 or more
 * @param conditions whether the drive was measured as it works
 * @param runs the runs in the order they were made; none if none was yet
 */
public record DriveMeasurement(
        CommandScale scale, Quantity<RotationalSpeed> speedResolution, DriveConditions conditions, List<DriveRun> runs)
        implements Serializable {
    private static final int MOST_POINTS = 10_000;

    /**
     * Checks the values.
     *
     * @throws InvalidInputException if a command is not of the scale, the resolution is negative, or there are more than
     *     10,000 points
     */
    public DriveMeasurement {
        Require.given(DriveMeasurement.class, scale, speedResolution, conditions, runs);
        Require.notNegative("resolution of the shaft speed", RotationalSpeed.class, speedResolution);
        runs = List.copyOf(Require.noMoreThan(MOST_POINTS, "runs of a drive", runs));
        int points = 0;
        for (DriveRun run : runs) {
            points += run.points().size();
            Require.that(points <= MOST_POINTS, "points of a drive", "at most " + MOST_POINTS, "more");
            run.points().forEach(point -> scale.require(point.command()));
        }
    }

    /**
     * The same measurement with one more run.
     *
     * @param run the run
     * @return the measurement
     * @throws InvalidInputException as the constructor
     */
    public DriveMeasurement with(DriveRun run) {
        List<DriveRun> more = new ArrayList<>(runs);
        more.add(run);
        return new DriveMeasurement(scale, speedResolution, conditions, more);
    }

    List<DrivePoint> points(Direction direction) {
        return runs.stream()
                .filter(run -> run.direction() == direction)
                .flatMap(run -> run.points().stream())
                .toList();
    }

    static double si(Quantity<RotationalSpeed> speed) {
        return Amounts.si(RotationalSpeed.class, speed);
    }

    double resolution() {
        return si(speedResolution);
    }

    /** In which speeds are told: as the first one was read. */
    Unit<RotationalSpeed> speedUnit() {
        return runs.isEmpty()
                ? SpreadingUnits.REVOLUTION_PER_MINUTE
                : runs.get(0).points().get(0).speed().getUnit();
    }

    Quantity<RotationalSpeed> speed(double revolutionsPerSecond) {
        return Amounts.ofSi(revolutionsPerSecond, speedUnit());
    }
}
