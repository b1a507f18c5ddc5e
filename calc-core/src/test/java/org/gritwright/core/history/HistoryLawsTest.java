package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.history.Happenings.TRUCK;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;

/** Whatever happened to two trucks, in whatever order it comes to be known. */
class HistoryLawsTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 9, 1);

    @Provide
    Arbitrary<List<Event>> happenings() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 20),
                        Arbitraries.integers().between(-1, 23),
                        Arbitraries.of(24, 25, 26),
                        Arbitraries.integers().between(0, 8),
                        Arbitraries.of(TRUCK, "T-08"))
                .as(Happened::new)
                .list()
                .ofMaxSize(14)
                .map(HistoryLawsTest::events);
    }

    private record Happened(int day, int hour, int pounds, int kind, String truck) {}

    private static List<Event> events(List<Happened> all) {
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Happened one = all.get(i);
            LocalDate day = FIRST.plusDays(one.day);
            Since at = one.hour < 0
                    ? Since.of(day)
                    : Since.of(OffsetDateTime.of(day.atTime(one.hour, 0), Happenings.YARD));
            events.add(Event.of("event " + i, at, one.truck, what(one), "law"));
        }
        return events;
    }

    private static What what(Happened one) {
        CalibrationInForce value = Happenings.value(one.kind % 2 == 0 ? Happenings.TWO : Happenings.THREE, one.pounds);
        return switch (one.kind) {
            case 0, 1 -> new What.Entered(value, Optional.empty());
            case 2, 3 -> new What.Corrected(value, Happenings.pounds(one.pounds + 1), Optional.empty());
            case 4 -> new What.Shown(value.since(Since.of(FIRST)));
            case 5 -> new What.Shown(value);
            case 6 -> new What.SetBack();
            case 7 -> Happenings.verified("v", Since.of(FIRST), value, 1).what();
            default -> new What.Changed(Change.Part.HYDRAULIC, Optional.empty());
        };
    }

    private static History history(List<Event> events) {
        return History.of(events, Happenings.YARD);
    }

    @Property(tries = 300)
    void theOrderInWhichEventsComeDoesntMatter(@ForAll("happenings") List<Event> events, @ForAll long seed) {
        List<Event> shuffled = new ArrayList<>(events);
        Collections.shuffle(shuffled, new Random(seed));
        History one = history(events);
        History other = history(shuffled);

        assertThat(other).isEqualTo(one);
        assertThat(other.contradictions()).isEqualTo(one.contradictions());
        assertThat(other.changes(TRUCK)).isEqualTo(one.changes(TRUCK));
    }

    @Property(tries = 300)
    void mergingTwoYardsInPartsOrTwiceIsTheSame(@ForAll("happenings") List<Event> events, @ForAll long seed) {
        Random random = new Random(seed);
        List<Event> here = events.stream().filter(one -> random.nextBoolean()).toList();
        List<Event> there = events.stream().filter(one -> !here.contains(one)).toList();
        History all = history(events);

        assertThat(history(here).with(there)).isEqualTo(all);
        assertThat(history(there).with(here)).isEqualTo(all);
        assertThat(all.with(here)).isEqualTo(all);
    }

    /** A history keeps what it found of a truck: that changes no later answer, also of one with further events. */
    @Property(tries = 300)
    void whatWasAskedBeforeChangesNoAnswer(
            @ForAll("happenings") List<Event> events, @ForAll @IntRange(max = 30) int days) {
        List<Event> first = events.subList(0, events.size() / 2);
        Instant then = FIRST.plusDays(days).atStartOfDay().toInstant(ZoneOffset.UTC);
        History asked = history(first);
        asked.asOf(TRUCK, then);
        LaidSum.of(asked, TRUCK, "road salt", FIRST, FIRST.plusDays(days));
        asked.changes(TRUCK);

        History more = asked.with(events);
        more.contradictions();
        assertThat(asked.asOf(TRUCK, then)).isEqualTo(history(first).asOf(TRUCK, then));
        assertThat(asked.asOf(TRUCK, Instant.MIN).slots()).isEmpty();
        assertThat(more.asOf(TRUCK, then)).isEqualTo(history(events).asOf(TRUCK, then));
        assertThat(more.contradictions(TRUCK, then)).isEqualTo(history(events).contradictions(TRUCK, then));
        assertThat(LaidSum.of(more, TRUCK, "road salt", FIRST, FIRST.plusDays(days)))
                .isEqualTo(LaidSum.of(history(events), TRUCK, "road salt", FIRST, FIRST.plusDays(days)));
    }

    /** What a slot holds is what the last change before or at the instant left in it, at every event's instant, just before and just after. */
    @Property(tries = 300)
    void whatIsHeldIsWhatTheChangesLeft(@ForAll("happenings") List<Event> events) {
        History history = history(events);
        for (Event event : events) {
            for (long nanos : List.of(-1L, 0L, 1L)) {
                Instant at = history.instant(event).plusNanos(nanos);
                for (Held held : history.asOf(TRUCK, at).values()) {
                    ValueChange last = history.changes(TRUCK).stream()
                            .filter(change -> !change.at().isAfter(at))
                            .filter(change -> change.to()
                                    .filter(value ->
                                            value.point().equals(held.value().point()))
                                    .isPresent())
                            .reduce((one, other) -> other)
                            .orElseThrow();
                    assertThat(last.to()).contains(held.value());
                    assertThat(last.at()).isEqualTo(held.since()).isBeforeOrEqualTo(at);
                }
            }
        }
    }

    /** What had happened on a day contradicts itself in the same way, whatever comes later; later it may only be settled. */
    @Property(tries = 300)
    void whatComesLaterHidesNoContradiction(
            @ForAll("happenings") List<Event> events, @ForAll @IntRange(max = 30) int days) {
        History history = history(events);
        Instant then = FIRST.plusDays(days).atStartOfDay().toInstant(ZoneOffset.UTC);
        List<Contradiction> all = new ArrayList<>(history.contradictions(TRUCK));
        for (Contradiction before : history.contradictions(TRUCK, then)) {
            Predicate<Contradiction> isSame = one -> one.kind() == before.kind()
                    && one.events().equals(before.events())
                    && (before.isOpen() || one.settled().equals(before.settled()));
            assertThat(all).anyMatch(isSame);
        }
    }

    @Property(tries = 300)
    void aSlotHoldsAtMostOneValueForAPoint(@ForAll("happenings") List<Event> events) {
        History history = history(events);
        Instant end = FIRST.plusDays(40).atStartOfDay().toInstant(ZoneOffset.UTC);

        assertThat(history.asOf(TRUCK, end).slots())
                .allSatisfy(slot -> assertThat(slot.values())
                        .extracting(held -> held.value().point().key())
                        .doesNotHaveDuplicates());
    }

    @Property(tries = 200)
    void withdrawingEveryEventLeavesNothing(@ForAll("happenings") List<Event> events) {
        List<Event> all = new ArrayList<>(events);
        for (Event event : events) {
            all.add(Event.withdrawing("no " + event.id(), event.at(), event, "never happened", "law"));
        }
        History history = history(all);

        assertThat(history.trucks()).isEmpty();
        assertThat(history.contradictions()).isEmpty();
        assertThat(history.events()).hasSize(2 * events.size());
    }

    @Property(tries = 200)
    void whatTheOtherTruckDoesChangesNothing(@ForAll("happenings") List<Event> events) {
        List<Event> own = events.stream()
                .filter(event -> event.truck().filter(TRUCK::equals).isPresent())
                .toList();

        assertThat(history(own).changes(TRUCK)).isEqualTo(history(events).changes(TRUCK));
    }
}
