package org.gritwright.core.history.due;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.assertNamesWhatIsMissing;
import static org.gritwright.core.Samples.assertRefused;
import static org.gritwright.core.history.Happenings.TRUCK;
import static org.gritwright.core.history.Happenings.TWO;

import java.time.Period;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.Samples;
import org.gritwright.core.control.Goal;
import org.gritwright.core.history.drift.BetweenDays;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class DueRuleTest {
    @Test
    void aRuleNamesTheStatementThatItFollowsAndWhatIsCommonPracticeInIt() {
        ClearedBy calibration = ClearedBy.CALIBRATION;
        DueRule drift = new DueRule.OnDrift(
                DriftRule.of(BetweenDays.assumed(Amounts.of(1, SpreadingUnits.PERCENT)), Goal.average(500)));

        assertThat(new DueRule.EachSeason(Period.ofDays(120), calibration).statement())
                .contains("University of Delaware T² Center, 2020", "Iowa DOT, October 2020");
        assertThat(new DueRule.AfterChange(calibration).statement())
                .contains("University of Delaware T² Center, 2020", "Iowa DOT, October 2020");
        assertThat(new DueRule.AfterStorms(1, calibration).statement())
                .isEqualTo(
                        "part-way through a hard season (University of Delaware T² Center, 2020); after how many storms: "
                                + "common practice, no source");
        assertThat(drift.statement()).contains("(Montgomery)").endsWith("common practice, no source");
        assertThat(new DueRule.OtherLot(Amounts.of(5, SpreadingUnits.PERCENT), calibration).statement())
                .startsWith("to each salt pile")
                .endsWith("common practice, no source");
        assertThat(List.of(
                        new DueRule.AfterTime(Period.ofDays(1), calibration),
                        new DueRule.AfterTurns(Amounts.of(1, SpreadingUnits.REVOLUTION), calibration),
                        new DueRule.AfterMass(Samples.pounds(1), calibration),
                        new DueRule.WhileNotProven()))
                .extracting(DueRule::statement)
                .containsOnly("common practice, no source");
    }

    @Test
    void numbersThatNoRuleCanHaveAreRefused() {
        assertRefused(
                "time before the season must be 0 or more: P-1D",
                () -> new DueRule.EachSeason(Period.ofDays(-1), ClearedBy.CALIBRATION));
        assertRefused(
                "age of a calibration must be greater than 0: P-1D",
                () -> new DueRule.AfterTime(Period.ofDays(-1), ClearedBy.CALIBRATION));
        assertThat(new DueRule.AfterStorms(1, ClearedBy.CALIBRATION).most()).isEqualTo(1);
    }

    @Test
    void settingsThatNobodyCanMeanAreRefused() throws ReflectiveOperationException {
        DueSettings usual = DueSettings.usual(Tolerance.percent(4));

        assertRefused(
                "time to look ahead must be 0 or more: P-1D",
                () -> new DueSettings(
                        usual.rules(), usual.tolerance(), List.of(), usual.unknownError(), Period.ofDays(-1)));
        assertNamesWhatIsMissing(new DueSettings.Planned(TRUCK, "salt", Samples.pounds(1)));
    }

    @Test
    void somethingIsDueForAReason() {
        assertRefused(
                "reasons must be one or more: none",
                () -> new Due(
                        TRUCK,
                        TWO,
                        Optional.empty(),
                        List.of(),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Samples.pounds(0),
                        new Work.PlanAnew()));
    }
}
