package org.gritwright.core.fleet.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.fleet.day.Trucks.DAY;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.Refusal;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** A caller says how much is computed with. */
class DayLimitsTest {
    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());

    private static TruckDay caught(int catches) {
        return with(
                idle("T-1"),
                IntStream.range(0, catches)
                        .mapToObj(i -> calibrationCatch(1 + i % 20, 1 + i / 500.0))
                        .toArray(CalibrationCatchEntry[]::new));
    }

    private static void assertRefusedWithin(DayLimits limits, TruckDay truck, String sentence) {
        List<TruckAssessment> trucks = ASSESSOR.within(limits).assess(day(truck, idle("T-2")));
        assertThat(trucks.get(0).refusals()).extracting(Refusal::toString).containsExactly("/trucks/0: " + sentence);
        assertThat(trucks.get(0).truck()).isSameAs(truck);
        assertThat(trucks.get(1).isRefused()).isFalse();
    }

    @Test
    void ofATruckWithTooMuchNothingIsComputed() {
        DayLimits four = new DayLimits(2, 4, 4, 4);
        DayLimits manyCatches = new DayLimits(2, 100, 4, 4);
        assertThat(ASSESSOR.within(four).assess(day(caught(4))).get(0).isRefused())
                .isFalse();
        assertRefusedWithin(four, caught(5), "calibration catches must be at most 4: 5");
        assertRefusedWithin(
                four,
                with(
                        idle("T-1"),
                        IntStream.range(0, 5)
                                .mapToObj(i -> verificationCatch(9 + i, "5.2 lb/rev", 120, 57.7))
                                .toArray(VerificationCatchEntry[]::new)),
                "verification catches must be at most 4: 5");
        assertRefusedWithin(
                new DayLimits(2, 2, 4, 4), withRoadSpeed(idle("T-1"), 13_000), "course runs must be at most 2: 3");
        assertRefusedWithin(
                new DayLimits(2, 2, 4, 4),
                idle("T-1")
                        .changes(IntStream.range(0, 3)
                                .mapToObj(i -> new ChangeEntry(DAY, Change.Part.SENSOR, Optional.empty()))
                                .toList()),
                "changes must be at most 2: 3");
        assertRefusedWithin(manyCatches, caught(5), "containers of all catches must be at most 4: 5");
        assertRefusedWithin(manyCatches, filled(5), "containers of all catches must be at most 4: 5");
        assertRefusedWithin(
                new DayLimits(2, 100, 100, 4), caught(5), "calibration points of all catches must be at most 4: 5");
        assertRefusedWithin(
                four,
                with(
                        idle("T-1"),
                        IntStream.range(0, 5)
                                .mapToObj(i -> inForce("5.2 lb/rev", DAY))
                                .toArray(InForceEntry[]::new)),
                "calibrations in force must be at most 4: 5");
    }

    @Test
    void aDriveWithTooManyPointsRefusesItsTruck() {
        List<DrivePointEntry> points = IntStream.range(0, 5)
                .mapToObj(i -> DrivePointEntry.of(
                        Amounts.of(i, SpreadingUnits.PERCENT), Amounts.of(i, SpreadingUnits.REVOLUTION_PER_MINUTE)))
                .toList();
        DriveEntry drive = new DriveEntry(
                Optional.of(Amounts.of(0, SpreadingUnits.PERCENT)),
                Optional.of(Amounts.of(100, SpreadingUnits.PERCENT)),
                Optional.of(Amounts.of(1, SpreadingUnits.PERCENT)),
                Optional.empty(),
                DriveConditions.NOT_SAID,
                List.of(new DriveRunEntry(Direction.RISING, points)),
                Optional.empty());
        TruckDay truck = idle("T-1").drive(drive);
        assertRefusedWithin(new DayLimits(2, 9, 9, 9, 9, 4), truck, "points of the drive must be at most 4: 5");
        assertThat(ASSESSOR.within(new DayLimits(2, 9, 9, 9, 9, 5))
                        .assess(day(truck))
                        .get(0)
                        .isRefused())
                .isFalse();
    }

    @Test
    void aDayWithTooManyRoutesIsRefused() {
        FleetDay day = day(idle("T-1"));
        RouteEntry one = new RouteEntry(
                "Hill road",
                "salt",
                new TargetEntry(
                        Optional.of(Amounts.of(300, SpreadingUnits.POUND_PER_MILE)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                Amounts.of(10, SpreadingUnits.MILE_PER_HOUR),
                Amounts.of(35, SpreadingUnits.MILE_PER_HOUR),
                IntStream.range(0, 11).mapToObj(i -> "T-" + i).toList());
        DayLimits few = new DayLimits(1, 9, 9, 9, 1, 9);
        assertRefused(
                "routes of a day must be at most 1: 2",
                () -> ASSESSOR.within(few).assess(day.withRoutes(List.of(one, one))));
        assertRefused(
                "trucks named by all routes must be at most 10: 11",
                () -> ASSESSOR.within(few).assess(day.withRoutes(List.of(one))));
    }

    @Test
    void aDayWithTooManyTrucksIsRefused() {
        assertRefused(
                "trucks of a day must be at most 1: 2",
                () -> ASSESSOR.within(new DayLimits(1, 1, 1, 1)).assess(day(idle("T-1"), idle("T-2"))));
        assertRefused(
                "limits of a day must be 1 or more each: 1 trucks, 0 catches, 1 containers, 1 openings, 1000 routes, 1000 points"
                        + " of a drive",
                () -> new DayLimits(1, 0, 1, 1));
    }

    /** Costs grow with what there is; quadratic ones made this twenty seconds and more. */
    @Test
    void asMuchAsTheCommonLimitsAllowIsComputedSoon() {
        TruckDay truck = with(
                caught(1000),
                IntStream.range(0, 1000)
                        .mapToObj(i -> verificationCatch(1 + i % 20, "5.2 lb/rev", 120, 57.7))
                        .toArray(VerificationCatchEntry[]::new));
        Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> {
            TruckAssessment assessed = ASSESSOR.assess(day(truck)).get(0);
            assertThat(assessed.refusals()).isEmpty();
            assertThat(assessed.points()).hasSize(1000);
        });
    }

    private static TruckDay filled(int fills) {
        CatchEntry entry = CatchEntry.read(
                DAY.atTime(9, 0).atOffset(ZoneOffset.UTC),
                "brine",
                new ReadEntry("M", Collections.nCopies(fills, Amounts.of(1, SpreadingUnits.US_GALLON))));
        return idle("T-1").calibrationCatches(List.of(new CalibrationCatchEntry(entry, true, Coasting.IN_BOTH)));
    }
}
