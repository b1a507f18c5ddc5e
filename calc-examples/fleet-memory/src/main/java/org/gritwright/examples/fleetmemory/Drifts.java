package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.History;
import org.gritwright.core.history.drift.BetweenDays;
import org.gritwright.core.history.drift.DischargeHistory;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.DriftRule;
import org.gritwright.core.history.drift.Stretch;
import org.gritwright.core.history.drift.Trend;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * What left per revolution at all points of a fleet, on charts.
 *
 * @param rule the charts' designs; none where there are too few points to share false alarms
 * @param points truck by truck
 */
record Drifts(BetweenDays betweenDays, Optional<DriftRule> rule, List<OfPoint> points) {
    /** How much a truck in order is taken to vary until its fleet shows it (common practice, no source). */
    private static final double ASSUMED_PERCENT = 1;

    /** About ten years of two values (common practice, no source). */
    static final int VALUES = 20;

    /** The chance that a line is taken to rise or fall where nothing drifts, of so few points that no charts watch them (common practice, no source). */
    private static final double TREND_RISK = 0.01;

    private static final int DAYS_AHEAD = 3660;

    /**
     * A point.
     *
     * @param name what it is called
     * @param charts those of each stretch
     * @param trend that of the stretch that lasts
     * @param held what the display holds for it
     */
    record OfPoint(
            DischargeHistory history,
            String name,
            List<DriftChart> charts,
            Optional<Trend> trend,
            Optional<Held> held) {
        /** The first alarm of the stretch that lasts, unless a calibration has cleared it. */
        Optional<Event> signal() {
            return charts.isEmpty()
                    ? Optional.empty()
                    : charts.get(charts.size() - 1).standingSignal();
        }

        /** Alarms of earlier charts, after each of which something was done. */
        List<Event> cleared() {
            List<Event> cleared = new ArrayList<>();
            for (int i = 0; i < charts.size(); i++) {
                cleared.addAll(charts.get(i).clearedSignals());
                if (i < charts.size() - 1) {
                    charts.get(i).standingSignal().ifPresent(cleared::add);
                }
            }
            return cleared;
        }

        boolean isFew() {
            return charts.isEmpty() || charts.get(charts.size() - 1).isFew();
        }

        /** When the error of what the display holds leaves the tolerance, if the trend goes on. */
        Optional<Trend.Leaving> leaving(Tolerance tolerance, Instant from) {
            return trend.flatMap(line -> held.map(Held::value).map(value -> leaving(line, value, tolerance, from)));
        }

        private static Trend.Leaving leaving(Trend line, CalibrationInForce value, Tolerance tolerance, Instant from) {
            return line.leaves(value, tolerance, from, DAYS_AHEAD);
        }
    }

    /** Shared by all points. */
    double trendRisk() {
        return rule.map(DriftRule::trendRisk).orElse(TREND_RISK);
    }

    /** @param allowed how many false alarms of the whole fleet are taken within {@link #VALUES} values of each point */
    static Drifts of(History history, double allowed, Instant at) {
        List<DischargeHistory> all = DischargeHistory.until(history, at);
        BetweenDays between =
                BetweenDays.of(all, BetweenDays.assumed(Amounts.of(ASSUMED_PERCENT, SpreadingUnits.PERCENT)));
        Optional<DriftRule> rule = all.size() > allowed
                ? Optional.of(DriftRule.forFleet(between, allowed, all.size(), VALUES))
                : Optional.empty();
        return new Drifts(
                between,
                rule,
                all.stream().map(one -> point(history, one, between, rule, at)).toList());
    }

    private static OfPoint point(
            History history, DischargeHistory one, BetweenDays between, Optional<DriftRule> rule, Instant at) {
        return new OfPoint(
                one,
                name(one),
                rule.stream()
                        .flatMap(chart -> one.stretches().stream().map(stretch -> DriftChart.of(stretch, chart)))
                        .toList(),
                Trend.of(one.current(), between),
                history.asOf(one.truck(), at).value(one.point()));
    }

    private static String name(DischargeHistory one) {
        return one.stretches().stream()
                .map(Stretch::implied)
                .flatMap(List::stream)
                .reduce((first, last) -> last)
                .flatMap(last -> last.by().what().point())
                .map(CalibrationPoint::toString)
                .orElse(one.point().material());
    }
}
