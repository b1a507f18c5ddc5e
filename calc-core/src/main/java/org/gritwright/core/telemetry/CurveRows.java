package org.gritwright.core.telemetry;

/** Rows that are evaluated with one curve, each at its own setting. In most a gate stands where it did in the row before. */
final class CurveRows extends RowRun {
    /** Fewer rows at one setting are sooner evaluated each by itself. */
    private static final int SHORTEST = 4;

    /** After so many such places in a block the rest is. */
    private static final int MOST_SHORT = 16;

    private final HeldArrays curve;
    private final double partsPerUnit;
    private final double lowest;
    private final double perSetting;
    private final WideSum changes = new WideSum();
    private double setting;
    private long parts;
    private long amount;
    private long uncertain;

    /**
     * @param partsPerUnit in what parts a count's changes are squared: of those of a block the squares stay below 2⁶³
     * @param intoLast what a count stood for in the row before, in parts
     */
    CurveRows(Limits limits, RowState state, HeldArrays curve, double partsPerUnit, long intoLast) {
        super(limits, state);
        this.curve = curve;
        this.lowest = curve.settings()[0];
        this.perSetting = curve.stepsPerSetting();
        this.partsPerUnit = partsPerUnit;
        this.setting = state.setting;
        this.parts = intoLast;
    }

    @Override
    boolean hasItsSettings(Rows rows, int from, int to) {
        double[] settings = rows.settings();
        // Numbers that aren't negative have the order of their bits; one that is, and what isn't a number, shows in a
        // sign.
        long lowest = Double.doubleToRawLongBits(curve.lowestOfCurve());
        long highest = Double.doubleToRawLongBits(curve.highestOfCurve());
        long outside = 0;
        for (int i = from; i < to; i++) {
            long bits = Double.doubleToRawLongBits(settings[i]);
            outside |= bits | (bits - lowest) | (highest - bits);
        }
        return outside >= 0;
    }

    @Override
    boolean hasItsSetting(Rows rows, int row) {
        double one = rows.settings()[row];
        return one >= curve.lowestOfCurve() && one <= curve.highestOfCurve();
    }

    @Override
    void evaluate(Rows rows, int from, int to, long[] amounts, byte[] statuses) {
        double[] settings = rows.settings();
        long last = count();
        int row = from;
        int few = 0;
        while (row < to) {
            int end = row + 1;
            while (end < to && settings[end] == settings[row]) {
                end++;
            }
            if (end - row < SHORTEST && ++few > MOST_SHORT) {
                moving(rows, row, to, last, amounts, statuses);
                return;
            }
            last = standing(rows, row, end, last, amounts, statuses);
            row = end;
        }
    }

    /** Rows at one setting. */
    private long standing(Rows rows, int from, int to, long countBefore, long[] amounts, byte[] statuses) {
        setting = rows.settings()[from];
        double at = (setting - lowest) * perSetting;
        int place = (int) at;
        double beyond = at - place;
        int line = HeldArrays.LINE * place;
        double[] lines = curve.lines();
        double each = lines[line] + beyond * lines[line + 1];
        long relative = whole(1, lines[line + 2] + beyond * lines[line + 3]);
        long now = whole(partsPerUnit, each);
        changes.add(0, (now - parts) * (now - parts));
        parts = now;
        long last = evenly(each, rows.counts(), countBefore, from, to, amounts, statuses);
        long laid = whole(each, (double) last) - whole(each, (double) countBefore);
        amount += laid;
        uncertain += laid * relative;
        return last;
    }

    /** Rows of which hardly one is at the setting of the one before. */
    private void moving(Rows rows, int from, int to, long countBefore, long[] amounts, byte[] statuses) {
        long[] counts = rows.counts();
        double[] settings = rows.settings();
        double[] lines = curve.lines();
        long last = countBefore;
        long lastParts = parts;
        long laid = 0;
        long weighted = 0;
        long squares = 0;
        long stood = 0;
        for (int i = from; i < to; i++) {
            double at = (settings[i] - lowest) * perSetting;
            int place = (int) at;
            double beyond = at - place;
            int line = HeldArrays.LINE * place;
            double each = lines[line] + beyond * lines[line + 1];
            long relative = whole(1, lines[line + 2] + beyond * lines[line + 3]);
            long next = counts[i];
            long held = whole(each, (double) next) - whole(each, (double) last);
            amounts[i] = held;
            // 1 where nothing was counted, which is the code of a standing truck; that of what was laid is 0.
            long stands = (next - last - 1) >>> 63;
            statuses[i] = (byte) stands;
            stood += stands;
            laid += held;
            weighted += held * relative;
            long now = whole(partsPerUnit, each);
            squares += (now - lastParts) * (now - lastParts);
            lastParts = now;
            last = next;
        }
        changes.add(0, squares);
        parts = lastParts;
        amount += laid;
        uncertain += weighted;
        standing += stood;
        setting = settings[to - 1];
    }

    @Override
    void add(RowState state, RowSums sums, HeldArrays held, int rows) {
        state.use(held, setting, partsPerUnit);
        state.parts = parts;
        sums.takeMany(state, rows - standing, standing, counted(), amount, held.share(state.place), uncertain);
        sums.change(changes, parts);
    }
}
