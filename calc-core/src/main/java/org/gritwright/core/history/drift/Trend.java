package org.gritwright.core.history.drift;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * The straight line through a stretch's discharges over time, by generalized least squares with their own and their shared errors and the
 * deviation from day to day: ln k = a + b·t, (XᵀV⁻¹X)⁻¹ the covariance of a and b (Aitken; any text on linear models). Immutable,
 * thread-safe.
 */
public final class Trend {
    private static final double SECONDS_PER_YEAR = 365.25 * 86_400;
    private static final double COVERAGE = 0.95;

    /** Two values always lie on a line. */
    private static final int FEWEST = 3;

    private final Instant middle;
    private final double reference;
    private final double level;
    private final double slope;
    private final double levelVariance;
    private final double slopeVariance;
    private final double covariance;
    private final double between;
    private final int values;
    private final Unit<DischargePerRevolution> unit;

    private Trend(List<Implied> implied, double between) {
        values = implied.size();
        this.between = between;
        middle = implied.get(values / 2).at();
        reference = implied.get(0).kilogramsPerRevolution();
        unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, implied.get(0).discharge().value());
        Whitened whitened = Whitened.of(implied, between, reference);
        double[] ones = new double[values];
        Arrays.fill(ones, 1);
        double[] one = whitened.column(ones);
        double[] time = whitened.column(
                implied.stream().mapToDouble(each -> years(each.at())).toArray());
        double[] y = whitened.y();
        double s11 = product(one, one);
        double s1t = product(one, time);
        double stt = product(time, time);
        double determinant = s11 * stt - s1t * s1t;
        level = (stt * product(one, y) - s1t * product(time, y)) / determinant;
        slope = (s11 * product(time, y) - s1t * product(one, y)) / determinant;
        levelVariance = stt / determinant;
        slopeVariance = s11 / determinant;
        covariance = -s1t / determinant;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /**
     * The line through a stretch.
     *
     * @param stretch the stretch; what has no uncertainty is left out
     * @param betweenDays how much values vary from day to day
     * @return the line; none with fewer than three values, or all of one time
     * @throws org.gritwright.units.InvalidInputException if a value is certain and nothing varies from day to day
     */
    public static Optional<Trend> of(Stretch stretch, BetweenDays betweenDays) {
        Objects.requireNonNull(betweenDays, "betweenDays");
        List<Implied> implied = DriftChart.usable(stretch);
        boolean apart = implied.stream().map(Implied::at).distinct().count() > 1;
        return implied.size() < FEWEST || !apart
                ? Optional.empty()
                : Optional.of(new Trend(implied, betweenDays.relative()));
    }

    private double years(Instant at) {
        Duration since = Duration.between(middle, at);
        return since.toSeconds() / SECONDS_PER_YEAR;
    }

    /**
     * By how much the discharge changes.
     *
     * @return the relative change per year, for example −2 %; its uncertainty counts as known
     */
    public Measured<Dimensionless> perYear() {
        return Measured.of(
                Amounts.ofSi(Math.expm1(slope), SpreadingUnits.PERCENT),
                Amounts.ofSi(Math.exp(slope) * Math.sqrt(slopeVariance), SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }

    /**
     * Whether the discharge is shown to change.
     *
     * @param risk the chance with which a discharge that doesn't change may be taken for one that does, for example 0.01
     * @return true if a line without slope is that unlikely
     * @throws org.gritwright.units.InvalidInputException if the risk isn't between 0 and 1
     */
    public boolean isShown(double risk) {
        double limit = Student.of(Double.POSITIVE_INFINITY).coverageFactor(1 - Require.probability("risk", risk));
        return Math.abs(slope) > limit * Math.sqrt(slopeVariance);
    }

    /**
     * The discharge by the line.
     *
     * @param at when
     * @return mass per revolution, as uncertain as the line is there
     */
    public Measured<DischargePerRevolution> discharge(Instant at) {
        double t = years(at);
        double value = reference * Math.exp(level + slope * t);
        return Measured.of(
                Amounts.ofSi(value, unit),
                Amounts.ofSi(value * Math.sqrt(variance(t)), unit),
                Double.POSITIVE_INFINITY);
    }

    private double variance(double t) {
        return levelVariance + 2 * covariance * t + slopeVariance * t * t;
    }

    /** Where the error of a value will be on a day: how near to zero and how far from it the interval is that holds it with 95 %. */
    private record Band(double nearest, double expected, double farthest) {}

    private Band band(double kilogramsPerRevolution, Instant at) {
        double t = years(at);
        double expected = Math.log(kilogramsPerRevolution / reference) - level - slope * t;
        double half = Student.of(Double.POSITIVE_INFINITY).coverageFactor(COVERAGE)
                * Math.sqrt(variance(t) + between * between);
        double lowest = Math.expm1(expected - half);
        double highest = Math.expm1(expected + half);
        return new Band(Math.max(0, Math.max(lowest, -highest)), Math.expm1(expected), Math.max(-lowest, highest));
    }

    /**
     * When the error of a value leaves the tolerance if the line goes on.
     *
     * @param held the value in the display
     * @param tolerance how far an error may be from zero
     * @param from the first day to look at
     * @param days how many days to look ahead, 1 to 3 660
     * @return when; each part none if it isn't within those days
     * @throws org.gritwright.units.InvalidInputException if the number of days is out of its range
     */
    public Leaving leaves(CalibrationInForce held, Tolerance tolerance, Instant from, int days) {
        Objects.requireNonNull(tolerance, "tolerance");
        Require.that(days >= 1 && days <= 3660, "days to look ahead", "1 to 3660", days);
        double kilograms = held.kilogramsPerRevolution();
        Optional<Instant> earliest = Optional.empty();
        Optional<Instant> expected = Optional.empty();
        Optional<Instant> latest = Optional.empty();
        for (int day = 0; day <= days && latest.isEmpty(); day++) {
            Instant at = from.plus(Duration.ofDays(day));
            Band band = band(kilograms, at);
            if (!tolerance.acceptsRatio(band.farthest)) {
                earliest = earliest.or(() -> Optional.of(at));
            }
            if (!tolerance.acceptsRatio(band.expected)) {
                expected = expected.or(() -> Optional.of(at));
            }
            if (!tolerance.acceptsRatio(band.nearest)) {
                latest = Optional.of(at);
            }
        }
        return new Leaving(earliest, expected, latest);
    }

    /**
     * When an error leaves the tolerance.
     *
     * @param earliest the first day on which the interval that holds the error with 95 % isn't wholly within the tolerance
     * @param expected the first day on which the line itself isn't
     * @param latest the first day on which the interval is wholly outside
     */
    public record Leaving(Optional<Instant> earliest, Optional<Instant> expected, Optional<Instant> latest) {
        /** Checks that nothing is null. */
        public Leaving {
            Require.given(Leaving.class, earliest, expected, latest);
        }
    }

    /**
     * From how many values it is.
     *
     * @return 3 or more
     */
    public int values() {
        return values;
    }

    /**
     * By how much the discharge changes, with its expanded uncertainty for 95 %, to a tenth of a per cent.
     *
     * @return for example "-9.6 ± 1.9 % a year"
     */
    @Override
    public String toString() {
        Measured<Dimensionless> change = perYear();
        return tenth(change.value()) + " ± "
                + tenth(change.expandedUncertainty(COVERAGE).orElseThrow()) + " % a year";
    }

    private static BigDecimal tenth(Quantity<Dimensionless> ratio) {
        return BigDecimal.valueOf(100 * Amounts.si(Dimensionless.class, ratio)).setScale(1, RoundingMode.HALF_EVEN);
    }
}
