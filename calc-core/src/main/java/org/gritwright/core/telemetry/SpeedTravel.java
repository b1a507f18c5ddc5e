package org.gritwright.core.telemetry;

import org.gritwright.units.check.Require;

/** Ways by speeds. */
final class SpeedTravel extends Travel {
    private static final long serialVersionUID = 1L;

    /** Half a step's speed in a millisecond: m/s × ms = mm. */
    private final double perHalf;

    private final double fastest;
    private final double longest;
    private final long earliest;
    private final long latest;

    SpeedTravel(double perStep, double fastest, double longest, long earliest, long latest) {
        this.perHalf = perStep / 2;
        this.fastest = fastest;
        this.longest = longest;
        this.earliest = earliest;
        this.latest = latest;
    }

    /** Its one way is twice the steps × milliseconds that it went. */
    @Override
    public RowState start() {
        return new RowState(1);
    }

    @Override
    public void evaluate(
            long[] times, long[] readings, int from, int to, RowState state, long[] millimeters, byte[] statuses) {
        Rows.of(times, readings).requireRange(from, to);
        Require.that(
                millimeters.length >= to, "column of millimeters", "as long as the rows, " + to, millimeters.length);
        Require.that(statuses.length >= to, "column of statuses", "as long as the rows, " + to, statuses.length);
        Require.that(state.ways.length == 1, "state", "one that speeds started", "a counter's");
        for (int i = from; i < to; i++) {
            RowStatus status = step(state, times[i], readings[i]);
            statuses[i] = status.code();
            millimeters[i] = status.isCounted() ? state.amount : UNKNOWN;
        }
    }

    private RowStatus step(RowState state, long time, long speed) {
        if (time < earliest || time > latest) {
            return RowStatus.IMPOSSIBLE_TIME;
        }
        if (speed < 0 || speed > fastest) {
            return RowStatus.IMPOSSIBLE_READING;
        }
        long passed = time - state.time;
        long before = state.count;
        if (state.hasReading && passed < 0) {
            return RowStatus.OUT_OF_ORDER;
        }
        if (state.hasReading && passed == 0 && speed == before) {
            return RowStatus.DUPLICATE;
        }
        boolean isFirst = !state.hasReading;
        state.hasReading = true;
        state.time = time;
        state.count = speed;
        if (isFirst) {
            return RowStatus.FIRST;
        }
        if (passed > longest) {
            return RowStatus.GAP;
        }
        double there = state.ways[0];
        state.ways[0] = there + (double) (before + speed) * passed;
        state.amount = (long) Math.rint(perHalf * state.ways[0]) - (long) Math.rint(perHalf * there);
        return before + speed == 0 ? RowStatus.STANDING : RowStatus.LAID;
    }
}
