package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.fleet.day.Trucks.calibrationCatch;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.ChangeEntry;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.Trucks;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.Standing;
import org.gritwright.core.history.TruckState;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DischargeHistory;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.junit.jupiter.api.Test;

/** One catch from the yard to the fleet's memory. */
class RecordedEventsTest {
    private static final ZoneOffset YARD = ZoneOffset.ofHours(-5);

    /** Calibrated, found 5.8 % off at 9, corrected, and proven at 10. */
    private static final TruckDay OCTOBER = with(
            with(Trucks.listing(idle("T-01"), "5.5 lb/rev"), calibrationCatch(7, 2), calibrationCatch(8, 2)),
            verificationCatch(9, "5.5 lb/rev", 120, 54.5),
            verificationCatch(10, "5.2 lb/rev", 120, 57.6));

    private static CalibrationRecord record(TruckDay truck) {
        FleetDay day = Trucks.day(truck);
        return CalibrationRecord.of(
                day, FleetAssessor.of(BuiltInTypes.registry()).assess(day).get(0));
    }

    private static List<Event> events(TruckDay truck) {
        return record(truck).events("record 1", BuiltInTypes.registry());
    }

    private static History history(TruckDay truck) {
        return History.of(events(truck), YARD);
    }

    @Test
    void aRecordTellsWhatHappenedInTheOrderOfTheDay() {
        assertThat(history(OCTOBER).events())
                .extracting(event -> event.what().words())
                .containsExactly(
                        "salt at 2 in entered as 5.5 lb/rev",
                        "salt at 2 in calibrated: 5.2 lb/rev",
                        "salt at 2 in verified with 5.5 lb/rev: error 5.8 %, outside tolerance",
                        "salt at 2 in corrected from 5.5 lb/rev to 5.2 lb/rev",
                        "salt at 2 in verified with 5.2 lb/rev: error 0 %, within tolerance",
                        "season from 2026-11-01 started");
    }

    @Test
    void theIdOfAnEventFollowsFromWhatWasWrittenDown() {
        assertThat(events(OCTOBER))
                .extracting(Event::id)
                .contains(
                        "record 1, T-01, calibrated salt at 2 in",
                        "record 1, T-01, verified with 5.5 lb/rev salt at 2 in",
                        "record 1, T-01, corrected to 5.2 lb/rev salt at 2 in");
        assertThat(events(OCTOBER)).isEqualTo(events(OCTOBER));
        assertThat(History.of(events(OCTOBER), YARD).with(events(OCTOBER))).isEqualTo(history(OCTOBER));
    }

    @Test
    void theCorrectionNamesTheVerificationThatCalledForIt() {
        History history = history(OCTOBER);
        Event corrected = history.event("record 1, T-01, corrected to 5.2 lb/rev salt at 2 in")
                .orElseThrow();

        assertThat(((What.Corrected) corrected.what()).because())
                .contains("record 1, T-01, verified with 5.5 lb/rev salt at 2 in");
        assertThat(history.contradictions()).isEmpty();
    }

    @Test
    void afterTheDayTheValueAsLeftIsProvenAndTheTwoDischargesAgree() {
        TruckState after = history(OCTOBER).asOf("T-01", Instant.parse("2026-10-20T00:00:00Z"));

        assertThat(after.values()).singleElement().satisfies(held -> {
            assertThat(held.value().factor()).hasToString("5.2 lb/rev");
            assertThat(held.standing()).isEqualTo(Standing.PROVEN);
        });
        assertThat(DischargeHistory.all(history(OCTOBER)))
                .singleElement()
                .satisfies(known -> assertThat(known.current().implied()).hasSize(3));
    }

    @Test
    void catchesThatRepeatAreOneVerificationWithItsScatter() {
        TruckDay twice = with(
                Trucks.listing(idle("T-01"), "5.2 lb/rev"),
                verificationCatch(9, "5.2 lb/rev", 120, 57.6),
                verificationCatch(10, "5.2 lb/rev", 120, 57.8));
        What.Verified verified = (What.Verified) events(twice).stream()
                .map(Event::what)
                .filter(what -> what instanceof What.Verified)
                .findFirst()
                .orElseThrow();

        assertThat(verified.catches()).isEqualTo(2);
        assertThat(verified.scatter().orElseThrow().degreesOfFreedom()).isEqualTo(1);
        assertThat(verified.scatter().orElseThrow().relative()).isBetween(0.0, 0.0030);
        assertThat(verified.verdict()).isEqualTo(Verdict.WITHIN_TOLERANCE);
    }

    @Test
    void aChangeOfTheDayIsAnEvent() {
        TruckDay changed = OCTOBER.changes(
                List.of(new ChangeEntry(LocalDate.of(2026, 10, 12), Change.Part.HYDRAULIC, Optional.of("new pump"))));

        assertThat(events(changed))
                .filteredOn(event -> event.what() instanceof What.Changed)
                .singleElement()
                .satisfies(event -> assertThat(event).hasToString("2026-10-12, T-01: hydraulic changed: new pump"));
    }

    /** The same value on the next day, claimed since the day of the correction, is no change. */
    @Test
    void theNextDayContinuesTheHistory() {
        TruckDay next = record(OCTOBER).nextDay(BuiltInTypes.registry());
        FleetDay december = december(next);
        CalibrationRecord record = CalibrationRecord.of(
                december,
                FleetAssessor.of(BuiltInTypes.registry()).assess(december).get(0));
        History both = history(OCTOBER).with(record.events("record 2", BuiltInTypes.registry()));

        assertThat(both.changes("T-01")).isEqualTo(history(OCTOBER).changes("T-01"));
        assertThat(both.contradictions()).isEmpty();
        assertThat(History.of(record.events("record 2", BuiltInTypes.registry()), YARD)
                        .with(events(OCTOBER)))
                .isEqualTo(both);
    }

    private static FleetDay december(TruckDay truck) {
        FleetDay day = Trucks.day(truck);
        return new FleetDay(
                LocalDate.of(2026, 12, 14),
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

    @Test
    void aSourceWithoutANameIsRefused() {
        assertThatThrownBy(() -> record(OCTOBER).events(" ", BuiltInTypes.registry()))
                .hasMessageContaining("source of events");
    }
}
