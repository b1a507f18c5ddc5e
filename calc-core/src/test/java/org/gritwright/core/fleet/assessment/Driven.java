package org.gritwright.core.fleet.assessment;

import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RotationalSpeed;

/** Drives and routes for tests. */
final class Driven {
    private Driven() {}

    static Quantity<RotationalSpeed> speed(double revolutionsPerMinute) {
        return Amounts.of(revolutionsPerMinute, REVOLUTION_PER_MINUTE);
    }

    static StatedRangeEntry range(double lowest, double highest, RangeSource source) {
        return new StatedRangeEntry(speed(lowest), speed(highest), source, Optional.empty());
    }

    static DriveEntry stated(double lowest, double highest) {
        return DriveEntry.stated(range(lowest, highest, RangeSource.FROM_MAKER));
    }

    /** Read to 0.1 rev/min, 0 % to 100 % by 1 %. */
    static DriveEntry measured(DriveRunEntry... runs) {
        return new DriveEntry(
                Optional.of(Amounts.of(0, PERCENT)),
                Optional.of(Amounts.of(100, PERCENT)),
                Optional.of(Amounts.of(1, PERCENT)),
                Optional.of(speed(0.1)),
                DriveConditions.AS_AT_WORK,
                List.of(runs),
                Optional.empty());
    }

    /** Percent and revolutions a minute in turn. */
    static DriveRunEntry run(Direction direction, double... pairs) {
        List<DrivePointEntry> points = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            points.add(DrivePointEntry.of(Amounts.of(pairs[i], PERCENT), speed(pairs[i + 1])));
        }
        return new DriveRunEntry(direction, points);
    }

    /** Holds 2 to 28 rev/min both ways, each command read twice. */
    static DriveEntry twoToTwentyEight() {
        return measured(
                run(Direction.RISING, 29, 0, 30, 2, 30, 2, 50, 12, 50, 12, 80, 28, 80, 28, 100, 28, 100, 28),
                run(Direction.FALLING, 100, 28, 100, 28, 80, 28, 80, 28, 50, 12, 50, 12, 30, 2, 30, 2, 29, 0));
    }

    static RouteEntry route(String name, double poundsPerMile, double slowest, double fastest, String... trucks) {
        return route(name, "salt", poundsPerMile, slowest, fastest, trucks);
    }

    static RouteEntry route(
            String name, String material, double poundsPerMile, double slowest, double fastest, String... trucks) {
        return new RouteEntry(
                name,
                material,
                new TargetEntry(
                        Optional.of(Amounts.of(poundsPerMile, POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(slowest, MILE_PER_HOUR),
                Amounts.of(fastest, MILE_PER_HOUR),
                List.of(trucks));
    }

    static TruckAssessment first(FleetDay day) {
        return FleetAssessor.of(BuiltInTypes.registry()).assess(day).get(0);
    }

    static List<String> sentences(TruckAssessment truck, FindingCode code) {
        return truck.findings().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::sentence)
                .toList();
    }

    static List<NextStep> steps(TruckAssessment truck) {
        return truck.toDo().stream().map(ToDo::step).toList();
    }
}
