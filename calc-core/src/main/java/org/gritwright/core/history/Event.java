package org.gritwright.core.history;

import java.util.Objects;
import java.util.Optional;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.units.check.Require;

/**
 * Something that happened to a truck or to the fleet. An event never changes: what turns out to be mistaken is superseded by another event,
 * which says why. Immutable, thread-safe, a value.
 *
 * @param id what it is known by, everywhere and for good: the same id is the same event; not blank
 * @param at when; a day alone counts as its beginning
 * @param truck the truck's id; none for what concerns the fleet
 * @param what what happened
 * @param who who did it or wrote it down; none if nobody says
 * @param source where it was read, for example a record's id; not blank
 * @param supersedes the event in whose place it stands; none for most
 */
public record Event(
        String id,
        Since at,
        Optional<String> truck,
        What what,
        Optional<String> who,
        String source,
        Optional<Superseding> supersedes) {
    /**
     * In the place of which event this one stands, and why.
     *
     * @param id the id of the mistaken event
     * @param why what was wrong with it; not blank
     */
    public record Superseding(String id, String why) {
        /**
         * Checks the texts.
         *
         * @throws org.gritwright.units.InvalidInputException if one is blank
         */
        public Superseding {
            Require.given(Superseding.class, id, why);
            Require.text("id of the superseded event", id);
            Require.text("why event " + id + " is superseded", why);
        }
    }

    /**
     * Checks that it is complete.
     *
     * @throws org.gritwright.units.InvalidInputException if a text is blank, a truck is missing or one too many, it supersedes itself,
     *     withdraws nothing, or is a sum of a time that begins after it ends
     */
    public Event {
        Require.given(Event.class, id, at, truck, what, who, source, supersedes);
        Require.text("id of an event", id);
        Require.text("source of event " + id, source);
        String name = id;
        truck.ifPresent(one -> Require.text("truck of event " + name, one));
        who.ifPresent(one -> Require.text("person of event " + name, one));
        Require.that(
                what instanceof What.Withdrawn || truck.isPresent() == what.isOfTruck(),
                "truck of event " + id,
                what.isOfTruck() ? "named, as it happened to one" : "none, as it concerns the fleet",
                truck.orElse("none"));
        Require.that(
                supersedes.filter(one -> one.id().equals(name)).isEmpty(),
                "event superseded by " + id,
                "another than itself",
                id);
        Require.that(
                supersedes.isPresent() || !(what instanceof What.Withdrawn),
                "event withdrawn by " + id,
                "named, with a reason",
                "none");
        if (what instanceof What.Used used && used.from().isPresent()) {
            Since from = used.from().get();
            boolean isInOrder = (from.time().isPresent() && at.time().isPresent())
                    ? !from.time().get().isAfter(at.time().get())
                    : !from.day().isAfter(at.day());
            Require.that(
                    isInOrder, "beginning of the time that event " + id + " sums up", "not after its end, " + at, from);
        }
    }

    /**
     * What happened to a truck.
     *
     * @param id what the event is known by
     * @param at when
     * @param truck the truck's id
     * @param what what happened
     * @param source where it was read
     * @return the event; nobody says who did it
     * @throws org.gritwright.units.InvalidInputException if a text is blank, or it concerns the fleet and no truck
     */
    public static Event of(String id, Since at, String truck, What what, String source) {
        Objects.requireNonNull(truck, "truck");
        return new Event(id, at, Optional.of(truck), what, Optional.empty(), source, Optional.empty());
    }

    /**
     * What happened to the whole fleet.
     *
     * @param id what the event is known by
     * @param at when
     * @param what what happened
     * @param source where it was read
     * @return the event; nobody says who did it
     * @throws org.gritwright.units.InvalidInputException if a text is blank, or it happened to one truck
     */
    public static Event ofFleet(String id, Since at, What what, String source) {
        return new Event(id, at, Optional.empty(), what, Optional.empty(), source, Optional.empty());
    }

    /**
     * The withdrawal of an event that never happened.
     *
     * @param id what the withdrawal is known by
     * @param at when it was withdrawn
     * @param mistaken the event that never happened
     * @param why why
     * @param source where it was read
     * @return the event
     * @throws org.gritwright.units.InvalidInputException if a text is blank
     */
    public static Event withdrawing(String id, Since at, Event mistaken, String why, String source) {
        Objects.requireNonNull(mistaken, "mistaken");
        return new Event(
                id,
                at,
                mistaken.truck,
                new What.Withdrawn(),
                Optional.empty(),
                source,
                Optional.of(new Superseding(mistaken.id, why)));
    }

    /**
     * The same with who did it.
     *
     * @param person who did it or wrote it down
     * @return the event
     * @throws org.gritwright.units.InvalidInputException if the name is blank
     */
    public Event by(String person) {
        return new Event(id, at, truck, what, Optional.of(person), source, supersedes);
    }

    /**
     * The same in the place of a mistaken one.
     *
     * @param mistaken the id of the mistaken event
     * @param why what was wrong with it
     * @return the event
     * @throws org.gritwright.units.InvalidInputException if a text is blank, or it is this event's own id
     */
    public Event superseding(String mistaken, String why) {
        return new Event(id, at, truck, what, who, source, Optional.of(new Superseding(mistaken, why)));
    }

    /**
     * Whether this and another event say the same. Points are equal whatever the density of their material; here the density counts.
     *
     * @param other another event
     * @return true if all is equal
     */
    public boolean isSameAs(Event other) {
        return equals(other)
                && what.point()
                        .map(CalibrationPoint::material)
                        .equals(other.what.point().map(CalibrationPoint::material));
    }

    /**
     * What happened, to which truck, and when.
     *
     * @return for example "2026-10-19T08:40-04:00, T-07: road salt at 2 in entered as 26 lb/rev"
     */
    @Override
    public String toString() {
        return at + ", " + truck.orElse("the fleet") + ": " + what.words();
    }
}
