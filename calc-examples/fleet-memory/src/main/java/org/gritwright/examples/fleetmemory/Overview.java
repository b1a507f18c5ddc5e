package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.gritwright.core.history.Contradiction;
import org.gritwright.core.history.History;
import org.gritwright.core.history.due.Due;
import org.gritwright.core.history.due.DueSettings;
import org.gritwright.core.judgement.Tolerance;

/**
 * What is known of a fleet on a day, computed once for all pages.
 *
 * @param allowed how many false alarms of the whole fleet are taken, as {@link Drifts} has it
 * @param planned what trucks are to lay; empty if nobody said
 * @param dues the greatest expected error × planned mass first
 */
record Overview(
        History history,
        LocalDate on,
        Tolerance tolerance,
        double allowed,
        List<DueSettings.Planned> planned,
        List<Due> dues,
        Drifts drifts,
        List<Contradiction> contradictions,
        FittedCurves curves,
        BalancedSeasons seasons) {
    static Overview of(
            History history, Tolerance tolerance, double allowed, List<DueSettings.Planned> planned, LocalDate on) {
        Drifts drifts = Drifts.of(history, allowed, FleetMemoryCommand.end(on, history.yard()));
        return new Overview(
                history,
                on,
                tolerance,
                allowed,
                planned,
                FleetMemoryCommand.due(history, tolerance, drifts.rule(), planned, on),
                drifts,
                history.contradictions(FleetMemoryCommand.end(on, history.yard())),
                FittedCurves.NONE,
                BalancedSeasons.NONE);
    }

    /** The same with the curves that were fitted on the days of its records. */
    Overview with(FittedCurves fitted) {
        return new Overview(history, on, tolerance, allowed, planned, dues, drifts, contradictions, fitted, seasons);
    }

    /** The same with the seasons whose accounts add up. */
    Overview with(BalancedSeasons balanced) {
        return new Overview(history, on, tolerance, allowed, planned, dues, drifts, contradictions, curves, balanced);
    }

    boolean isPlanned() {
        return !planned.isEmpty();
    }

    Instant at() {
        return FleetMemoryCommand.end(on, history.yard());
    }

    /** Truck by truck, each with what concerns it alone. */
    List<TruckOverview> trucks() {
        Map<String, List<Due>> due = dues.stream().collect(Collectors.groupingBy(Due::truck));
        Map<String, List<Drifts.OfPoint>> points = drifts.points().stream()
                .collect(Collectors.groupingBy(
                        point -> point.history().truck(), LinkedHashMap::new, Collectors.toList()));
        Map<String, List<Contradiction>> odd = new LinkedHashMap<>();
        for (Contradiction one : contradictions) {
            one.events().stream()
                    .flatMap(event -> event.truck().stream())
                    .distinct()
                    .forEach(truck ->
                            odd.computeIfAbsent(truck, key -> new ArrayList<>()).add(one));
        }
        SeasonDoubts doubts = new SeasonDoubts(history, seasons.pages(), on);
        return history.trucks().stream()
                .map(truck -> new TruckOverview(
                        this,
                        truck,
                        history.asOf(truck, at()),
                        due.getOrDefault(truck, List.of()),
                        points.getOrDefault(truck, List.of()),
                        Contradictions.of(odd.getOrDefault(truck, List.of())),
                        doubts.of(truck)))
                .toList();
    }

    /** Contradictions of the fleet's own events. */
    List<Contradiction> ofNoTruck() {
        return contradictions.stream()
                .filter(one ->
                        one.events().stream().allMatch(event -> event.truck().isEmpty()))
                .toList();
    }

    /** What is told of a point's drift; none if it shows nothing. */
    List<String> told(Drifts.OfPoint point) {
        return new DriftText(history, drifts, tolerance, allowed, at()).told(point);
    }
}
