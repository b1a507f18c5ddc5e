package org.gritwright.core.history.due;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
import static org.gritwright.core.history.Happenings.hour;
import static org.gritwright.core.history.Happenings.season;
import static org.gritwright.core.history.Happenings.value;
import static org.gritwright.core.history.Happenings.verified;

import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.Samples;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.control.Goal;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.BetweenDays;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.Material;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DueListTest {
    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final LocalDate DECEMBER = LocalDate.of(2026, 12, 1);

    /** Calibrated, entered and proven in October for the season from November on. */
    private static final History READY = history(
            season("2026-11-01"),
            calibrated("1", hour("2026-10-19T08:00"), TWO, 25),
            entered("2", hour("2026-10-19T09:00"), value(TWO, 25)),
            verified("3", hour("2026-10-19T09:30"), value(TWO, 25), 0.5));

    private static List<Due> due(History history, DueRule... rules) {
        return due(history, DECEMBER, rules);
    }

    private static List<Due> due(History history, LocalDate on, DueRule... rules) {
        DueSettings usual = DueSettings.usual(TOLERANCE);
        return DueList.of(history, rules.length == 0 ? usual : usual.by(List.of(rules)), on);
    }

    private static History ready(Event... more) {
        return READY.with(List.of(more));
    }

    private static double expected(Due due) {
        return Amounts.si(Dimensionless.class, due.expectedError());
    }

    @Test
    void nothingIsDueOfATruckThatIsReady() {
        assertThat(due(READY)).isEmpty();
    }

    @Test
    void whatHappensAfterTheDayDoesntCount() {
        History later = ready(changed("4", day("2026-12-02"), Change.Part.HYDRAULIC));

        assertThat(due(later)).isEmpty();
        assertThat(due(later, DECEMBER.plusDays(1))).hasSize(1);
    }

    @Test
    void anotherSeasonWantsAnotherCalibrationByItsFirstDay() {
        History next = ready(season("2027-11-01"));

        assertThat(due(next, LocalDate.of(2027, 9, 30))).isEmpty();
        assertThat(due(next, LocalDate.of(2027, 10, 1))).singleElement().satisfies(due -> {
            assertThat(due.by()).isEqualTo(LocalDate.of(2027, 11, 1));
            assertThat(due.reasons())
                    .singleElement()
                    .satisfies(reason ->
                            assertThat(reason.words()).isEqualTo("no calibration for the season from 2027-11-01"));
            assertThat(due.work()).isInstanceOf(Work.Calibrate.class);
        });
        assertThat(due(next.with(List.of(calibrated("4", day("2027-07-04"), TWO, 25))), LocalDate.of(2027, 11, 2)))
                .isEmpty();
        assertThat(due(next.with(List.of(calibrated("4", day("2027-07-03"), TWO, 25))), LocalDate.of(2027, 11, 2)))
                .hasSize(1);
    }

    @Test
    void aVerificationThatPassesClearsASeasonOnlyIfTheRuleSaysSo() {
        History proven = ready(season("2027-11-01"), verified("4", day("2027-10-10"), value(TWO, 25), 1));
        LocalDate on = LocalDate.of(2027, 11, 2);

        assertThat(due(proven, on, new DueRule.EachSeason(Period.ofDays(120), ClearedBy.VERIFICATION)))
                .isEmpty();
        assertThat(due(proven, on, new DueRule.EachSeason(Period.ofDays(120), ClearedBy.CALIBRATION)))
                .hasSize(1);
    }

    @Test
    void aRepairWantsACalibrationAndNewTiresDont() {
        assertThat(due(ready(changed("4", day("2026-11-20"), Change.Part.TIRE))))
                .isEmpty();
        assertThat(due(ready(changed("4", day("2026-11-20"), Change.Part.HYDRAULIC))))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.reasons())
                            .extracting(Reason::words)
                            .containsExactly("hydraulic changed on 2026-11-20", "not checked since a change");
                    assertThat(due.by()).isEqualTo(LocalDate.of(2026, 11, 20));
                    assertThat(due.work())
                            .isEqualTo(new Work.Calibrate(new Work.Verify(1, Optional.of(Samples.pounds(240)))));
                    assertThat(due.reasons().get(0).because()).map(Event::id).contains("4");
                });
        assertThat(due(ready(
                        changed("4", day("2026-11-20"), Change.Part.HYDRAULIC),
                        calibrated("5", day("2026-11-20"), TWO, 25),
                        verified("6", day("2026-11-20"), value(TWO, 25), 0))))
                .isEmpty();
    }

    @Test
    void ageCountsFromTheLastCalibrationOrPassedVerification() {
        DueRule age = new DueRule.AfterTime(Period.ofDays(40), ClearedBy.VERIFICATION);

        assertThat(due(READY, LocalDate.of(2026, 10, 27), age)).isEmpty();
        assertThat(due(READY, LocalDate.of(2026, 10, 28), age)).singleElement().satisfies(due -> {
            assertThat(due.by()).isEqualTo(LocalDate.of(2026, 11, 28));
            assertThat(due.reasons().get(0).words()).isEqualTo("last calibration or passed verification on 2026-10-19");
        });
        assertThat(due(ready(verified("4", day("2026-11-30"), value(TWO, 25), 1)), age))
                .isEmpty();
        assertThat(due(ready(verified("4", day("2026-11-30"), value(TWO, 25), 9)), age))
                .hasSize(1);
        assertThat(due(history(entered("1", day("2026-11-30"), value(TWO, 25))), age))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.by()).isEqualTo(DECEMBER);
                    assertThat(due.reasons().get(0).words()).isEqualTo("no calibration or passed verification known");
                });
    }

    private static Event used(String id, String day, double turns, double pounds) {
        return event(
                id,
                day(day),
                new What.Used(
                        "salt",
                        Optional.empty(),
                        Optional.of(Amounts.of(turns, SpreadingUnits.REVOLUTION)),
                        Optional.empty(),
                        Samples.pounds(pounds),
                        1));
    }

    @Test
    void useCountsSinceTheLastCalibrationOrPassedVerification() {
        History used = ready(
                used("4", "2026-10-01", 1e6, 1e7),
                used("5", "2026-11-10", 6000, 150_000),
                used("6", "2026-11-20", 6000, 150_000));
        DueRule turns = new DueRule.AfterTurns(Amounts.of(12_000, SpreadingUnits.REVOLUTION), ClearedBy.VERIFICATION);
        DueRule mass = new DueRule.AfterMass(Samples.pounds(300_000), ClearedBy.VERIFICATION);
        DueRule storms = new DueRule.AfterStorms(2, ClearedBy.VERIFICATION);

        assertThat(due(used, turns, mass, storms))
                .singleElement()
                .satisfies(due -> assertThat(due.reasons())
                        .extracting(Reason::words)
                        .containsExactly(
                                "12000 rev since the last calibration or passed verification",
                                "300000 lb since the last calibration or passed verification",
                                "2 storms since the last calibration or passed verification"));
        assertThat(due(
                        used,
                        new DueRule.AfterTurns(Amounts.of(12_001, SpreadingUnits.REVOLUTION), ClearedBy.VERIFICATION),
                        new DueRule.AfterMass(Samples.pounds(300_001), ClearedBy.VERIFICATION),
                        new DueRule.AfterStorms(3, ClearedBy.VERIFICATION)))
                .isEmpty();
    }

    @Test
    void whatIsNotProvenIsDueSinceThen() {
        History unchecked = history(entered("1", day("2026-10-19"), value(TWO, 25)));
        History open = ready(verified("4", day("2026-11-20"), value(TWO, 25), 3.9, Verdict.UNDECIDED));
        History wrong = ready(verified("4", day("2026-11-20"), value(TWO, 25), 7));
        DueRule rule = new DueRule.WhileNotProven();

        assertThat(due(unchecked, rule)).singleElement().satisfies(due -> {
            assertThat(due.reasons().get(0).words()).isEqualTo("not checked since it was entered");
            assertThat(due.work()).isEqualTo(new Work.Verify(1, Optional.empty()));
            assertThat(due.by()).isEqualTo(LocalDate.of(2026, 10, 19));
        });
        assertThat(due(open, rule))
                .singleElement()
                .satisfies(due -> assertThat(due.reasons().get(0).words())
                        .isEqualTo("the last verification can't tell whether it is right"));
        assertThat(due(wrong, rule)).singleElement().satisfies(due -> {
            assertThat(due.reasons().get(0).words()).isEqualTo("the last verification found it wrong");
            assertThat(due.work()).isInstanceOf(Work.Correct.class);
            assertThat(due.work().words())
                    .isEqualTo(
                            "enter the corrected value, 23.364 lb/rev; then one verification catch of 240 lb would do");
        });
    }

    /** Proven in October; in November somebody writes another value in force beside a good catch. */
    @Test
    void aCatchThatNamesAnotherValueDoesntEndInNothingToDo() {
        History odd = ready(lot("2026-11-10", 81), verified("4", day("2026-11-20"), value(TWO, 24), 0.2));

        assertThat(due(odd)).singleElement().satisfies(due -> {
            assertThat(due.reasons())
                    .extracting(Reason::words)
                    .containsExactly("a catch names another value than the display is known to hold: read the display");
            assertThat(due.by()).isEqualTo(LocalDate.of(2026, 11, 20));
        });
        assertThat(due(odd.with(List.of(verified("5", day("2026-11-21"), value(TWO, 25), 0.4)))))
                .isEmpty();
    }

    @Test
    void aValueThatTheDisplayLostIsToBeEnteredAgain() {
        History lost = ready(event("4", day("2026-11-20"), new What.SetBack()));

        assertThat(due(lost)).singleElement().satisfies(due -> {
            assertThat(due.held()).isEmpty();
            assertThat(expected(due)).isEqualTo(1);
            assertThat(due)
                    .hasToString(
                            "T-07, salt at 2 in: controller reset or replaced on 2026-11-20: nobody knows what the display holds "
                                    + "(by 2026-11-20); expected error 100 %; read the display and enter 25 lb/rev again; then one "
                                    + "verification catch of 240 lb would do");
        });
        assertThat(due(lost, new DueRule.AfterChange(ClearedBy.CALIBRATION))).isEmpty();
    }

    private static Event lot(String day, double density) {
        return Event.ofFleet(
                "lot " + day,
                day(day),
                new What.Delivered(
                        Material.of("salt", Amounts.of(density, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                        "L-" + day,
                        Optional.empty()),
                "tickets");
    }

    @Test
    void aLotOfAnotherDensityWantsAVerification() {
        assertThat(due(ready(lot("2026-11-10", 83.9)))).isEmpty();
        assertThat(due(ready(lot("2026-11-10", 84.1)))).singleElement().satisfies(due -> {
            assertThat(due.reasons().get(0).words()).isEqualTo("lot L-2026-11-10 of salt delivered with 84.1 lb/ft³");
            assertThat(due.work()).isEqualTo(new Work.Verify(1, Optional.of(Samples.pounds(240))));
        });
        assertThat(due(ready(lot("2026-11-10", 75.9)))).hasSize(1);
        assertThat(due(ready(lot("2026-10-10", 90)))).isEmpty();
        assertThat(due(ready(lot("2026-11-10", 84.1), verified("4", day("2026-11-12"), value(TWO, 25), 1))))
                .isEmpty();
    }

    @Test
    void aDriftIsDueWhenItMayLeaveTheTolerance() {
        List<Event> years = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            // A third of a per cent less every month.
            years.add(verified("v" + i, day("2026-0" + (1 + i / 4) + "-0" + (1 + i % 4 * 2)), value(TWO, 25), 0.3 * i));
        }
        DueRule rule = new DueRule.OnDrift(
                DriftRule.of(BetweenDays.assumed(Amounts.of(0.2, SpreadingUnits.PERCENT)), Goal.average(500)));

        assertThat(due(history(years.toArray(new Event[0])), LocalDate.of(2026, 3, 8), rule))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.reasons().get(0).words())
                            .startsWith("what leaves per revolution has changed, shown on 2026-0")
                            .contains("; leaves ±4 % from 2026-0");
                    assertThat(due.work()).isInstanceOf(Work.Calibrate.class);
                });
        assertThat(due(READY, rule)).isEmpty();
    }

    @Test
    void whatMattersMostOnTheRoadComesFirst() {
        History two = READY.with(List.of(
                verified("4", day("2026-11-20"), value(TWO, 25), 7),
                Event.of(
                        "5", day("2026-11-01"), "T-08", new What.Entered(value(TWO, 25), Optional.empty()), "day book"),
                Event.of(
                        "6",
                        day("2026-11-02"),
                        "T-08",
                        verified("x", day("2026-11-02"), value(TWO, 25), 5).what(),
                        "day book")));
        DueSettings settings = DueSettings.usual(TOLERANCE)
                .by(List.of(new DueRule.WhileNotProven()))
                .planning(List.of(
                        new DueSettings.Planned(TRUCK, "salt", Amounts.of(100, SpreadingUnits.SHORT_TON)),
                        new DueSettings.Planned("T-08", "salt", Amounts.of(200, SpreadingUnits.SHORT_TON))));
        List<Due> due = DueList.of(two, settings, DECEMBER);

        assertThat(due).extracting(Due::truck).containsExactly("T-08", TRUCK);
        assertThat(Amounts.si(Mass.class, due.get(0).atStake()) / 907.18474).isCloseTo(10, within(0.01));
        assertThat(Amounts.si(Mass.class, due.get(1).atStake()) / 907.18474).isCloseTo(7, within(0.01));
    }

    /** The folded normal distribution: for e = 0 its mean is u·√(2/π). */
    @Test
    void theExpectedErrorIsTheMeanOfTheFoldedNormalDistribution() {
        assertThat(ExpectedError.folded(0, 0.1)).isCloseTo(0.0797884560802865, within(1e-15));
        assertThat(ExpectedError.folded(0.05, 0)).isEqualTo(0.05);
        assertThat(ExpectedError.folded(0.5, 0.01)).isCloseTo(0.5, within(1e-12));
        // u·√(2/π)·e^(−1/2) + e·(1 − 2Φ(−1)) with e = u = 1.
        assertThat(ExpectedError.folded(1, 1)).isCloseTo(1.1666308, within(1e-6));
    }

    /** Own 0.6 %, shared 0.2 %: an interval of ±1.96·√(0.006²/n + 0.002²) about 3.3 % lies within 4 % from n = 5 on, about 3.6 % never. */
    @Test
    void theLeastWorkIsAsManyCatchesAsTell() {
        assertThat(LeastWork.proof(0.0325, TOLERANCE, READY.event("3"), TWO))
                .isEqualTo(new Work.Verify(4, Optional.of(Samples.pounds(240))));
        assertThat(LeastWork.proof(0.036, TOLERANCE, READY.event("3"), TWO)).isEqualTo(new Work.PlanAnew());
        assertThat(LeastWork.proof(0.05, TOLERANCE, READY.event("3"), TWO)).isEqualTo(new Work.PlanAnew());
        assertThat(LeastWork.proof(0, TOLERANCE, READY.event("1"), TWO))
                .isEqualTo(new Work.Verify(1, Optional.empty()));
        assertThat(new Work.Verify(4, Optional.of(Samples.pounds(240))).words())
                .isEqualTo("4 verification catches of 240 lb each would do");
        assertThat(new Work.PlanAnew().words())
                .isEqualTo("plan larger verification catches: not even 10 like the last would tell");
    }

    @Test
    void everyRuleSaysWhichStatementItFollows() {
        assertThat(DueRule.usual())
                .allSatisfy(rule -> assertThat(rule.statement()).isNotBlank());
        assertThat(new DueRule.WhileNotProven().statement()).isEqualTo("common practice, no source");
        assertThat(new DueRule.AfterChange(ClearedBy.CALIBRATION).statement()).contains("Iowa DOT, October 2020");
    }

    @Test
    void settingsThatDontGoTogetherAreRefused() {
        DueSettings usual = DueSettings.usual(TOLERANCE);

        assertRefused("rules must be one or more: none", () -> usual.by(List.of()));
        assertRefused("storms until due must be 1 or more: 0", () -> new DueRule.AfterStorms(0, ClearedBy.CALIBRATION));
        assertRefused(
                "age of a calibration must be greater than 0: P0D",
                () -> new DueRule.AfterTime(Period.ZERO, ClearedBy.CALIBRATION));
        DueSettings.Planned planned = new DueSettings.Planned(TRUCK, "salt", Samples.pounds(1));
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> usual.planning(List.of(planned, planned)))
                .hasMessageStartingWith("planned masses must be one for each truck and material");
    }
}
