package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.apache.commons.csv.CSVPrinter;
import org.gritwright.core.chart.CellValue;
import org.gritwright.core.chart.ChartSubject;
import org.gritwright.core.chart.FeedbackCell;
import org.gritwright.core.chart.FeedbackChart;
import org.gritwright.core.chart.OpenLoopChart;
import org.gritwright.units.Amounts;
import org.gritwright.units.quantity.ApplicationRate;

/** The charts of the cabs as a table for spreadsheets: a row a cell, with units, rounded as on the paper and exactly. */
final class CabCsv {
    private static final List<String> HEADER = List.of(
            "truck",
            "material",
            "gate setting",
            "control setting",
            "road speed",
            "rate",
            "exact rate",
            "shaft speed",
            "exact shaft speed",
            "mass per time",
            "exact mass per time",
            "holds",
            "why not",
            "laid instead",
            "exactly laid instead");

    private CabCsv() {}

    static String text(FleetResult result) throws IOException {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CsvTable.FORMAT)) {
            printer.printRecord(HEADER);
            for (TruckResult truck : result.trucks()) {
                for (CabPoint point : CabPoint.of(truck.assessment())) {
                    if (point.objection().isEmpty()) {
                        for (List<String> row : rows(point)) {
                            printer.printRecord(
                                    row.stream().map(PlainText::page).toList());
                        }
                    }
                }
            }
        }
        return text.toString();
    }

    private static List<List<String>> rows(CabPoint point) {
        return Stream.concat(
                        point.feedbackChart().stream().flatMap(chart -> feedback(chart).stream()),
                        point.openLoopChart().stream().flatMap(chart -> openLoop(chart).stream()))
                .toList();
    }

    private static List<List<String>> feedback(FeedbackChart<ApplicationRate> chart) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < chart.rates().size(); i++) {
            for (int j = 0; j < chart.speeds().size(); j++) {
                FeedbackCell<ApplicationRate> cell = chart.cell(i, j);
                String rate = Amounts.format(chart.rates().get(i));
                List<String> row = start(chart.subject(), "", chart.speeds().get(j));
                row.addAll(List.of(rate, rate));
                row.addAll(both(cell.shaftSpeed()));
                row.addAll(both(cell.flow()));
                row.add(cell.outside().isEmpty() ? "yes" : "no");
                row.add(cell.outside().map(outside -> outside.limit().words()).orElse(""));
                row.addAll(
                        cell.outside().map(outside -> both(outside.delivered())).orElse(List.of("", "")));
                rows.add(row);
            }
        }
        return rows;
    }

    private static List<List<String>> openLoop(OpenLoopChart<ApplicationRate> chart) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < chart.settings().size(); i++) {
            for (int j = 0; j < chart.speeds().size(); j++) {
                List<String> row = start(
                        chart.subject(),
                        chart.settings().get(i).toString(),
                        chart.speeds().get(j));
                row.addAll(both(chart.cell(i, j).rate()));
                row.addAll(both(new CellValue<>(chart.settings().get(i).shaftSpeed())));
                row.addAll(List.of("", "", "", "", "", ""));
                rows.add(row);
            }
        }
        return rows;
    }

    private static List<String> start(ChartSubject subject, String control, Quantity<?> speed) {
        return new ArrayList<>(List.of(
                subject.truck(),
                subject.material(),
                subject.gate().quantity().map(Amounts::format).orElse(""),
                control,
                Amounts.format(speed)));
    }

    private static List<String> both(CellValue<?> value) {
        return List.of(value.toString(), Amounts.format(value.exact().value()));
    }
}
