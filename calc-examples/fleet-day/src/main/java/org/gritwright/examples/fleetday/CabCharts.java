package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Speed;
import org.gritwright.core.chart.BestSetting;
import org.gritwright.core.chart.CellValue;
import org.gritwright.core.chart.FeedbackCell;
import org.gritwright.core.chart.FeedbackChart;
import org.gritwright.core.chart.OpenLoopChart;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.envelope.Limit;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.quantity.ApplicationRate;

/** The charts of a calibration point, for a template: the numbers are those of the library's charts, each rounded there once. */
final class CabCharts {
    private static final String ROUNDED =
            "Each number is rounded once, to steps of 1, 2 or 5 no larger than its standard uncertainty.";

    private CabCharts() {}

    static List<ChartTable> of(CabPoint point) {
        List<ChartTable> charts = new ArrayList<>();
        point.feedbackChart().ifPresent(chart -> charts.add(feedback(point, chart)));
        point.openLoopChart().ifPresent(chart -> {
            charts.add(openLoop(chart));
            if (!point.asked().isEmpty()) {
                charts.add(best(point, chart));
            }
        });
        return charts;
    }

    private static ChartTable feedback(CabPoint point, FeedbackChart<ApplicationRate> chart) {
        CabUnits units = CabUnits.of(chart.envelope().discharge().value());
        Map<Quantity<ApplicationRate>, List<Demand>> asked = asked(point.asked(), units);
        Set<String> reasons = new LinkedHashSet<>();
        List<ChartTable.Row> rows = new ArrayList<>();
        for (int i = 0; i < chart.rates().size(); i++) {
            Quantity<ApplicationRate> rate = chart.rates().get(i);
            List<FeedbackCell<ApplicationRate>> cells = chart.row(i);
            cells.stream()
                    .flatMap(cell -> cell.outside().stream())
                    .map(outside -> (isTooSlow(outside.limit()) ? "Too slow: " : "Too fast: ")
                            + outside.limit().words() + ".")
                    .forEach(reasons::add);
            rows.add(new ChartTable.Row(
                    number(rate),
                    asked.containsKey(rate),
                    cells.stream().map(CabCharts::cell).toList()));
        }
        List<String> notes = new ArrayList<>();
        if (!asked.isEmpty()) {
            notes.add("Bold rates are asked for: "
                    + asked.entrySet().stream()
                            .map(entry -> number(entry.getKey()) + " by " + names(entry.getValue()))
                            .collect(Collectors.joining("; "))
                    + ".");
        }
        if (!reasons.isEmpty()) {
            notes.add("Shaded: the truck can’t, and lays what stands there instead. " + String.join(" ", reasons));
        }
        notes.add(ROUNDED);
        return new ChartTable(
                chart.subject() + ": shaft speed in rev/min, below it "
                        + symbol(chart.cell(0, 0).flow()),
                "rate, " + units.rateSymbol() + "; road speed, " + units.speedSymbol(),
                heads(chart.speeds()),
                rows,
                notes);
    }

    private static ChartTable.Cell cell(FeedbackCell<ApplicationRate> cell) {
        return cell.outside()
                .map(outside -> new ChartTable.Cell(
                        "lays " + outside.delivered().number(),
                        isTooSlow(outside.limit()) ? "too slow" : "too fast",
                        true))
                .orElseGet(() -> new ChartTable.Cell(
                        cell.shaftSpeed().number(), cell.flow().number(), false));
    }

    private static boolean isTooSlow(Limit limit) {
        return limit == Limit.SLOWEST_STEADY_SHAFT;
    }

    private static ChartTable openLoop(OpenLoopChart<ApplicationRate> chart) {
        boolean isLessSure = chart.row(0).stream().anyMatch(cell -> cell.isLessSure());
        List<String> notes = new ArrayList<>();
        if (isLessSure) {
            notes.add("How sure the shaft speeds are nobody said: the rates are less sure than they look.");
        }
        notes.add(ROUNDED);
        CabUnits units = CabUnits.of(chart.discharge().value());
        return new ChartTable(
                chart.subject() + ": rate in " + units.rateSymbol(),
                "control setting; road speed, " + units.speedSymbol(),
                heads(chart.speeds()),
                IntStream.range(0, chart.settings().size())
                        .mapToObj(i -> new ChartTable.Row(
                                chart.settings().get(i).toString(),
                                false,
                                chart.row(i).stream()
                                        .map(cell ->
                                                ChartTable.Cell.of(cell.rate().number()))
                                        .toList()))
                        .toList(),
                notes);
    }

    /** For each rate that is asked for, where to set the control, and how far off that leaves the truck. */
    private static ChartTable best(CabPoint point, OpenLoopChart<ApplicationRate> chart) {
        CabUnits units = CabUnits.of(chart.discharge().value());
        return new ChartTable(
                chart.subject() + ": best control setting, below it the error that it leaves",
                "rate, " + units.rateSymbol() + "; road speed, " + units.speedSymbol(),
                heads(chart.speeds()),
                asked(point.asked(), units).keySet().stream()
                        .map(rate -> new ChartTable.Row(
                                number(rate),
                                true,
                                chart.speeds().stream()
                                        .map(speed -> cell(chart.best(rate, speed)))
                                        .toList()))
                        .toList(),
                List.of("+ lays too much, − too little."));
    }

    private static ChartTable.Cell cell(BestSetting<ApplicationRate> best) {
        double percent = Amounts.in(best.error(), SpreadingUnits.PERCENT);
        long whole = Math.round(percent);
        String error = (whole > 0 ? "+" : whole < 0 ? "−" : "") + Math.abs(whole) + " %";
        return new ChartTable.Cell(best.setting().toString(), error, false);
    }

    /** The rates that are asked for, in the truck's unit, with what asks for each. */
    static Map<Quantity<ApplicationRate>, List<Demand>> asked(List<Demand> demands, CabUnits units) {
        Map<Quantity<ApplicationRate>, List<Demand>> asked = new LinkedHashMap<>();
        for (Demand one : demands) {
            Quantity<ApplicationRate> rate = Amounts.of(Amounts.in(one.rate(), units.rateUnit()), units.rateUnit());
            asked.computeIfAbsent(rate, key -> new ArrayList<>()).add(one);
        }
        return asked;
    }

    static String names(List<Demand> demands) {
        return demands.stream().map(Demand::name).distinct().collect(Collectors.joining(", "));
    }

    private static List<String> heads(List<Quantity<Speed>> speeds) {
        return speeds.stream().map(CabCharts::number).toList();
    }

    /** Without its unit, which stands in the corner. */
    private static <Q extends Quantity<Q>> String number(Quantity<Q> quantity) {
        return Figures.number(quantity, quantity.getUnit());
    }

    private static String symbol(CellValue<?> value) {
        return UnitSymbol.of(value.exact().value().getUnit()).symbol();
    }
}
