package org.gritwright.core.range;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.core.statistics.Variance;

/**
 * The points of one direction, from below: where the shaft rests, where it turns, and the rows of those commands from which on
 * it always turned. Where a point at rest lies above one that turns, all commands between are in doubt.
 */
final class Branch {
    /** A standard deviation of a tenth of the speed: common practice, no source. */
    static final double JERKY = 0.1;

    final Direction direction;
    final List<DrivePoint> points;
    /** Up to here the shaft certainly rests; absent if it never did. */
    final Optional<Command> rest;
    /** From here on it certainly turns; absent if it never did. */
    final Optional<Command> turning;
    /** Rows of the commands from there on, in rising order. */
    final List<MonotoneRegression.Row> rows;

    private final double resolution;

    Branch(DriveMeasurement measurement, Direction direction) {
        this.direction = direction;
        this.points = measurement.points(direction);
        this.resolution = measurement.resolution();
        Comparator<Command> byNumber = Comparator.comparingDouble(Command::number);
        List<Command> resting = commands(false);
        List<Command> turned = commands(true);
        double lastRest = resting.stream().mapToDouble(Command::number).max().orElse(Double.NEGATIVE_INFINITY);
        double firstTurn = turned.stream().mapToDouble(Command::number).min().orElse(Double.POSITIVE_INFINITY);
        this.rest = resting.stream().filter(c -> c.number() < firstTurn).max(byNumber);
        this.turning = turned.stream().filter(c -> c.number() > lastRest).min(byNumber);
        this.rows = turning.map(this::rowsFrom).orElse(List.of());
    }

    private List<Command> commands(boolean turning) {
        return points.stream()
                .filter(point -> point.isTurning() == turning)
                .map(DrivePoint::command)
                .toList();
    }

    private List<MonotoneRegression.Row> rowsFrom(Command first) {
        List<DrivePoint> steady = turningFrom(first);
        return MonotoneRegression.fit(
                        steady.stream().mapToDouble(p -> p.command().number()).toArray(),
                        steady.stream()
                                .mapToDouble(DrivePoint::revolutionsPerSecond)
                                .toArray(),
                        steady.stream().mapToDouble(DrivePoint::readings).toArray())
                .rows();
    }

    /** The points behind the rows. */
    List<DrivePoint> steady() {
        return turning.map(this::turningFrom).orElse(List.of());
    }

    private List<DrivePoint> turningFrom(Command first) {
        return points.stream()
                .filter(point -> point.command().number() >= first.number())
                .toList();
    }

    /** A point that turned below one that rested, where the lowest is taken of the former and the highest of the latter. */
    Optional<DrivePoint> turnedBelowRest() {
        double lastRest =
                commands(false).stream().mapToDouble(Command::number).max().orElse(Double.NEGATIVE_INFINITY);
        return points.stream()
                .filter(point -> point.isTurning() && point.command().number() < lastRest)
                .min(Comparator.comparingDouble(point -> point.command().number()));
    }

    /** Whether the speed at a row's command swings or scatters by more than a steady one does. */
    boolean isJerky(MonotoneRegression.Row row) {
        return scatters(row) || greatestSwing(row) > 2 * JERKY * row.mean() + resolution;
    }

    private boolean scatters(MonotoneRegression.Row row) {
        // Readings of one speed may be rounded to both sides.
        double steady = JERKY * JERKY * row.mean() * row.mean() + resolution * resolution / 4;
        return row.size() > 1
                && new Variance(steady, Double.POSITIVE_INFINITY)
                        .isExceededBy(new Variance(row.squares() / (row.size() - 1), row.size() - 1));
    }

    double greatestSwing(MonotoneRegression.Row row) {
        return points.stream()
                .filter(point -> point.command().number() == row.x())
                .flatMap(point -> point.swing().stream())
                .mapToDouble(DriveMeasurement::si)
                .max()
                .orElse(0);
    }

    /** The standard deviation of a row's own repeats. */
    static OptionalDouble ownDeviation(MonotoneRegression.Row row) {
        return row.size() > 1 ? OptionalDouble.of(Math.sqrt(row.squares() / (row.size() - 1))) : OptionalDouble.empty();
    }

    /** Whether commands are left to try between the last at rest, or the lowest, and the first that turns. */
    boolean isThresholdOpen(CommandScale scale) {
        return turning.filter(first ->
                        rest.map(last -> scale.isMoreThanAStep(last, first)).orElse(!first.equals(scale.lowest())))
                .isPresent();
    }
}
