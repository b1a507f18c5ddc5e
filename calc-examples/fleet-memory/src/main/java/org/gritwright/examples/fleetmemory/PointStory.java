package org.gritwright.examples.fleetmemory;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationFactor;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.ValueChange;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Implied;
import org.gritwright.core.history.drift.Stretch;
import org.gritwright.core.history.drift.Trend;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.statistics.Student;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * What is known of a calibration point over the years, as numbers of one unit: what its picture draws and its table prints.
 *
 * @param symbol the unit, for example "lb/rev"
 * @param catches what calibrations and verifications imply, in the order of time
 * @param steps what the display held, in the order of time
 * @param events repairs, other changes and losses, in the order of time
 */
record PointStory(
        Drifts.OfPoint point, String symbol, List<Caught> catches, List<Step> steps, List<Event> events, Line line) {
    static final double COVERAGE = 0.95;

    /** Of a value, and of its interval, where nothing asks for more. */
    private static final int DIGITS = 4;

    private static final int DIGITS_OF_HALF = 2;
    private static final int MOST_DECIMALS = 9;

    /**
     * What a catch implies.
     *
     * @param half half the interval that holds it with 95 %; none where nobody knows
     * @param onChart where it is on the control charts; none without them
     */
    record Caught(Implied implied, double value, Optional<Double> half, Optional<DriftChart.Point> onChart) {
        Event by() {
            return implied.by();
        }

        boolean isCalibration() {
            return by().what() instanceof What.Calibrated;
        }

        boolean isSignal() {
            return onChart.filter(DriftChart.Point::isSignal).isPresent();
        }
    }

    /**
     * Something else in the display.
     *
     * @param factor what the display holds from then on, as it shows it; none if that isn't known
     * @param value the same as what should leave
     */
    record Step(Instant at, Optional<CalibrationFactor> factor, Optional<Double> value) {}

    /** The straight line and what makes its numbers those of the unit. */
    record Line(Optional<Trend> trend, double perKilogram, double betweenDays) {
        /** Where the line is at an instant, and the interval that holds what leaves on a day then with 95 %. */
        Band at(Instant instant) {
            Measured<DischargePerRevolution> mass = trend.orElseThrow().discharge(instant);
            double kilograms = Amounts.si(DischargePerRevolution.class, mass.value());
            double ofLine = mass.standardUncertainty()
                            .map(u -> Amounts.si(DischargePerRevolution.class, u))
                            .orElse(0.0)
                    / kilograms;
            // As the trend itself has it when it says when the tolerance is left.
            double half =
                    Student.of(Double.POSITIVE_INFINITY).coverageFactor(COVERAGE) * Math.hypot(ofLine, betweenDays);
            double value = kilograms * perKilogram;
            return new Band(instant, value * Math.exp(-half), value, value * Math.exp(half));
        }
    }

    record Band(Instant at, double low, double value, double high) {}

    /** @param at until when; what came later doesn't count */
    static PointStory of(History history, Drifts drifts, Drifts.OfPoint point, Instant at) {
        List<Implied> implied = point.history().stretches().stream()
                .map(Stretch::implied)
                .flatMap(List::stream)
                .toList();
        Implied last = implied.get(implied.size() - 1);
        CalibrationPoint like = last.by().what().point().orElseThrow();
        Unit<DischargePerRevolution> unit = UnitSymbol.tradeUnit(
                DischargePerRevolution.class, last.discharge().value());
        Quantity<?> one = like.asMetered(Amounts.ofSi(1, unit));
        Map<String, DriftChart.Point> charted = new HashMap<>();
        point.charts()
                .forEach(chart -> chart.points()
                        .forEach(each -> charted.put(each.implied().by().id(), each)));
        List<Caught> catches = new ArrayList<>();
        for (Implied each : implied) {
            // A liquid's density is that of its own day.
            double number = number(each, unit, each.discharge().value());
            catches.add(new Caught(
                    each,
                    number,
                    each.discharge().expandedUncertainty(COVERAGE).map(half -> number(each, unit, half)),
                    Optional.ofNullable(charted.get(each.by().id()))));
        }
        return new PointStory(
                point,
                symbol(one.getUnit()),
                catches,
                steps(history, point, unit, at),
                events(history, point, at),
                new Line(
                        point.trend(),
                        one.getValue().doubleValue(),
                        Amounts.si(Dimensionless.class, drifts.betweenDays().relativeDeviation())));
    }

    private static double number(
            Implied implied, Unit<DischargePerRevolution> unit, Quantity<DischargePerRevolution> mass) {
        return number(implied.by().what().point().orElseThrow(), unit, Amounts.si(DischargePerRevolution.class, mass));
    }

    private static double number(CalibrationPoint point, Unit<DischargePerRevolution> unit, double kilograms) {
        return point.asMetered(Amounts.ofSi(kilograms, unit)).getValue().doubleValue();
    }

    @SuppressWarnings("unchecked") // whatever kind it is, only its symbol is asked for
    private static <Q extends Quantity<Q>> String symbol(Unit<?> unit) {
        return UnitSymbol.of((Unit<Q>) unit).symbol();
    }

    private static List<Step> steps(
            History history, Drifts.OfPoint point, Unit<DischargePerRevolution> unit, Instant at) {
        List<Step> steps = new ArrayList<>();
        for (ValueChange change : history.changes(point.history().truck())) {
            boolean isOfPoint = of(change.to(), point).isPresent()
                    || of(change.from(), point).isPresent();
            if (isOfPoint && !change.at().isAfter(at)) {
                Optional<CalibrationInForce> held = of(change.to(), point);
                steps.add(new Step(
                        change.at(),
                        held.map(CalibrationInForce::factor),
                        held.map(value -> number(value.point(), unit, value.kilogramsPerRevolution()))));
            }
        }
        return steps;
    }

    private static Optional<CalibrationInForce> of(Optional<CalibrationInForce> value, Drifts.OfPoint point) {
        return value.filter(one -> one.point().key().equals(point.history().point()));
    }

    private static List<Event> events(History history, Drifts.OfPoint point, Instant at) {
        return history.standing(point.history().truck()).stream()
                .filter(event -> event.what() instanceof What.Changed
                        || event.what() instanceof What.SetBack
                        || event.what() instanceof What.Overwritten)
                .filter(event -> !history.instant(event).isAfter(at))
                .toList();
    }

    /** Whether any value stands on the control charts: the first only begins them. */
    boolean isCharted() {
        return catches.stream()
                .anyMatch(one -> one.onChart().flatMap(DriftChart.Point::ewma).isPresent());
    }

    /** A number of the story, as fine as the surest of its values is known. */
    String text(double number) {
        double half = catches.stream()
                .flatMap(one -> one.half().stream())
                .filter(one -> one > 0)
                .min(Comparator.naturalOrder())
                .orElse(Double.MAX_VALUE);
        double value = catches.get(0).value();
        int decimals = Math.max(DIGITS - 1 - power(value), DIGITS_OF_HALF - 1 - power(half));
        return String.format(Locale.ROOT, "%." + Math.max(0, Math.min(MOST_DECIMALS, decimals)) + "f", number);
    }

    private static int power(double number) {
        return (int) Math.floor(Math.log10(number));
    }

    /** With the unit, for example "5.117 ± 0.041 lb/rev". */
    String text(Caught one) {
        return text(one.value()) + one.half().map(half -> " ± " + text(half)).orElse("") + " " + symbol;
    }
}
