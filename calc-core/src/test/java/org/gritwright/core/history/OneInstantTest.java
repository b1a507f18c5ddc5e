package org.gritwright.core.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.corrected;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.shown;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** In which order events of one instant are taken, whatever their ids are. */
class OneInstantTest {
    private static final Since DAY = day("2026-10-19");

    private static final Event[] ALL = {
        Event.ofFleet("z", DAY, new What.SeasonStarted("2026/27"), "day book"),
        Event.ofFleet("y", DAY, new What.Delivered(Samples.SALT, "L-9", Optional.empty()), "tickets"),
        event(
                "u",
                DAY,
                new What.RangeMeasured(
                        Amounts.of(5, SpreadingUnits.REVOLUTION_PER_MINUTE),
                        Amounts.of(60, SpreadingUnits.REVOLUTION_PER_MINUTE))),
        event("v", DAY, What.Used.of("salt", Samples.pounds(1))),
        changed("w", DAY, Change.Part.GATE),
        event("s", DAY, new What.Overwritten("2")),
        event("t", DAY, new What.SetBack()),
        shown("r", DAY, value(THREE, 40)),
        calibrated("q", DAY, TWO, 25),
        entered("n", DAY, value(TWO, 26)),
        corrected("o", DAY, value(TWO, 26), 25.5, "of another day"),
        corrected("p", DAY, value(TWO, 25.5), 25.4, "before"),
        verified("m", DAY, value(TWO, 25.4), 3),
        corrected("l", DAY, value(TWO, 25.4), 24.7, "m")
    };

    @Test
    void eventsOfOneInstantAreTakenInTheOrderThatAYardWorksIn() {
        Event before = verified("before", day("2026-10-18"), value(TWO, 25.5), 1);

        assertThat(history(ALL).with(java.util.List.of(before)).events())
                .extracting(Event::id)
                .containsExactly("before", "z", "y", "u", "v", "w", "s", "t", "r", "q", "n", "o", "p", "m", "l");
    }

    @Test
    void whatStandsOfTheFleetIsOfNoTruck() {
        assertThat(history(ALL).standingOfFleet()).containsExactly(ALL[0], ALL[1]);
        assertThat(history(ALL).standing("T-99")).containsExactly(ALL[0], ALL[1]);
    }

    @Test
    void historiesOfOtherEventsHaveOtherHashCodes() {
        assertThat(history(ALL[0]).hashCode()).isNotEqualTo(history(ALL[1]).hashCode());
    }

    @Test
    void onlyTwoEntriesOfOneInstantAreTwoAtOnce() {
        assertThat(history(entered("1", DAY, value(TWO, 26)), entered("2", day("2026-10-20"), value(TWO, 25)))
                        .contradictions())
                .isEmpty();
        assertThat(history(entered("1", DAY, value(TWO, 26)), corrected("2", DAY, value(TWO, 26), 25, "none"))
                        .contradictions())
                .isEmpty();
        assertThat(history(shown("1", DAY, value(TWO, 26)), entered("2", DAY, value(TWO, 25)))
                        .contradictions())
                .isEmpty();
    }

    @Test
    void aCorrectionIsCalledForByAVerificationAndByNothingElse() {
        History history = history(
                entered("1", day("2026-09-01"), value(TWO, 26)),
                calibrated("2", hour("2026-10-19T08:00"), TWO, 25),
                corrected("3", hour("2026-10-19T09:00"), value(TWO, 26), 25, "2"));

        assertThat(history.asOf(TRUCK, history.instant(history.event("3").orElseThrow()))
                        .values())
                .singleElement()
                .satisfies(held -> assertThat(held.found()).isEmpty());
    }
}
