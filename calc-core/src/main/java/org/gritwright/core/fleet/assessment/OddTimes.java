package org.gritwright.core.fleet.assessment;

import static org.gritwright.core.finding.Argument.number;
import static org.gritwright.core.finding.Argument.time;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.DischargePerRevolution;
import org.gritwright.units.quantity.PulseCount;

/**
 * Times of one truck's catches that contradict each other. Several catches under one time, in any order in the document, and
 * work at night are habits and no contradictions.
 */
final class OddTimes {
    /** Outside of these hours it is night (common practice, no source). */
    private static final int FIRST_HOUR = 5;

    private static final int LAST_HOUR = 20;

    /** How near to another the next catch usually is (common practice, no source). */
    private static final Duration NEXT = Duration.ofMinutes(30);

    /** How far an entered value may be from its calibration, (common practice, no source). */
    private static final double ROUNDED = 0.002;

    private OddTimes() {}

    /** The first contradiction of each kind. */
    static List<Finding> of(TruckReader read, List<PointHistory> histories) {
        List<Observation> all = Stream.concat(
                        read.calibrationCatches().stream().map(one -> one.observation()),
                        read.verificationCatches().stream().map(VerificationCatch::observation))
                .sorted(Comparator.comparing(Observation::at))
                .toList();
        List<Finding> findings = new ArrayList<>();
        halfADayOff(all.stream().map(Observation::at).toList()).ifPresent(findings::add);
        histories.stream()
                .flatMap(history -> beforeCalibration(history).stream())
                .findFirst()
                .ifPresent(findings::add);
        counterBackwards(all).ifPresent(findings::add);
        return findings;
    }

    private static boolean isAtNight(OffsetDateTime at) {
        return at.getHour() < FIRST_HOUR || at.getHour() >= LAST_HOUR;
    }

    private static Optional<Finding> halfADayOff(List<OffsetDateTime> times) {
        List<OffsetDateTime> byDay = times.stream().filter(at -> !isAtNight(at)).toList();
        return times.stream()
                .filter(OddTimes::isAtNight)
                .flatMap(at -> {
                    OffsetDateTime instead = at.plusHours(at.getHour() < 12 ? 12 : -12);
                    return byDay.stream()
                            .filter(other ->
                                    Duration.between(other, instead).abs().compareTo(NEXT) <= 0)
                            .map(other -> Finding.of(
                                    FindingCode.CATCH_HALF_A_DAY_OFF,
                                    Map.of("at", time(at), "instead", time(instead), "neighbor", time(other))));
                })
                .findFirst();
    }

    /** With the day's calibration in the display, which nobody lists as in force, before there was one. */
    private static Optional<Finding> beforeCalibration(PointHistory history) {
        if (history.calibration().isEmpty() || history.inForce().isEmpty()) {
            return Optional.empty();
        }
        Calibration calibration = history.calibration().get();
        OffsetDateTime first = calibration.catches().stream()
                .map(one -> one.observation().at())
                .min(Comparator.naturalOrder())
                .orElseThrow();
        double found = Amounts.si(
                DischargePerRevolution.class,
                calibration.dischargePerRevolution().value());
        return history.verified()
                .filter(one -> one.observation().at().isBefore(first))
                .filter(one -> Math.abs(one.inForce().kilogramsPerRevolution() / found - 1) <= ROUNDED)
                .filter(one -> history.inForce().stream()
                        .noneMatch(
                                listed -> listed.factor().equals(one.inForce().factor())))
                .findFirst()
                .map(one -> Finding.of(
                        FindingCode.CATCH_BEFORE_CALIBRATION,
                        Map.of(
                                "at", time(one.observation().at()),
                                "value", number(one.inForce().factor().value()),
                                "calibrated", time(first))));
    }

    /** A reading that ends one catch and begins another says which came first; one of 0 may be a counter set back. */
    private static Optional<Finding> counterBackwards(List<Observation> inOrder) {
        Map<Double, OffsetDateTime> begun = new HashMap<>();
        for (Observation one : inOrder) {
            if (one.counted().orElse(null) instanceof ShaftCount.CounterReadings count) {
                Quantity<PulseCount> stop = count.stop();
                // A wrong date is told of elsewhere.
                Optional<OffsetDateTime> next = Optional.ofNullable(begun.get(Amounts.si(PulseCount.class, stop)))
                        .filter(at -> at.isBefore(one.at())
                                && at.toLocalDate().equals(one.at().toLocalDate()));
                if (next.isPresent() && Amounts.si(PulseCount.class, stop) > 0) {
                    return Optional.of(Finding.of(
                            FindingCode.COUNTER_RUNS_BACKWARDS,
                            Map.of(
                                    "reading", number(stop),
                                    "first", time(one.at()),
                                    "second", time(next.get()))));
                }
                begun.putIfAbsent(Amounts.si(PulseCount.class, count.start()), one.at());
            }
        }
        return Optional.empty();
    }
}
