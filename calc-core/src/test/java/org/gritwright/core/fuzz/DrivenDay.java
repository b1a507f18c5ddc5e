package org.gritwright.core.fuzz;

import static org.gritwright.units.SpreadingUnits.LANE;
import static org.gritwright.units.SpreadingUnits.MILE_PER_HOUR;
import static org.gritwright.units.SpreadingUnits.MILLIAMPERE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_LANE_MILE;
import static org.gritwright.units.SpreadingUnits.POUND_PER_MILE;
import static org.gritwright.units.SpreadingUnits.REVOLUTION_PER_MINUTE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RotationalSpeed;

/** A day whose trucks have drives of every kind, and routes. */
final class DrivenDay {
    private DrivenDay() {}

    static FleetDay made(FleetDay day) {
        List<TruckDay> trucks = new ArrayList<>();
        for (TruckDay truck : day.trucks()) {
            trucks.add(
                    switch (trucks.size() % 4) {
                        case 0 -> truck.drive(measured(PERCENT));
                        case 1 -> truck.drive(DriveEntry.stated(stated(1.5, RangeSource.BY_EYE)));
                        case 2 -> truck.drive(measured(MILLIAMPERE).with(stated(2, RangeSource.MEASURED)));
                        default -> truck;
                    });
        }
        String material = day.materials().get(0).name();
        return day.withTrucks(trucks)
                .withRoutes(List.of(
                        route("hill road", material, perMile(300), 10, 35),
                        route(
                                "two lanes",
                                material,
                                new TargetEntry(
                                        Optional.empty(),
                                        Optional.of(Amounts.of(150, POUND_PER_LANE_MILE)),
                                        Optional.of(Amounts.of(2, LANE)),
                                        Optional.empty()),
                                15,
                                30)));
    }

    private static TargetEntry perMile(double pounds) {
        return new TargetEntry(
                Optional.of(Amounts.of(pounds, POUND_PER_MILE)), Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static RouteEntry route(String name, String material, TargetEntry target, double lowest, double highest) {
        return new RouteEntry(
                name,
                material,
                target,
                Amounts.of(lowest, MILE_PER_HOUR),
                Amounts.of(highest, MILE_PER_HOUR),
                List.of());
    }

    private static StatedRangeEntry stated(double lowest, RangeSource source) {
        return new StatedRangeEntry(speed(lowest), speed(28), source, Optional.of(LocalDate.of(2025, 10, 1)));
    }

    private static Quantity<RotationalSpeed> speed(double speed) {
        return Amounts.of(speed, REVOLUTION_PER_MINUTE);
    }

    private static Quantity<?> command(double number, Unit<?> unit) {
        return Amounts.of(number, unit);
    }

    private static DriveEntry measured(Unit<?> unit) {
        return new DriveEntry(
                Optional.of(command(0, unit)),
                Optional.of(command(100, unit)),
                Optional.of(command(1, unit)),
                Optional.of(speed(0.1)),
                DriveConditions.AS_AT_WORK,
                List.of(
                        run(unit, Direction.RISING, 0, 0, 29, 0, 30, 2, 50, 11.7, 50, 11.9, 80, 26.5, 100, 27.1),
                        run(unit, Direction.FALLING, 100, 27.1, 80, 26.9, 50, 13.2, 26, 1.6, 25, 0)),
                Optional.empty());
    }

    private static DriveRunEntry run(Unit<?> unit, Direction direction, double... pairs) {
        List<DrivePointEntry> points = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            points.add(DrivePointEntry.of(command(pairs[i], unit), speed(pairs[i + 1])));
        }
        return new DriveRunEntry(direction, points);
    }
}
