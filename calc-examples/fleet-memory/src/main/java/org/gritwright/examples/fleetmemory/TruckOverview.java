package org.gritwright.examples.fleetmemory;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.SlotState;
import org.gritwright.core.history.Standing;
import org.gritwright.core.history.TruckState;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Implied;
import org.gritwright.core.history.due.Due;

/**
 * What is known of one truck.
 *
 * @param dues in the order of the fleet's list
 * @param points its calibration points that were ever caught
 * @param doubt that the account of a season found it off, if nothing answered it
 */
record TruckOverview(
        Overview fleet,
        String id,
        TruckState state,
        List<Due> dues,
        List<Drifts.OfPoint> points,
        Contradictions contradictions,
        Optional<SeasonDoubts.Doubt> doubt) {

    /** What a truck with nothing due is like. */
    enum Quiet {
        /** Nothing that it is known of speaks against it. */
        PROVEN,
        /** The rules ask for nothing, and yet a value isn't proven, something contradicts itself, or a season found the truck off. */
        DOUBTFUL,
        /** What a display holds isn't known, so that no rule can ask for anything. */
        UNKNOWN
    }

    Quiet quiet() {
        if (state.slots().isEmpty()
                || state.slots().stream().anyMatch(slot -> slot.lost().isPresent())) {
            return Quiet.UNKNOWN;
        }
        boolean isProven = state.values().stream().allMatch(held -> held.standing() == Standing.PROVEN);
        return isProven && contradictions.open().isEmpty() && doubt.isEmpty() ? Quiet.PROVEN : Quiet.DOUBTFUL;
    }

    /** What speaks for it that nothing is due, or against it. */
    List<String> belief() {
        List<String> words = new ArrayList<>();
        doubt.ifPresent(one -> words.addAll(one.words()));
        for (SlotState slot : state.slots()) {
            slot.values().forEach(held -> words.add(belief(held)));
            slot.lost()
                    .ifPresent(lost -> words.add("Nobody knows what slot " + slot.slot() + " holds, since " + lost.at()
                            + ", " + lost.what().words() + ". Read the display."));
        }
        if (state.slots().isEmpty()) {
            words.add("Nothing is known of what its display holds. Read the display.");
        }
        for (Drifts.OfPoint point : points) {
            if (state.value(point.history().point()).isEmpty()) {
                words.add(point.name() + ": caught, and the display isn’t known to hold a value for it.");
            }
            List<String> told = fleet.told(point);
            if (!told.isEmpty()) {
                words.add("Watch " + point.name() + ": " + String.join("; ", told) + ".");
            }
        }
        if (!contradictions.open().isEmpty()) {
            words.add("Its records contradict themselves: see its page.");
        } else if (!contradictions.settled().isEmpty()) {
            words.add("Its records contradicted themselves until a later entry settled it: see its page.");
        }
        return words;
    }

    private String belief(Held held) {
        String caught = catches(held)
                .reduce((first, last) -> last)
                .map(event -> "last caught on " + event.at().day() + ", "
                        + Words.count(ChronoUnit.DAYS.between(event.at().day(), fleet.on()), "day") + " ago"
                        + held.error()
                                .map(error -> ", error " + Words.error(error))
                                .orElse(""))
                .orElse("never caught");
        return held.value().point() + ": " + held.standing().words() + ", " + caught
                + (held.changed().isEmpty()
                        ? ", nothing changed since."
                        : "; since then "
                                + String.join(
                                        "; ",
                                        held.changed().stream()
                                                .map(TruckText::event)
                                                .toList())
                                + ".");
    }

    /** When a catch last verified a value of a point that the display holds. */
    String verified(Held held) {
        return catches(held)
                .filter(event -> event.what() instanceof What.Verified)
                .reduce((first, last) -> last)
                .map(Event::at)
                .map(Since::day)
                .map(day -> held.verified().isPresent() ? day.toString() : day + ", another value")
                .orElse("never");
    }

    /** What drifts at the point of a value. */
    String drift(Held held) {
        return points.stream()
                .filter(point -> isOf(point, held))
                .map(this::drift)
                .findFirst()
                .orElse("never caught");
    }

    /** What drifts at points that no slot is known to hold a value for. */
    String driftOfOthers() {
        List<String> words = points.stream()
                .filter(point -> state.value(point.history().point()).isEmpty())
                .map(point -> point.name() + ": " + drift(point))
                .toList();
        return words.isEmpty() ? "never caught" : String.join("; ", words);
    }

    private String drift(Drifts.OfPoint point) {
        List<String> told = fleet.told(point);
        String few = point.isFew() ? ", by fewer than " + DriftChart.FEW + " values, which tell little" : "";
        return told.isEmpty() ? "no drift shown" + few : String.join("; ", told);
    }

    private static boolean isOf(Drifts.OfPoint point, Held held) {
        return point.history().point().equals(held.value().point().key());
    }

    private Stream<Event> catches(Held held) {
        return points.stream()
                .filter(point -> isOf(point, held))
                .flatMap(point -> point.history().stretches().stream())
                .flatMap(stretch -> stretch.implied().stream())
                .map(Implied::by);
    }
}
