package org.gritwright.core.telemetry;

import java.util.stream.DoubleStream;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A discharge curve as a table in equal steps of the setting, between its lowest and its highest caught one: twice as fine as one of
 * which no half-way point is off by more than a part in 10 000. Straight lines between points of a rising curve rise too.
 *
 * @param settings the settings, in SI
 * @param perCounts milligrams per count at each
 * @param relatives the relative standard uncertainty at each; 0 where the curve has none
 */
@SuppressWarnings("ArrayRecordComponent") // within the package
record CurveTable(double[] settings, double[] perCounts, double[] relatives) {
    private static final double CLOSE = 1e-4;
    private static final int FEWEST = 16;
    private static final int MOST = 16_384;

    /** A setting is met that is so close to one, in steps. */
    private static final double MET = 1e-6;

    static CurveTable of(DischargeCurve curve) {
        Setting lowest = curve.lowestCaught();
        double low = lowest.si();
        double high = curve.highestCaught().si();
        if (!(high > low)) {
            throw new InvalidInputException("curve", "one caught at two settings or more", "one setting, " + lowest);
        }
        int steps = stepsThroughCaught(curve, low, high);
        CurveTable table = inSteps(curve, lowest, low, high, steps);
        while (steps <= MOST) {
            steps *= 2;
            CurveTable finer = inSteps(curve, lowest, low, high, steps);
            if (table.isCloseTo(finer)) {
                return finer;
            }
            table = finer;
        }
        throw new InvalidInputException(
                "curve", "one that lines between " + steps + " settings follow to 0.01 %", "one that bends more");
    }

    /** Where a curve was caught it may have a bend: in steps that meet those settings, lines follow it exactly there. */
    private static int stepsThroughCaught(DischargeCurve curve, double low, double high) {
        double[] places = curve.settings().stream()
                .mapToDouble(setting -> (setting.si() - low) / (high - low))
                .toArray();
        for (int steps = FEWEST; steps <= MOST; steps++) {
            int all = steps;
            if (DoubleStream.of(places).allMatch(place -> Math.abs(place * all - Math.rint(place * all)) < MET)) {
                return steps;
            }
        }
        return FEWEST;
    }

    private boolean isCloseTo(CurveTable finer) {
        for (int i = 0; i + 1 < perCounts.length; i++) {
            double halfway = (perCounts[i] + perCounts[i + 1]) / 2;
            double there = finer.perCounts[2 * i + 1];
            if (Math.abs(halfway - there) > CLOSE * there) {
                return false;
            }
        }
        return true;
    }

    private static CurveTable inSteps(DischargeCurve curve, Setting like, double low, double high, int steps) {
        double[] settings = new double[steps + 1];
        double[] perCounts = new double[steps + 1];
        double[] relatives = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            settings[i] = i == steps ? high : low + (high - low) * i / steps;
            Measured<DischargePerRevolution> there =
                    curve.predict(like.withSi(settings[i])).dischargePerRevolution();
            double kilograms = Amounts.si(DischargePerRevolution.class, there.value());
            perCounts[i] = AmountPerCount.of(kilograms, curve.metering(), curve.material());
            relatives[i] = there.standardUncertainty()
                    .map(u -> Amounts.si(DischargePerRevolution.class, u) / kilograms)
                    .orElse(0.0);
        }
        return new CurveTable(settings, perCounts, relatives);
    }
}
