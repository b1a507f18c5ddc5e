package org.gritwright.core.range;

import static org.gritwright.core.finding.Argument.number;

import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.statistics.MonotoneRegression;

/** Speeds that no drive has, so that one of them is probably a slip of the decimal point. */
record DriveSlips(DriveMeasurement measurement) {
    /** Readings of one speed are never so many times apart: common practice, no source. */
    private static final double APART = 3;

    /** At a crawl they may be, so that they must also differ by this part of the highest speed: common practice, no source. */
    private static final double OF_HIGHEST = 0.05;

    /** As {@link #OF_HIGHEST}, where one was reached from below and one from above: valves lag. Common practice, no source. */
    private static final double OF_HIGHEST_BOTH_WAYS = 0.25;

    /** So many times as steep as elsewhere is no bend of a curve: common practice, no source. */
    private static final double STEEPER = 5;

    /** The two speeds at one command that are most times apart. */
    Optional<Finding> apart(Branch up, Branch down) {
        List<DrivePoint> turning = Stream.concat(up.points.stream(), down.points.stream())
                .filter(DrivePoint::isTurning)
                .toList();
        double highest = turning.stream()
                .mapToDouble(DrivePoint::revolutionsPerSecond)
                .max()
                .orElse(0);
        return Stream.of(
                        apart(up.points, OF_HIGHEST * highest),
                        apart(down.points, OF_HIGHEST * highest),
                        apart(turning, OF_HIGHEST_BOTH_WAYS * highest))
                .flatMap(Optional::stream)
                .max(Comparator.comparingDouble(Pair::times))
                .map(pair -> Finding.of(
                        FindingCode.DRIVE_READINGS_APART,
                        Map.of(
                                "command",
                                        number(measurement
                                                .scale()
                                                .at(pair.command())
                                                .quantity()),
                                "higher", number(measurement.speed(pair.higher())),
                                "lower", number(measurement.speed(pair.lower())))));
    }

    private record Pair(double command, double lower, double higher) {
        double times() {
            return higher / lower;
        }
    }

    private static Optional<Pair> apart(List<DrivePoint> points, double least) {
        Map<Double, DoubleSummaryStatistics> byCommand = points.stream()
                .filter(DrivePoint::isTurning)
                .collect(Collectors.groupingBy(
                        point -> point.command().number(),
                        TreeMap::new,
                        Collectors.summarizingDouble(DrivePoint::revolutionsPerSecond)));
        return byCommand.entrySet().stream()
                .map(at -> new Pair(
                        at.getKey(), at.getValue().getMin(), at.getValue().getMax()))
                .filter(pair -> pair.times() > APART && pair.higher() - pair.lower() > least)
                .max(Comparator.comparingDouble(Pair::times));
    }

    /** Where the last stretch is far steeper than all below; what the resolution may do is on its side. */
    Optional<Finding> leap(Branch branch) {
        List<MonotoneRegression.Row> rows = branch.rows;
        int last = rows.size() - 1;
        if (rows.size() < DriveFindings.FEWEST_COMMANDS) {
            return Optional.empty();
        }
        double steepest = 0;
        for (int i = 1; i < last; i++) {
            steepest = Math.max(steepest, slope(rows.get(i - 1), rows.get(i), measurement.resolution()));
        }
        MonotoneRegression.Row from = rows.get(last - 1);
        MonotoneRegression.Row to = rows.get(last);
        return steepest > 0 && slope(from, to, -measurement.resolution()) > STEEPER * steepest
                ? Optional.of(Finding.of(
                        FindingCode.DRIVE_SPEED_LEAPS,
                        Map.of(
                                "direction", branch.direction.term(),
                                "first", number(measurement.scale().at(from.x()).quantity()),
                                "lower", number(measurement.speed(from.mean())),
                                "second", number(measurement.scale().at(to.x()).quantity()),
                                "higher", number(measurement.speed(to.mean())))))
                : Optional.empty();
    }

    private static double slope(MonotoneRegression.Row from, MonotoneRegression.Row to, double resolution) {
        return (to.mean() - from.mean() + resolution) / (to.x() - from.x());
    }
}
