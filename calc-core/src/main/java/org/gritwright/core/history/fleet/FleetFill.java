package org.gritwright.core.history.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.history.History;
import org.gritwright.core.history.drift.DischargeHistory;
import org.gritwright.core.history.drift.Implied;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.statistics.RobustSample;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;
import org.gritwright.units.quantity.BulkDensity;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * How full the conveyors of one kind run: the apparent fill, effective bulk density ÷ loose bulk density, that the last calibration or
 * verification at each point implies; with its middle and its spread, which a few odd trucks don't move. Immutable, thread-safe, a value.
 *
 * @param kind what they have in common
 * @param median the middle of the fills
 * @param deviation the median absolute deviation from it
 * @param points the points of the trucks, each with its fill
 */
public record FleetFill(
        Kind kind, Quantity<Dimensionless> median, Quantity<Dimensionless> deviation, List<OfPoint> points) {
    /** With fewer points nothing is typical and none is odd (common practice, no source). */
    public static final int FEWEST = 5;

    /** However alike fills happen to be, they are taken to vary by as much (common practice, no source). */
    private static final double LEAST_DEVIATION = 0.01;

    /**
     * The fill at a point of a truck.
     *
     * @param truck the truck's id
     * @param point the point
     * @param fill its apparent fill, relative
     * @param isOdd whether it is far from its like: its modified Z-score is beyond 3.5, and there are five points or more
     */
    public record OfPoint(String truck, CalibrationPoint point, Quantity<Dimensionless> fill, boolean isOdd) {
        /** Checks that nothing is null. */
        public OfPoint {
            Require.given(OfPoint.class, truck, point, fill);
        }
    }

    /** Copies the list. */
    public FleetFill {
        Require.given(FleetFill.class, kind, median, deviation, points);
        points = List.copyOf(points);
    }

    /**
     * The fills of each kind that was ever caught.
     *
     * @param history the fleet's history
     * @return kind by kind, in the order in which they were first caught
     */
    public static List<FleetFill> of(History history) {
        Map<Kind, List<DischargeHistory>> kinds = new LinkedHashMap<>();
        for (DischargeHistory known : DischargeHistory.all(history)) {
            last(known)
                    .ifPresent(implied -> kinds.computeIfAbsent(
                                    Kind.of(implied.by().what().point().orElseThrow()), kind -> new ArrayList<>())
                            .add(known));
        }
        return kinds.entrySet().stream()
                .map(kind -> of(kind.getKey(), kind.getValue()))
                .toList();
    }

    private static Optional<Implied> last(DischargeHistory known) {
        List<Implied> implied = known.current().implied();
        return implied.isEmpty() ? Optional.empty() : Optional.of(implied.get(implied.size() - 1));
    }

    private static FleetFill of(Kind kind, List<DischargeHistory> all) {
        double[] fills = new double[all.size()];
        for (int i = 0; i < fills.length; i++) {
            fills[i] = fill(last(all.get(i)).orElseThrow());
        }
        RobustSample typical = RobustSample.of(fills);
        List<OfPoint> points = new ArrayList<>();
        for (int i = 0; i < fills.length; i++) {
            points.add(new OfPoint(
                    all.get(i).truck(),
                    last(all.get(i)).orElseThrow().by().what().point().orElseThrow(),
                    Amounts.ofSi(fills[i], SpreadingUnits.PERCENT),
                    fills.length >= FEWEST && typical.isOutlier(fills[i], LEAST_DEVIATION * typical.median())));
        }
        return new FleetFill(
                kind,
                Amounts.ofSi(typical.median(), SpreadingUnits.PERCENT),
                Amounts.ofSi(typical.deviation(), SpreadingUnits.PERCENT),
                points);
    }

    private static double fill(Implied implied) {
        CalibrationPoint point = implied.by().what().point().orElseThrow();
        double swept = point.metering().sweptCubicMetersPerRevolution(point.setting());
        double kilograms =
                Amounts.si(DischargePerRevolution.class, implied.discharge().value());
        return kilograms
                / (swept * Amounts.si(BulkDensity.class, point.material().looseBulkDensity()));
    }
}
