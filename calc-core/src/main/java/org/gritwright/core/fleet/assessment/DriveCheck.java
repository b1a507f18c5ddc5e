package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.range.Command;
import org.gritwright.core.range.CommandScale;
import org.gritwright.core.range.Direction;
import org.gritwright.core.range.DriveCurve;
import org.gritwright.core.range.DrivePoint;
import org.gritwright.core.range.DriveResponse;
import org.gritwright.core.range.StatedRange;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.RotationalSpeed;

/** What a truck's drive does, and whether what is said of it in several places agrees. */
final class DriveCheck {
    /** Findings of a drive by which something that was written down can't be right. */
    private static final Set<FindingCode> CONTRADICTIONS = Set.of(
            FindingCode.DRIVE_RANGE_DISAGREES,
            FindingCode.STATED_RANGE_OF_OTHER_SHAFT,
            FindingCode.DRIVE_REVERSAL,
            FindingCode.DRIVE_READINGS_APART,
            FindingCode.DRIVE_SPEED_LEAPS);

    private static final double COVERAGE = 0.95;

    /** A gear ratio nearer to 1 makes no two ranges that people would take for two shafts': common practice, no source. */
    private static final double GEARED = 0.2;

    /** How nearly two ranges must be a gear ratio apart: common practice, no source. */
    private static final double NEAR = 0.1;

    /** So closely a table of control settings may differ in any case: common practice, no source. */
    private static final double TABLE = 0.02;

    private DriveCheck() {}

    static DriveAssessment of(
            Optional<DriveResponse> response, Optional<StatedRange> stated, Quantity<Dimensionless> gearRatio) {
        List<Finding> findings = new ArrayList<>();
        response.ifPresent(measured -> {
            findings.addAll(measured.findings());
            stated.ifPresent(other -> compared(measured, other, gearRatio).ifPresent(findings::add));
        });
        return new DriveAssessment(response, stated, findings);
    }

    /** A difference that the gear ratio explains says more than that there is one. */
    private static Optional<Finding> compared(
            DriveResponse measured, StatedRange stated, Quantity<Dimensionless> gearRatio) {
        Optional<Finding> otherShaft = measured.workingRange()
                .filter(range -> isGear(
                        si(range.highest()) / si(stated.range().highest()), Amounts.si(Dimensionless.class, gearRatio)))
                .map(range -> Finding.of(
                        FindingCode.STATED_RANGE_OF_OTHER_SHAFT,
                        Map.of(
                                "lowest", number(range.lowest()),
                                "highest", number(range.highest()),
                                "otherLowest", number(stated.range().lowest()),
                                "otherHighest", number(stated.range().highest()),
                                "gearRatio", number(gearRatio))));
        return otherShaft.or(() -> measured.comparedWith(stated).stream().findFirst());
    }

    private static boolean isGear(double ratio, double gearRatio) {
        double geared = Math.abs(Math.log(gearRatio));
        return geared > GEARED && Math.abs(Math.abs(Math.log(ratio)) - geared) < NEAR;
    }

    /** What says that an entry is wrong. */
    static Stream<Finding> contradictions(DriveAssessment drive) {
        return drive.findings().stream().filter(found -> CONTRADICTIONS.contains(found.code()));
    }

    /** Whoever caught something saw the shaft turn. */
    static Optional<Finding> neverTurned(DriveAssessment drive, List<Observation> inOrder) {
        return drive.response()
                .filter(DriveCheck::standsStill)
                .flatMap(still -> inOrder.stream()
                        .findFirst()
                        .map(made -> Finding.of(FindingCode.DRIVE_NEVER_TURNED, Map.of("at", time(made.at())))));
    }

    private static boolean standsStill(DriveResponse measured) {
        return measured.measurement().runs().stream()
                .flatMap(run -> run.points().stream())
                .noneMatch(DrivePoint::isTurning);
    }

    static boolean isNarrower(DriveAssessment drive) {
        return drive.findings().stream().anyMatch(found -> found.code() == FindingCode.DRIVE_RANGE_NARROWER);
    }

