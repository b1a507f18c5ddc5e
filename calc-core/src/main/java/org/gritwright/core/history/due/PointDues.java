package org.gritwright.core.history.due;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.History;
import org.gritwright.core.history.Standing;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DischargeHistory;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Trend;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.RevolutionCount;

/** What is due at the points of one truck. */
final class PointDues {
    private final History history;
    private final DueSettings settings;
    private final LocalDate on;
    private final Instant end;
    private final String truck;
    private final List<Event> events;
    private final Map<List<String>, Double> planned;

    PointDues(
            History history,
            DueSettings settings,
            LocalDate on,
            String truck,
            List<Event> events,
            Map<List<String>, Double> planned) {
        this.history = history;
        this.settings = settings;
        this.on = on;
        this.truck = truck;
        this.events = events;
        this.planned = planned;
        this.end = on.atTime(LocalTime.MAX).toInstant(history.yard());
    }

    private boolean isPast(Event event) {
        return !history.instant(event).isAfter(end);
    }

    private LocalDate day(Event event) {
        return history.instant(event).atOffset(history.yard()).toLocalDate();
    }

    Optional<Due> held(Held held) {
        CalibrationPoint point = held.value().point();
        List<Reason> reasons = new ArrayList<>();
        for (DueRule rule : settings.rules()) {
            reason(rule, held)
                    .filter(reason -> !reason.by().isAfter(on.plus(settings.ahead())))
                    .ifPresent(reasons::add);
        }
        if (reasons.isEmpty()) {
            return Optional.empty();
        }
        double expected = ExpectedError.of(held, settings);
        return Optional.of(due(
                point,
                Optional.of(held),
                reasons,
                expected,
                LeastWork.of(held, reasons, settings.tolerance(), lastCaught(point.key()))));
    }

    /** A value that the display lost is due whatever the rules say, if any rule asks for what isn't proven. */
    Optional<Due> lost(CalibrationInForce value, Event by) {
        return settings.rules().stream()
                .filter(rule -> rule instanceof DueRule.WhileNotProven)
                .findFirst()
                .map(rule -> due(
                        value.point(),
                        Optional.empty(),
                        List.of(new Reason(
                                rule,
                                by.what().words() + " on " + day(by) + ": nobody knows what the display holds",
                                day(by),
                                Optional.of(by))),
                        1,
                        new Work.EnterAgain(
                                value,
                                LeastWork.proof(
                                        0,
                                        settings.tolerance(),
                                        lastCaught(value.point().key()),
                                        value.point()))));
    }

    private Due due(CalibrationPoint point, Optional<Held> held, List<Reason> reasons, double expected, Work work) {
        double mass = planned.getOrDefault(List.of(truck, point.material().name()), 0.0);
        return new Due(
                truck,
                point,
                held,
                reasons,
                Amounts.ofSi(expected, SpreadingUnits.PERCENT),
                Amounts.ofSi(expected * mass, settings.planned().isEmpty() ? SpreadingUnits.POUND : massUnit()),
                work);
    }

    private Unit<Mass> massUnit() {
        return UnitSymbol.tradeUnit(Mass.class, settings.planned().get(0).mass());
    }

    /** The last calibration or verification of a point, from which it is known how catches scatter there. */
    private Optional<Event> lastCaught(CalibrationPoint.Key point) {
        return events.stream()
                .filter(this::isPast)
                .filter(event -> event.what() instanceof What.Calibrated || event.what() instanceof What.Verified)
                .filter(event -> event.what().point().orElseThrow().key().equals(point))
                .reduce((one, other) -> other);
    }

    /** When the point was last done, in the way that a rule asks for. */
    private Optional<Event> lastDone(CalibrationPoint.Key point, ClearedBy clearedBy) {
        return events.stream()
                .filter(this::isPast)
                .filter(event -> event.what()
                        .point()
                        .filter(one -> one.key().equals(point))
                        .isPresent())
                .filter(event -> event.what() instanceof What.Calibrated
                        || (clearedBy == ClearedBy.VERIFICATION
                                && event.what() instanceof What.Verified verified
                                && verified.verdict() == Verdict.WITHIN_TOLERANCE))
                .reduce((one, other) -> other);
    }

    private Optional<Reason> reason(DueRule rule, Held held) {
        CalibrationPoint.Key point = held.value().point().key();
        Optional<Event> done = lastDone(point, rule.clearedBy());
        if (rule instanceof DueRule.EachSeason season) {
            return season(season, done);
        } else if (rule instanceof DueRule.AfterChange) {
            return changed(rule, done);
        } else if (rule instanceof DueRule.AfterTime age) {
            LocalDate by = done.map(this::day).map(day -> day.plus(age.most())).orElse(on);
            return Optional.of(new Reason(
                    rule,
                    done.map(event -> "last " + word(rule) + " on " + day(event))
                            .orElse("no " + word(rule) + " known"),
                    by,
                    Optional.empty()));
        } else if (rule instanceof DueRule.WhileNotProven) {
            return notProven(rule, held);
        } else if (rule instanceof DueRule.OtherLot other) {
            return otherLot(other, held, done);
        } else if (rule instanceof DueRule.OnDrift drift) {
            return drift(drift, held);
        }
        return used(rule, point, done);
    }

    private static String word(DueRule rule) {
        return rule.clearedBy() == ClearedBy.CALIBRATION ? "calibration" : "calibration or passed verification";
    }

