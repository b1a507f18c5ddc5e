package org.gritwright.core.telemetry;

import java.io.Serializable;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What a slot holds between two times, as plain arrays.
 *
 * @param from from when on, in milliseconds since 1970
 * @param until until when, exclusive
 * @param isCurve whether what lies between two settings is interpolated; settings are then in equal steps
 * @param settings the settings, rising; the one of a point without a setting is NaN
 * @param lines {@link #LINE} numbers for each setting: milligrams or microliters per count, and by how much they rise up to the next
 *     of a curve; the curve's own relative standard uncertainty, in parts of {@link RowSums#PARTS}, and by how much it rises; empty where nothing
 *     is held
 * @param shares at which place of the sums what is counted with it belongs: one for each value, one for a curve
 * @param drifts the error that grew, for each share; none where nothing did
 */
@SuppressWarnings("ArrayRecordComponent") // never handed out; compared with nothing
record HeldArrays(
        long from,
        long until,
        boolean isCurve,
        double[] settings,
        double[] lines,
        int[] shares,
        @Nullable Drift[] drifts)
        implements Serializable {
    static final int LINE = 4;
    static final int NONE = -1;

    /** Two settings closer together than this part are one: what units lose, not what a gate does. */
    static final double SAME = 1e-6;

    static HeldArrays nothing(long from, long until) {
        return new HeldArrays(from, until, false, new double[0], new double[0], new int[0], new Drift[0]);
    }

    /** One value, always, whatever the setting. */
    static HeldArrays always(double perCount) {
        return values(
                Long.MIN_VALUE,
                Long.MAX_VALUE,
                new double[] {Double.NaN},
                new double[] {perCount},
                new int[1],
                new Drift[1]);
    }

    static HeldArrays values(
            long from, long until, double[] settings, double[] perCounts, int[] shares, @Nullable Drift[] drifts) {
        double[] lines = new double[LINE * perCounts.length];
        for (int i = 0; i < perCounts.length; i++) {
            lines[LINE * i] = perCounts[i];
        }
        return new HeldArrays(from, until, false, settings, lines, shares, drifts);
    }

    /** @param divisor what was indicated is divided by */
    static HeldArrays curve(long from, long until, CurveTable table, double divisor, int share, @Nullable Drift drift) {
        double[] perCounts = table.perCounts();
        double[] relatives = table.relatives();
        double[] lines = new double[LINE * perCounts.length];
        for (int i = 0; i < perCounts.length; i++) {
            // From the highest setting on it is level.
            int next = Math.min(i + 1, perCounts.length - 1);
            lines[LINE * i] = perCounts[i] / divisor;
            lines[LINE * i + 1] = (perCounts[next] - perCounts[i]) / divisor;
            lines[LINE * i + 2] = RowSums.PARTS * relatives[i];
            lines[LINE * i + 3] = RowSums.PARTS * (relatives[next] - relatives[i]);
        }
        return new HeldArrays(from, until, true, table.settings(), lines, new int[] {share}, new Drift[] {drift});
    }

    void addTo(Fingerprint all) {
        all.add(from).add(until).add(isCurve ? 1 : 0).add(settings).add(lines);
        for (Drift drift : drifts) {
            if (drift != null) {
                all.add(drift.onset().name()).add(drift.error(), drift.from(), drift.length());
            }
        }
    }

    boolean isNothing() {
        return lines.length == 0;
    }

    boolean holds(long time) {
        return time >= from && time < until;
    }

    /** The most that a count stands for; 0 where nothing is held. */
    double mostPerCount() {
        double most = 0;
        for (int i = 0; i < lines.length; i += LINE) {
            most = Math.max(most, lines[i]);
        }
        return most;
    }

    /** The place of a setting: of values the one that it is, of a curve the one at or below it; {@link #NONE} if there is none. */
    int place(double setting) {
        if (isNothing()) {
            return NONE;
        }
        if (isCurve) {
            return setting >= lowestOfCurve() && setting <= highestOfCurve() ? (int) at(setting) : NONE;
        }
        if (settings.length == 1 && (Double.isNaN(settings[0]) || Double.isNaN(setting))) {
            return 0;
        }
        int found = Arrays.binarySearch(settings, setting);
        if (found >= 0) {
            return found;
        }
        int above = -found - 1;
        for (int i = Math.max(above - 1, 0); i <= Math.min(above, settings.length - 1); i++) {
            if (Math.abs(settings[i] - setting) <= SAME * settings[i]) {
                return i;
            }
        }
        return NONE;
    }

    double lowestOfCurve() {
        return Math.max(settings[0] - SAME * settings[settings.length - 1], 0);
    }

    double highestOfCurve() {
        return settings[settings.length - 1] * (1 + SAME);
    }

    double stepsPerSetting() {
        return (settings.length - 1) / (settings[settings.length - 1] - settings[0]);
    }

    /** How many steps of a curve a setting is above its lowest. */
    private double at(double setting) {
        return (setting - settings[0]) * stepsPerSetting();
    }

    private double along(int number, int place, double setting) {
        int line = LINE * place + number;
        return isCurve ? lines[line] + (at(setting) - place) * lines[line + 1] : lines[line];
    }

    /** Of a curve between the place and the next, of a value itself. */
    double perCount(int place, double setting) {
        return along(0, place, setting);
    }

    /** The relative standard uncertainty of a curve, in parts of {@link RowSums#PARTS}; of a value 0. */
    long relativeParts(int place, double setting) {
        return RowRun.whole(1, along(2, place, setting));
    }

    int share(int place) {
        return shares[isCurve ? 0 : place];
    }

    @Nullable
    Drift drift(int place) {
        return drifts[isCurve ? 0 : place];
    }
}
