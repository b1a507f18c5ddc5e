package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.CalibrationCatchEntry;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.DriveEntry;
import org.gritwright.core.fleet.day.DrivePointEntry;
import org.gritwright.core.fleet.day.DriveRunEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.InForceEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.observation.Coasting;
import org.gritwright.core.observation.Repeatability;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveConditions;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What catches, displays and drives of one day tell the history of a fleet. */
class RecordedCatchesTest {
    private static final LocalDate DAY = Trucks.DAY;

    private static List<Event> events(FleetDay day) {
        return CalibrationRecord.of(
                        day,
                        FleetAssessor.of(BuiltInTypes.registry()).assess(day).get(0))
                .events("record 1", BuiltInTypes.registry());
    }

    private static List<Event> events(TruckDay truck) {
        return events(Trucks.day(truck));
    }

    private static History history(TruckDay truck) {
        return History.of(events(truck), ZoneOffset.ofHours(-5));
    }

    private static List<String> words(TruckDay truck) {
        return history(truck).events().stream()
                .map(event -> event.what().words())
                .toList();
    }

    private static <W extends What> W only(Class<W> kind, List<Event> events) {
        List<W> found = events.stream()
                .map(Event::what)
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private static double ratio(Quantity<Dimensionless> ratio) {
        return Amounts.si(Dimensionless.class, ratio);
    }

    /** Caught so many pounds with 54.5 revolutions, which makes them 283.4 lb at 5.2 lb/rev. */
    private static VerificationCatchEntry caught(int hour, double pounds) {
        return verificationCatch("5.5 lb/rev", 120, Trucks.entry(hour, 2, pounds, Optional.of(Trucks.pulses(5450))));
    }

    @Test
    void aSpanOfTheScaleHasOneSizeHoweverFarOffTheValueWas() {
        TruckDay found = with(
                with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), calibrationCatch(7, 2), calibrationCatch(8, 2)),
                verificationCatch(9, "5.5 lb/rev", 120, 54.5));
        List<SharedError> calibrated =
                only(What.Calibrated.class, events(found)).shared();
        List<SharedError> verified = only(What.Verified.class, events(found)).shared();

