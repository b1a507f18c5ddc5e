package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.verification.Judgement;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The calibration errors of a fleet: a line a truck, with a mark for each verification
 * catch and the tolerance as a band.
 *
 * <p>Shape tells the marks apart, not color, so that the chart is read in black and white too.
 */
final class ErrorChart {
    /** Beyond this many tolerances a mark stands at the edge, so that one wild truck doesn't flatten the others. */
    private static final double EDGE = 5;

    private static final int WIDTH = 400;
    private static final int LINE = 24;
    private static final int LONGEST_LABEL = 11;

    private final List<TruckResult> trucks;
    private final List<TruckResult> shown;
    private final double tolerance;
    private final double edge;

    /** @param trucks those of the day that it is to show, from the top */
    ErrorChart(FleetDay day, List<TruckResult> trucks) {
        this.trucks = trucks;
        this.shown = trucks.stream().filter(ErrorChart::hasError).toList();
        this.tolerance = percent(day.tolerance());
        double largest = shown.stream()
                .flatMap(ErrorChart::errors)
                .mapToDouble(e -> Math.abs(percent(e)))
                .max()
                .orElse(0);
        this.edge = Math.min(Math.max(largest, tolerance) * 1.2, EDGE * tolerance);
    }

    private static Stream<Quantity<Dimensionless>> errors(TruckResult truck) {
        return truck.assessment().verifications().stream().flatMap(v -> v.calibrationError().stream());
    }

    private static boolean hasError(TruckResult truck) {
        return errors(truck).findAny().isPresent();
    }

    /** The ids of the trucks that have no calibration error to show. */
    List<String> missing() {
        return trucks.stream()
                .filter(truck -> !hasError(truck))
                .map(TruckResult::id)
                .toList();
    }

    /** Marks that stand at the edge, as "T-20 +31.00 %". */
    List<String> beyondEdge() {
        List<String> beyond = new ArrayList<>();
        for (TruckResult truck : shown) {
            errors(truck)
                    .filter(e -> Math.abs(percent(e)) > EDGE * tolerance)
                    .forEach(e -> beyond.add(truck.id() + " " + Figures.error(e)));
        }
        return beyond;
    }

    /** None if there is no error to show. */
    Optional<Picture> picture() {
        if (shown.isEmpty()) {
            return Optional.empty();
        }
        double left = 10
                + 8
                        * shown.stream()
                                .map(ErrorChart::label)
                                .mapToInt(String::length)
                                .max()
                                .orElseThrow();
        int height = 64 + LINE * (shown.size() + 1);
        Plot plot = new Plot(
                new Plot.Span(left + 10, left + WIDTH - 10),
                new Plot.Span(height - 54.0, 10),
                new Plot.Span(-edge, edge),
                new Plot.Span(0, shown.size() + 1.0));
        frame(plot);
        for (int i = 0; i < shown.size(); i++) {
            // The first truck stands on top.
            truck(plot, shown.get(i), shown.size() - i);
        }
        String description =
                "Calibration errors of " + Words.count(shown.size(), "truck") + "; the table gives the numbers.";
        return Optional.of(Picture.of((int) left + WIDTH, height, description, plot));
    }

    private void frame(Plot plot) {
        List<Double> limits = List.of(-tolerance, tolerance);
        plot.band("tolerance", limits, limit -> limit, limit -> 0, limit -> shown.size() + 1.0);
        limits.forEach(limit -> plot.vertical("dashed", limit));
        plot.vertical("stroke", 0);
        plot.xAxis(tick -> (tick.signum() > 0 ? "+" : "") + Plot.text(tick));
        plot.xTitle("calibration error, %");
    }

    private static String label(TruckResult truck) {
        return PlainText.shortened(PlainText.oneLine(truck.id()), LONGEST_LABEL);
    }

    private void truck(Plot plot, TruckResult truck, int line) {
        plot.beside(line, label(truck));
        plot.line("guide", -edge, line, edge, line);
        Optional<VerificationSeries> judged =
                truck.judged().filter(series -> series.last().calibrationError().isPresent());
        judged.map(VerificationSeries::judgement).ifPresent(judgement -> {
            double error = percent(judgement.budget().result().value());
            double half = percent(reach(judgement));
            plot.line("solid", within(error - half), line, within(error + half), line);
        });
        // The single catches behind the mark: all but one that is the mark itself.
        truck.assessment().verifications().stream()
                .filter(v -> judged.isEmpty()
                        || judged.get().verifications().size() > 1
                        || !v.equals(judged.get().last()))
                .flatMap(v -> v.calibrationError().stream())
                .forEach(error -> plot.mark(Plot.Mark.CROSS, within(percent(error)), line));
        judged.ifPresent(series -> plot.mark(mark(series.judgement()), within(percent(series.error())), line));
    }

    /** How far from the mark the verdict looks: both ends within the tolerance, and it is within. */
    private static Quantity<Dimensionless> reach(Judgement judgement) {
        return judgement.rule().risk().isPresent() ? judgement.guardBand() : judgement.expandedUncertainty();
    }

    private static Plot.Mark mark(Judgement judgement) {
        return switch (judgement.verdict()) {
            case WITHIN_TOLERANCE -> Plot.Mark.CIRCLE;
            case OUTSIDE_TOLERANCE -> Plot.Mark.DIAMOND;
            case UNDECIDED, UNDECIDABLE -> Plot.Mark.SQUARE;
        };
    }

    private double within(double percent) {
        return Math.max(-edge, Math.min(edge, percent));
    }

    private static double percent(Quantity<Dimensionless> ratio) {
        return Amounts.in(ratio, SpreadingUnits.PERCENT);
    }
}
