package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.pounds;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.junit.jupiter.api.Test;

/** A display that was seen on November 20 to hold 25 lb/rev, it says since October 1. */
class ClaimTest {
    private static final Event SEEN =
            shown("seen", day("2026-11-20"), value(TWO, 25).since(day("2026-10-01")));

    private static History with(Event... others) {
        List<Event> events = new ArrayList<>(Arrays.asList(others));
        events.add(SEEN);
        return history(events.toArray(new Event[0]));
    }

    /** What is known of the point on October 2. */
    private static Optional<CalibrationFactor> onOctober2(Event... others) {
        return on("2026-10-02T05:00:00Z", with(others));
    }

    private static Optional<CalibrationFactor> on(String time, History history) {
        return history.asOf(TRUCK, Instant.parse(time))
                .value(TWO.key())
                .map(held -> held.value().factor());
    }

    @Test
    void whatWasHeldBeforeAndWhatCameAfterSpeakNotAgainstAClaim() {
        assertThat(onOctober2(entered("before", day("2026-09-01"), value(TWO, 26))))
                .contains(pounds(25));
        assertThat(onOctober2(event("before", day("2026-09-01"), new What.SetBack())))
                .contains(pounds(25));
        assertThat(onOctober2(entered("after", day("2026-12-01"), value(TWO, 26))))
                .contains(pounds(25));
        assertThat(onOctober2(event("after", day("2026-12-01"), new What.SetBack())))
                .contains(pounds(25));
    }

    @Test
    void whatIsKnownOfTheSlotInBetweenSpeaksAgainstIt() {
        for (What what : List.of(
                new What.SetBack(),
                new What.Overwritten("salt"),
                entered("x", day("2026-11-01"), value(TWO, 25)).what(),
                corrected("x", day("2026-11-01"), value(TWO, 26), 24, "none").what(),
                new What.Shown(value(TWO, 24)),
                verified("x", day("2026-11-01"), value(TWO, 24), 1).what())) {
            assertThat(onOctober2(event("between", day("2026-11-01"), what)))
                    .as(what.words())
                    .isEmpty();
        }
        assertThat(onOctober2(entered("of another point", day("2026-11-01"), value(THREE, 40))))
                .contains(pounds(25));
    }

    @Test
    void aLookInBetweenThatSawTheSameSpeaksForIt() {
        assertThat(onOctober2(shown("between", day("2026-11-01"), value(TWO, 25))))
                .contains(pounds(25));
        assertThat(onOctober2(verified("between", day("2026-11-01"), value(TWO, 25), 1)))
                .contains(pounds(25));
    }

    @Test
    void aClaimComesBeforeACatchOfItsInstant() {
        History history = with(verified("catch", day("2026-10-01"), value(TWO, 25), 1));

        assertThat(history.asOf(TRUCK, Instant.parse("2026-10-01T05:00:00Z")).values())
                .singleElement()
                .satisfies(held -> {
                    assertThat(held.entered()).isEqualTo(SEEN);
                    assertThat(held.verified()).map(Event::id).contains("catch");
                });
    }

    @Test
    void claimsOfOneInstantAreHeardInTheOrderOfTheirIds() {
        History history =
                with(shown("a later look", day("2026-11-21"), value(THREE, 40).since(day("2026-10-01"))));

        assertThat(history.asOf(TRUCK, Instant.parse("2026-10-01T05:00:00Z")).values())
                .extracting(held -> held.value().point())
                .containsExactly(THREE, TWO);
    }

    @Test
    void aClaimOfATimeToComeIsNone() {
        History history = history(
                shown("seen", day("2026-11-20"), value(TWO, 25).since(day("2026-11-25"))),
                entered("then", day("2026-11-22"), value(TWO, 24)));

        assertThat(on("2026-11-26T05:00:00Z", history)).contains(pounds(24));
    }
}
