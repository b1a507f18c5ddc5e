package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.ONE;
import static org.gritwright.units.SpreadingUnits.PERCENT;
import static org.gritwright.units.SpreadingUnits.POUND;
import static org.gritwright.units.SpreadingUnits.POUND_PER_CUBIC_FOOT;
import static org.gritwright.units.SpreadingUnits.POUND_PER_REVOLUTION;
import static org.gritwright.units.SpreadingUnits.PULSE_PER_REVOLUTION;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.metering.Conveyor;
import org.gritwright.core.metering.Gate;
import org.gritwright.core.metering.ShaftSensor;
import org.gritwright.core.metering.Spreader;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.TypeId;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.junit.jupiter.api.Test;

/** Pages of histories that no day of a fleet makes: what contradicts itself, what nobody knows the uncertainty of. */
class OddPagesTest {
    private static final CalibrationPoint POINT = CalibrationPoint.of(
            Material.of("road salt", Amounts.of(78, POUND_PER_CUBIC_FOOT)),
            new Spreader(
                    Conveyor.of(
                            BuiltInTypes.registry(),
                            TypeId.of("drag-chain", 1),
                            Map.of("teeth", Amounts.of(7, ONE), "chainPitch", Amounts.of(2.25, INCH))),
                    Gate.of(
                            BuiltInTypes.registry(),
                            TypeId.of("sliding-gate", 1),
                            Map.of("width", Amounts.of(22, INCH))),
                    ShaftSensor.of(Amounts.of(60, PULSE_PER_REVOLUTION))),
            Setting.height(Amounts.of(2, INCH)));

    private static CalibrationFactor factor(double pounds) {
        return CalibrationFactor.of(Amounts.of(pounds, POUND_PER_REVOLUTION));
    }

    private static CalibrationInForce value(double pounds) {
        return CalibrationInForce.of(POINT, factor(pounds), Optional.empty());
    }

    private static Event event(String day, What what) {
        return Event.of(day + " " + what.words(), Since.parse(day), "T-07", what, "day book");
    }

    /** One catch of which nobody says how uncertain it is. */
    private static Event verified(String day, double pounds, double percent) {
        return event(
                day,
                new What.Verified(
                        value(pounds),
                        Measured.once(Amounts.of(percent, PERCENT)),
                        List.of(),
                        Verdict.WITHIN_TOLERANCE,
                        1,
                        Amounts.of(240, POUND),
                        Optional.empty()));
    }

    private static String page(String name, Event... events) throws IOException {
        return page(name, LocalDate.of(2026, 12, 1), events);
    }

    private static String page(String name, LocalDate on, Event... events) throws IOException {
        Overview fleet = Overview.of(
                History.of(List.of(events), ZoneOffset.ofHours(-6)), Tolerance.percent(4), 1, List.of(), on);
        return Fixtures.unmarked(
                        Objects.requireNonNull(Pages.of(fleet, List.of()).get(name)))
                .replace("&#39;", "'");
    }

    @Test
    void whatContradictsItselfStandsOnTheTrucksPageAndIsCountedOnTheFirst() throws IOException {
        Event[] events = {
            event("2026-10-19", new What.Entered(value(25), Optional.of(factor(2.5)))),
            event("2026-10-25", new What.Shown(value(24)))
        };
        assertThat(page("truck-t-07.html", events))
                .contains("What can’t all be so")
                .contains("what was read back isn't what was to be entered: ")
                .contains("the display shows a value that nobody entered: ")
                .contains("noticed then; nobody wrote the change down")
                .doesNotContain("Nothing contradicts itself");
        assertThat(page(Pages.FIRST, events)).contains("<span>2</span>");
    }

