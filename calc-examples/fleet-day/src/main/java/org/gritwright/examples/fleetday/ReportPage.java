package org.gritwright.examples.fleetday;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.MemoryLoader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/** The report: one HTML page that needs nothing else, made from the templates beside this class. */
final class ReportPage {
    private ReportPage() {}

    static String html(FleetResult result) throws IOException {
        return filled(List.of("report.peb", "safety.peb", "truck.peb", "table.peb", "picture.peb"), model(result));
    }

    /** The first template, which may use the others, filled in. */
    static String filled(List<String> names, Map<String, Object> model) throws IOException {
        MemoryLoader templates = new MemoryLoader();
        for (String name : names) {
            templates.addTemplate(name, resource(name));
        }
        // The engine escapes every value for HTML unless the template says otherwise.
        PebbleEngine engine = new PebbleEngine.Builder()
                .loader(templates)
                .strictVariables(true)
                .defaultLocale(Locale.ROOT)
                .build();
        StringWriter page = new StringWriter();
        engine.getTemplate(names.get(0)).evaluate(page, model);
        return PlainText.page(page.toString());
    }

    private static Map<String, Object> model(FleetResult result) throws IOException {
        FleetDay day = result.day();
        List<TruckSheet> sheets = new ArrayList<>();
        for (TruckResult truck : result.mostUrgentFirst()) {
            sheets.add(TruckSheet.of(truck, sheets.size() + 1));
        }
        ErrorChart chart = new ErrorChart(result);
        Map<String, Object> model = new HashMap<>();
        model.put("style", resource("report.css"));
        model.put("site", day.site().orElse("Calibration day"));
        model.put("day", day.day().toString());
        model.put("technician", day.technician().orElse(""));
        model.put("rule", rule(day.decisionRule()));
        model.put("tolerance", Amounts.format(day.tolerance()));
        model.put("seasonStart", day.seasonStart().toString());
        model.put("summary", result.summary());
        model.put(
                "urgent",
                sheets.stream().filter(sheet -> sheet.truck().needsAttention()).toList());
        model.put("open", withNextStep(sheets, NextStep.CHECK_ROAD_SPEED));
        model.put("done", withNextStep(sheets, NextStep.NOTHING));
        model.put("chart", chart.picture().stream().toList());
        model.put("missing", chart.missing());
        model.put("beyondEdge", chart.beyondEdge());
        model.put("fleet", fleet(result));
        model.put("sheets", sheets);
        return model;
    }

    private static List<TruckSheet> withNextStep(List<TruckSheet> sheets, NextStep step) {
        return sheets.stream()
                .filter(sheet -> sheet.truck().assessment().nextStep() == step)
                .toList();
    }

    /** The fleet at a glance, in the order of the day. */
    private static SheetTable fleet(FleetResult result) {
        return new SheetTable(
                "The fleet, in the order of the day",
                List.of(
                        "in the display",
                        "measured",
                        "calibration error",
                        "delivery error",
                        "delivered rate",
                        "target rate",
                        "verdict"),
                result.trucks().stream().map(ReportPage::fleetRow).toList(),
                List.of());
    }

    private static String rule(DecisionRule rule) {
        return rule.risk()
                .map(risk -> "An error counts as within the tolerance only where it is shown to be, at a risk of "
                        + Amounts.format(risk) + " at each limit; near a limit a catch can’t tell.")
                .orElse("An error counts as within the tolerance where it is measured to be, however uncertain it is.");
    }

    private static Row fleetRow(TruckResult truck) {
        return Row.of(
                truck.id(),
                truck.massPerRevolution()
                        .map(mass ->
                                Cell.of(truck.display().massPerRevolutionText().orElseThrow(), mass, Figures.DIGITS))
                        .orElse(Cell.of("—")),
                truck.measured()
                        .map(m -> Cell.of(Figures.measured(m), m.value(), Figures.DIGITS))
                        .orElse(Cell.of("—")),
                truck.judged()
                        .filter(series -> series.last().calibrationError().isPresent())
                        .map(ReportPage::judged)
                        .orElse(Cell.of("—")),
                truck.judged()
                        .filter(series -> series.last().calibrationError().isEmpty())
                        .map(ReportPage::judged)
                        .orElseGet(() -> last(truck, v -> Cell.of(Figures.errorForPrint(v.deliveryError())))),
                last(truck, v -> Cell.computed(v.deliveredRate(), Figures.DIGITS)),
                last(truck, v -> Cell.exact(v.source().run().targetRate())),
                Cell.of(truck.verdict()));
    }

    private static Cell judged(VerificationSeries series) {
        return new Cell(
                Figures.errorWithin(series.judgement()).replace('-', '−'), Figures.chanceWithin(series.judgement()));
    }

    private static Cell last(TruckResult truck, Function<Verification, Cell> cell) {
        return truck.lastVerification().map(cell).orElse(Cell.of("—"));
    }

    static String resource(String name) throws IOException {
        try (InputStream in = Objects.requireNonNull(ReportPage.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
