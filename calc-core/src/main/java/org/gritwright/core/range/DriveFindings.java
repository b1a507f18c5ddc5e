package org.gritwright.core.range;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Term;
import org.gritwright.core.statistics.MonotoneRegression;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** What a person should know about a drive that was measured. */
record DriveFindings(DriveMeasurement measurement, Noise noise) {
    /** Commands at which the shaft turned, in one direction. Fewer hardly show how it bends: common practice, no source. */
    static final int FEWEST_COMMANDS = 4;

    /** The chance that readings that only scatter are taken for a reversal somewhere in a direction. */
    private static final double CHANCE = 0.05;

    List<Finding> of(Branch up, Branch down) {
        List<Finding> found = new ArrayList<>();
        List<Branch> measured =
                Stream.of(up, down).filter(branch -> !branch.points.isEmpty()).toList();
        DriveSlips slips = new DriveSlips(measurement);
        for (Branch branch : measured) {
            tooFew(branch).ifPresent(found::add);
            thresholdOpen(branch).ifPresent(found::add);
            reversal(branch).ifPresent(found::add);
            slips.leap(branch).ifPresent(found::add);
            jerky(branch).ifPresent(found::add);
        }
        slips.apart(up, down).ifPresent(found::add);
        if (measured.size() == 1) {
            found.add(Finding.of(
                    FindingCode.DRIVE_ONE_DIRECTION,
                    Map.of("direction", measured.get(0).direction.term())));
        }
        if (!noise.isKnown() && !measured.isEmpty()) {
            found.add(Finding.of(FindingCode.DRIVE_NOT_REPEATED));
        }
        OilDrift.of(measured, noise).map(drift -> drift.finding(measurement)).ifPresent(found::add);
        conditions(AtWork.NO, FindingCode.DRIVE_NOT_AS_AT_WORK).ifPresent(found::add);
        conditions(AtWork.NOT_SAID, FindingCode.DRIVE_CONDITIONS_NOT_SAID).ifPresent(found::add);
        return List.copyOf(found);
    }

    private Optional<Finding> tooFew(Branch branch) {
        int commands = branch.rows.size();
        return commands >= FEWEST_COMMANDS
                ? Optional.empty()
                : Optional.of(Finding.of(
                        FindingCode.DRIVE_POINTS_FEW,
                        Map.of(
                                "direction", branch.direction.term(),
                                "commands", number(Amounts.of(commands, SpreadingUnits.ONE)),
                                "wanted", number(Amounts.of(FEWEST_COMMANDS, SpreadingUnits.ONE)))));
    }

    private Optional<Finding> thresholdOpen(Branch branch) {
        if (!branch.isThresholdOpen(measurement.scale())) {
            return Optional.empty();
        }
        return Optional.of(Finding.of(
                FindingCode.DRIVE_THRESHOLD_OPEN,
                Map.of(
                        "direction", branch.direction.term(),
                        "from", command(branch.rest.orElse(measurement.scale().lowest())),
                        "to", command(branch.turning.orElseThrow()))));
    }

    /** The one that exceeds noise by most; a shaft that stands where it turned at a lower command exceeds it for certain. */
    private Optional<Finding> reversal(Branch branch) {
        Optional<DrivePoint> turned = branch.turnedBelowRest();
        if (turned.isPresent()) {
            DrivePoint rested = branch.points.stream()
                    .filter(point -> !point.isTurning())
                    .max((a, b) ->
                            Double.compare(a.command().number(), b.command().number()))
                    .orElseThrow();
            return Optional.of(reversal(
                    branch.direction,
                    turned.get().command(),
                    turned.get().revolutionsPerSecond(),
                    rested.command(),
                    0));
        }
        List<MonotoneRegression.Row> rows = branch.rows;
        double pairs = rows.size() * (rows.size() - 1) / 2.0;
        double most = 0;
        Optional<Finding> worst = Optional.empty();
        for (int i = 0; i < rows.size(); i++) {
            for (int j = i + 1;
                    j < rows.size() && rows.get(j).block() == rows.get(i).block();
                    j++) {
                MonotoneRegression.Row first = rows.get(i);
                MonotoneRegression.Row second = rows.get(j);
                double beyond =
                        first.mean() - second.mean() - noise.allowance(first.weight(), second.weight(), CHANCE / pairs);
                if (beyond > most) {
                    most = beyond;
                    worst = Optional.of(reversal(
                            branch.direction,
                            measurement.scale().at(first.x()),
                            first.mean(),
                            measurement.scale().at(second.x()),
                            second.mean()));
                }
            }
        }
        return worst;
    }

    private Finding reversal(Direction direction, Command first, double higher, Command second, double lower) {
        return Finding.of(
                FindingCode.DRIVE_REVERSAL,
                Map.of(
                        "direction", direction.term(),
                        "first", command(first),
                        "higher", number(measurement.speed(higher)),
                        "second", command(second),
                        "lower", number(measurement.speed(lower))));
    }

    /** The slowest speed that is jerky: there it matters. */
    private Optional<Finding> jerky(Branch branch) {
        return branch.rows.stream().filter(branch::isJerky).findFirst().map(row -> {
            double scatter = Math.max(Branch.ownDeviation(row).orElse(0), branch.greatestSwing(row) / 2);
            return Finding.of(
                    FindingCode.DRIVE_JERKY,
                    Map.of(
                            "direction", branch.direction.term(),
                            "command", command(measurement.scale().at(row.x())),
                            "speed", number(measurement.speed(row.mean())),
                            "scatter", number(measurement.speed(scatter)),
                            "limit", number(Amounts.ofSi(Branch.JERKY, SpreadingUnits.PERCENT))));
        });
    }

    private Optional<Finding> conditions(AtWork was, FindingCode code) {
        List<Term> terms = measurement.conditions().that(was);
        return terms.isEmpty()
                ? Optional.empty()
                : Optional.of(Finding.of(code, Map.of("missing", Argument.several(terms))));
    }

    private static Argument command(Command command) {
        return number(command.quantity());
    }
}