    /** What is wrong with a table of control settings by what was measured with commands of that kind. */
    static Stream<Finding> controlSettings(DriveAssessment drive, List<OpenLoop.Row> table) {
        return Stream.concat(offScale(drive, table).stream(), unlike(drive, table).stream());
    }

    /** The row whose setting is farthest off the scale of commands. */
    private static Optional<Finding> offScale(DriveAssessment drive, List<OpenLoop.Row> table) {
        return drive.response().flatMap(measured -> {
            CommandScale scale = measured.measurement().scale();
            return table.stream()
                    .filter(row -> isOfKind(scale, row) && beyond(scale, row) > 0)
                    .max(Comparator.comparingDouble(row -> beyond(scale, row)))
                    .map(row -> Finding.of(
                            FindingCode.CONTROL_SETTING_OFF_SCALE,
                            Map.of(
                                    "setting", number(row.setting()),
                                    "table", number(row.shaftSpeed()),
                                    "lowest", number(scale.lowest().quantity()),
                                    "highest", number(scale.highest().quantity()))));
        });
    }

    private static boolean isOfKind(CommandScale scale, OpenLoop.Row row) {
        return Command.of(row.setting()).in() == scale.lowest().in();
    }

    private static double beyond(CommandScale scale, OpenLoop.Row row) {
        double number = Command.of(row.setting()).number();
        return Math.max(
                scale.lowest().number() - number, number - scale.highest().number());
    }

    /** The row that is farthest from what was measured at the same command, both ways. */
    private static Optional<Finding> unlike(DriveAssessment drive, List<OpenLoop.Row> table) {
        return drive.response()
                .flatMap(measured -> table.stream()
                        .flatMap(row -> difference(measured, row).stream())
                        .max((one, other) -> Double.compare(one.beyond(), other.beyond()))
                        .map(worst -> Finding.of(
                                FindingCode.CONTROL_SETTING_DISAGREES,
                                Map.of(
                                        "setting", number(worst.row().setting()),
                                        "table", number(worst.row().shaftSpeed()),
                                        "measured", number(worst.measured())))));
    }

    /** By how much a row is beyond what may be, relative to its speed. */
    private record Difference(OpenLoop.Row row, Quantity<RotationalSpeed> measured, double beyond) {}

    /** A row is right if it agrees with the speed in one direction: nobody says how its setting was reached. */
    private static Optional<Difference> difference(DriveResponse measured, OpenLoop.Row row) {
        CommandScale scale = measured.measurement().scale();
        if (!isOfKind(scale, row) || beyond(scale, row) > 0) {
            return Optional.empty();
        }
        Command command = Command.of(row.setting());
        double resolution = si(measured.measurement().speedResolution());
        List<Difference> all = Stream.of(Direction.values())
                .flatMap(direction -> measured.curve(direction).stream())
                .flatMap((DriveCurve curve) -> curve.speedAt(command).stream())
                .map(speed -> difference(row, speed, resolution))
                .toList();
        return all.stream()
                .min((one, other) -> Double.compare(one.beyond(), other.beyond()))
                .filter(nearest -> nearest.beyond() > 0);
    }

    private static Difference difference(OpenLoop.Row row, Measured<RotationalSpeed> speed, double resolution) {
        double stated = si(row.shaftSpeed());
        double allowance = resolution
                + Math.max(
                        TABLE * stated,
                        speed.expandedUncertainty(COVERAGE).map(DriveCheck::si).orElse(0.0));
        return new Difference(row, speed.value(), Math.abs(stated - si(speed.value())) - allowance);
    }

    static double si(Quantity<RotationalSpeed> speed) {
        return Amounts.si(RotationalSpeed.class, speed);
    }

    static boolean isWithin(WorkingRange range, double revolutionsPerSecond) {
        return revolutionsPerSecond >= si(range.lowest()) && revolutionsPerSecond <= si(range.highest());
    }
}
