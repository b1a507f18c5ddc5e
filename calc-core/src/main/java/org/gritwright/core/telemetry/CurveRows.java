package org.gritwright.core.telemetry;

/** Rows that are evaluated with one curve, each at its own setting. */
final class CurveRows extends RowRun {
    private final HeldArrays curve;
    private final double partsPerUnit;
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
    void evaluate(Rows rows, int from, int to, long[] amounts, byte[] statuses) {
        long[] counts = rows.counts();
        double[] settings = rows.settings();
        double[] lines = curve.lines();
        double lowest = curve.settings()[0];
        double perSetting = curve.stepsPerSetting();
        long last = count();
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
