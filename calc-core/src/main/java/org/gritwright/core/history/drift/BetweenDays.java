package org.gritwright.core.history.drift;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * How much what leaves per revolution varies from day to day on a truck that is in order, beyond what the catches of one day show: another
 * load, another moisture, warmer oil. Without it every chart would alarm. Immutable, thread-safe, a value.
 *
 * @param relativeDeviation a standard deviation, relative, 0 or more and below 100 %
 * @param pairs from how many pairs of successive days it was estimated; 0 where it is assumed
 */
public record BetweenDays(Quantity<Dimensionless> relativeDeviation, int pairs) {
    /** Fewer pairs than this don't tell (common practice, no source). */
    public static final int FEWEST_PAIRS = 10;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is out of its range
     */
    public BetweenDays {
        Require.share("deviation from day to day", relativeDeviation);
        Require.that(pairs >= 0, "pairs of days", "0 or more", pairs);
    }

    /**
     * An assumed deviation.
     *
     * @param relativeDeviation as for the full form
     * @return the deviation
     * @throws org.gritwright.units.InvalidInputException if it is out of its range
     */
    public static BetweenDays assumed(Quantity<Dimensionless> relativeDeviation) {
        return new BetweenDays(relativeDeviation, 0);
    }

    /**
     * The deviation that a fleet's own history shows: with it, half of all differences between successive days at a point, without a change
     * in between, are below 0.6745 of their standard deviation. As a median, it isn't set by a few trucks that drift. Values of the same
     * day aren't compared; what both share drops out if it is one error.
     *
     * @param histories the points of the trucks that are taken to vary alike
     * @param otherwise what holds where there are fewer than {@link #FEWEST_PAIRS} pairs
     * @return the deviation
     */
    public static BetweenDays of(Collection<DischargeHistory> histories, BetweenDays otherwise) {
        Objects.requireNonNull(otherwise, "otherwise");
        List<double[]> differences = new ArrayList<>();
        for (DischargeHistory history : histories) {
            history.stretches().forEach(stretch -> addDifferences(stretch, differences));
        }
        if (differences.size() < FEWEST_PAIRS) {
            return otherwise;
        }
        double wanted = Student.of(Double.POSITIVE_INFINITY).coverageFactor(0.5);
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (medianRatio(differences, middle) > wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new BetweenDays(
                Amounts.ofSi(low == 0 ? 0 : Math.min(high, 0.999), SpreadingUnits.PERCENT), differences.size());
    }

    /** Each difference with the variance that the catches explain. */
    private static void addDifferences(Stretch stretch, List<double[]> differences) {
        List<Implied> usable = DriftChart.usable(stretch);
        for (int i = 1; i < usable.size(); i++) {
            Implied one = usable.get(i - 1);
            Implied next = usable.get(i);
            if (!one.by().at().day().equals(next.by().at().day())) {
                double difference = Math.log(next.kilogramsPerRevolution() / one.kilogramsPerRevolution());
                differences.add(new double[] {
                    Math.abs(difference),
                    square(one.ownUncertainty())
                            + square(next.ownUncertainty())
                            + Whitened.varianceOfWhatIsNotShared(one, next)
                });
            }
        }
    }

    private static double medianRatio(List<double[]> differences, double deviation) {
        double[] ratios = differences.stream()
                .mapToDouble(pair -> {
                    double variance = pair[1] + 2 * deviation * deviation;
                    return pair[0] == 0 ? 0 : pair[0] / Math.sqrt(variance);
                })
                .sorted()
                .toArray();
        int half = ratios.length / 2;
        return ratios.length % 2 == 1 ? ratios[half] : (ratios[half - 1] + ratios[half]) / 2;
    }

    private static double square(double number) {
        return number * number;
    }

    double relative() {
        return Amounts.si(Dimensionless.class, relativeDeviation);
    }
}
