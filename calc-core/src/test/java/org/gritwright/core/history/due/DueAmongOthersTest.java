package org.gritwright.core.history.due;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.gritwright.core.history.Happenings.THREE;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;
import static org.gritwright.core.history.Happenings.calibrated;
import static org.gritwright.core.history.Happenings.changed;
import static org.gritwright.core.history.Happenings.day;
import static org.gritwright.core.history.Happenings.entered;
import static org.gritwright.core.history.Happenings.event;
import static org.gritwright.core.history.Happenings.history;
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
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.BetweenDays;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

/** What another point, another season, another lot or a chance line must not change of what is due. */
class DueAmongOthersTest {
    private static final DueSettings USUAL = DueSettings.usual(Tolerance.percent(4));
    private static final LocalDate DECEMBER = LocalDate.of(2026, 12, 1);
    private static final Event TWO_ENTERED = entered("two", day("2026-10-01"), value(TWO, 25));
    private static final Event THREE_ENTERED = entered("three", day("2026-10-01"), value(THREE, 40));

    private static List<Due> due(DueRule rule, Event... events) {
        return DueList.of(history(events), USUAL.by(List.of(rule)), DECEMBER);
    }

    /** 24 for 20: a slip that no catch would prove right. */
    @Test
    void anotherValueThanTheCalibratedOneIsCorrectedBeforeItIsProven() {
        Event calibrated = calibrated("k", day("2026-09-30"), TWO, 20);

        assertThat(due(new DueRule.WhileNotProven(), calibrated, entered("slip", day("2026-10-01"), value(TWO, 24))))
                .singleElement()
                .satisfies(due -> assertThat(due.work()).isInstanceOf(Work.Correct.class));
        assertThat(due(new DueRule.WhileNotProven(), calibrated, entered("right", day("2026-10-01"), value(TWO, 20))))
                .singleElement()
                .satisfies(due -> assertThat(due.work()).isInstanceOf(Work.Proof.class));
    }

