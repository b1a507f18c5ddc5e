package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.observed;
import static org.gritwright.core.fleet.assessment.Driven.first;
import static org.gritwright.core.fleet.assessment.Driven.sentences;
import static org.gritwright.core.fleet.assessment.Driven.stated;
import static org.gritwright.core.fleet.assessment.Driven.steps;
import static org.gritwright.core.fleet.day.Trucks.day;
import static org.gritwright.core.fleet.day.Trucks.idle;
import static org.gritwright.core.fleet.day.Trucks.verificationCatch;
import static org.gritwright.core.fleet.day.Trucks.with;
import static org.gritwright.core.fleet.day.Trucks.withRoadSpeed;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.VerificationCatchEntry;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Conditions;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** A drive that is said to hold 20 to 40 rev/s, to 5 %; 2.5 kg/rev, right. */
    private static Optional<FindingCode> explained(
            double askedPerSecond, double kilograms, Optional<ShaftCount> counted, Optional<Quantity<Mass>> step) {
        CalibrationPoint point = augerPoint(NoSensor.onDriveShaft());
        Quantity<Mass> mass = Amounts.of(kilograms, SpreadingUnits.KILOGRAM);
        Observation observed = observed(point, caught(mass));
        VerificationCatch made = VerificationCatch.of(
                counted.map(observed::counted).orElse(observed),
                CalibrationInForce.of(
                        point,
                        CalibrationFactor.of(Amounts.of(2.5, SpreadingUnits.KILOGRAM_PER_REVOLUTION)),
                        Optional.empty()),
                TestRun.lasting(
                        Amounts.of(2.5 * askedPerSecond, SpreadingUnits.KILOGRAM_PER_METER),
                        Amounts.of(1, SpreadingUnits.METER_PER_SECOND),
                        Amounts.of(10, SpreadingUnits.SECOND)));
        Verification verification =
                step.map(by -> made.indicated(mass, by)).orElse(made).assess(Tolerance.percent(4));
        DriveAssessment drive = new DriveAssessment(
                Optional.empty(),
                Optional.of(new StatedRange(
                        new WorkingRange(
                                Amounts.of(20, SpreadingUnits.REVOLUTION_PER_SECOND),
                                Amounts.of(40, SpreadingUnits.REVOLUTION_PER_SECOND)),
                        RangeSource.FROM_MAKER)),
                List.of());
        return new DriveLimits(Optional.of(drive), List.of(verification))
                .of(verification)
                .map(one -> one.finding().code());
    }

    private static Optional<ShaftCount> byEye(double revolutions, double uncertainty) {
        return Optional.of(new ShaftCount.ByEye(
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION),
                Amounts.of(uncertainty, SpreadingUnits.REVOLUTION)));
    }

    /** 360 rev in 10 s, a tenth less than the limit; the drive may be off by a twentieth, and the count by twice its uncertainty. */
    @ParameterizedTest
    @CsvSource({"0, LIMIT_EXPLAINS_PART", "1, LIMIT_EXPLAINS_PART", "9, LIMIT_EXPLAINS_SHORTFALL"})
    void aRestMayBeOfTheCount(double uncertainty, FindingCode expected) {
        assertThat(explained(44, 900, byEye(360, uncertainty), Optional.empty()))
                .contains(expected);
    }

    /** Of a display by a tenth of what it shows half a step is a twentieth. */
    @ParameterizedTest
    @CsvSource({"900, 1, LIMIT_EXPLAINS_PART", "900, 90, LIMIT_EXPLAINS_SHORTFALL", "800, 80, LIMIT_EXPLAINS_PART"})
    void orOfTheDisplay(double kilograms, double step, FindingCode expected) {
        assertThat(explained(44, kilograms, Optional.empty(), Optional.of(Amounts.of(step, SpreadingUnits.KILOGRAM))))
                .contains(expected);
    }

    /** Without both, nobody knows how far the value in force is off but for the tolerance. */
    @Test
    void orOfTheValueInForceWhereNothingWasCounted() {
        assertThat(explained(44, 900, Optional.empty(), Optional.empty()))
                .contains(FindingCode.LIMIT_EXPLAINS_SHORTFALL);
        assertThat(explained(44, 860, Optional.empty(), Optional.empty())).contains(FindingCode.LIMIT_EXPLAINS_PART);
    }

    @Test
    void whatIsAskedForExactlyAtALimitIsHeld() {
        assertThat(explained(40, 900, byEye(360, 0), Optional.empty())).isEmpty();
        assertThat(explained(41, 900, byEye(360, 0), Optional.empty())).isPresent();
        assertThat(explained(20, 550, byEye(220, 0), Optional.empty())).isEmpty();
        assertThat(explained(19, 550, byEye(220, 0), Optional.empty())).isPresent();
    }

    /** 43.27 rev in 130 s, which somebody might take for those of 90 s, are 19.97 rev/min. */
    @Test
    void aShortfallThatALimitExplainsIsNoSlipWithTheTime() {
        TruckDay truck = with(withRoadSpeed(idle("T-1"), 13_000), verificationCatch(9, "5.2 lb/rev", 130, 43.27));

        assertThat(sentences(first(day(truck)), FindingCode.RUN_TIME_IN_MINUTES))
                .hasSize(1);
        TruckAssessment limited = first(day(truck.drive(stated(2, 20))));
        assertThat(sentences(limited, FindingCode.RUN_TIME_IN_MINUTES)).isEmpty();
        assertThat(sentences(limited, FindingCode.LIMIT_EXPLAINS_SHORTFALL)).hasSize(1);
    }

    @Test
    void whatElseWasSeenInACatchThatALimitExplainsIsStillTold() {
        VerificationCatchEntry limited = verificationCatch(9, "5.2 lb/rev", 120, 52);
        VerificationCatchEntry nearlyEmpty = Written.verifies(
                limited.entry().under(Conditions.NONE.withHopperLevel(Amounts.of(5, SpreadingUnits.PERCENT))), limited);
        TruckAssessment assessed =
                first(day(with(withRoadSpeed(idle("T-1"), 13_000), nearlyEmpty).drive(stated(2, 26))));

        assertThat(assessed.points().get(0).findings())
                .extracting(finding -> finding.code())
                .contains(FindingCode.LIMIT_EXPLAINS_SHORTFALL, FindingCode.HOPPER_NEARLY_EMPTY)
                .doesNotContain(FindingCode.SHORTFALL);
    }
}
