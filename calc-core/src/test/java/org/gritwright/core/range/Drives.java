package org.gritwright.core.range;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.random.RandomGenerator;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;

/** Points as they are written down, and a simulated drive that makes them. */
final class Drives {
    private Drives() {}

    static Quantity<RotationalSpeed> rpm(double speed) {
        return Amounts.of(speed, SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    static double inRpm(Quantity<RotationalSpeed> speed) {
        return Amounts.in(speed, SpreadingUnits.REVOLUTION_PER_MINUTE);
    }

    static DrivePoint point(double percent, double rpm) {
        return DrivePoint.of(Command.percent(percent), rpm(rpm));
    }

    /** Pairs of percent and rev/min. */
    static DriveRun run(Direction direction, double... pairs) {
        List<DrivePoint> points = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            points.add(point(pairs[i], pairs[i + 1]));
        }
        return new DriveRun(direction, points);
    }

    static DriveRun rising(double... pairs) {
        return run(Direction.RISING, pairs);
    }

    static DriveRun falling(double... pairs) {
        return run(Direction.FALLING, pairs);
    }

    /** On a scale of 0 to 100 % in steps of 1 %, read to 0.1 rev/min, as at work. */
    static DriveMeasurement measurement(DriveRun... runs) {
        return new DriveMeasurement(CommandScale.percent(1), rpm(0.1), DriveConditions.AS_AT_WORK, List.of(runs));
    }

    static DriveResponse response(DriveRun... runs) {
        return DriveResponse.of(measurement(runs));
    }

    static DriveCurve curve(DriveRun run) {
        return response(run).curve(run.direction()).orElseThrow();
    }

    static CommandInterval percents(double from, double to) {
        return new CommandInterval(Command.percent(from), Command.percent(to));
    }

    /**
     * A drive that stands still below its start, then jumps to its slowest speed, rises evenly up to its knee and no longer.
     *
     * @param start the command at which it starts, percent
     * @param slowest its slowest speed, rev/min
     * @param gain rev/min per percent
     * @param knee the command from which on it rises no longer, percent
     * @param hysteresis by how much lower the commands are on the way down, percent of the span
     * @param scatter the standard deviation of a reading, rev/min
     * @param resolution to what the speed is read, rev/min
     */
    record Simulated(
            double start,
            double slowest,
            double gain,
            double knee,
            double hysteresis,
            double scatter,
            double resolution) {

        double truth(Direction direction, double percent) {
            double at = direction == Direction.RISING ? percent : percent + hysteresis;
            return at < start ? 0 : slowest + gain * (Math.min(at, knee) - start);
        }

        DrivePoint read(Direction direction, double percent, RandomGenerator random) {
            double speed = truth(direction, percent);
            if (speed > 0) {
                speed = Math.max(resolution, speed + scatter * random.nextGaussian());
                speed = resolution == 0 ? speed : resolution * Math.rint(speed / resolution);
            }
            return point(percent, speed);
        }

        /** All commands up and down, each read so many times. */
        DriveMeasurement measured(double[] percents, int repeats, RandomGenerator random) {
            List<DrivePoint> up = new ArrayList<>();
            List<DrivePoint> down = new ArrayList<>();
            for (double percent : percents) {
                for (int i = 0; i < repeats; i++) {
                    up.add(read(Direction.RISING, percent, random));
                    down.add(read(Direction.FALLING, percent, random));
                }
            }
            Collections.reverse(down);
            return new DriveMeasurement(
                    CommandScale.percent(1),
                    rpm(resolution),
                    DriveConditions.AS_AT_WORK,
                    List.of(new DriveRun(Direction.RISING, up), new DriveRun(Direction.FALLING, down)));
        }
    }
}
