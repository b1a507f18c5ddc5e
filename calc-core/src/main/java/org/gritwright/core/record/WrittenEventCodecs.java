package org.gritwright.core.record;

import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RevolutionCount;
import org.jspecify.annotations.Nullable;

/** The definition of format "gritwright/fleet-event". Ids of events may be longer than names: they say where an event was read. */
final class WrittenEventCodecs {
    /** An event as it is written, before its parts are compared: so that what is wrong with a part has its place. */
    private record Entered(
            String id,
            Since at,
            Optional<String> truck,
            Optional<String> who,
            String source,
            Optional<WrittenEvent.Changed> changed,
            Optional<WrittenEvent.Lost> lost,
            Optional<WorkingRange> drive,
            Optional<WrittenEvent.Used> used,
            Optional<WrittenEvent.Delivered> delivered,
            Optional<String> season,
            Optional<Event.Superseding> supersedes) {
        static Entered of(WrittenEvent one) {
            return new Entered(
                    one.id(),
                    one.at(),
                    one.truck(),
                    one.who(),
                    one.source(),
                    one.changed(),
                    one.lost(),
                    one.drive(),
                    one.used(),
                    one.delivered(),
                    one.season(),
                    one.supersedes());
        }

        /** What an event refuses of a sum whose truck is named: it begins after it ends. */
        Optional<InvalidInputException> begunAfterItsEnd() {
            try {
                used.ifPresent(one -> Event.of(id, at, "a truck", one.what(), source));
                return Optional.empty();
            } catch (InvalidInputException e) {
                return Optional.of(e);
            }
        }

        @Nullable
        WrittenEvent made() {
            return begunAfterItsEnd().isPresent()
                    ? null
                    : new WrittenEvent(
                            id, at, truck, who, source, changed, lost, drive, used, delivered, season, supersedes);
        }
    }

    static final ObjectCodec<WrittenEvent> FLEET_EVENT = FleetDayCodecs.BOOK
            .with(FleetDayCodecs.MATERIAL)
            .with("event-changed", WrittenEvent.Changed.class, optional("notes", Codecs.TEXT))
            .with("event-lost", WrittenEvent.Lost.class)
            .with("event-drive", WorkingRange.class)
            .with(
                    "event-used",
                    WrittenEvent.Used.class,
                    optional("revolutions", notNegative("revolutions", RevolutionCount.class)),
                    optional("unattributed", notNegative("unattributed revolutions", RevolutionCount.class)),
                    required("mass", notNegative("mass that was laid", Mass.class)))
            .with("event-delivered", WrittenEvent.Delivered.class)
            .with(
                    "event-supersedes",
                    Event.Superseding.class,
                    required("id", Codecs.TEXT),
                    required("why", Codecs.TEXT))
            .object("fleet-event", Entered.class, required("id", Codecs.TEXT), required("source", Codecs.TEXT))
            .checked((entered, pointer, problems) -> entered.begunAfterItsEnd()
                    .ifPresent(refusal -> problems.refused(pointer.at("used").at("from"), refusal)))
            .as(WrittenEvent.class, Entered::made, Entered::of);

    private WrittenEventCodecs() {}

    /** The event has the same rule, but can't say where in a document the number stands. */
    private static <Q extends Quantity<Q>> Codec<Quantity<Q>> notNegative(String field, Class<Q> kind) {
        return Codecs.requiring(Codecs.quantity(kind), number -> Require.notNegative(field, kind, number));
    }
}