    @Test
    void whatIsDoneAtAnotherGateOpeningClearsNothing() {
        DueRule age = new DueRule.AfterTime(Period.ofDays(45), ClearedBy.VERIFICATION);

        assertThat(due(
                        age,
                        TWO_ENTERED,
                        THREE_ENTERED,
                        verified("two proven", day("2026-10-02"), value(TWO, 25), 1),
                        verified("three proven", day("2026-11-30"), value(THREE, 40), 1)))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.point()).isEqualTo(TWO);
                    assertThat(due.reasons().get(0).words())
                            .isEqualTo("last calibration or passed verification on 2026-10-02");
                });
    }

    @Test
    void howMuchToCatchFollowsFromTheCatchesOfThePointItself() {
        Event small = event(
                "three proven",
                day("2026-10-03"),
                new What.Verified(
                        value(THREE, 40),
                        Measured.once(Amounts.of(1, SpreadingUnits.PERCENT)),
                        List.of(),
                        Verdict.WITHIN_TOLERANCE,
                        1,
                        Samples.pounds(120),
                        Optional.empty()));

        assertThat(due(
                        new DueRule.AfterChange(ClearedBy.VERIFICATION),
                        TWO_ENTERED,
                        verified("two proven", day("2026-10-02"), value(TWO, 25), 1),
                        small,
                        changed("gate", day("2026-11-01"), Change.Part.GATE)))
                .filteredOn(due -> due.point().equals(TWO))
                .singleElement()
                .satisfies(
                        due -> assertThat(due.work()).isEqualTo(new Work.Verify(1, Optional.of(Samples.pounds(240)))));
    }

    @Test
    void aSeasonThatLiesFarAheadOrALotDoesntHideTheOneThatHasBegun() {
        DueRule rule = new DueRule.EachSeason(Period.ofDays(120), ClearedBy.CALIBRATION);

        assertThat(due(rule, TWO_ENTERED, season("2026-11-01"), season("2027-11-01"), lot("2026-11-20", 80)))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.reasons().get(0).words()).isEqualTo("no calibration for the season from 2026-11-01");
                    assertThat(due.by()).isEqualTo(LocalDate.of(2026, 11, 1));
                    assertThat(due.reasons().get(0).rule().statement()).contains("before each season");
                });
        assertThat(due(rule, TWO_ENTERED, lot("2026-11-20", 80))).isEmpty();
    }

    private static Event lot(String day, double density) {
        return Event.ofFleet(
                "lot " + day, day(day), new What.Delivered(salt(density), "L-" + day, Optional.empty()), "tickets");
    }

    private static Material salt(double density) {
        return Material.of("salt", Amounts.of(density, SpreadingUnits.KILOGRAM_PER_CUBIC_METER));
    }

    private static CalibrationPoint of(double density) {
        return CalibrationPoint.of(salt(density), TWO.metering(), TWO.setting());
    }

    @Test
    void aLotIsComparedWithWhatWasCaughtLastAndNotWithWhatWasEntered() {
        DueRule rule = new DueRule.OtherLot(Amounts.of(5, SpreadingUnits.PERCENT), ClearedBy.VERIFICATION);
        Event entered = entered("entered", day("2026-10-01"), value(of(1200), 25));
        Event proven = verified("proven", day("2026-10-20"), value(of(1300), 25), 1);

        assertThat(due(rule, entered, proven, lot("2026-11-10", 1310))).isEmpty();
        assertThat(due(rule, entered, proven, lot("2026-11-10", 1210)))
                .singleElement()
                .satisfies(due -> assertThat(due.reasons().get(0).words())
                        .isEqualTo("lot L-2026-11-10 of salt delivered with 1210 kg/m³"));
    }

    @Test
    void aDensityMayDifferByAsMuchAsTheRuleSays() {
        DueRule rule = new DueRule.OtherLot(Amounts.of(25, SpreadingUnits.PERCENT), ClearedBy.VERIFICATION);
        Event entered = entered("entered", day("2026-10-01"), value(of(1024), 25));

        assertThat(due(rule, entered, lot("2026-11-10", 1280))).isEmpty();
        assertThat(due(rule, entered, lot("2026-11-10", 768))).isEmpty();
        assertThat(due(rule, entered, lot("2026-11-10", 1281))).hasSize(1);
    }

    private static Event[] weekly(double... percent) {
        List<Event> events = new ArrayList<>();
        for (int i = 0; i < percent.length; i++) {
            events.add(verified(
                    "v" + i,
                    day(LocalDate.of(2026, 9, 1).plusDays(7L * i).toString()),
                    value(TWO, 25),
                    percent[i],
                    Verdict.WITHIN_TOLERANCE));
        }
        return events.toArray(new Event[0]);
    }

    private static final DueRule DRIFT = new DueRule.OnDrift(
            DriftRule.of(BetweenDays.assumed(Amounts.of(0.2, SpreadingUnits.PERCENT)), Goal.average(500)));

    /** The interval of a line through three weeks leaves any tolerance soon; it isn't shown to rise or fall. */
    @Test
    void aLineThatMayBeChanceIsNoDrift() {
        assertThat(due(DRIFT, weekly(0, 0.1, 0))).isEmpty();
    }

    /** One catch 8 % off among others that aren't: no line, but a chart that alarms. */
    @Test
    void aChangeWithoutALineIsDueSinceItWasShown() {
        assertThat(due(DRIFT, weekly(0, 0, 0, 0, 8, 0, 0, 0, 0)))
                .singleElement()
                .satisfies(due -> {
                    assertThat(due.reasons().get(0).words())
                            .isEqualTo("what leaves per revolution has changed, shown on 2026-09-29");
                    assertThat(due.by()).isEqualTo(LocalDate.of(2026, 9, 29));
                    assertThat(due.reasons().get(0).because()).map(Event::id).contains("v4");
                });
    }

    @Test
    void aControllerThatIsSetBackLosesEachOfItsValuesOnce() {
        assertThat(due(
                        new DueRule.WhileNotProven(),
                        entered("old", day("2026-09-01"), value(TWO, 24)),
                        TWO_ENTERED,
                        entered("sand", day("2026-10-01"), value(sand(), 30)),
                        event("set back", day("2026-11-20"), new What.SetBack())))
                .extracting(due -> due.point() + ": " + due.work().words())
                .containsExactly(
                        "salt at 2 in: read the display and enter 25 lb/rev again; then one verification catch would do",
                        "sand at 2 in: read the display and enter 30 lb/rev again; then one verification catch would do");
    }

    private static CalibrationPoint sand() {
        return CalibrationPoint.of(
                Material.of("sand", Amounts.of(95, SpreadingUnits.POUND_PER_CUBIC_FOOT)),
                TWO.metering(),
                TWO.setting());
    }

    @Test
    void aValueThatAnotherSlotStillHoldsIsNotLost() {
        assertThat(due(
                        new DueRule.WhileNotProven(),
                        entered("one", day("2026-10-01"), value(TWO, 25).inSlot("1")),
                        entered("two", day("2026-10-01"), value(TWO, 25).inSlot("2")),
                        event("over", day("2026-11-20"), new What.Overwritten("1"))))
                .singleElement()
                .satisfies(due -> assertThat(due.held()).isPresent());
    }

    @Test
    void moreAtStakeComesBeforeAnEarlierDayAndThenTrucksAndPointsInTheirOrder() {
        List<Event> events = new ArrayList<>();
        for (String truck : List.of("T-09", "T-08")) {
            for (CalibrationPoint point : List.of(THREE, TWO)) {
                events.add(Event.of(
                        truck + (point.equals(TWO) ? ", later" : ", earlier"),
                        day("2026-11-02"),
                        truck,
                        entered("x", day("2026-11-02"), value(point, 25)).what(),
                        "day book"));
            }
        }
        events.add(entered("planned", day("2026-11-20"), value(TWO, 25)));
        DueSettings settings = USUAL.by(List.of(new DueRule.WhileNotProven()))
                .planning(List.of(new DueSettings.Planned(TRUCK, "salt", Amounts.of(100, SpreadingUnits.SHORT_TON))));

        assertThat(DueList.of(history(events.toArray(new Event[0])), settings, DECEMBER))
                .extracting(due -> due.truck() + ", " + due.point())
                .containsExactly(
                        "T-07, salt at 2 in",
                        "T-08, salt at 2 in",
                        "T-08, salt at 3 in",
                        "T-09, salt at 2 in",
                        "T-09, salt at 3 in");
    }

    /** Known to be off by 0 with u = √(0.6² + 0.2²) %: the mean of |x| is u·√(2/π); of nothing known it is 10 %·√(2/π). */
    @Test
    void theExpectedErrorFollowsFromWhatIsKnownOfTheValue() {
        DueRule age = new DueRule.AfterTime(Period.ofDays(10), ClearedBy.VERIFICATION);
        Event proven = verified("proven", day("2026-10-02"), value(TWO, 25), 0);

        assertThat(expected(due(age, TWO_ENTERED, proven)))
                .isCloseTo(Math.hypot(0.006, 0.002) * Math.sqrt(2 / Math.PI), within(1e-12));
        assertThat(expected(due(age, TWO_ENTERED))).isCloseTo(0.1 * Math.sqrt(2 / Math.PI), within(1e-12));
        // A change adds what nobody knows.
        assertThat(expected(due(age, TWO_ENTERED, proven, changed("gate", day("2026-11-01"), Change.Part.GATE))))
                .isCloseTo(
                        Math.sqrt(0.1 * 0.1 + 0.006 * 0.006 + 0.002 * 0.002) * Math.sqrt(2 / Math.PI), within(1e-12));
        assertThat(Amounts.si(Mass.class, due(age, TWO_ENTERED).get(0).atStake()))
                .isZero();
    }

    private static double expected(List<Due> due) {
        return Amounts.si(Dimensionless.class, due.get(0).expectedError());
    }
}
