package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.YARD;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.pounds;
import static org.gritwright.core.history.Happenings.season;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.Material;
import org.gritwright.core.telemetry.AsFound;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.telemetry.TimelineEntry;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** A truck in an invented county: what its display held, who changed it, and how sure it was. */
class HistoryTest {
    /** Found 5.8 % off in the morning of October 19, corrected, proven an hour later; in December 4 in 100 less comes out. */
    private static final History YEAR = history(
            season("2026-11-01"),
            entered("1", day("2026-09-01"), value(TWO, 26)),
            calibrated("2", hour("2026-10-19T08:00"), TWO, 24.6),
            verified("3", hour("2026-10-19T09:00"), value(TWO, 26), 5.8),
            corrected("4", hour("2026-10-19T10:00"), value(TWO, 26), 24.6, "3"),
            verified("5", hour("2026-10-19T10:00"), value(TWO, 24.6), 0.1),
            verified("6", hour("2026-12-14T09:00"), value(TWO, 24.6), 4.2));

    private static Instant at(String time) {
        return Instant.parse(time);
    }

    private static Optional<Held> held(History history, String time) {
        return history.asOf(TRUCK, at(time)).value(TWO.key());
    }

    private static Optional<CalibrationFactor> factor(History history, String time) {
        return held(history, time).map(held -> held.value().factor());
    }

    private static double percent(Held held) {
        return 100 * Amounts.si(Dimensionless.class, held.error().orElseThrow().value());
    }

    @Test
    void aValueHoldsFromTheInstantOfItsEventOn() {
        assertThat(held(YEAR, "2026-09-01T04:59:59Z")).isEmpty();
        assertThat(factor(YEAR, "2026-09-01T05:00:00Z")).contains(pounds(26));
        assertThat(factor(YEAR, "2026-10-19T14:59:59Z")).contains(pounds(26));
        assertThat(factor(YEAR, "2026-10-19T15:00:00Z")).contains(pounds(24.6));
        assertThat(factor(YEAR, "2030-01-01T00:00:00Z")).contains(pounds(24.6));
    }

