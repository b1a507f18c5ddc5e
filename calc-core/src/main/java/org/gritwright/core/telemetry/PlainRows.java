package org.gritwright.core.telemetry;

/** Rows that are evaluated exactly as the one before them: what a count stands for is the same in all. */
final class PlainRows extends RowRun {
    private final long setting;
    private final double perCount;
    private final long firstWhole;

    PlainRows(Limits limits, RowState state) {
        super(limits, state);
        this.setting = Double.doubleToRawLongBits(state.setting);
        this.perCount = state.perCount;
        this.firstWhole = whole(perCount, (double) state.count);
    }

    @Override
    boolean hasItsSettings(Rows rows, int from, int to) {
        if (rows.settings().length == 0) {
            return true;
        }
        double[] settings = rows.settings();
        long other = 0;
        for (int i = from; i < to; i++) {
            other |= Double.doubleToRawLongBits(settings[i]) ^ setting;
        }
        return other == 0;
    }

    @Override
    boolean hasItsSetting(Rows rows, int row) {
        return rows.settings().length == 0 || Double.doubleToRawLongBits(rows.settings()[row]) == setting;
    }

    @Override
    void add(RowState state, RowSums sums, HeldArrays held, int rows) {
        long amount = whole(perCount, (double) count()) - firstWhole;
        long relative = held.relativeParts(state.place, state.setting);
        sums.takeMany(state, rows - standing, standing, counted(), amount, held.share(state.place), amount * relative);
    }

    @Override
    void evaluate(Rows rows, int from, int to, long[] amounts, byte[] statuses) {
        evenly(perCount, rows.counts(), count(), from, to, amounts, statuses);
    }
}
