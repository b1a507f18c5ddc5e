package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.gritwright.core.telemetry.TimelineEntry;
import org.jspecify.annotations.Nullable;

/**
 * Which material each slot of a truck held, and since when; and how many pulses a turn of its shaft has.
 *
 * @param bySlot in the order of {@link TruckSetup#slot}: milliseconds since which a material is held; where nothing is, there is no name
 * @param from the earliest time of a row, in milliseconds
 * @param until the latest
 */
record SlotMaterials(List<NavigableMap<Long, String>> bySlot, double pulsesPerTurn, long from, long until)
        implements Serializable {
    private static final long serialVersionUID = 1L;

    private static final String NOTHING = "";

    static SlotMaterials of(TruckPlan plan, List<String> slots) {
        List<NavigableMap<Long, String>> bySlot = new ArrayList<>();
        for (String slot : slots) {
            NavigableMap<Long, String> materials = new TreeMap<>();
            for (TimelineEntry entry : plan.timeline().entries()) {
                if (entry.slot().equals(slot)) {
                    materials.put(entry.from().toEpochMilli(), material(entry.held()));
                }
            }
            bySlot.add(materials);
        }
        return new SlotMaterials(
                bySlot,
                plan.pulsesPerTurn(),
                plan.from().toEpochMilli(),
                plan.until().toEpochMilli());
    }

    private static String material(TimelineEntry.Held held) {
        if (held instanceof TimelineEntry.Value value) {
            return value.inForce().point().material().name();
        }
        return held instanceof TimelineEntry.Curve curve
                ? curve.curve().material().name()
                : NOTHING;
    }

    /** What a slot holds, if anything is known of it. */
    @Nullable
    String material(int slot, long millis) {
        Map.Entry<Long, String> held = slot < 0 ? null : bySlot.get(slot).floorEntry(millis);
        return held == null || held.getValue().equals(NOTHING) ? null : held.getValue();
    }

    /** When the slot gets the next value, perhaps of another material. */
    long next(int slot, long millis) {
        Long next = slot < 0 ? null : bySlot.get(slot).higherKey(millis);
        return next == null ? Long.MAX_VALUE : next;
    }

    /** Since when it holds what it does. */
    long since(int slot, long millis) {
        Long since = slot < 0 ? null : bySlot.get(slot).floorKey(millis);
        return since == null ? Long.MIN_VALUE : since;
    }

    boolean canBe(long millis) {
        return millis >= from && millis <= until;
    }

    SortedSet<String> all() {
        SortedSet<String> all = new TreeSet<>();
        bySlot.forEach(slot -> all.addAll(slot.values()));
        all.remove(NOTHING);
        return all;
    }
}
