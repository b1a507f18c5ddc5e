package org.gritwright.core.fleet.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.gritwright.core.Samples.augerPoint;
import static org.gritwright.core.Samples.catchAt;
import static org.gritwright.core.Samples.caught;
import static org.gritwright.core.Samples.codes;
import static org.gritwright.core.Samples.observed;

import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.NoSensor;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.range.RangeSource;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Of a drive that is said to hold 20 to 40 rev/s, to 5 %; in SI units, so that limits are met exactly. */
class CatchSpeedsTest {
    private static final Quantity<Time> TEN_SECONDS = Amounts.of(10, SpreadingUnits.SECOND);

    private final DriveAssessment drive = new DriveAssessment(
            Optional.empty(),
            Optional.of(new StatedRange(new WorkingRange(perSecond(20), perSecond(40)), RangeSource.FROM_MAKER)),
            List.of());

    private static Quantity<RotationalSpeed> perSecond(double revolutions) {
        return Amounts.of(revolutions, SpreadingUnits.REVOLUTION_PER_SECOND);
    }

    private static CalibrationPoint geared(double gearRatio) {
        return augerPoint(new NoSensor(Amounts.of(gearRatio, SpreadingUnits.ONE)));
    }

    private List<FindingCode> ofSpeed(double gearRatio, double revolutionsPerSecond) {
        CatchSpeeds speeds = new CatchSpeeds(drive, geared(gearRatio).metering().feedback(), Tolerance.percent(4));
        speeds.add(catchAt(
                geared(gearRatio),
                caught(100),
                new ShaftCount.SpeedTimesTime(perSecond(revolutionsPerSecond), TEN_SECONDS)));
        return codes(speeds.findings());
    }

    @Test
    void aSpeedAtTheEndOfWhatARangeMayBeIsWithinIt() {
        assertThat(ofSpeed(1, 42)).isEmpty();
        assertThat(ofSpeed(1, 42.01)).containsExactly(FindingCode.CATCH_ABOVE_RANGE);
        assertThat(ofSpeed(1, 19)).isEmpty();
        assertThat(ofSpeed(1, 18.99)).containsExactly(FindingCode.CATCH_BELOW_RANGE);
    }

    /** Beyond two and a half times the range it is told as that of another shaft, if the gear ratio makes it so. */
    @Test
    void aSpeedFarBeyondTheRangeIsOfAnotherShaft() {
        assertThat(ofSpeed(4, 100)).containsExactly(FindingCode.CATCH_ABOVE_RANGE);
        assertThat(ofSpeed(4, 101)).containsExactly(FindingCode.DRIVE_OF_OTHER_SHAFT);
        assertThat(ofSpeed(0.25, 8)).containsExactly(FindingCode.CATCH_BELOW_RANGE);
        assertThat(ofSpeed(0.25, 7.9)).containsExactly(FindingCode.DRIVE_OF_OTHER_SHAFT);
    }

    @Test
    void aCatchThatFitsTheRangeOnlyWithoutTheGearsShowsNoOtherShaft() {
        CatchSpeeds speeds = new CatchSpeeds(drive, geared(4).metering().feedback(), Tolerance.percent(4));
        for (double speed : new double[] {101, 30}) {
            speeds.add(catchAt(geared(4), caught(100), new ShaftCount.SpeedTimesTime(perSecond(speed), TEN_SECONDS)));
        }
        assertThat(codes(speeds.findings())).containsExactly(FindingCode.CATCH_ABOVE_RANGE);
    }

    /** So many revolutions by eye in 10 s, where so many a second were asked for: at 1 m/s and 1 kg/rev the rate says it. */
    private List<FindingCode> ofMean(double asked, double revolutions, double uncertainty) {
        CalibrationPoint point = geared(1);
        ShaftCount counted = new ShaftCount.ByEye(
                Amounts.of(revolutions, SpreadingUnits.REVOLUTION), Amounts.of(uncertainty, SpreadingUnits.REVOLUTION));
        CatchSpeeds speeds = new CatchSpeeds(drive, point.metering().feedback(), Tolerance.percent(4));
        speeds.add(VerificationCatch.of(
                observed(point, caught(100)).counted(counted),
                CalibrationInForce.of(
                        point,
                        CalibrationFactor.of(Amounts.of(1, SpreadingUnits.KILOGRAM_PER_REVOLUTION)),
                        Optional.empty()),
                TestRun.lasting(
                        Amounts.of(asked, SpreadingUnits.KILOGRAM_PER_METER),
                        Amounts.of(1, SpreadingUnits.METER_PER_SECOND),
                        TEN_SECONDS)));
        return codes(speeds.findings());
    }

    @Test
    void aMeanBelowTheRangeCountsOnlyWhereLessWasAskedFor() {
        assertThat(ofMean(18, 150, 0)).containsExactly(FindingCode.CATCH_BELOW_RANGE);
        assertThat(ofMean(19, 150, 0)).isEmpty();
    }

    /** 4 % of 18.4 rev/s are 0.74, and of 18.2 rev/s 0.73; twice 0.75 rev in 10 s are 0.15 rev/s. */
    @ParameterizedTest
    @CsvSource({"184, 0, false", "182, 0, true", "182, 0.75, false", "181, 0.75, true"})
    void aMeanMayBeOffByTheToleranceAndTheCount(double revolutions, double uncertainty, boolean told) {
        assertThat(ofMean(18, revolutions, uncertainty))
                .isEqualTo(told ? List.of(FindingCode.CATCH_BELOW_RANGE) : List.of());
    }

    /** 42 rev/s and the tolerance's 4 % of 43.7 and of 43.8. */
    @ParameterizedTest
    @CsvSource({"437, 0, false", "438, 0, true", "438, 1, false"})
    void soMayOneAboveIt(double revolutions, double uncertainty, boolean told) {
        assertThat(ofMean(30, revolutions, uncertainty))
                .isEqualTo(told ? List.of(FindingCode.CATCH_ABOVE_RANGE) : List.of());
    }
}
