package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.inForce;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.CatchEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.history.Contradiction;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.telemetry.AppliedTotal;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.Onset;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.core.telemetry.Rows;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.Timeline;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** A truck from the yard to the road: its records, its timeline, its rows. Its true discharge in October is 5.2 lb/rev at 2 in. */
class RecordedTimelineTest {
    private static final ZoneOffset OFFSET = ZoneOffset.ofHours(-5);
    private static final LocalDate DECEMBER = LocalDate.of(2026, 12, 14);

    /** Calibrated, found 5.8 % off at 9, corrected, and proven at 10. */
    private static final TruckDay OCTOBER = with(
            with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), calibrationCatch(7, 2), calibrationCatch(8, 2)),
            verificationCatch(9, "5.5 lb/rev", 120, 54.5),
            verificationCatch(10, "5.2 lb/rev", 120, 57.6));

    private static CalibrationRecord record(TruckDay truck) {
        return record(Trucks.day(truck));
    }

    private static CalibrationRecord record(FleetDay day) {
        return CalibrationRecord.of(
                day, FleetAssessor.of(BuiltInTypes.registry()).assess(day).get(0));
    }

    private static RecordedTimeline read(CalibrationRecord... records) {
        return RecordedTimeline.of(Arrays.asList(records), BuiltInTypes.registry(), OFFSET);
    }

    private static FleetDay in(LocalDate date, TruckDay truck) {
        FleetDay day = Trucks.day(truck);
        return new FleetDay(
                date,
                day.seasonStart(),
                day.tolerance(),
                day.decisionRule(),
                day.allowances(),
                day.site(),
                day.technician(),
                day.scales(),
                day.graduates(),
                day.materials(),
                day.plan(),
                day.routes(),
                day.tanks(),
                day.trucks());
    }

    private static VerificationCatchEntry in(LocalDate date, VerificationCatchEntry caught) {
        CatchEntry entry = caught.entry();
        return new VerificationCatchEntry(
                new CatchEntry(
                        entry.at().with(date),
                        entry.operator(),
                        entry.scale(),
                        entry.containers(),
                        entry.read(),
                        entry.density(),
                        entry.counted(),
                        entry.setting(),
                        entry.material(),
                        entry.conditions(),
                        entry.notes()),
                caught.inForce(),
                caught.slot(),
                caught.target(),
                caught.testSpeed(),
                caught.runTime(),
                caught.testDistance(),
                caught.indicated(),
                caught.indicatedStep());
    }

    /** In December 4.94 lb a revolution are caught, a twentieth less: found at 9 with 5.2 lb/rev, as left at 10. */
    private static CalibrationRecord december() {
        VerificationCatchEntry found = in(
                DECEMBER,
                verificationCatch("5.2 lb/rev", 120, Trucks.entry(9, 2, 284.54, Optional.of(Trucks.pulses(5760)))));
        VerificationCatchEntry left = in(
                DECEMBER,
                verificationCatch("4.94 lb/rev", 120, Trucks.entry(10, 2, 299.36, Optional.of(Trucks.pulses(6060)))));
        return record(in(DECEMBER, with(record(OCTOBER).nextDay(BuiltInTypes.registry()), found, left)));
    }

    private static Instant at(String time) {
        return Instant.parse(time);
    }

    private static double relative(SharedError error) {
        return Amounts.si(Dimensionless.class, error.standardUncertainty());
    }

    @Test
    void aValueHoldsSinceTheFirstCatchThatShowedIt() {
        List<TimelineEntry> entries = read(record(OCTOBER)).timeline().entries();

        assertThat(entries).extracting(TimelineEntry::slot).containsOnly("salt");
        assertThat(entries)
                .extracting(TimelineEntry::from)
                .containsExactly(at("2026-10-19T05:00:00Z"), at("2026-10-19T15:00:00Z"));
        assertThat(entries)
                .extracting(entry ->
                        ((TimelineEntry.Value) entry.held()).inForce().factor().toString())
                .containsExactly("5.5 lb/rev", "5.2 lb/rev");
        assertThat(entries.get(0).errors()).isEmpty();
    }

    @Test
    void whatACatchFoundBeforeAnythingWasAdjustedIsKept() {
        AsFound found = read(record(OCTOBER)).found().get(0);

        assertThat(found.slot()).isEqualTo("salt");
        assertThat(found.setting()).isEqualTo(Setting.height(Amounts.of(2, SpreadingUnits.INCH)));
        assertThat(found.asLeft()).isEqualTo(at("2026-10-19T05:00:00Z"));
        assertThat(found.at()).isEqualTo(at("2026-10-19T14:00:00Z"));
        assertThat(Amounts.si(Dimensionless.class, found.error().value())).isCloseTo(5.5 / 5.2 - 1, within(1e-6));
        assertThat(found.isShown()).isTrue();
        assertThat(read(record(OCTOBER)).found()).hasSize(1);
    }

    @Test
    void aValueIsAsUncertainAsItsCatchesShowAndAScaleKeepsItsName() {
        List<SharedError> errors =
                read(record(OCTOBER)).timeline().entries().get(1).errors();

        assertThat(errors)
                .extracting(SharedError::id)
                .contains("scale-span of platform", "calibration of T-01, salt, 2 in, 2026-10-19T10:00-05:00");
        // 0.1 % stated: a limit of a rectangle.
        assertThat(relative(errors.stream()
                        .filter(one -> one.id().startsWith("scale-span"))
                        .findFirst()
                        .orElseThrow()))
                .isCloseTo(0.001 / Math.sqrt(3), within(2e-6));
    }

    @Test
    void aValueThatIsOnlyVerifiedGetsItsUncertaintyThenAndStaysHeld() {
        RecordedTimeline both = read(
                record(idle("T-01")),
                record(in(DECEMBER, with(idle("T-01"), in(DECEMBER, verificationCatch(9, "5.2 lb/rev", 120, 57.6))))));

        TimelineEntry only = both.timeline().entries().get(0);
        assertThat(both.timeline().entries()).hasSize(1);
        assertThat(only.from()).isEqualTo(at("2026-10-19T05:00:00Z"));
        assertThat(only.errors()).hasSizeGreaterThan(1);
        assertThat(both.found()).hasSize(1);
        assertThat(both.found().get(0).isShown()).isFalse();
        assertThat(read(record(idle("T-01"))).timeline().entries().get(0).errors())
                .isEmpty();
    }

    @Test
    void whatIsFoundOffAndLeftSoAddsToTheUncertainty() {
        // 2 % more is caught than indicated; nobody adjusts it.
        TruckDay off = with(
                idle("T-01"),
                verificationCatch("5.2 lb/rev", 120, Trucks.entry(9, 2, 305.51, Optional.of(Trucks.pulses(5760)))));

        List<SharedError> errors = read(record(off)).timeline().entries().get(0).errors();
        double alone = relative(errors.stream()
                .filter(one -> one.id().startsWith("calibration of"))
                .findFirst()
                .orElseThrow());
        assertThat(alone).isBetween(1 - 1 / 1.02, 0.0211);
    }

    @Test
    void fromRecordsToTheRoadACorrectionReachesBackToWhatWasAsLeft() {
        RecordedTimeline read = read(december(), record(OCTOBER), record(OCTOBER));
        assertThat(read.timeline().entries())
                .extracting(TimelineEntry::from)
                .containsExactly(at("2026-10-19T05:00:00Z"), at("2026-10-19T15:00:00Z"), at("2026-12-14T15:00:00Z"));
        AsFound found = read.found().get(1);
        assertThat(found.asLeft()).isEqualTo(at("2026-10-19T15:00:00Z"));
        assertThat(Amounts.si(Dimensionless.class, found.error().value())).isCloseTo(5.2 / 4.94 - 1, within(1e-4));

        Timeline corrected = read.timeline().correctedBackBy(found, new Onset.AtOnce(at("2026-12-01T00:00:00Z")));
        // 100 pulses a revolution; 10 revolutions in November, 10 after the change, 10 after the correction.
        assertThat(laid(corrected, at("2026-11-10T06:00:00Z"))).isCloseTo(52, within(1e-3));
        assertThat(laid(corrected, at("2026-12-10T06:00:00Z"))).isCloseTo(49.4, within(5e-3));
        assertThat(laid(corrected, at("2026-12-20T06:00:00Z"))).isCloseTo(49.4, within(1e-3));
        assertThat(laid(read.timeline(), at("2026-12-10T06:00:00Z"))).isCloseTo(52, within(1e-3));
    }

    private static double laid(Timeline timeline, Instant from) {
        Counter counter = Counter.ofShaft(
                Amounts.of(100, SpreadingUnits.PULSE_PER_REVOLUTION),
                Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE));
        RowEvaluator evaluator =
                RowEvaluator.compile(timeline, counter, at("2026-10-01T00:00:00Z"), at("2027-05-01T00:00:00Z"));
        RowSums sums = evaluator.sums();
        long start = from.toEpochMilli();
        Rows rows = Rows.of(new long[] {start, start + 20_000}, new long[] {7, 1007});
        evaluator.evaluate(rows, 0, 2, evaluator.start(), sums, new long[2], new byte[2]);
        AppliedTotal total = evaluator.total(sums);
        Measured<Mass> mass = total.mass(SpreadingUnits.POUND);
        assertThat(mass.standardUncertainty()).isPresent();
        return Amounts.in(mass.value(), SpreadingUnits.POUND);
    }

    @Test
    void whereOneSettingIsCorrectedTheOthersStay() {
        TruckDay two = with(
                with(
                        idle("T-01"),
                        inForce("5.5 lb/rev", 2, Since.of(Trucks.DAY)),
                        inForce("10.4 lb/rev", 4, Since.of(Trucks.DAY))),
                verificationCatch(9, "5.5 lb/rev", 120, 54.5),
                verificationCatch(10, "5.2 lb/rev", 120, 57.6));

        List<TimelineEntry> entries = read(record(two)).timeline().entries();
        assertThat(entries.stream()
                        .filter(entry -> entry.from().equals(at("2026-10-19T15:00:00Z")))
                        .map(entry -> ((TimelineEntry.Value) entry.held())
                                .inForce()
                                .factor()
                                .toString()))
                .containsExactlyInAnyOrder("5.2 lb/rev", "10.4 lb/rev");
        assertThat(entries).hasSize(4);
    }

    /** Proven in October; in December 5 % off, and on the 20th still so, and nobody adjusts it. */
    @Test
    void aValueThatIsVerifiedAgainAndAgainIsCorrectedBackOnce() {
        VerificationCatchEntry off =
                verificationCatch("5.2 lb/rev", 120, Trucks.entry(9, 2, 284.54, Optional.of(Trucks.pulses(5760))));
        TruckDay next = record(OCTOBER).nextDay(BuiltInTypes.registry());
        LocalDate later = DECEMBER.withDayOfMonth(20);
        RecordedTimeline read = read(
                record(OCTOBER),
                record(in(DECEMBER, with(next, in(DECEMBER, off)))),
                record(in(later, with(next, in(later, off)))));

        assertThat(read.found())
                .extracting(AsFound::asLeft, AsFound::at)
                .containsExactly(
                        tuple(at("2026-10-19T05:00:00Z"), at("2026-10-19T14:00:00Z")),
                        tuple(at("2026-10-19T15:00:00Z"), at("2026-12-20T14:00:00Z")));
        Timeline corrected = read.timeline();
        for (AsFound found : read.found()) {
            corrected = corrected.correctedBackBy(found, new Onset.AtOnce(found.asLeft()));
        }
        assertThat(laid(corrected, at("2026-11-10T06:00:00Z"))).isCloseTo(49.4, within(5e-3));
        assertThat(laid(corrected, at("2026-12-16T06:00:00Z"))).isCloseTo(49.4, within(5e-3));
    }

    /** Left at 5.2 lb/rev in October; in December a catch with 5.5 lb/rev, which nobody entered. */
    @Test
    void aValueThatNobodyEnteredIsAContradictionUntilSomebodyEntersOne() {
        TruckDay next = record(OCTOBER).nextDay(BuiltInTypes.registry());
        RecordedTimeline read = read(
                record(OCTOBER),
                record(in(DECEMBER, with(next, in(DECEMBER, verificationCatch(9, "5.5 lb/rev", 120, 57.6))))));

        assertThat(read.contradictions())
                .extracting(Contradiction::kind, Contradiction::isOpen)
                .containsExactly(tuple(Contradiction.Kind.CHANGED_BY_NOBODY, true));
        assertThat(read(record(OCTOBER), december()).contradictions()).isEmpty();
    }

    @Test
    void aDayAndTheSameDaySetRightAreRefused() {
        TruckDay right = with(idle("T-01"), verificationCatch(9, "5.5 lb/rev", 120, 54.5));
        TruckDay wrong = with(
                idle("T-01"),
                verificationCatch("5.5 lb/rev", 120, Trucks.entry(9, 2, 284.54, Optional.of(Trucks.pulses(5760)))));
        TruckDay calibrated = with(idle("T-01"), calibrationCatch(9, 2));

        assertThatThrownBy(() -> read(record(right), record(wrong)))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("calibration records of T-01 must be each catch in one of them:"
                        + " two with a catch at 2026-10-19T14:00:00Z");
        assertThatThrownBy(() -> read(record(right), record(calibrated)))
                .hasMessageContaining("two with a catch at 2026-10-19T14:00:00Z");
        assertThat(read(record(right), record(with(idle("T-01"), verificationCatch(10, "5.5 lb/rev", 120, 54.5))))
                        .timeline()
                        .entries())
                .isNotEmpty();
    }

    @Test
    void aDisplayThatShowsTwoValuesAtOneTimeIsRefused() {
        CalibrationRecord one =
                record(with(idle("T-01"), inForce("5.5 lb/rev", 2, Since.of(LocalDate.of(2026, 1, 1)))));
        CalibrationRecord other =
                record(with(idle("T-01"), inForce("5.2 lb/rev", 2, Since.of(LocalDate.of(2026, 1, 1)))));

        assertThatThrownBy(() -> read(one, other))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage(
                        "calibration records of T-01 must be one value for salt at 2 in in the display on 2026-10-19:"
                                + " 5.5 lb/rev and 5.2 lb/rev");
    }

    @Test
    void recordsThatDontGoTogetherAreRefused() {
        assertThatThrownBy(() -> read())
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("calibration records must be at least one");
        assertThatThrownBy(() -> read(record(idle("T-01")), record(idle("T-02"))))
                .hasMessageContaining("trucks of the calibration records must be one");
        assertThatThrownBy(() -> read(record(Trucks.withNothingInForce(idle("T-01")))))
                .hasMessageContaining("values in the calibration records must be at least one");
        TruckDay refused = with(idle("T-01"), Trucks.spreader(new TypedEntry("no-gate-of-ours", 1, Map.of())));
        assertThatThrownBy(() -> read(record(refused)))
                .hasMessageContaining("calibration record of T-01, 2026-10-19 must be one that can be computed with");
    }
}
