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
 * @param perCounts milligrams or microliters per count at each; empty where nothing is held
 * @param shares at which place of the sums what is counted with it belongs: one for each value, one for a curve
 * @param relatives the relative standard uncertainty of a curve at each; 0 for values
 * @param drifts the error that grew, for each share; none where nothing did
 */
@SuppressWarnings("ArrayRecordComponent") // never handed out; compared with nothing
record HeldArrays(
        long from,
        long until,
        boolean isCurve,
        double[] settings,
        double[] perCounts,
        int[] shares,
        double[] relatives,
        @Nullable Drift[] drifts)
        implements Serializable {
    /** Two settings closer together than this part are one: what units lose, not what a gate does. */
    private static final double SAME = 1e-6;

    static final int NONE = -1;

    /** One value, always, whatever the setting. */
    static HeldArrays always(double perCount) {
        return new HeldArrays(
                Long.MIN_VALUE,
                Long.MAX_VALUE,
                false,
                new double[] {Double.NaN},
                new double[] {perCount},
                new int[1],
                new double[1],
                new Drift[1]);
    }

    boolean holds(long time) {
        return time >= from && time < until;
    }

    /** The place of a setting: of values the one that it is, of a curve the one at or below it; {@link #NONE} if there is none. */
    int place(double setting) {
        if (perCounts.length == 0) {
            return NONE;
        }
        if (isCurve) {
            double lowest = settings[0];
            double highest = settings[settings.length - 1];
            if (!(setting >= lowest - SAME * highest && setting <= highest + SAME * highest)) {
                return NONE;
            }
            double step = (highest - lowest) / (settings.length - 1);
            return (int) Math.min(Math.max((setting - lowest) / step, 0), settings.length - 2.0);
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

    /** Of a curve between the place and the next, of a value itself. */
    double perCount(int place, double setting) {
        return isCurve ? between(perCounts, place, setting) : perCounts[place];
    }

    double relative(int place, double setting) {
        return isCurve ? between(relatives, place, setting) : relatives[place];
    }

    private double between(double[] values, int place, double setting) {
        double share = (setting - settings[place]) / (settings[place + 1] - settings[place]);
        return values[place] + Math.min(Math.max(share, 0), 1) * (values[place + 1] - values[place]);
    }

    int share(int place) {
        return shares[isCurve ? 0 : place];
    }

    @Nullable
    Drift drift(int place) {
        return drifts[isCurve ? 0 : place];
    }
}
