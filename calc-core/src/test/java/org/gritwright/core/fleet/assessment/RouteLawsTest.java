package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.measured;
import static org.gritwright.core.fleet.assessment.Driven.route;
import static org.gritwright.core.fleet.assessment.Driven.run;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Speed;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.RouteEntry;
import org.gritwright.core.fleet.day.StatedRangeEntry;
import org.gritwright.core.fleet.day.TargetEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.RangeSource;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.ApplicationRate;

/** A truck with 5.2 lb/rev at 2 in and 7.8 lb/rev at 3 in. */
class RouteLawsTest {
    private static TruckDay truck(DriveEntry drive) {
        return idle("T-1")
                .inForce(List.of(inForce("5.2 lb/rev", DAY), inForce("7.8 lb/rev", 3, Since.of(DAY))))
                .drive(drive);
    }

    private static RouteAssessment assessed(DriveEntry drive, RouteEntry route) {
        return first(day(truck(drive)).withRoutes(List.of(route))).routes().get(0);
    }

    @Property(tries = 100)
    void aWiderRangeNeverTakesARouteAway(
            @ForAll @DoubleRange(min = 1, max = 10) double lowest,
            @ForAll @DoubleRange(min = 1, max = 4) double span,
            @ForAll @DoubleRange(min = 1, max = 2) double wider,
            @ForAll @DoubleRange(min = 20, max = 900) double rate,
            @ForAll @DoubleRange(min = 5, max = 40) double slowest) {
        RouteEntry route = route("Hill road", rate, slowest, 1.5 * slowest);
        RouteAssessment narrow = assessed(stated(lowest, lowest * (1 + span)), route);
        RouteAssessment wide = assessed(stated(lowest / wider, wider * lowest * (1 + span)), route);
        if (narrow.status() == RouteAssessment.Status.HELD) {
            assertThat(wide.status()).isEqualTo(RouteAssessment.Status.HELD);
        }
        assertThat(held(wide)).containsAll(held(narrow));
    }

    private static List<String> held(RouteAssessment route) {
        return route.fits().stream()
                .filter(RouteFit::held)
                .map(fit -> fit.point().toString())
                .toList();
    }

    @Property(tries = 50)
    void unitsDoNotMatter(
            @ForAll @DoubleRange(min = 20, max = 900) double rate,
            @ForAll @DoubleRange(min = 5, max = 40) double slowest) {
        RouteEntry trade = route("Hill road", rate, slowest, 1.5 * slowest);
        RouteEntry metric = new RouteEntry(
                trade.name(),
                trade.material(),
                new TargetEntry(
                        Optional.of(in(trade.target().perDistance().asType(ApplicationRate.class))),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                kilometersPerHour(slowest),
                kilometersPerHour(1.5 * slowest),
                List.of());
        RouteFit one = assessed(stated(2, 28), trade).best().orElseThrow();
        RouteFit other = assessed(
                        DriveEntry.stated(new StatedRangeEntry(
                                Amounts.of(2 / 60.0, SpreadingUnits.REVOLUTION_PER_SECOND),
                                Amounts.of(28 / 60.0, SpreadingUnits.REVOLUTION_PER_SECOND),
                                RangeSource.FROM_MAKER,
                                Optional.empty())),
                        metric)
                .best()
                .orElseThrow();
        assertThat(other.point()).isEqualTo(one.point());
        assertThat(Amounts.si(Dimensionless.class, other.margin()))
                .isCloseTo(Amounts.si(Dimensionless.class, one.margin()), within(1e-9 * 1000));
        assertThat(Amounts.si(ApplicationRate.class, other.atFastest().delivered()))
                .isCloseTo(Amounts.si(ApplicationRate.class, one.atFastest().delivered()), within(1e-9));
    }

    private static Quantity<ApplicationRate> in(Quantity<ApplicationRate> rate) {
        return Amounts.ofSi(Amounts.si(ApplicationRate.class, rate), SpreadingUnits.KILOGRAM_PER_KILOMETER);
    }

    private static Quantity<Speed> kilometersPerHour(double milesPerHour) {
        return Amounts.ofSi(
                Amounts.si(Speed.class, Amounts.of(milesPerHour, SpreadingUnits.MILE_PER_HOUR)),
                SpreadingUnits.KILOMETER_PER_HOUR);
    }

    @Property(tries = 30)
    void theOrderOfRunsAndRoutesDoesNotMatter(@ForAll Random random) {
        List<RouteEntry> routes = new ArrayList<>(List.of(
                route("Hill road", 300, 10, 35), route("Flat road", 300, 10, 25), route("Bridges", 30, 10, 20)));
        List<DriveRunEntry> runs = new ArrayList<>(List.of(
                run(Direction.RISING, 29, 0, 30, 2, 50, 12, 80, 26.5),
                run(Direction.RISING, 30, 2.1, 50, 12.2, 100, 27),
                run(Direction.FALLING, 100, 27.1, 80, 26.9, 50, 13, 28, 1.8, 27, 0)));
        TruckAssessment before = first(day(truck(withRuns(runs))).withRoutes(routes));
        Collections.shuffle(routes, random);
        Collections.shuffle(runs, random);
        TruckAssessment after = first(day(truck(withRuns(runs))).withRoutes(routes));
        assertThat(after.drive().orElseThrow().range())
                .isEqualTo(before.drive().orElseThrow().range());
        assertThat(new HashSet<>(after.routes())).isEqualTo(new HashSet<>(before.routes()));
        assertThat(new HashSet<>(after.findings())).isEqualTo(new HashSet<>(before.findings()));
        assertThat(after.toDo()).isEqualTo(before.toDo());
    }

    private static DriveEntry withRuns(List<DriveRunEntry> runs) {
        return measured(runs.toArray(DriveRunEntry[]::new));
    }
}
