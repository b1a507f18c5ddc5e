package org.gritwright.core.history.drift;

import java.util.List;
import java.util.Optional;
import org.gritwright.core.history.Event;

/** placeholder. */
public final class DriftChart {
    private DriftChart() {}

    public static DriftChart of(Stretch s, DriftRule r) {
        return new DriftChart();
    }

    public Optional<Event> standingSignal() {
        return Optional.empty();
    }

    /** What has an uncertainty. */
    static List<Implied> usable(Stretch stretch) {
        return stretch.implied().stream()
                .filter(one -> one.discharge().standardUncertainty().isPresent())
                .toList();
    }
}