    @Test
    void howSureItIsFollowsFromWhatWasDone() {
        assertThat(held(YEAR, "2026-10-01T00:00:00Z").orElseThrow().standing()).isEqualTo(Standing.NOT_CHECKED);
        assertThat(held(YEAR, "2026-10-19T14:00:00Z").orElseThrow().standing()).isEqualTo(Standing.WRONG);
        assertThat(held(YEAR, "2026-10-19T15:00:00Z").orElseThrow().standing()).isEqualTo(Standing.PROVEN);
        assertThat(held(YEAR, "2026-12-14T14:00:00Z").orElseThrow().standing()).isEqualTo(Standing.WRONG);
        History open = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                verified("2", day("2026-09-02"), value(TWO, 26), 1, Verdict.UNDECIDED));
        assertThat(held(open, "2026-10-01T00:00:00Z").orElseThrow().standing()).isEqualTo(Standing.UNDECIDED);
    }

    @Test
    void aChangeMakesAProvenValueUnsureUntilItIsVerifiedAgain() {
        History repaired = YEAR.with(List.of(
                changed("7", day("2026-12-20"), Change.Part.HYDRAULIC),
                changed("8", day("2026-12-21"), Change.Part.TIRE),
                verified("9", hour("2027-01-04T09:00"), value(TWO, 24.6), 1)));

        assertThat(held(repaired, "2026-12-20T05:00:00Z").orElseThrow().standing())
                .isEqualTo(Standing.CHANGED_SINCE);
        assertThat(held(repaired, "2026-12-22T00:00:00Z").orElseThrow().changed())
                .extracting(Event::id)
                .containsExactly("7");
        assertThat(held(repaired, "2027-01-05T00:00:00Z").orElseThrow().standing())
                .isEqualTo(Standing.PROVEN);
    }

    @Test
    void aDeliveryOfItsMaterialIsRememberedAndLeavesItProven() {
        Event lot = Event.ofFleet(
                "lot", day("2026-11-03"), new What.Delivered(Samples.SALT, "L-9", Optional.empty()), "tickets");
        Event sand = Event.ofFleet(
                "sand",
                day("2026-11-03"),
                new What.Delivered(
                        Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                        "S-1",
                        Optional.empty()),
                "tickets");
        Held held = held(YEAR.with(List.of(lot, sand)), "2026-11-04T00:00:00Z").orElseThrow();

        assertThat(held.changed()).containsExactly(lot);
        assertThat(held.standing()).isEqualTo(Standing.PROVEN);
    }

    @Test
    void theErrorIsTheLastVerificationsOrWhatACorrectionOrACalibrationLeaves() {
        assertThat(percent(held(YEAR, "2026-10-19T14:00:00Z").orElseThrow())).isEqualTo(5.8);
        assertThat(percent(held(YEAR, "2026-12-15T00:00:00Z").orElseThrow())).isEqualTo(4.2);
        History corrected = history(
                verified("1", hour("2026-10-19T09:00"), value(TWO, 26), 5.8),
                corrected("2", hour("2026-10-19T10:00"), value(TWO, 26), 24.6, "1"));
        Held left = held(corrected, "2026-10-20T00:00:00Z").orElseThrow();
        assertThat(percent(left)).isZero();
        assertThat(Amounts.si(
                        Dimensionless.class,
                        left.error().orElseThrow().standardUncertainty().orElseThrow()))
                .isCloseTo(Math.hypot(0.006, 0.002), org.assertj.core.data.Offset.offset(1e-12));
        History calibrated = history(
                calibrated("1", hour("2026-10-19T09:00"), TWO, 25), entered("2", day("2026-10-20"), value(TWO, 26)));
        assertThat(percent(held(calibrated, "2026-10-21T00:00:00Z").orElseThrow()))
                .isCloseTo(4, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(held(history(entered("1", day("2026-09-01"), value(TWO, 26))), "2026-10-01T00:00:00Z")
                        .orElseThrow()
                        .error())
                .isEmpty();
    }

    @Test
    void everyChangeSaysWhoAndFromWhat() {
        History signed = history(
                entered("1", day("2026-09-01"), value(TWO, 26)).by("Avery"),
                corrected("2", hour("2026-10-19T10:00"), value(TWO, 26), 24.6, "none")
                        .by("Blake"),
                event("3", day("2026-12-01"), new What.SetBack()));

        assertThat(signed.changes(TRUCK))
                .extracting(
                        change -> change.from()
                                .map(one -> one.factor().toString())
                                .orElse("nothing"),
                        change ->
                                change.to().map(one -> one.factor().toString()).orElse("nothing"),
                        change -> change.by().who().orElse("nobody"))
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("nothing", "26 lb/rev", "Avery"),
                        org.assertj.core.groups.Tuple.tuple("26 lb/rev", "24.6 lb/rev", "Blake"),
                        org.assertj.core.groups.Tuple.tuple("24.6 lb/rev", "nothing", "nobody"));
        assertThat(signed.changes(TRUCK)).allMatch(ValueChange::isWrittenDown);
    }

    @Test
    void aValueThatIsShownAndWasNeverEnteredWasChangedByNobody() {
        History history =
                history(entered("1", day("2026-09-01"), value(TWO, 26)), shown("2", day("2026-11-20"), value(TWO, 25)));

        assertThat(history.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.CHANGED_BY_NOBODY);
        assertThat(factor(history, "2026-11-21T00:00:00Z")).contains(pounds(25));
        assertThat(history.changes(TRUCK).get(1).isWrittenDown()).isFalse();
    }

    @Test
    void aValueThatIsShownAsItWasEnteredIsNoChange() {
        History history =
                history(entered("1", day("2026-09-01"), value(TWO, 26)), shown("2", day("2026-11-20"), value(TWO, 26)));

        assertThat(history.contradictions()).isEmpty();
        assertThat(history.changes(TRUCK)).hasSize(1);
    }

    @Test
    void aClaimSinceWhenAValueIsHeldIsHeardWhereNothingElseIsKnown() {
        History history = history(shown("1", day("2026-11-20"), value(TWO, 26).since(day("2026-10-01"))));

        assertThat(held(history, "2026-10-01T04:59:59Z")).isEmpty();
        assertThat(factor(history, "2026-10-01T05:00:00Z")).contains(pounds(26));
        assertThat(history.changes(TRUCK)).hasSize(1).allMatch(ValueChange::isWrittenDown);
    }

    /** The next day's document often knows just the day of a correction, and the record of that day the hour. */
    @Test
    void aClaimThatOnlyKnowsTheDayGivesWayToTheRecordOfThatDay() {
        History history =
                YEAR.with(List.of(shown("7", day("2026-11-20"), value(TWO, 24.6).since(day("2026-10-19")))));

        assertThat(history.changes(TRUCK)).isEqualTo(YEAR.changes(TRUCK));
        assertThat(history.contradictions()).isEmpty();
    }

    @Test
    void aClaimOfATimeInWhichSomethingElseWasHeldIsNotHeard() {
        History history =
                YEAR.with(List.of(shown("7", day("2027-01-20"), value(TWO, 23).since(day("2026-10-01")))));

        assertThat(factor(history, "2026-11-01T00:00:00Z")).contains(pounds(24.6));
        assertThat(factor(history, "2027-01-20T05:00:00Z")).contains(pounds(23));
        assertThat(history.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.CHANGED_BY_NOBODY);
    }

    @Test
    void aCatchOfAValueThatTheDisplayDidntHoldProvesNothing() {
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                verified("2", hour("2026-10-19T09:00"), value(TWO, 24), 0.5));

        assertThat(factor(history, "2026-11-01T00:00:00Z")).contains(pounds(26));
        assertThat(held(history, "2026-11-01T00:00:00Z").orElseThrow().standing())
                .isEqualTo(Standing.NOT_CHECKED);
        assertThat(history.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.VERIFIED_ANOTHER);
    }

    @Test
    void aCorrectionOfAnotherValueIsOddAndHoldsAsItWasLeft() {
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                corrected("2", day("2026-10-01"), value(TWO, 25), 24, "none"));

        assertThat(factor(history, "2026-11-01T00:00:00Z")).contains(pounds(24));
        assertThat(history.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.CORRECTED_ANOTHER);
    }

    @Test
    void whatIsReadBackIsWhatIsHeld() {
        History history =
                history(event("1", day("2026-09-01"), new What.Entered(value(TWO, 26), Optional.of(pounds(62)))));

        assertThat(factor(history, "2026-11-01T00:00:00Z")).contains(pounds(62));
        assertThat(history.contradictions()).singleElement().satisfies(odd -> {
            assertThat(odd.kind()).isEqualTo(Contradiction.Kind.READ_BACK_DIFFERS);
            assertThat(odd)
                    .hasToString("what was read back isn't what was to be entered: 2026-09-01, T-07: salt at 2 in "
                            + "entered as 26 lb/rev, read back as 62 lb/rev");
        });
    }

    @Test
    void twoValuesAtOneTimeAreOdd() {
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26)), entered("2", day("2026-09-01"), value(TWO, 25)));

        assertThat(history.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.TWO_AT_ONCE);
    }

    @Test
    void aLaterEntryThatContradictsNothingSettlesWhatWasOddInItsPlace() {
        History odd = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                shown("2", day("2026-11-20"), value(TWO, 25)),
                verified("3", day("2026-11-21"), value(TWO, 24), 0.5));
        assertThat(odd.contradictions())
                .extracting(Contradiction::kind, Contradiction::isOpen)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(Contradiction.Kind.CHANGED_BY_NOBODY, true),
                        org.assertj.core.groups.Tuple.tuple(Contradiction.Kind.VERIFIED_ANOTHER, true));

        History calibrated = odd.with(List.of(
                calibrated("4", day("2026-12-01"), TWO, 24.6),
                event("5", day("2026-12-01"), new What.Entered(value(TWO, 24.6), Optional.of(pounds(24.6))))));
        assertThat(calibrated.contradictions())
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.settled().map(Event::id)).contains("5"));
        assertThat(calibrated.contradictions().get(0))
                .hasToString(
                        "the display shows a value that nobody entered: 2026-09-01, T-07: salt at 2 in entered as 26 lb/rev;"
                                + " 2026-11-20, T-07: salt at 2 in shown as 25 lb/rev;"
                                + " settled by 2026-12-01, T-07: salt at 2 in entered as 24.6 lb/rev");
        History corrected = odd.with(List.of(corrected("4", day("2026-12-01"), value(TWO, 25), 24.6, "none")));
        assertThat(corrected.contradictions())
                .allSatisfy(one -> assertThat(one.isOpen()).isFalse());
    }

    /** That a value is seen again, or caught with, doesn't say how it came there. */
    @Test
    void whatIsSeenOrEnteredElsewhereOrContradictsItselfSettlesNothing() {
        History odd =
                history(entered("1", day("2026-09-01"), value(TWO, 26)), shown("2", day("2026-11-20"), value(TWO, 25)));
        List<Event> none = List.of(
                shown("3", day("2026-12-01"), value(TWO, 25)),
                verified("3", day("2026-12-01"), value(TWO, 25), 0.5),
                calibrated("3", day("2026-12-01"), TWO, 25),
                entered("3", day("2026-12-01"), value(TWO, 26).inSlot("9")),
                entered("3", day("2026-10-01"), value(TWO, 26)),
                event("3", day("2026-12-01"), new What.Entered(value(TWO, 24), Optional.of(pounds(42)))));
        for (Event event : none) {
            assertThat(odd.with(List.of(event)).contradictions())
                    .as(event.toString())
                    .isNotEmpty()
                    .allMatch(Contradiction::isOpen);
        }
    }

    @Test
    void onADayOnlyWhatHadHappenedContradictsItselfAndOnlyWhatHadHappenedSettlesIt() {
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                shown("2", day("2026-11-20"), value(TWO, 25)),
                entered("3", day("2026-12-01"), value(TWO, 24.6)),
                shown("4", day("2027-01-10"), value(TWO, 24)));

        assertThat(history.contradictions(TRUCK, at("2026-11-19T00:00:00Z"))).isEmpty();
        assertThat(history.contradictions(at("2026-11-30T00:00:00Z")))
                .singleElement()
                .matches(Contradiction::isOpen);
        assertThat(history.contradictions(TRUCK, at("2026-12-02T00:00:00Z")))
                .singleElement()
                .matches(one -> !one.isOpen());
        assertThat(history.contradictions(TRUCK, at("2027-02-01T00:00:00Z")))
                .extracting(Contradiction::isOpen)
                .containsExactly(false, true)
                .hasSameSizeAs(history.contradictions());
    }

    /** A value may be claimed to have been held before; who looks at a day before it was seen didn't know of it. */
    @Test
    void whatWasOnlySeenLaterContradictsNothingBefore() {
        History history = history(
                shown("1", day("2026-12-01"), value(TWO, 26).since(day("2026-10-20"))),
                verified("2", hour("2026-10-19T09:00"), value(THREE, 39), 0.5),
                verified("3", hour("2026-10-25T09:00"), value(TWO, 24), 0.5));

        assertThat(history.contradictions(TRUCK, at("2026-11-01T00:00:00Z"))).isEmpty();
    }

    @Test
    void whatIsOddAboutSupersedingIsKnownFromItsDayOn() {
        Event mistaken = entered("1", day("2026-09-01"), value(TWO, 26));
        History history = history(
                mistaken,
                entered("2", day("2026-09-02"), value(TWO, 25)).superseding("1", "mistyped"),
                entered("3", day("2026-09-04"), value(TWO, 24)).superseding("1", "mistyped"),
                entered("4", day("2026-09-06"), value(TWO, 23)).superseding("gone", "mistyped"));

        assertThat(history.contradictions(at("2026-09-03T12:00:00Z"))).isEmpty();
        assertThat(history.contradictions(at("2026-09-05T12:00:00Z")))
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.SUPERSEDED_TWICE);
        assertThat(history.contradictions()).hasSize(2).allMatch(Contradiction::isOpen);
    }

    @Test
    void settingsStandBesideEachOtherInASlotUntilAnotherMaterialTakesIt() {
        Material sand = Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT));
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26).inSlot("1")),
                entered("2", day("2026-09-02"), value(THREE, 40).inSlot("1")),
                entered(
                        "3",
                        day("2026-10-01"),
                        value(
                                        org.gritwright.core.observation.CalibrationPoint.of(
                                                sand, TWO.metering(), TWO.setting()),
                                        30)
                                .inSlot("1")));

        assertThat(history.asOf(TRUCK, at("2026-09-03T00:00:00Z")).values()).hasSize(2);
        assertThat(history.asOf(TRUCK, at("2026-10-02T00:00:00Z")).values())
                .extracting(held -> held.value().point().material().name())
                .containsExactly("sand");
        assertThat(history.asOf(TRUCK, at("2026-09-03T00:00:00Z")).slot("1")).isPresent();
        assertThat(history.asOf(TRUCK, at("2026-09-03T00:00:00Z")).slot("2")).isEmpty();
    }

    @Test
    void aSlotThatIsOverwrittenOrSetBackHoldsNothingKnown() {
        History history = YEAR.with(List.of(event("7", hour("2027-01-05T08:00"), new What.Overwritten("salt"))));
        TruckState lost = history.asOf(TRUCK, at("2027-01-05T13:00:00Z"));

        assertThat(lost.values()).isEmpty();
        assertThat(lost.slots()).singleElement().satisfies(slot -> {
            assertThat(slot.lost()).map(Event::id).contains("7");
            assertThat(slot.since()).isEqualTo(at("2027-01-05T13:00:00Z"));
        });
        assertThat(factor(history, "2027-01-05T12:59:59Z")).contains(pounds(24.6));
        assertThat(factor(
                        history.with(List.of(shown("8", day("2027-01-06"), value(TWO, 24.6)))), "2027-01-06T05:00:00Z"))
                .contains(pounds(24.6));
        assertThat(history.with(List.of(shown("8", day("2027-01-06"), value(TWO, 24.6))))
                        .contradictions())
                .isEmpty();
    }

    @Test
    void theSameEventTwiceIsThereOnce() {
        assertThat(YEAR.with(YEAR.events())).isEqualTo(YEAR).hasSameHashCodeAs(YEAR);
        assertThat(YEAR).hasToString("7 events of 1 trucks");
    }

    @Test
    void theSameIdWithAnotherContentIsAConflictThatIsNamed() {
        assertRefused(
                "ids of events must be of one content each: 1 (2026-09-01, T-07: salt at 2 in entered as 26 lb/rev; "
                        + "2026-09-01, T-07: salt at 2 in entered as 25 lb/rev)",
                () -> YEAR.with(List.of(entered("1", day("2026-09-01"), value(TWO, 25)))));
    }

    @Test
    void ofManyConflictsTheFirstAreNamedAndTheOthersCounted() {
        List<Event> others = new ArrayList<>();
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            events.add(changed("event " + i, day("2026-09-01"), Change.Part.GATE));
            others.add(changed("event " + i, day("2026-09-02"), Change.Part.GATE));
        }
        History history = History.of(events, YARD);

        assertThatThrownBy(() -> history.with(others))
                .hasMessageContaining(
                        "event 4 (2026-09-01, T-07: gate changed; 2026-09-02, T-07: gate changed), and 4 more")
                .message()
                .doesNotContain("event 5");
    }

    /** Points are equal whatever the density of the material; two records that differ in it don't say the same. */
    @Test
    void anotherDensityIsAnotherContent() {
        var denser = org.gritwright.core.observation.CalibrationPoint.of(
                Material.of("salt", Amounts.of(84, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                TWO.metering(),
                TWO.setting());
        Event one = entered("1", day("2026-09-01"), value(TWO, 26));
        Event other = entered("1", day("2026-09-01"), value(denser, 26));

        assertThat(one.isSameAs(other)).isFalse();
        assertThat(one.isSameAs(entered("1", day("2026-09-01"), value(TWO, 26))))
                .isTrue();
    }

    @Test
    void whatIsSupersededSaysNothingAndStaysReadable() {
        History right = YEAR.with(
                List.of(entered("7", day("2026-09-01"), value(TWO, 27)).superseding("1", "typed 26 for 27")));

        assertThat(factor(right, "2026-10-01T00:00:00Z")).contains(pounds(27));
        assertThat(right.event("1")).isPresent();
        assertThat(right.stands(right.event("1").orElseThrow())).isFalse();
        assertThat(right.contradictions())
                .extracting(Contradiction::kind)
                .containsExactly(Contradiction.Kind.VERIFIED_ANOTHER, Contradiction.Kind.CORRECTED_ANOTHER);
    }

    @Test
    void whatSupersedesMayItselfBeSupersededAndTheFirstNeverComesBack() {
        Event second = entered("7", day("2026-09-01"), value(TWO, 27)).superseding("1", "typed 26 for 27");
        Event third = entered("8", day("2026-09-01"), value(TWO, 26)).superseding("7", "it was 26 after all");
        History history = YEAR.with(List.of(third, second));

        assertThat(factor(history, "2026-10-01T00:00:00Z")).contains(pounds(26));
        assertThat(held(history, "2026-10-01T00:00:00Z").orElseThrow().entered())
                .isEqualTo(third);
        assertThat(history.contradictions()).isEmpty();
    }

    @Test
    void aWithdrawnEventNeverHappened() {
        Event first = YEAR.event("1").orElseThrow();
        History history = YEAR.with(List.of(
                Event.withdrawing("7", day("2026-09-09"), first, "written on the wrong truck", "day book"),
                Event.of("8", first.at(), "T-08", first.what(), "day book")));

        assertThat(held(history, "2026-09-10T00:00:00Z")).isEmpty();
        assertThat(history.asOf("T-08", at("2026-09-10T00:00:00Z")).values()).hasSize(1);
        assertThat(history.trucks()).containsExactly("T-07", "T-08");
    }

    @Test
    void oneEventSupersededTwiceAndAnUnknownOneAreOdd() {
        History history = YEAR.with(List.of(
                entered("7", day("2026-09-01"), value(TWO, 27)).superseding("1", "typed 26 for 27"),
                entered("8", day("2026-09-01"), value(THREE, 26)).superseding("1", "it was the other gate"),
                changed("9", day("2026-09-01"), Change.Part.GATE).superseding("99", "no such")));

        assertThat(history.contradictions())
                .filteredOn(odd -> odd.kind() == Contradiction.Kind.SUPERSEDED_TWICE)
                .singleElement()
                .satisfies(odd -> assertThat(odd.events()).extracting(Event::id).containsExactly("7", "8"));
        assertThat(history.contradictions())
                .filteredOn(odd -> odd.kind() == Contradiction.Kind.SUPERSEDES_UNKNOWN)
                .singleElement()
                .satisfies(odd -> assertThat(odd.events()).extracting(Event::id).containsExactly("9"));
    }

    @Test
    void eventsThatSupersedeEachOtherInACircleAreRefused() {
        assertRefused(
                "events that supersede each other must be in no circle: 7",
                () -> YEAR.with(List.of(
                        changed("7", day("2026-09-01"), Change.Part.GATE).superseding("8", "a"),
                        changed("8", day("2026-09-01"), Change.Part.GATE).superseding("7", "b"))));
        assertRefused(
                "event superseded by 7 must be another than itself: 7",
                () -> changed("7", day("2026-09-01"), Change.Part.GATE).superseding("7", "a"));
    }

    @Test
    void telemetryCountsWithWhatWasHeldAndAsUncertainAsItWasLeft() {
        List<TimelineEntry> entries = YEAR.timeline(TRUCK).entries();

        assertThat(entries)
                .extracting(TimelineEntry::from)
                .containsExactly(at("2026-09-01T05:00:00Z"), at("2026-10-19T15:00:00Z"));
        assertThat(entries.get(0).errors()).isEmpty();
        assertThat(entries.get(1).errors())
                .extracting(SharedError::id)
                .containsExactly("scale S-1", "calibration of T-07, salt, 2 in, 2026-10-19T10:00-05:00");
        assertThat(Amounts.si(
                        Dimensionless.class, entries.get(1).errors().get(1).standardUncertainty()))
                .isCloseTo(Math.hypot(0.006, 0.001), org.assertj.core.data.Offset.offset(1e-6));
    }

    /** A new chain: calibrated and entered anew on one day, which says nothing of the value that was held until then. */
    @Test
    void eachValueIsAsUncertainAsItsOwnCalibration() {
        History history = history(
                calibrated("1", hour("2026-10-19T08:00"), TWO, 25),
                entered("2", hour("2026-10-19T09:00"), value(TWO, 25)),
                calibrated("3", hour("2027-01-12T08:00"), TWO, 24),
                entered("4", hour("2027-01-12T09:00"), value(TWO, 24)));

        assertThat(history.timeline(TRUCK).entries())
                .hasSize(2)
                .allSatisfy(entry -> assertThat(entry.errors())
                        .hasSize(2)
                        .satisfies(errors -> assertThat(Amounts.si(
                                        Dimensionless.class, errors.get(1).standardUncertainty()))
                                .isCloseTo(0.005, org.assertj.core.data.Offset.offset(1e-9))));
        assertThat(held(history, "2027-01-12T13:30:00Z").orElseThrow().calibrated())
                .map(Event::id)
                .contains("3");
    }

    @Test
    void whatALaterDayFindsCorrectsBack() {
        assertThat(YEAR.found(TRUCK))
                .extracting(AsFound::asLeft, AsFound::at)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(at("2026-09-01T05:00:00Z"), at("2026-10-19T14:00:00Z")),
                        org.assertj.core.groups.Tuple.tuple(at("2026-10-19T15:00:00Z"), at("2026-12-14T14:00:00Z")));
    }

    @Test
    void whatIsLostIsNothingToCountWith() {
        History history = YEAR.with(List.of(event("7", hour("2027-01-05T08:00"), new What.SetBack())));

        assertThat(history.timeline(TRUCK).entries())
                .last()
                .satisfies(entry -> assertThat(entry.held()).isInstanceOf(TimelineEntry.Nothing.class));
        assertRefused("events of truck T-99 must be ones that say what a slot held: none", () -> YEAR.timeline("T-99"));
    }

    @Test
    void anEventIsWrittenDownCompletely() {
        assertRefused(
                "truck of event 1 must be named, as it happened to one: none",
                () -> Event.ofFleet("1", day("2026-09-01"), new What.SetBack(), "day book"));
        assertRefused(
                "truck of event 1 must be none, as it concerns the fleet: T-07",
                () -> event("1", day("2026-09-01"), new What.SeasonStarted("2026/27")));
        assertRefused(
                "event withdrawn by 1 must be named, with a reason: none",
                () -> event("1", day("2026-09-01"), new What.Withdrawn()));
        assertThat(Since.parse("2026-09-01")).isEqualTo(day("2026-09-01"));
    }
}