    private Optional<Reason> season(DueRule.EachSeason rule, Optional<Event> done) {
        return history.standingOfFleet().stream()
                .filter(event -> event.what() instanceof What.SeasonStarted)
                .filter(event -> !day(event).isAfter(on.plus(settings.ahead())))
                .reduce((one, other) -> other)
                .filter(event -> done.map(this::day)
                        .filter(day -> !day.isBefore(day(event).minus(rule.preparation())))
                        .isEmpty())
                .map(event -> new Reason(
                        rule,
                        "no " + word(rule) + " for the season from " + day(event),
                        day(event),
                        Optional.of(event)));
    }

    /** A change of the same day is taken to have been made before. */
    private Optional<Reason> changed(DueRule rule, Optional<Event> done) {
        return events.stream()
                .filter(this::isPast)
                .filter(event -> event.what() instanceof What.Changed changed && changed.concernsMass())
                .filter(event -> done.map(one -> day(one).isBefore(day(event))).orElse(true))
                .reduce((one, other) -> other)
                .map(event ->
                        new Reason(rule, event.what().words() + " on " + day(event), day(event), Optional.of(event)));
    }

    private Optional<Reason> notProven(DueRule rule, Held held) {
        Standing standing = held.standing();
        if (standing == Standing.PROVEN) {
            return Optional.empty();
        }
        Event since = switch (standing) {
            case CHANGED_SINCE ->
                held.changed().stream()
                        .filter(event -> !(event.what() instanceof What.Delivered))
                        .findFirst()
                        .orElseThrow();
            case UNDECIDED, WRONG -> held.verified().orElseThrow();
            default -> held.entered();
        };
        String words = switch (standing) {
            case CHANGED_SINCE ->
                since.what() instanceof What.Verified
                        ? "a catch names another value than the display is known to hold: read the display"
                        : "not checked since a change";
            case UNDECIDED -> "the last verification can't tell whether it is right";
            case WRONG -> "the last verification found it wrong";
            default -> "not checked since it was entered";
        };
        return Optional.of(new Reason(rule, words, day(since), Optional.of(since)));
    }

    private Optional<Reason> otherLot(DueRule.OtherLot rule, Held held, Optional<Event> done) {
        CalibrationPoint point = held.value().point();
        double calibrated = density(done.flatMap(event -> event.what().point())
                .orElse(point)
                .material()
                .looseBulkDensity());
        double most = Amounts.si(Dimensionless.class, rule.most());
        return events.stream()
                .filter(this::isPast)
                .filter(event -> done.map(one -> day(one).isBefore(day(event))).orElse(true))
                .filter(event -> event.what() instanceof What.Delivered lot
                        && lot.material().name().equals(point.material().name())
                        && Math.abs(density(lot.material().looseBulkDensity()) / calibrated - 1) > most)
                .reduce((one, other) -> other)
                .map(event -> new Reason(
                        rule,
                        event.what().words() + " with "
                                + Argument.number(((What.Delivered) event.what())
                                                .material()
                                                .looseBulkDensity())
                                        .words(),
                        day(event),
                        Optional.of(event)));
    }

    private static double density(Quantity<BulkDensity> density) {
        return Amounts.si(BulkDensity.class, density);
    }

    private Optional<Reason> drift(DueRule.OnDrift rule, Held held) {
        CalibrationPoint.Key point = held.value().point().key();
        List<Event> past = events.stream().filter(this::isPast).toList();
        DischargeHistory known = DischargeHistory.of(history, truck, point, past);
        DriftChart chart = DriftChart.of(known.current(), rule.drift());
        Optional<Trend> trend = Trend.of(known.current(), rule.drift().betweenDays())
                .filter(line -> line.isShown(rule.drift().trendRisk()));
        Optional<LocalDate> leaves = trend.flatMap(line -> line.leaves(held.value(), settings.tolerance(), end, 366)
                        .earliest())
                .map(at -> at.atOffset(history.yard()).toLocalDate());
        Optional<Event> signal = chart.standingSignal();
        if (signal.isEmpty() && leaves.isEmpty()) {
            return Optional.empty();
        }
        String words = signal.map(event -> "what leaves per revolution has changed, shown on " + day(event))
                .orElse("what leaves per revolution drifts by "
                        + trend.map(Trend::toString).orElse(""));
        String until = leaves.map(day -> "; leaves " + settings.tolerance() + " from " + day + " on")
                .orElse("");
        return Optional.of(new Reason(
                rule, words + until, leaves.or(() -> signal.map(this::day)).orElseThrow(), signal));
    }

    private Optional<Reason> used(DueRule rule, CalibrationPoint.Key point, Optional<Event> done) {
        double turns = 0;
        double kilograms = 0;
        int storms = 0;
        for (Event event : events) {
            if (event.what() instanceof What.Used used
                    && isPast(event)
                    && used.material().equals(point.material())
                    && done.map(one -> history.instant(event).isAfter(history.instant(one)))
                            .orElse(true)) {
                turns += used.revolutions()
                        .map(count -> Amounts.si(RevolutionCount.class, count))
                        .orElse(0.0);
                kilograms += Amounts.si(Mass.class, used.mass());
                storms += used.storms();
            }
        }
        Optional<String> words = Optional.empty();
        if (rule instanceof DueRule.AfterTurns most && turns >= Amounts.si(RevolutionCount.class, most.most())) {
            words = Optional.of(
                    Argument.number(Amounts.ofSi(turns, most.most().getUnit())).words());
        } else if (rule instanceof DueRule.AfterMass most && kilograms >= Amounts.si(Mass.class, most.most())) {
            words = Optional.of(
                    Argument.number(Amounts.ofSi(kilograms, most.most().getUnit()))
                            .words());
        } else if (rule instanceof DueRule.AfterStorms most && storms >= most.most()) {
            words = Optional.of(storms + " storms");
        }
        return words.map(much -> new Reason(rule, much + " since the last " + word(rule), on, Optional.empty()));
    }
}