        assertThat(calibrated).singleElement().satisfies(span -> {
            assertThat(ratio(span.standardUncertainty())).isPositive();
            assertThat(verified).extracting(SharedError::id).containsExactly(span.id());
            assertThat(ratio(verified.get(0).standardUncertainty()))
                    .isCloseTo(ratio(span.standardUncertainty()), withPercentage(1e-6));
        });
    }

    @Test
    void calibrationCatchesThatRepeatHaveTheirScatterAndOneHasNone() {
        double pounds = 30 * 5.2;
        TruckDay two = with(
                Trucks.listing(idle("T-01"), "5.5 lb/rev"),
                calibrated(7, 0.995 * pounds),
                calibrated(8, 1.005 * pounds));
        Repeatability scatter =
                only(What.Calibrated.class, events(two)).scatter().orElseThrow();

        assertThat(scatter.relative()).isCloseTo(0.005 * Math.sqrt(2), within(1e-6));
        assertThat(scatter.degreesOfFreedom()).isEqualTo(1);
        assertThat(only(What.Calibrated.class, events(with(two, calibrated(7, pounds))))
                        .scatter())
                .isEmpty();
    }

    private static CalibrationCatchEntry calibrated(int hour, double pounds) {
        return new CalibrationCatchEntry(
                Trucks.entry(hour, 2, pounds, Optional.of(Trucks.pulses(3000))), true, Coasting.IN_BOTH);
    }

    /** Masses of 1, 1 and 1.03: a mean of 1.01, from which they deviate by 0.03 ÷ √3. */
    @Test
    void verificationsScatterAsWhatTheyCaught() {
        TruckDay three = with(
                Trucks.listing(idle("T-01"), "5.5 lb/rev"), caught(9, 280), caught(10, 280), caught(11, 1.03 * 280));
        What.Verified verified = only(What.Verified.class, events(three));

        assertThat(verified.catches()).isEqualTo(3);
        assertThat(Amounts.in(verified.caught(), SpreadingUnits.POUND)).isCloseTo(3.03 * 280, within(1e-9));
        assertThat(verified.scatter().orElseThrow().relative()).isCloseTo(0.03 / Math.sqrt(3) / 1.01, within(1e-6));
    }

    /** With a tenth of the pulses the conveyor would have carried more than it can. */
    @Test
    void aCatchThatIsDoubtedVerifiesNothing() {
        VerificationCatchEntry doubted =
                verificationCatch("5.5 lb/rev", 120, Trucks.entry(10, 2, 283.4, Optional.of(Trucks.pulses(545))));
        TruckDay truck = Trucks.listing(idle("T-01"), "5.5 lb/rev");

        assertThat(only(What.Verified.class, events(with(truck, caught(9, 283.4), doubted)))
                        .catches())
                .isEqualTo(1);
        assertThat(words(with(truck, doubted)))
                .containsExactly("salt at 2 in entered as 5.5 lb/rev", "season from 2026-11-01 started");
    }

    @Test
    void aCatchThatCountedNothingVerifiesNothing() {
        VerificationCatchEntry uncounted =
                verificationCatch("5.5 lb/rev", 120, Trucks.entry(10, 2, 283.4, Optional.empty()));

        assertThat(words(with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), uncounted)))
                .containsExactly("salt at 2 in entered as 5.5 lb/rev", "season from 2026-11-01 started");
    }

    @Test
    void aValueOfAnEarlierDayWasSeenOnThisOneWithTheClaimSinceWhen() {
        LocalDate before = DAY.minusDays(1);
        Event seen = history(with(idle("T-01"), Trucks.inForce("5.5 lb/rev", before)))
                .event("record 1, T-01, shown as 5.5 lb/rev salt at 2 in")
                .orElseThrow();

        assertThat(seen.at()).isEqualTo(Since.of(DAY));
        assertThat(((What.Shown) seen.what()).seen().since()).contains(Since.of(before));
    }

    @Test
    void theRangeThatADriveWasMeasuredToHoldIsAnEventOfTheDay() {
        List<Event> events =
                events(idle("T-01").drive(drive(0, 0, 30, 2, 30, 2, 50, 12, 50, 12, 80, 28, 80, 28, 100, 28, 100, 28)));
        What.RangeMeasured range = only(What.RangeMeasured.class, events);

        assertThat(Amounts.in(range.lowest(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isEqualTo(2);
        assertThat(Amounts.in(range.highest(), SpreadingUnits.REVOLUTION_PER_MINUTE))
                .isEqualTo(28);
        assertThat(events).extracting(Event::id).contains("record 1, T-01, range");
    }

    /** One rising run: percent and revolutions a minute in turn. */
    private static DriveEntry drive(double... pairs) {
        List<DrivePointEntry> points = new ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            points.add(DrivePointEntry.of(
                    Amounts.of(pairs[i], SpreadingUnits.PERCENT),
                    Amounts.of(pairs[i + 1], SpreadingUnits.REVOLUTION_PER_MINUTE)));
        }
        return new DriveEntry(
                Optional.of(Amounts.of(0, SpreadingUnits.PERCENT)),
                Optional.of(Amounts.of(100, SpreadingUnits.PERCENT)),
                Optional.of(Amounts.of(1, SpreadingUnits.PERCENT)),
                Optional.of(Amounts.of(0.1, SpreadingUnits.REVOLUTION_PER_MINUTE)),
                DriveConditions.AS_AT_WORK,
                List.of(new DriveRunEntry(Direction.RISING, points)),
                Optional.empty());
    }

    @Test
    void whatIsThereTwiceGetsANumber() {
        ChangeEntry pump = new ChangeEntry(DAY, Change.Part.HYDRAULIC, Optional.of("new pump"));
        ChangeEntry hose = new ChangeEntry(DAY, Change.Part.HYDRAULIC, Optional.of("new hose"));
        ChangeEntry valve = new ChangeEntry(DAY, Change.Part.HYDRAULIC, Optional.of("new valve"));

        assertThat(events(idle("T-01").changes(List.of(pump, hose, valve))))
                .extracting(Event::id)
                .contains(
                        "record 1, T-01, hydraulic changed 2026-10-19",
                        "record 1, T-01, hydraulic changed 2026-10-19 (2)",
                        "record 1, T-01, hydraulic changed 2026-10-19 (3)");
    }

    @Test
    void anEventIsSignedByWhoCaughtOrElseByTheDaysTechnician() {
        CatchEntry entry = Trucks.entry(9, 2, 283.4, Optional.of(Trucks.pulses(5450)));
        VerificationCatchEntry signed = verificationCatch("5.5 lb/rev", 120, by("night crew", entry));
        TruckDay truck = with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), signed);

        assertThat(signers("day crew", truck)).containsExactly("day crew", "night crew");
        assertThat(signers(" ", truck)).containsExactly("nobody", "night crew");
    }

    private static CatchEntry by(String operator, CatchEntry entry) {
        return new CatchEntry(
                entry.at(),
                Optional.of(operator),
                entry.scale(),
                entry.containers(),
                entry.read(),
                entry.density(),
                entry.counted(),
                entry.setting(),
                entry.material(),
                entry.conditions(),
                entry.notes());
    }

    /** Who entered the truck's value and who verified it. */
    private static List<String> signers(String technician, TruckDay truck) {
        FleetDay day = Trucks.day(truck);
        FleetDay signed = new FleetDay(
                day.day(),
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                day.site(),
                Optional.of(technician),
                day.scales(),
                day.graduates(),
                day.materials(),
                day.plan(),
                day.routes(),
                day.tanks(),
                day.trucks());
        return events(signed).stream()
                .filter(event -> event.truck().isPresent())
                .map(event -> event.who().orElse("nobody"))
                .toList();
    }

    private static TruckDay holding(String... slots) {
        return with(
                idle("T-01"),
                Stream.of(slots)
                        .map(slot -> new InForceEntry(
                                Amounts.parseAny(slot.equals("B") ? "4.8 lb/rev" : "5.5 lb/rev"),
                                Optional.of(Amounts.parseAny("0.01 lb/rev")),
                                Since.of(DAY),
                                "salt",
                                Optional.of(Amounts.of(2, SpreadingUnits.INCH)),
                                Optional.of(slot)))
                        .toArray(InForceEntry[]::new));
    }

    @ParameterizedTest
    @CsvSource({
        // The slots that are held, the value at the catch, and the slot in which it was verified.
        "A, 5.5 lb/rev, A",
        "A, 5.2 lb/rev, A",
        "A B, 5.5 lb/rev, A",
        "A B, 4.8 lb/rev, B",
        "A B, 5.2 lb/rev, ",
    })
    void aValueAtACatchIsInTheSlotThatHoldsItAndInTheOnlyOne(String slots, String value, String slot) {
        TruckDay truck = with(holding(slots.split(" ")), verificationCatch(9, value, 120, 54.5));

        assertThat(only(What.Verified.class, events(truck)).inForce().slot()).isEqualTo(Optional.ofNullable(slot));
    }

    @Test
    void aValueThatNothingLedToWasOnlySeen() {
        assertThat(words(with(Trucks.withNothingInForce(idle("T-01")), verificationCatch(9, "5.2 lb/rev", 120, 57.6))))
                .contains("salt at 2 in shown as 5.2 lb/rev")
                .noneMatch(one -> one.contains("entered"));
    }

    @ParameterizedTest
    @CsvSource({
        // The hour of the second calibration catch, and what the value at the catch at 9 is taken for.
        "8, entered as",
        "9, entered as",
        "10, shown as"
    })
    void aNewValueAfterTheLastCalibrationCatchWasEnteredAndBeforeItOnlySeen(int hour, String words) {
        TruckDay truck = with(
                with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), calibrationCatch(7, 2), calibrationCatch(hour, 2)),
                verificationCatch(9, "5.2 lb/rev", 120, 57.6));

        assertThat(words(truck)).contains("salt at 2 in " + words + " 5.2 lb/rev");
    }

    @Test
    void aValueThatHasToBeCorrectedItselfWasEnteredAndCorrectsNothing() {
        TruckDay truck = with(
                Trucks.listing(idle("T-01"), "5.5 lb/rev"),
                verificationCatch(9, "5.5 lb/rev", 120, 54.5),
                verificationCatch(10, "4.9 lb/rev", 120, 61));

        assertThat(words(truck))
                .contains("salt at 2 in entered as 4.9 lb/rev")
                .noneMatch(one -> one.contains("corrected"));
    }

    @Test
    void whatFollowsTheCorrectionWasEntered() {
        TruckDay truck = with(
                Trucks.listing(idle("T-01"), "5.5 lb/rev"),
                verificationCatch(8, "5.5 lb/rev", 120, 54.5),
                verificationCatch(9, "5.4 lb/rev", 120, 55.5),
                verificationCatch(10, "5.2 lb/rev", 120, 57.6));

        assertThat(words(truck))
                .contains("salt at 2 in corrected from 5.5 lb/rev to 5.4 lb/rev", "salt at 2 in entered as 5.2 lb/rev");
    }
}
