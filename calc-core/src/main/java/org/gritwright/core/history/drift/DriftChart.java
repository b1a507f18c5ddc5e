package org.gritwright.core.history.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.control.CusumChart;
import org.gritwright.core.control.EwmaChart;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.What;
import org.gritwright.core.statistics.Student;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * A stretch's discharges on two control charts. Each value is compared with what those before it let expect, and the difference is divided by
 * its standard deviation; what successive values share, such as the scale, drops out. So the first value of a chart gives no point,
 * and charts of trucks that are in order alarm as rarely as they were designed to.
 *
 * <p>A change of the truck begins another stretch, and so other charts. After a signal, a calibration begins them anew: what has changed is then
 * known. Immutable, thread-safe, a value.
 *
 * @param rule the charts' designs
 * @param points the values that have an uncertainty, in the order of time
 */
public record DriftChart(DriftRule rule, List<Point> points) {
    /** With fewer points than this a chart tells little (common practice, no source). */
    public static final int FEW = 5;

    /** From here on both distributions are one to all digits that a chart shows. */
    private static final double MANY = 1e6;

    /**
     * A value on the charts.
     *
     * @param implied the value
     * @param deviation its relative difference from the first of its chart
     * @param standardized its difference from what those before it let expect, in standard deviations; none for the first
     * @param ewma its point on the one chart; none for the first
     * @param cusum its point on the other; none for the first
     */
    public record Point(
            Implied implied,
            Quantity<Dimensionless> deviation,
            Optional<Double> standardized,
            Optional<EwmaChart.Point> ewma,
            Optional<CusumChart.Point> cusum) {
        /** Checks that nothing is null. */
        public Point {
            Require.given(Point.class, implied, deviation, standardized, ewma, cusum);
        }

        /**
         * Whether either chart alarms.
         *
         * @return true beyond a limit
         */
        public boolean isSignal() {
            return ewma.flatMap(EwmaChart.Point::signal).isPresent()
                    || cusum.flatMap(CusumChart.Point::signal).isPresent();
        }

        /**
         * Whether the charts begin with it.
         *
         * @return true for the first value, and for a calibration after a signal
         */
        public boolean isFirst() {
            return standardized.isEmpty();
        }
    }

    /** Copies the list. */
    public DriftChart {
        Require.given(DriftChart.class, rule, points);
        points = List.copyOf(points);
    }

    /**
     * The charts of a stretch.
     *
     * @param stretch the stretch; what has no uncertainty is left out
     * @param rule the charts' designs
     * @return the charts
     * @throws org.gritwright.units.InvalidInputException if a value is certain and nothing varies from day to day
     */
    public static DriftChart of(Stretch stretch, DriftRule rule) {
        List<Implied> implied = usable(stretch);
        List<Point> points = new ArrayList<>();
        while (points.size() < implied.size()) {
            begin(implied.subList(points.size(), implied.size()), rule, points);
        }
        return new DriftChart(rule, points);
    }

    /** What has an uncertainty. */
    static List<Implied> usable(Stretch stretch) {
        return stretch.implied().stream()
                .filter(one -> one.discharge().standardUncertainty().isPresent())
                .toList();
    }

    /** Charts from the first value on, until a calibration after a signal. */
    private static void begin(List<Implied> implied, DriftRule rule, List<Point> points) {
        double reference = implied.get(0).kilogramsPerRevolution();
        double between = rule.betweenDays().relative();
        double[] residuals = Whitened.of(implied, between, reference).recursiveResiduals();
        EwmaChart.Point ewma = rule.ewma().start();
        CusumChart.Point cusum = rule.cusum().start();
        boolean signaled = false;
        points.add(new Point(implied.get(0), percent(0), Optional.empty(), Optional.empty(), Optional.empty()));
        for (int i = 1; i < implied.size(); i++) {
            Implied one = implied.get(i);
            if (signaled && one.by().what() instanceof What.Calibrated) {
                return;
            }
            double z = normal(residuals[i - 1], one, between);
            ewma = rule.ewma().runFrom(ewma, z).get(0);
            cusum = rule.cusum().runFrom(cusum, z).get(0);
            Point point = new Point(
                    one,
                    percent(one.kilogramsPerRevolution() / reference - 1),
                    Optional.of(z),
                    Optional.of(ewma),
                    Optional.of(cusum));
            points.add(point);
            signaled |= point.isSignal();
        }
    }

    private static Quantity<Dimensionless> percent(double ratio) {
        return Amounts.ofSi(ratio, SpreadingUnits.PERCENT);
    }

    /**
     * A residual whose deviation is known from few catches follows Student's t; the normal number that is exceeded with the same chance takes
     * its place. The deviation from day to day counts as known, which adds to the degrees of freedom as Welch and Satterthwaite have
     * it.
     */
    private static double normal(double residual, Implied one, double between) {
        double own = one.ownUncertainty() * one.ownUncertainty();
        double all = own + between * between;
        double degrees = one.discharge().degreesOfFreedom().orElseThrow() * all * all / (own * own);
        if (!(degrees < MANY)) {
            return residual;
        }
        double chance = Student.of(degrees).probabilityAbove(Math.abs(residual));
        return Math.copySign(
                Student.of(Double.POSITIVE_INFINITY).factorExceededWith(Math.max(chance, Double.MIN_NORMAL)), residual);
    }

    /**
     * The first value of the last charts at which one alarmed.
     *
     * @return the calibration or verification; none without an alarm, or once a calibration has begun them anew
     */
    public Optional<Event> standingSignal() {
        List<Optional<Event>> signals = firstSignals();
        return signals.isEmpty() ? Optional.empty() : signals.get(signals.size() - 1);
    }

    /**
     * The first values at which charts alarmed that a calibration has begun anew.
     *
     * @return calibrations or verifications, in the order of time
     */
    public List<Event> clearedSignals() {
        List<Optional<Event>> signals = firstSignals();
        return signals.subList(0, Math.max(signals.size() - 1, 0)).stream()
                .flatMap(Optional::stream)
                .toList();
    }

    /** Of the charts one after the other. */
    private List<Optional<Event>> firstSignals() {
        List<Optional<Event>> signals = new ArrayList<>();
        for (Point point : points) {
            int last = signals.size() - 1;
            if (point.isFirst()) {
                signals.add(Optional.empty());
            } else if (signals.get(last).isEmpty() && point.isSignal()) {
                signals.set(last, Optional.of(point.implied().by()));
            }
        }
        return signals;
    }

    /**
     * Whether the last charts have too few points to tell much.
     *
     * @return true with fewer than five
     */
    public boolean isFew() {
        int since = 0;
        for (Point point : points) {
            since = point.isFirst() ? 0 : since + 1;
        }
        return since < FEW;
    }
}
