package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Driven.steps;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TruckDay;
import org.junit.jupiter.api.Test;

/** 360 lb/mi at 25 mi/h by 5.2 lb/rev ask for 28.85 rev/min, 57.69 rev in 120 s. */
class DriveLimitsTest {
    private static TruckDay turned(double revolutions) {
        return with(withRoadSpeed(idle("T-1"), 13_000), verificationCatch(9, "5.2 lb/rev", 120, revolutions));
    }

    @Test
    void aLimitThatExplainsAShortfallIsNamedAndTheCalibrationIsLeftAlone() {
        // 26 ÷ 28.85 − 1 = −9.867 %; 52 rev in 120 s are 26 rev/min.
        TruckAssessment assessed = first(day(turned(52).drive(stated(2, 26))));
        assertThat(sentences(assessed, FindingCode.LIMIT_EXPLAINS_SHORTFALL))
                .containsExactly(
                        "In the catch of 2026-10-19 09:00, target rate and test speed need 28.85 rev/min, but the drive"
                                + " holds 26 rev/min at most: a limit of 9.867 %, which explains the 9.867 % that are missing. Slow"
                                + " down, lower the rate or open the gate; a new calibration would change nothing.");
        assertThat(steps(assessed)).containsExactly(NextStep.FIT_TO_DRIVE);
        assertThat(assessed.massProof()).isEqualTo(MassProof.PROVEN);
        assertThat(assessed.points().get(0).findings())
                .extracting(finding -> finding.code())
                .contains(FindingCode.LIMIT_EXPLAINS_SHORTFALL)
                // Which says that nobody can tell why.
                .doesNotContain(FindingCode.SHORTFALL);
    }

    @Test
    void withoutADriveTheSameShortfallIsLookedIntoAsBefore() {
        assertThat(steps(first(day(turned(52))))).containsExactly(NextStep.CHECK_DELIVERY);
    }

    @Test
    void aLimitThatExplainsOnlyAPartLeavesTheRestToBeFound() {
        // 44 rev are 23.7 % less; 26 rev/min would have made 9.9 % of it.
        TruckAssessment assessed = first(day(turned(44).drive(stated(2, 26))));
        assertThat(sentences(assessed, FindingCode.LIMIT_EXPLAINS_PART))
                .containsExactly(
                        "In the catch of 2026-10-19 09:00, target rate and test speed need 28.85 rev/min, and the drive's"
                                + " limit is 26 rev/min: it explains 9.867 % of the 23.73 % by which delivery is off. Look for what"
                                + " makes the rest.");
        assertThat(sentences(assessed, FindingCode.SHORTFALL)).hasSize(1);
        assertThat(steps(assessed)).containsExactly(NextStep.CHECK_DELIVERY, NextStep.FIT_TO_DRIVE);
    }

    /** A maker's range may be off by 5 %, and the tolerance is 4 %: 6.7 % less than 26 rev/min is no other fault. */
    @Test
    void whatIsLeftMayBeAsLargeAsTheLimitIsUncertain() {
        assertThat(sentences(first(day(turned(48.5).drive(stated(2, 26)))), FindingCode.LIMIT_EXPLAINS_SHORTFALL))
                .hasSize(1);
        assertThat(steps(first(day(turned(48.5).drive(stated(2, 26)))))).containsExactly(NextStep.FIT_TO_DRIVE);
        // 9.6 % are.
        assertThat(sentences(first(day(turned(47).drive(stated(2, 26)))), FindingCode.LIMIT_EXPLAINS_PART))
                .hasSize(1);
    }

    @Test
    void anOverrunThatTheSlowEndDoesNotMakeIsNotItsDoing() {
        // 40 rev/min would have made 38.7 % too much, where 10.9 % were: it turned more slowly than it is said to.
        TruckAssessment slower = first(day(turned(64).drive(stated(40, 60))));
        assertThat(sentences(slower, FindingCode.LIMIT_EXPLAINS_OVERRUN)).isEmpty();
        assertThat(sentences(slower, FindingCode.LIMIT_EXPLAINS_PART)).isEmpty();
        assertThat(steps(slower)).contains(NextStep.CHECK_DELIVERY).doesNotContain(NextStep.FIT_TO_DRIVE);

        // 75 rev are 30 % too much; 32 rev/min would have made 10.9 % of it.
        TruckAssessment partly = first(day(turned(75).drive(stated(32, 60))));
        assertThat(sentences(partly, FindingCode.LIMIT_EXPLAINS_PART)).hasSize(1);
        assertThat(steps(partly)).contains(NextStep.CHECK_DELIVERY, NextStep.FIT_TO_DRIVE);
    }

    @Test
    void aLimitThatIsNotMetExplainsNothing() {
        TruckAssessment assessed = first(day(turned(52).drive(stated(2, 29))));
        assertThat(sentences(assessed, FindingCode.LIMIT_EXPLAINS_SHORTFALL)).isEmpty();
        assertThat(steps(assessed)).containsExactly(NextStep.CHECK_DELIVERY);
    }

    @Test
    void aShaftThatTurnedBeyondTheLimitIsAContradictionAndNoExplanation() {
        // 54 rev in 120 s are 27 rev/min, 20 % more than 22.5.
        TruckAssessment assessed = first(day(turned(54).drive(stated(12, 22.5))));
        assertThat(sentences(assessed, FindingCode.LIMIT_EXPLAINS_SHORTFALL)).isEmpty();
        assertThat(sentences(assessed, FindingCode.CATCH_ABOVE_RANGE)).hasSize(1);
        assertThat(steps(assessed)).contains(NextStep.CHECK_ENTRIES, NextStep.CHECK_DELIVERY);
    }

    @Test
    void theSlowEndExplainsAnOverrun() {
        // 32 rev/min is the slowest: 64 rev in 120 s, 10.93 % more than 57.69.
        TruckAssessment assessed = first(day(turned(64).drive(stated(32, 60))));
        assertThat(sentences(assessed, FindingCode.LIMIT_EXPLAINS_OVERRUN))
                .containsExactly(
                        "In the catch of 2026-10-19 09:00, target rate and test speed need only 28.85 rev/min, but the"
                                + " drive turns no more slowly than 32 rev/min steadily: a limit of 10.93 %, which explains the"
                                + " 10.93 % too much. Drive faster, raise the rate or close the gate; a new calibration would"
                                + " change nothing.");
        assertThat(steps(assessed)).containsExactly(NextStep.FIT_TO_DRIVE);
    }
}
