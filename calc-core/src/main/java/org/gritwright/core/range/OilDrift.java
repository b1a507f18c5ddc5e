package org.gritwright.core.range;

import static org.gritwright.core.finding.Argument.number;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Temperature;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;

/**
 * How the speed at one command moves with the temperature of the oil: one slope for all commands that were measured at several
 * temperatures, each about its own mean.
 *
 * @param coldest the point of the lowest temperature
 * @param warmest that of the highest
 * @param perKelvin the slope, revolutions per second and kelvin
 */
record OilDrift(DrivePoint coldest, DrivePoint warmest, double perKelvin) {
    /** The chance that speeds that only scatter are taken for a drift. */
    private static final double CHANCE = 0.05;

    /** The drift, if it is beyond what speeds scatter about it and beyond the resolution of their reading. */
    static Optional<OilDrift> of(List<Branch> branches, Noise noise) {
        double products = 0;
        double squares = 0;
        double ofSpeeds = 0;
        int degrees = -1;
        List<DrivePoint> used = new ArrayList<>();
        for (List<DrivePoint> group : groups(branches)) {
            double weight = group.stream().mapToDouble(DrivePoint::readings).sum();
            double meanKelvins =
                    group.stream().mapToDouble(p -> p.readings() * kelvins(p)).sum() / weight;
            double meanSpeed = group.stream()
                            .mapToDouble(p -> p.readings() * p.revolutionsPerSecond())
                            .sum()
                    / weight;
            for (DrivePoint point : group) {
                double kelvins = kelvins(point) - meanKelvins;
                double speed = point.revolutionsPerSecond() - meanSpeed;
                products += point.readings() * kelvins * speed;
                squares += point.readings() * kelvins * kelvins;
                ofSpeeds += point.readings() * speed * speed;
            }
            degrees += group.size() - 1;
            used.addAll(group);
        }
        if (degrees < 1 || squares == 0) {
            return Optional.empty();
        }
        double slope = products / squares;
        double scatter = Math.sqrt(Math.max(0, ofSpeeds - slope * products) / degrees);
        double certain =
                scatter == 0 ? 0 : Student.of(degrees).coverageFactor(1 - CHANCE) * scatter / Math.sqrt(squares);
        Comparator<DrivePoint> byTemperature = Comparator.comparingDouble(OilDrift::kelvins);
        OilDrift drift = new OilDrift(
                used.stream().min(byTemperature).orElseThrow(),
                used.stream().max(byTemperature).orElseThrow(),
                slope);
        return Math.abs(slope) > certain && Math.abs(drift.moved()) > noise.resolution()
                ? Optional.of(drift)
                : Optional.empty();
    }

    /** The points of one command and direction, where two or more have a temperature. */
    private static List<List<DrivePoint>> groups(List<Branch> branches) {
        List<List<DrivePoint>> groups = new ArrayList<>();
        for (Branch branch : branches) {
            Map<Double, List<DrivePoint>> byCommand = new LinkedHashMap<>();
            for (DrivePoint point : branch.steady()) {
                if (point.oilTemperature().isPresent()) {
                    byCommand
                            .computeIfAbsent(point.command().number(), command -> new ArrayList<>())
                            .add(point);
                }
            }
            groups.addAll(byCommand.values());
        }
        return groups;
    }

    private static double kelvins(DrivePoint point) {
        return Amounts.si(Temperature.class, point.oilTemperature().orElseThrow());
    }

    /** From the coldest to the warmest. */
    private double moved() {
        return perKelvin * (kelvins(warmest) - kelvins(coldest));
    }

    Finding finding(DriveMeasurement measurement) {
        return Finding.of(
                FindingCode.DRIVE_OIL_DRIFT,
                Map.of(
                        "coldest", number(coldest.oilTemperature().orElseThrow()),
                        "warmest", number(warmest.oilTemperature().orElseThrow()),
                        "moved", number(measurement.speed(moved()))));
    }
}
