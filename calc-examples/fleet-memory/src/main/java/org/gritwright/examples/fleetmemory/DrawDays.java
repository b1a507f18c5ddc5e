package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;

/**
 * Days in which a truck draws from a pile.
 *
 * @param material the pile's
 */
record DrawDays(String truck, String material, String pile, LocalDate from, LocalDate to) {
    /** All of an account. */
    static List<DrawDays> of(WrittenSeason written) {
        Map<String, String> materials = new HashMap<>();
        for (WrittenPile pile : written.piles()) {
            materials.put(pile.id(), pile.material());
        }
        List<DrawDays> all = new ArrayList<>();
        for (WrittenTruckSeason truck : written.trucks()) {
            truck.draws().forEach(draw -> all.add(of(truck.id(), materials.getOrDefault(draw.pile(), ""), draw)));
        }
        return all;
    }

    static DrawDays of(String truck, String material, WrittenTruckSeason.Drawn draw) {
        return new DrawDays(truck, material, draw.pile(), draw.from(), draw.to());
    }

    boolean has(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(to);
    }

    /** Sums tell truck and material and not pile: what is of both is in the sums of both. */
    boolean isSummedWith(DrawDays other) {
        return truck.equals(other.truck) && material.equals(other.material) && has(other.from, other.to);
    }

    private boolean has(LocalDate first, LocalDate last) {
        return !first.isAfter(to) && !from.isAfter(last);
    }

    /** For example "Truck C-01, 2025-11-01 to 2026-03-31 from pile north". */
    String words() {
        return "Truck " + truck + ", " + from + " to " + to + " from pile " + pile;
    }
}
