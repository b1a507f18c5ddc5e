package org.gritwright.core.record;

import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;

import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.history.Event;
import org.gritwright.core.json.Codec;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.range.WorkingRange;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.RevolutionCount;

/** The definition of format "gritwright/fleet-event". Ids of events may be longer than names: they say where an event was read. */
final class WrittenEventCodecs {
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
            .object("fleet-event", WrittenEvent.class, required("id", Codecs.TEXT), required("source", Codecs.TEXT));

    private WrittenEventCodecs() {}

    /** The event has the same rule, but can't say where in a document the number stands. */
    private static <Q extends Quantity<Q>> Codec<Quantity<Q>> notNegative(String field, Class<Q> kind) {
        return Codecs.requiring(Codecs.quantity(kind), number -> Require.notNegative(field, kind, number));
    }
}
