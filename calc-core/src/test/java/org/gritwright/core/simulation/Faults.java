package org.gritwright.core.simulation;

import java.util.List;
import java.util.stream.Stream;

/** All faults that the simulator knows. */
final class Faults {
    static final List<Fault> ALL = Stream.of(
                    TruckFaults.all(), WeighingFaults.all(), CountFaults.all(), SettingFaults.all(), DayFaults.all())
            .flatMap(List::stream)
            .toList();

    private Faults() {}

    static Fault named(String id) {
        return ALL.stream()
                .filter(fault -> fault.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(id));
    }
}
