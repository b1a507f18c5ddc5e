package org.gritwright.core.record;

import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.observation.Material;
import org.gritwright.core.observation.Moisture;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RevolutionCount;

/**
 * An event that nobody's calibration record tells: a repair, a lost slot, what was laid, a delivery, a season; or that a recorded event was
 * mistaken. It says exactly one thing, or only withdraws another event. Immutable, thread-safe, a value.
 *
 * @param id what it is known by, for good; not blank
 * @param at when: a day, or a time
 * @param truck the truck; left out for what concerns the fleet
 * @param who who did it or wrote it down
 * @param source where it was read first, for example a workshop's book
 * @param changed what was changed of the truck
 * @param lost a slot of the controller that lost what it held
 * @param drive the working range of the drive
 * @param used what the truck did in a time
 * @param delivered material that came to the yard
 * @param season the name of a season whose first day it is
 * @param supersedes the event in whose place it stands, by its id; without anything else the event never happened
 */
public record WrittenEvent(
        String id,
        Since at,
        Optional<String> truck,
        Optional<String> who,
        String source,
        Optional<Changed> changed,
        Optional<Lost> lost,
        Optional<WorkingRange> drive,
        Optional<Used> used,
        Optional<Delivered> delivered,
        Optional<String> season,
        Optional<Event.Superseding> supersedes) {
    /**
     * What was changed of a truck.
     *
     * @param part the part
     * @param notes remarks
     */
    public record Changed(Change.Part part, Optional<String> notes) {
        /** Checks that both are given. */
        public Changed {
            Require.given(Changed.class, part, notes);
        }
    }

    /**
     * What lost what it held.
     *
     * @param slot the slot; none if the controller lost all
     */
    public record Lost(Optional<String> slot) {
        /** Checks that it is given. */
        public Lost {
            Require.given(Lost.class, slot);
        }
    }

    /**
     * What a truck laid in a time that ends with the event, a day alone with that day.
     *
     * @param material what it laid, a material's name
     * @param from when the time begins: a day, or a time
     * @param revolutions revolutions of the sensed shaft by which it was laid
     * @param unattributed revolutions of which nobody can say what they laid, beside the others
     * @param mass the indicated mass of what it laid, not corrected by what a later verification found
     * @param storms in how many storms
     */
    public record Used(
            String material,
            Optional<Since> from,
            Optional<Quantity<RevolutionCount>> revolutions,
            Optional<Quantity<RevolutionCount>> unattributed,
            Quantity<Mass> mass,
            Optional<Integer> storms) {
        /**
         * Checks the values.
         *
         * @throws org.gritwright.units.InvalidInputException if the name is blank or a number negative
         */
        public Used {
            Require.given(Used.class, material, from, revolutions, unattributed, mass, storms);
            what(material, from, revolutions, unattributed, mass, storms);
        }

        private static What.Used what(
                String material,
                Optional<Since> from,
                Optional<Quantity<RevolutionCount>> revolutions,
                Optional<Quantity<RevolutionCount>> unattributed,
                Quantity<Mass> mass,
                Optional<Integer> storms) {
            return new What.Used(material, from, revolutions, unattributed, mass, storms.orElse(0));
        }

        What.Used what() {
            return what(material, from, revolutions, unattributed, mass, storms);
        }

        private static Used of(What.Used one) {
            return new Used(
                    one.material(),
                    one.from(),
                    one.revolutions(),
                    one.unattributed(),
                    one.mass(),
                    one.storms() == 0 ? Optional.empty() : Optional.of(one.storms()));
        }
    }

    /**
     * Material that came to the yard.
     *
     * @param material the material, with the density of this lot
     * @param lot what the lot is known by
     * @param moisture its moisture
     */
    public record Delivered(Material material, String lot, Optional<Moisture> moisture) {
        /** Checks that nothing is null. */
        public Delivered {
            Require.given(Delivered.class, material, lot, moisture);
        }
    }

    /**
     * Checks that it says one thing.
     *
     * @throws org.gritwright.units.InvalidInputException if it says several things, or nothing and withdraws nothing, or a truck is missing
     *     or one too many
     */
    public WrittenEvent {
        Require.given(
                WrittenEvent.class,
                id,
                at,
                truck,
                who,
                source,
                changed,
                lost,
                drive,
                used,
                delivered,
                season,
                supersedes);
        long said = Stream.of(changed, lost, drive, used, delivered, season)
                .filter(Optional::isPresent)
                .count();
        String name = id;
        Require.that(
                said == 1 || (said == 0 && supersedes.isPresent()),
                "what event " + id + " says",
                "one of changed, lost, drive, used, delivered and season; or none of them, and supersedes",
                () -> said == 0 ? "nothing" : said + " of them in " + name);
        event(id, at, truck, who, source, what(changed, lost, drive, used, delivered, season), supersedes);
    }

    private static What what(
            Optional<Changed> changed,
            Optional<Lost> lost,
            Optional<WorkingRange> drive,
            Optional<Used> used,
            Optional<Delivered> delivered,
            Optional<String> season) {
        return changed.<What>map(one -> new What.Changed(one.part, one.notes))
                .or(() -> lost.map(
                        one -> one.slot.<What>map(What.Overwritten::new).orElseGet(What.SetBack::new)))
                .or(() -> drive.map(one -> new What.RangeMeasured(one.lowest(), one.highest())))
                .or(() -> used.map(Used::what))
                .or(() -> delivered.map(one -> new What.Delivered(one.material, one.lot, one.moisture)))
                .or(() -> season.map(What.SeasonStarted::new))
                .orElseGet(What.Withdrawn::new);
    }

    private static Event event(
            String id,
            Since at,
            Optional<String> truck,
            Optional<String> who,
            String source,
            What what,
            Optional<Event.Superseding> supersedes) {
        return new Event(id, at, truck, what, who, source, supersedes);
    }

    /**
     * The event.
     *
     * @return the event, as a fleet's history takes it
     */
    public Event event() {
        return event(id, at, truck, who, source, what(changed, lost, drive, used, delivered, season), supersedes);
    }

    /**
     * How an event is written down that no calibration record tells.
     *
     * @param event the event
     * @return what is written; none for calibrations, verifications and values in displays, which are written with their catches in a record
     */
    public static Optional<WrittenEvent> of(Event event) {
        What what = Objects.requireNonNull(event, "event").what();
        boolean recorded = what instanceof What.Calibrated
                || what instanceof What.Verified
                || what instanceof What.Entered
                || what instanceof What.Corrected
                || what instanceof What.Shown;
        if (recorded) {
            return Optional.empty();
        }
        return Optional.of(new WrittenEvent(
                event.id(),
                event.at(),
                event.truck(),
                event.who(),
                event.source(),
                what instanceof What.Changed one ? Optional.of(new Changed(one.part(), one.notes())) : Optional.empty(),
                lost(what),
                what instanceof What.RangeMeasured one
                        ? Optional.of(new WorkingRange(one.lowest(), one.highest()))
                        : Optional.empty(),
                what instanceof What.Used one ? Optional.of(Used.of(one)) : Optional.empty(),
                what instanceof What.Delivered one
                        ? Optional.of(new Delivered(one.material(), one.lot(), one.moisture()))
                        : Optional.empty(),
                what instanceof What.SeasonStarted one ? Optional.of(one.name()) : Optional.empty(),
                event.supersedes()));
    }

    private static Optional<Lost> lost(What what) {
        if (what instanceof What.Overwritten one) {
            return Optional.of(new Lost(Optional.of(one.slot())));
        }
        return what instanceof What.SetBack ? Optional.of(new Lost(Optional.empty())) : Optional.empty();
    }
}
