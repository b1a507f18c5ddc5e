package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LaidSumTest {
    private static final String SALT = TWO.material().name();
    private static final LocalDate FROM = LocalDate.of(2026, 11, 1);
    private static final LocalDate TO = LocalDate.of(2027, 1, 31);
    private static final CalibrationPoint SAND = CalibrationPoint.of(
            Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT)), TWO.metering(), TWO.setting());
    private static final Event KNOWN = entered("known", day("2026-10-19"), value(TWO, 25));

    private static Event sum(String id, String from, String at, double turns, double pounds) {
        return sum(id, SALT, Optional.of(since(from)), since(at), turns, pounds);
    }

    private static Event sum(String id, String material, Optional<Since> from, Since at, double turns, double pounds) {
        return event(
                id,
                at,
                new What.Used(
                        material,
                        from,
                        Optional.of(Amounts.of(turns, SpreadingUnits.REVOLUTION)),
                        Optional.empty(),
                        Samples.pounds(pounds),
                        1));
    }

    private static Since since(String text) {
        return text.contains("T") ? hour(text) : day(text);
    }

    private static LaidSum of(Event... events) {
        return LaidSum.of(history(events), TRUCK, SALT, FROM, TO);
    }

    private static double pounds(LaidSum sum) {
        return Amounts.in(sum.indicated().orElseThrow(), SpreadingUnits.POUND);
    }

    @Test
    void sumsOfItsDaysAreAddedUp() {
        LaidSum laid = of(
                KNOWN,
                sum("0", "2026-10-30", "2026-10-31", 10, 250),
                sum("1", "2026-11-01", "2026-11-01", 100, 2500),
                sum("2", "2026-12-04T18:00", "2026-12-05T03:00", 1000, 25_000),
                sum("3", "2026-12-05T03:00", "2026-12-05T07:00", 200, 5000),
                sum("4", "2027-01-31", "2027-01-31", 4, 100),
                sum("5", "2027-02-01", "2027-02-01", 10, 250),
                sum("6", "sand", Optional.of(day("2026-12-01")), day("2026-12-31"), 10, 90));

        assertThat(pounds(laid)).isEqualTo(32_600);
        assertThat(laid.indicated().orElseThrow().getUnit()).isEqualTo(SpreadingUnits.POUND);
        assertThat(laid.sums()).isEqualTo(4);
        assertThat(laid.last()).contains(TO);
        assertThat(laid.remarks()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2026-10-31, 2026-11-01",
        "2027-01-31, 2027-02-01",
        "2026-10-31T23:59, 2026-11-01T04:00",
        "2026-10-01, 2027-04-15"
    })
    void aSumThatReachesBeyondIsNotDivided(String from, String at) {
        LaidSum laid = of(KNOWN, sum("1", from, at, 100, 2500));

        assertThat(laid.indicated()).isEmpty();
        assertThat(laid.remarks())
                .singleElement()
                .asString()
                .contains("it reaches beyond 2026-11-01 to 2027-01-31, and can't be divided.");
    }

    @ParameterizedTest
    @CsvSource({
        "2026-12-01, 2026-12-31, 2026-12-31, 2027-01-05, true",
        "2026-12-01, 2026-12-31, 2026-12-10, 2026-12-10, true",
        "2026-12-01, 2026-12-01, 2026-12-01, 2026-12-01, true",
        "2026-12-01, 2026-12-01, 2026-12-02, 2026-12-02, false",
        "2026-12-01T06:00, 2026-12-01T09:00, 2026-12-01T09:00, 2026-12-01T12:00, false",
        "2026-12-01T06:00, 2026-12-01T09:00, 2026-12-01T08:59, 2026-12-01T12:00, true",
        "2026-12-01T06:00, 2026-12-01T09:00, 2026-12-01, 2026-12-01, true"
    })
    void whatTwoSumsCountIsNotCountedTwice(String from, String at, String otherFrom, String otherAt, boolean isTwice) {
        Event one = sum("1", from, at, 100, 2500);
        Event other = sum("2", otherFrom, otherAt, 40, 1000);
        for (LaidSum laid : List.of(of(KNOWN, one, other), of(KNOWN, other, one))) {
            if (isTwice) {
                assertThat(laid.indicated()).isEmpty();
                assertThat(laid.remarks())
                        .singleElement()
                        .asString()
                        .startsWith("Two sums of what was laid have a time in common: ");
            } else {
                assertThat(pounds(laid)).isEqualTo(3500);
            }
        }
        Event ofSand = sum("2", "sand", Optional.of(since(otherFrom)), since(otherAt), 40, 1000);
        assertThat(history(KNOWN, one, ofSand).contradictions()).isEmpty();
    }

    @Test
    void aSeasonsSumBesideItsDaysIsOneContradictionThatNamesSome() {
        List<Event> events = new ArrayList<>(List.of(KNOWN, sum("all", "2026-11-01", "2027-01-31", 700, 17_500)));
        for (int day = 1; day <= 7; day++) {
            events.add(sum("day " + day, "2026-12-0" + day, "2026-12-0" + day, 100, 2500));
        }
        History history = history(events.toArray(Event[]::new));

        assertThat(history.contradictions()).singleElement().satisfies(one -> {
            assertThat(one.kind()).isEqualTo(Contradiction.Kind.COUNTED_TWICE);
            assertThat(one.events()).hasSize(8);
            assertThat(one.toString()).endsWith("; and 3 more");
        });
        History five = history(events.subList(0, 6).toArray(Event[]::new));
        assertThat(five.contradictions().get(0).events()).hasSize(5);
        assertThat(five.contradictions().get(0).toString()).doesNotContain(" more");
        Event withdrawn = Event.withdrawing("w", day("2027-02-01"), events.get(1), "the days are kept", "office");
        assertThat(history.with(List.of(withdrawn)).contradictions()).isEmpty();
        assertThat(pounds(LaidSum.of(history.with(List.of(withdrawn)), TRUCK, SALT, FROM, TO)))
                .isEqualTo(17_500);
    }

    @Test
    void whatIsContradictedElsewhereDoesntMatter() {
        Event good = sum("1", "2026-12-01", "2026-12-01", 100, 2500);
        Event[] odd = {
            sum("2", "2027-03-01", "2027-03-01", 100, 2500),
            sum("3", "2027-03-01", "2027-03-01", 100, 2500),
            sum("4", "2027-03-05", "2027-03-05", 100, 2500),
            sum("5", "2027-03-05", "2027-03-06", 100, 2500)
        };
        History history = history(KNOWN, good, odd[0], odd[1], odd[2], odd[3]);

        assertThat(history.contradictions())
                .extracting(one -> one.events().stream().map(Event::id).toList())
                .containsExactly(List.of("2", "3"), List.of("5", "4"));
        assertThat(pounds(LaidSum.of(history, TRUCK, SALT, FROM, TO))).isEqualTo(2500);
        assertThat(LaidSum.of(history, TRUCK, SALT, FROM, FROM).remarks())
                .containsExactly("No sum of what it laid of salt from 2026-11-01 to 2026-11-01 is kept.");
    }

    @Test
    void whatContradictsItselfIsToldInTheOrderOfTime() {
        History history = history(
                KNOWN,
                sum("early", "2026-11-01", "2026-11-01", 100, 9900),
                sum("twice", "2026-11-01", "2026-11-01", 100, 2500),
                shown("seen", day("2026-12-01"), value(TWO, 26)),
                sum("late", "2027-01-01", "2027-01-01", 100, 9900));

        assertThat(history.contradictions())
                .extracting(one -> one.events().get(1).id())
                .containsExactly("twice", "early", "seen", "late");
    }

    @Test
    void aSumWithoutABeginningCountsOnItsDayAlone() {
        Event first = sum("first", SALT, Optional.empty(), Since.of(FROM), 1, 25);
        Event last = sum("last", SALT, Optional.empty(), Since.of(TO), 1, 25);
        Event before = sum("before", SALT, Optional.empty(), Since.of(FROM.minusDays(1)), 1, 25);
        Event after = sum("after", SALT, Optional.empty(), Since.of(TO.plusDays(1)), 1, 25);

        assertThat(of(KNOWN, first, last, before, after).sums()).isEqualTo(2);
        assertThat(pounds(of(KNOWN, first, last, before, after))).isEqualTo(50);
        assertRefused(
                "sums must be 0 or more: -1", () -> new LaidSum(Optional.empty(), -1, Optional.empty(), List.of()));
    }

    @Test
    void twoSumsOfWhichNobodySaysSinceWhenMayBeTwo() {
        Event one = sum("1", SALT, Optional.empty(), day("2026-12-01"), 100, 2500);
        Event other = sum("2", SALT, Optional.empty(), day("2026-12-01"), 101, 2525);
        Event day = sum("3", "2026-12-01", "2026-12-01", 100, 2500);

        assertThat(pounds(of(KNOWN, one, other))).isEqualTo(5025);
        assertThat(of(KNOWN, one, other).remarks())
                .containsExactly("2 of 2 sums of what it laid don't say since when: each counts as of its own day.");
        assertThat(of(KNOWN, one, day).indicated()).isEmpty();
    }

    @Test
    void alikeToTheLastTurnTheyAreOne() {
        Event one = sum("1", SALT, Optional.empty(), day("2026-12-01"), 100, 2500);

        assertThat(of(KNOWN, one, sum("2", SALT, Optional.empty(), day("2026-12-01"), 100, 2500)))
                .satisfies(laid -> assertThat(laid.indicated()).isEmpty())
                .satisfies(laid -> assertThat(laid.remarks())
                        .singleElement()
                        .asString()
                        .startsWith("Two sums of what was laid have a time in common: 2026-12-01, "));
        assertThat(pounds(of(KNOWN, one, sum("2", SALT, Optional.empty(), day("2026-12-02"), 100, 2500))))
                .isEqualTo(5000);
    }

    private static Event load(String id, Quantity<Mass> mass, String source) {
        return Event.of(id, day("2026-12-01"), TRUCK, What.Used.of(SALT, mass), source);
    }

    @Test
    void twoLoadsOfOneMassAreTwoUnlessTwoSourcesSaySo() {
        Event one = load("1", Samples.pounds(2500), "radio");
        Event same = load(
                "2",
                Amounts.of(Amounts.in(Samples.pounds(2500), SpreadingUnits.KILOGRAM), SpreadingUnits.KILOGRAM),
                "radio 2");

        assertThat(pounds(of(one, load("2", Samples.pounds(2500), "radio")))).isEqualTo(5000);
        assertThat(pounds(of(one, load("2", Samples.pounds(2501), "radio 2")))).isEqualTo(5001);
        assertThat(of(one, same).indicated()).isEmpty();
    }

    @Test
    void aDayIsByTheOffsetThatSaysWhenItBegins() {
        Event east =
                sum("east", SALT, Optional.of(Since.parse("2026-12-01T00:00-05:00")), day("2026-12-01"), 100, 2500);
        Event next = sum("next", SALT, Optional.of(Since.parse("2026-12-02T00:00-05:00")), day("2026-12-02"), 90, 2250);
        Event west =
                sum("west", SALT, Optional.of(Since.parse("2026-12-02T00:00-06:00")), day("2026-12-02"), 100, 2500);
        Event apart =
                sum("apart", SALT, Optional.of(Since.parse("2026-12-03T00:00-06:00")), day("2026-12-03"), 100, 2500);

        assertThat(pounds(of(KNOWN, east, next, apart))).isEqualTo(7250);
        assertThat(pounds(of(KNOWN, east, west, apart))).isEqualTo(7500);
        assertThat(of(KNOWN, next, west).indicated()).isEmpty();
        assertThat(of(
                                KNOWN,
                                apart,
                                sum(
                                        "border",
                                        SALT,
                                        Optional.of(Since.parse("2026-12-03T00:00-05:00")),
                                        day("2026-12-03"),
                                        9,
                                        225))
                        .remarks())
                .singleElement()
                .asString()
                .startsWith("Two sums of what was laid have a time in common");
    }

    @Test
    void aSumOfWhichNobodySaysSinceWhenMayBeOfAllTheOthers() {
        Event season = sum("season", SALT, Optional.empty(), Since.of(TO), 100, 2500);
        Event day = sum("day", "2026-12-01", "2026-12-01", 100, 2500);

        for (LaidSum laid : List.of(of(KNOWN, season, day), of(KNOWN, day, season))) {
            assertThat(laid.indicated()).isEmpty();
            assertThat(laid.remarks())
                    .singleElement()
                    .asString()
                    .startsWith("2027-01-31")
                    .endsWith(": it doesn't say since when, and may count again what others count.");
        }
    }

    /** The event's hours have another offset than the yard's days. */
    @Test
    void aSumThatEndsBeforeItBeginsInTheYardIsNotLeftOut() {
        Event day = sum("day", "2026-12-20", "2026-12-20", 100, 2500);
        Event odd = sum(
                "odd",
                SALT,
                Optional.of(day("2026-12-01")),
                Since.of(OffsetDateTime.parse("2026-12-01T02:00+14:00")),
                100,
                2500);

        assertThat(of(KNOWN, day, odd).indicated()).isEmpty();
        assertThat(of(KNOWN, day, odd).remarks())
                .anySatisfy(remark -> assertThat(remark).endsWith(": in the yard's time it ends before it begins."));
        assertThat(LaidSum.of(history(KNOWN, day, odd), TRUCK, SALT, LocalDate.of(2026, 12, 10), TO)
                        .indicated())
                .isPresent();
    }

    @ParameterizedTest
    @CsvSource({"25, false", "25.4, false", "24.6, false", "25.6, true", "24.4, true", "11.34, true"})
    void whatIsLaidIsTurnsTimesTheValueThatIsHeld(double each, boolean isOdd) {
        History history = history(KNOWN, sum("1", "2026-12-01", "2026-12-31", 1000, 1000 * each));

        if (isOdd) {
            assertThat(history.contradictions()).singleElement().satisfies(one -> {
                assertThat(one.kind()).isEqualTo(Contradiction.Kind.SUMMED_OTHERWISE);
                assertThat(one.events()).extracting(Event::id).containsExactly("known", "1");
            });
            assertThat(LaidSum.of(history, TRUCK, SALT, FROM, TO).indicated()).isEmpty();
        } else {
            assertThat(history.contradictions()).isEmpty();
        }
    }

    @Test
    void whoSumsWithAnotherValueDayAfterDayIsToldOnce() {
        History history = history(
                KNOWN,
                sum("1", "2026-12-01", "2026-12-01", 1000, 11_340),
                sum("2", "2026-12-02", "2026-12-02", 1000, 25_000),
                sum("3", "2026-12-03", "2026-12-03", 1000, 11_340),
                entered("next", day("2026-12-10"), value(TWO, 24)),
                sum("4", "2026-12-11", "2026-12-11", 1000, 11_340));

        assertThat(history.contradictions())
                .extracting(one -> one.events().stream().map(Event::id).toList())
                .containsExactly(List.of("known", "1", "3"), List.of("next", "4"));
    }

    @Test
    void ofSeveralValuesOfTheTimeItLiesBetween() {
        Event[] held = {
            KNOWN,
            entered("three", day("2026-10-19"), value(THREE, 36)),
            corrected("left", hour("2026-12-10T09:00"), value(TWO, 25), 22, "none"),
            entered("sand", day("2026-10-19"), CalibrationInForce.of(SAND, Happenings.pounds(90), Optional.empty()))
        };
        for (double[] one : new double[][] {{22, 0}, {30, 0}, {36, 0}, {21, 1}, {37, 1}}) {
            Event sum = sum("1", "2026-12-10", "2026-12-10", 1000, 1000 * one[0]);
            assertThat(history(Stream.concat(Stream.of(held), Stream.of(sum)).toArray(Event[]::new))
                            .contradictions())
                    .as("%s lb/rev", one[0])
                    .hasSize((int) one[1]);
        }
        // Before the day of the correction, 22 lb/rev was held by nothing.
        Event before = sum("1", "2026-12-09", "2026-12-09", 1000, 22_000);
        assertThat(history(held[0], held[1], held[2], before).contradictions()).hasSize(1);
        // From then on 25 lb/rev was held no more.
        Event after = sum("1", "2026-12-11", "2026-12-11", 1000, 25_000);
        assertThat(history(held[0], held[2], after).contradictions()).hasSize(1);
        assertThat(history(held[0], after).contradictions()).isEmpty();
    }

    @Test
    void whereAValueIsNotKnownNothingIsSaidOfTurns() {
        Event odd = sum("1", "2026-12-01", "2026-12-31", 1000, 99_000);
        Event atOnce = sum("1", SALT, Optional.empty(), day("2026-12-31"), 1000, 99_000);
        Event without = event(
                "1",
                day("2026-12-31"),
                new What.Used(
                        SALT,
                        Optional.of(day("2026-12-01")),
                        Optional.empty(),
                        Optional.empty(),
                        Samples.pounds(99_000),
                        1));

        assertThat(history(odd).contradictions()).isEmpty();
        assertThat(history(entered("late", day("2026-12-10"), value(TWO, 25)), odd)
                        .contradictions())
                .isEmpty();
        assertThat(history(KNOWN, atOnce).contradictions()).isEmpty();
        assertThat(history(KNOWN, without).contradictions()).isEmpty();
        assertThat(history(KNOWN, odd).contradictions()).hasSize(1);
    }

    @Test
    void turnsThatNobodyCanAttributeAreTold() {
        Event one = event(
                "1",
                day("2026-12-31"),
                new What.Used(
                        SALT,
                        Optional.of(day("2026-12-01")),
                        Optional.of(Amounts.of(970, SpreadingUnits.REVOLUTION)),
                        Optional.of(Amounts.of(30, SpreadingUnits.REVOLUTION)),
                        Samples.pounds(970 * 25),
                        1));
        Event uncounted = event(
                "2",
                day("2027-01-05"),
                new What.Used(
                        SALT,
                        Optional.of(day("2027-01-05")),
                        Optional.empty(),
                        Optional.of(Amounts.of(7, SpreadingUnits.REVOLUTION)),
                        Samples.pounds(10),
                        1));

        assertThat(of(KNOWN, one).remarks())
                .containsExactly(
                        "Beside what its sums say it turned 30 rev of which nobody can say what they laid: 3 % of all.");
        assertThat(of(KNOWN, uncounted).remarks())
                .containsExactly("Beside what its sums say it turned 7 rev of which nobody can say what they laid.");
    }

    @Test
    void whereNoSumIsKeptItSaysSo() {
        assertThat(of(KNOWN).last()).isEmpty();
        assertThat(of(KNOWN).sums()).isZero();
        assertThat(of(KNOWN).remarks())
                .containsExactly("No sum of what it laid of salt from 2026-11-01 to 2027-01-31 is kept.");
        assertThat(of(sum("1", "rock salt", Optional.of(day("2026-12-01")), day("2026-12-02"), 1, 25))
                        .remarks())
                .containsExactly(
                        "No sum of what it laid of salt from 2026-11-01 to 2027-01-31 is kept; its sums are of rock salt:"
                                + " is that the same?");
        assertRefused(
                "last day must be not before the first, 2027-01-31: 2026-11-01",
                () -> LaidSum.of(history(KNOWN), TRUCK, SALT, TO, FROM));
    }

    /** More than the earth weighs is a slip; what no number holds has to be said, and not to become infinite. */
    @Test
    void massesThatNoNumberHoldsTogetherAreRefused() {
        Event one = sum("1", "2026-12-01", "2026-12-01", 0, 1.7e308);
        Event other = sum("2", "2026-12-02", "2026-12-02", 0, 1.7e308);

        assertThatThrownBy(() -> of(one, other))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageContaining("mass that T-07 laid of salt");
    }

    @Test
    void aTimeBeginsBeforeItEnds() {
        assertThat(sum("1", "2026-12-01", "2026-12-01", 1, 25).what().words()).endsWith("since 2026-12-01");
        assertThat(sum("1", "2026-12-01T09:00", "2026-12-01", 1, 25).what().words())
                .contains("T09:00");
        assertRefused(
                "beginning of the time that event 1 sums up must be not after its end, 2026-12-01: 2026-12-02",
                () -> sum("1", "2026-12-02", "2026-12-01", 1, 25));
        assertRefused(
                "beginning of the time that event 1 sums up must be not after its end, 2026-12-01T09:00-05:00:"
                        + " 2026-12-01T09:01-05:00",
                () -> sum("1", "2026-12-01T09:01", "2026-12-01T09:00", 1, 25));
    }

    @Property(tries = 200)
    void howeverATimeIsCutItSumsUpToTheSame(@ForAll @IntRange(min = 1, max = 30) int parts, @ForAll Random random) {
        List<Event> events = new ArrayList<>(List.of(KNOWN));
        LocalDate from = FROM;
        double turns = 0;
        for (int part = 0; part < parts; part++) {
            LocalDate at = from.plusDays(random.nextInt(3));
            int now = random.nextInt(4000);
            turns += now;
            events.add(sum("part " + part, from.toString(), at.toString(), now, 25 * now));
            from = at.plusDays(1);
        }
        Collections.shuffle(events, random);

        LaidSum laid = of(events.toArray(Event[]::new));
        assertThat(pounds(laid)).isEqualTo(25 * turns);
    }
}
