package org.gritwright.core.history.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * What left per revolution at one calibration point of a truck over the years, in stretches between changes. Immutable, thread-safe, a
 * value.
 *
 * @param truck the truck's id
 * @param point what tells the point from the truck's others
 * @param stretches one or more, in the order of time; a change begins another, and so does another metering, as another sensor wheel is
 */
public record DischargeHistory(String truck, CalibrationPoint.Key point, List<Stretch> stretches) {
    /** Copies the list. */
    public DischargeHistory {
        Require.given(DischargeHistory.class, truck, point, stretches);
        stretches = List.copyOf(stretches);
        Require.that(!stretches.isEmpty(), "stretches", "one or more", "none");
    }

    /**
     * The discharge at a point.
     *
     * @param history the fleet's history
     * @param truck the truck's id
     * @param point what tells the point from the truck's others
     * @return its stretches
     */
    public static DischargeHistory of(History history, String truck, CalibrationPoint.Key point) {
        Objects.requireNonNull(point, "point");
        return of(history, truck, point, history.standing(truck));
    }

    /**
     * The discharge at all points of a fleet that were ever calibrated or verified.
     *
     * @param history the fleet's history
     * @return truck by truck, in the order in which the points were first caught
     */
    public static List<DischargeHistory> all(History history) {
        return until(history, Instant.MAX);
    }

    /**
     * The discharge at all points of a fleet that were calibrated or verified until an instant, by what had happened until then.
     *
     * @param history the fleet's history
     * @param until the instant, which counts
     * @return truck by truck, in the order in which the points were first caught
     */
    public static List<DischargeHistory> until(History history, Instant until) {
        Objects.requireNonNull(until, "until");
        List<DischargeHistory> all = new ArrayList<>();
        for (String truck : history.trucks()) {
            List<Event> events = history.standing(truck).stream()
                    .filter(event -> !history.instant(event).isAfter(until))
                    .toList();
            Set<CalibrationPoint.Key> points = new LinkedHashSet<>();
            for (Event event : events) {
                if (event.what() instanceof What.Calibrated || event.what() instanceof What.Verified) {
                    points.add(event.what().point().orElseThrow().key());
                }
            }
            points.forEach(point -> all.add(of(history, truck, point, events)));
        }
        return all;
    }

    /**
     * The discharge at a point by some of a truck's events, for example those until a day.
     *
     * @param history the fleet's history
     * @param truck the truck's id
     * @param point what tells the point from the truck's others
     * @param events standing events of the truck, in the order of time
     * @return its stretches
     */
    public static DischargeHistory of(History history, String truck, CalibrationPoint.Key point, List<Event> events) {
        List<Stretch> stretches = new ArrayList<>();
        Optional<Event> began = Optional.empty();
        List<Implied> implied = new ArrayList<>();
        for (Event event : events) {
            boolean changed = event.what() instanceof What.Changed change && change.concernsMass();
            Optional<Implied> next = Implied.of(event, history.instant(event), point);
            boolean another = !implied.isEmpty()
                    && next.filter(one -> !one.point()
                                    .metering()
                                    .equals(implied.get(implied.size() - 1)
                                            .point()
                                            .metering()))
                            .isPresent();
            if (changed || another) {
                stretches.add(new Stretch(began, implied));
                implied.clear();
                began = Optional.of(event);
            }
            next.ifPresent(implied::add);
        }
        stretches.add(new Stretch(began, implied));
        // A stretch in which nothing was caught tells nothing, unless it is the one that lasts.
        List<Stretch> told = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            if (i == stretches.size() - 1 || !stretches.get(i).implied().isEmpty()) {
                told.add(stretches.get(i));
            }
        }
        return new DischargeHistory(truck, point, told);
    }

    /**
     * The stretch that lasts.
     *
     * @return the last one
     */
    public Stretch current() {
        return stretches.get(stretches.size() - 1);
    }
}
