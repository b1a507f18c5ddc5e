package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.List;

/**
 * A round over invented roads, again and again.
 *
 * @param roads in their order
 */
record InventedRoads(List<Road> roads) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** A road of a round. */
    record Road(String id, double miles) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    /** Both rounds go over the bridge. */
    private static final Road BRIDGE = new Road("Ferry Bridge", 1.3);

    static final InventedRoads RIVER =
            new InventedRoads(List.of(new Road("Heron Road", 6.2), BRIDGE, new Road("Alder Road", 5.45)));
    static final InventedRoads COUNTY =
            new InventedRoads(List.of(new Road("Quarry Lane", 3.85), BRIDGE, new Road("Mill Road", 7.1)));

    /** The road on which a truck is after so many miles. */
    String at(double miles) {
        double left = miles % roads.stream().mapToDouble(Road::miles).sum();
        for (Road road : roads) {
            if (left < road.miles()) {
                return road.id();
            }
            left -= road.miles();
        }
        return roads.get(0).id();
    }
}
