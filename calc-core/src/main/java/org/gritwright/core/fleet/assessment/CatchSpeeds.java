package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.CalibrationCatch;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.metering.DriveFeedback;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.RangeEnd;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.verification.TestRun;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * How fast the shaft turned in catches, where that is known, compared with what the drive is said to hold. A speed that was read, or
 * follows from a control setting, is taken as it is; of a verification catch the mean over its run is known, from the count and the
 * time. Readings of a watch may be off, so that a mean counts only where it is off by more than the day's tolerance.
 */
final class CatchSpeeds {
    /** Standard uncertainties of a count (common practice, no source). */
    private static final double COVERED = 2;

    /** Nearer to 1 a gear ratio explains nothing (common practice, no source). */
    private static final double GEARED = 0.1;

    /**
     * How fast the shaft turned in a catch.
     *
     * @param at when
     * @param speed revolutions per second
     * @param around how far that may be off, either way
     * @param asked the speed that was asked for; 0 where it was set by hand
     */
    private record Turned(OffsetDateTime at, double speed, double around, double asked) {}

    /** Within so many times a range a catch is told as what is beyond that range, and not by another shaft (common practice, no source). */
    private static final double NEARLY = 2.5;

    private final DriveAssessment drive;
    private final double gearRatio;
    private final double tolerance;
    private final List<Turned> turned = new ArrayList<>();

    CatchSpeeds(DriveAssessment drive, DriveFeedback feedback, Tolerance tolerance) {
        this.drive = drive;
        this.gearRatio = Amounts.si(Dimensionless.class, feedback.gearRatio());
        this.tolerance = Amounts.si(Dimensionless.class, tolerance.limit());
    }

    void add(CalibrationCatch made) {
        readOff(made.observation(), 0).ifPresent(turned::add);
    }

    void add(VerificationCatch made) {
        double asked = asked(made);
        readOff(made.observation(), asked).or(() -> mean(made, asked)).ifPresent(turned::add);
    }

    /** The shaft speed that target rate and test speed ask for, by the value in force. */
    static double asked(VerificationCatch made) {
        TestRun run = made.run();
        return run.kilogramsPerMeter(made.point().material())
                * Amounts.si(Speed.class, run.testSpeed())
                / made.inForce().kilogramsPerRevolution();
    }

    private Optional<Turned> readOff(Observation made, double asked) {
        return made.counted().flatMap(count -> speed(count, made)).map(speed -> new Turned(made.at(), speed, 0, asked));
    }

    private static Optional<Double> speed(ShaftCount count, Observation made) {
        if (count instanceof ShaftCount.SpeedTimesTime timed) {
            return Optional.of(Amounts.si(RotationalSpeed.class, timed.speed()));
        }
        return count instanceof ShaftCount.SettingTimesTime set
                        && made.point().metering().feedback() instanceof OpenLoop openLoop
                ? Optional.of(Amounts.si(RotationalSpeed.class, openLoop.shaftSpeed(set.setting())))
                : Optional.empty();
    }

    private Optional<Turned> mean(VerificationCatch made, double asked) {
        if (made.counted().isEmpty()) {
            return Optional.empty();
        }
        Observation observation = made.observation();
        double seconds = seconds(made.run());
        double speed = observation.revolutions().orElseThrow() / seconds;
        double around = COVERED * observation.uncertaintyRevolutions().orElse(0) / seconds + tolerance * speed;
        return Optional.of(new Turned(observation.at(), speed, around, asked));
    }

    private static double seconds(TestRun run) {
        return run.runTime()
                .map(time -> Amounts.si(Time.class, time))
                .orElseGet(
                        () -> Amounts.si(Length.class, run.testDistance()) / Amounts.si(Speed.class, run.testSpeed()));
    }

    /** The catch that is farthest above the range, and the one that is farthest below it. */
    List<Finding> findings() {
        Optional<Finding> above = drive.highest().filter(RangeEnd::proven).flatMap(this::above);
        Optional<Finding> below = drive.lowest().filter(RangeEnd::proven).flatMap(this::below);
        return Stream.concat(above.stream(), below.stream()).toList();
    }

    private Optional<Finding> above(RangeEnd highest) {
        double most = DriveCheck.si(highest.speed()) + DriveCheck.si(highest.allowance());
        return turned.stream()
                .filter(one -> one.speed() - one.around() > most)
                .max(Comparator.comparingDouble(Turned::speed))
                .map(one -> ofOtherShaft(one)
                        .orElseGet(() -> Finding.of(
                                FindingCode.CATCH_ABOVE_RANGE,
                                Map.of(
                                        "at", time(one.at()),
                                        "speed", speed(one),
                                        "highest", number(highest.speed())))));
    }

    /** A shaft that was asked to turn within the range and was slower started late, or met a limit: that isn't told by its mean. */
    private Optional<Finding> below(RangeEnd lowest) {
        double least = DriveCheck.si(lowest.speed()) - DriveCheck.si(lowest.allowance());
        return turned.stream()
                .filter(one -> one.speed() + one.around() < least && one.asked() < least)
                .min(Comparator.comparingDouble(Turned::speed))
                .map(one -> ofOtherShaft(one)
                        .orElseGet(() -> Finding.of(
                                FindingCode.CATCH_BELOW_RANGE,
                                Map.of(
                                        "at", time(one.at()),
                                        "speed", speed(one),
                                        "lowest", number(lowest.speed())))));
    }

    /** If all catches are within the range in turns of the conveyor's own shaft, the range is probably that shaft's. */
    private Optional<Finding> ofOtherShaft(Turned one) {
        WorkingRange range = drive.range().orElseThrow();
        boolean agrees = Math.abs(Math.log(gearRatio)) > GEARED
                && !isNearly(range, one.speed())
                && turned.stream().allMatch(other -> DriveCheck.isWithin(range, other.speed() / gearRatio));
        return agrees
                ? Optional.of(Finding.of(
                        FindingCode.DRIVE_OF_OTHER_SHAFT,
                        Map.of(
                                "at", time(one.at()),
                                "speed", speed(one),
                                "lowest", number(range.lowest()),
                                "highest", number(range.highest()),
                                "gearRatio", number(Amounts.ofSi(gearRatio, SpreadingUnits.ONE)))))
                : Optional.empty();
    }

    private static boolean isNearly(WorkingRange range, double speed) {
        return speed >= DriveCheck.si(range.lowest()) / NEARLY && speed <= DriveCheck.si(range.highest()) * NEARLY;
    }

    private Argument speed(Turned one) {
        Quantity<RotationalSpeed> like = drive.range().orElseThrow().highest();
        return number(Amounts.ofSi(one.speed(), like.getUnit()));
    }
}
