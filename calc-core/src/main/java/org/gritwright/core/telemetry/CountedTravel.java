package org.gritwright.core.telemetry;

import java.util.List;

/** Ways by a counter of pulses. */
final class CountedTravel extends Travel {
    private static final long serialVersionUID = 1L;

    private final RowEvaluator counted;

    CountedTravel(Counter counter, double perCount, long earliest, long latest) {
        this.counted = new RowEvaluator(
                List.of("road"),
                false,
                earliest,
                latest,
                counter,
                new HeldArrays[][] {{HeldArrays.always(perCount)}},
                new Share[] {Share.of("road")});
    }

    @Override
    public RowState start() {
        return counted.start();
    }

    @Override
    public void evaluate(
            long[] times, long[] readings, int from, int to, RowState state, long[] millimeters, byte[] statuses) {
        counted.evaluate(Rows.of(times, readings), from, to, state, counted.sums(), millimeters, statuses);
        for (int i = from; i < to; i++) {
            if (!RowStatus.of(statuses[i]).isCounted()) {
                millimeters[i] = UNKNOWN;
            }
        }
    }
}
