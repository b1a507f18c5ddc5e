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
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.gritwright.core.calibration.Calibration;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.fleet.review.Sketch;
import org.gritwright.core.metering.ShaftCount;
import org.gritwright.core.observation.Observation;
import org.gritwright.core.verification.VerificationCatch;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
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

    /** Times are written down to the minute. */
    private static final Duration MINUTE = Duration.ofMinutes(1);

    private OddTimes() {}

    /** The first contradiction of each kind. */
    static List<Finding> of(TruckReader read, List<Observation> all, List<PointHistory> histories) {
        List<Finding> findings = new ArrayList<>();
        halfADayOff(all.stream().map(Observation::at).toList()).ifPresent(findings::add);
        histories.stream()
                .flatMap(history -> beforeCalibration(history).stream())
                .findFirst()
                .ifPresent(findings::add);
        histories.stream()
                .flatMap(history -> history.beforeItsValue().stream())
                .findFirst()
                .ifPresent(findings::add);
        counterBackwards(all).or(() -> countsOverlap(all)).ifPresent(findings::add);
        runsOverlap(read.verificationCatches()).ifPresent(findings::add);
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
                .filter(one -> Sketch.isRounded(one.inForce(), found))
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

    /** A counter that was set back begins again low, or a little later where material fell first: not where it nearly ended. */
    private static Optional<Finding> countsOverlap(List<Observation> inOrder) {
        Optional<Observation> before = Optional.empty();
        for (Observation one : inOrder) {
            if (one.counted().orElse(null) instanceof ShaftCount.CounterReadings count) {
                Optional<Finding> overlap = before.filter(
                                earlier -> earlier.at().isBefore(one.at()))
                        .flatMap(earlier -> overlap(earlier, one, count));
                if (overlap.isPresent()) {
                    return overlap;
                }
                before = Optional.of(one);
            }
        }
        return Optional.empty();
    }

    private static Optional<Finding> overlap(Observation earlier, Observation later, ShaftCount.CounterReadings count) {
        ShaftCount.CounterReadings before =
                (ShaftCount.CounterReadings) earlier.counted().orElseThrow();
        double begin = Amounts.si(PulseCount.class, count.start());
        double begun = Amounts.si(PulseCount.class, before.start());
        double ended = Amounts.si(PulseCount.class, before.stop());
        return begin > (begun + ended) / 2 && begin < ended
                ? Optional.of(Finding.of(
                        FindingCode.COUNTS_OVERLAP,
                        Map.of(
                                "reading", number(count.start()),
                                "passed", number(before.stop()),
                                "first", time(earlier.at()),
                                "second", time(later.at()))))
                : Optional.empty();
    }

    /** Whether the times are of the beginnings of runs or of their ends, two runs of one truck are as far apart as one lasts. */
    private static Optional<Finding> runsOverlap(List<VerificationCatch> catches) {
        List<VerificationCatch> timed = catches.stream()
                .filter(one -> one.run().runTime().isPresent())
                .sorted(Comparator.comparing(one -> one.observation().at()))
                .toList();
        for (int i = 1; i < timed.size(); i++) {
            OffsetDateTime first = timed.get(i - 1).observation().at();
            OffsetDateTime second = timed.get(i).observation().at();
            Duration apart = Duration.between(first, second);
            double seconds = Math.min(seconds(timed.get(i - 1)), seconds(timed.get(i)));
            if (!apart.isZero() && apart.plus(MINUTE).toSeconds() < seconds) {
                return Optional.of(Finding.of(
                        FindingCode.RUNS_OVERLAP,
                        Map.of(
                                "first", time(first),
                                "second", time(second),
                                "apart", number(Amounts.of(apart.toSeconds() / 60.0, SpreadingUnits.MINUTE)),
                                "runTime", number(Amounts.of(seconds, SpreadingUnits.SECOND)))));
            }
        }
        return Optional.empty();
    }

    private static double seconds(VerificationCatch one) {
        return Amounts.si(Time.class, one.run().runTime().orElseThrow());
    }
}
