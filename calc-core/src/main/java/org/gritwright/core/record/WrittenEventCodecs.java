package org.gritwright.core.record;

import static org.gritwright.core.json.Field.optional;
import static org.gritwright.core.json.Field.required;

import org.gritwright.core.history.Event;
import org.gritwright.core.json.Codecs;
import org.gritwright.core.json.ObjectCodec;
import org.gritwright.core.range.WorkingRange;

/** The definition of format "gritwright/fleet-event". Ids of events may be longer than names: they say where an event was read. */
final class WrittenEventCodecs {
    static final ObjectCodec<WrittenEvent> FLEET_EVENT = FleetDayCodecs.BOOK
            .with(FleetDayCodecs.MATERIAL)
            .with("event-changed", WrittenEvent.Changed.class, optional("notes", Codecs.TEXT))
            .with("event-lost", WrittenEvent.Lost.class)
            .with("event-drive", WorkingRange.class)
            .with("event-used", WrittenEvent.Used.class)
            .with("event-delivered", WrittenEvent.Delivered.class)
            .with(
                    "event-supersedes",
                    Event.Superseding.class,
                    required("id", Codecs.TEXT),
                    required("why", Codecs.TEXT))
            .object("fleet-event", WrittenEvent.class, required("id", Codecs.TEXT), required("source", Codecs.TEXT));

    private WrittenEventCodecs() {}
}