    @Test
    void whatALaterEntrySettledStandsAfterWhatIsOpenAndIsNeverHidden() throws IOException {
        Event[] events = {
            event("2026-10-19", new What.Entered(value(25), Optional.empty())),
            event("2026-10-25", new What.Shown(value(24))),
            event("2026-11-02", new What.Entered(value(24.6), Optional.of(factor(24.6)))),
            verified("2026-11-03", 24.6, 0.3)
        };
        assertThat(page("truck-t-07.html", events))
                .contains("Nothing contradicts itself any more", "What could not all be so, and a later entry settled:")
                .contains("the display shows a value that nobody entered: ")
                .contains("settled by 2026-11-02, T-07: road salt at 2 in entered as 24.6 lb/rev")
                .contains("until a later entry settled it")
                .doesNotContain("What can’t all be so");
        assertThat(page(Pages.FIRST, events)).contains("<span>none open, 1 settled</span>");

        Event[] more = Arrays.copyOf(events, events.length + 1);
        more[events.length] = event("2026-11-20", new What.Shown(value(23)));
        String html = page("truck-t-07.html", more);
        assertThat(html.indexOf("What could not all be so")).isGreaterThan(html.indexOf("What can’t all be so"));
        assertThat(page(Pages.FIRST, more)).contains("<span>1, 1 settled</span>");

        LocalDate before = LocalDate.of(2026, 10, 24);
        assertThat(page("truck-t-07.html", before, more)).contains("<h2>Nothing contradicts itself</h2>");
        assertThat(page("truck-t-07.html", before.plusDays(2), more))
                .contains("<h2>What can’t all be so</h2>")
                .doesNotContain("settled by", "2026-11");
        List<String> lines = new TruckText(
                        History.of(List.of(more), ZoneOffset.ofHours(-6)),
                        "T-07",
                        before.plusDays(2).atStartOfDay().toInstant(ZoneOffset.ofHours(-6)))
                .lines(Optional.empty(), List.of("season 2024/25 can't be computed: why"));
        assertThat(lines)
                .contains("What can't all be so:")
                .containsSequence(
                        "These accounts of seasons say nothing of any truck yet:",
                        "  season 2024/25 can't be computed: why")
                .noneMatch(line -> line.contains("settled"));
    }

    @Test
    void whatWasCaughtAndNeverEnteredIsSaidToBeUnknown() throws IOException {
        Event calibrated = event(
                "2026-10-19",
                new What.Calibrated(
                        POINT,
                        Measured.of(Amounts.of(25, POUND_PER_REVOLUTION), Amounts.of(0.1, POUND_PER_REVOLUTION), 10),
                        List.of(),
                        2,
                        Optional.empty()));
        assertThat(page(Pages.FIRST, calibrated))
                .contains("Nobody knows what these displays hold")
                .contains("road salt at 2 in: caught, and the display isn’t known to hold a value for it.");
    }

    /** Whatever the rules ask for: what contradicts itself is never said to be in order. */
    @Test
    void aTruckThatContradictsItselfIsNeverProven() throws IOException {
        Event[] events = {
            event("2026-10-19", new What.Entered(value(25), Optional.of(factor(26)))), verified("2026-10-20", 26, 0.3)
        };
        assertThat(page("truck-t-07.html", events))
                .contains(
                        "No rule asks for anything now, but that proves nothing:", "Its records contradict themselves")
                .doesNotContain("Nothing is due, and this is why that may be believed");
        assertThat(page(Pages.FIRST, events)).contains("Not due by the rules, and in doubt all the same");
    }

    @Test
    void whatTheFleetsOwnEventsContradictStandsOnTheFirstPage() throws IOException {
        Event season = Event.ofFleet("s", Since.parse("2026-11-01"), new What.SeasonStarted("2026/27"), "calendar");
        String html = page(
                Pages.FIRST,
                season.superseding("gone", "mistyped"),
                event("2026-10-19", new What.Entered(value(25), Optional.empty())));
        assertThat(html)
                .contains("What can’t all be so, of the fleet as a whole")
                .contains("the event in whose place it stands isn't there");
    }

    @Test
    void withoutUncertaintiesAndChartsTheValuesAreDrawnAndTheRestIsSaidInWords() throws IOException {
        String html = page(
                "truck-t-07.html",
                event("2026-10-19", new What.Entered(value(25), Optional.empty())),
                verified("2026-10-20", 25, 0.3),
                verified("2026-11-20", 25, 25));
        assertThat(html)
                .contains("The fleet has too few points for control charts that share the false alarms allowed.")
                .contains("A line needs three values or more since the last change: there is none yet.")
                .contains("<span>24.93 lb/rev</span>", "<span>20.00 lb/rev</span>", "24.04 to 26.04 lb/rev")
                .doesNotContain("EWMA (limit)", "class=\"bar\"", "NaN");
        assertThat(html.split("class=\"mark\"", -1))
                .as("two catches, drawn wide and narrow")
                .hasSize(1 + 2 * 2);
    }

    @Test
    void aFleetOfNothingHasAPage() throws IOException {
        assertThat(page(Pages.FIRST))
                .contains("Nothing is due by the rules", "0 trucks")
                .doesNotContain("may be believed</h2>");
    }
}
