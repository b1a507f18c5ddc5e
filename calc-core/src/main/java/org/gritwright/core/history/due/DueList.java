package org.gritwright.core.history.due;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.SlotState;
import org.gritwright.core.history.TruckState;
import org.gritwright.units.Amounts;

/** What is due in a fleet. */
public final class DueList {
    private DueList() {}

    /**
     * What is due on a day or soon.
     *
     * @param history the fleet's history; what happened after the day doesn't count, but for the start of a season that lies ahead
     * @param settings by which rules, and what is planned
     * @param on the day; all of it counts
     * @return what is due, the greatest expected error × planned mass first, then by day, truck and point
     */
    public static List<Due> of(History history, DueSettings settings, LocalDate on) {
        Objects.requireNonNull(settings, "settings");
        Instant end = on.atTime(LocalTime.MAX).toInstant(history.yard());
        Map<List<String>, Double> planned = new HashMap<>();
        settings.planned()
                .forEach(one -> planned.put(List.of(one.truck(), one.material()), Amounts.si(Mass.class, one.mass())));
        List<Due> all = new ArrayList<>();
        for (String truck : history.trucks()) {
            List<Event> events = history.standing(truck);
            TruckState state = history.asOf(truck, end);
            PointDues dues = new PointDues(history, settings, on, truck, events, planned);
            state.values().forEach(held -> dues.held(held).ifPresent(all::add));
            for (SlotState slot : state.slots()) {
                slot.lost()
                        .ifPresent(by -> history.changes(truck).stream()
                                .filter(change ->
                                        change.by().equals(by) && change.slot().equals(slot.slot()))
                                .flatMap(change -> change.from().stream())
                                .filter(value ->
                                        state.value(value.point().key()).isEmpty())
                                .forEach(value -> dues.lost(value, by).ifPresent(all::add)));
            }
        }
        all.sort(Comparator.comparingDouble((Due due) -> -Amounts.si(Mass.class, due.atStake()))
                .thenComparing(Due::by)
                .thenComparing(Due::truck)
                .thenComparing(due -> due.point().toString()));
        return List.copyOf(all);
    }
}
