package org.gritwright.examples.fleetday;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.MemoryLoader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import javax.measure.Quantity;
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

    private static final List<String> TEMPLATES =
            List.of("report.peb", "safety.peb", "liquids.peb", "truck.peb", "table.peb", "picture.peb");

    static String html(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", resource("report.css"));
        return filled(TEMPLATES, model);
    }

    /** The same for {@link Papers}. */
    static String paper(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", resource("papers.css"));
        model.put("foot", foot(result));
        return filled(TEMPLATES, model);
    }

    /** What the report says of one truck, for {@link Papers}. */
    static String paper(FleetResult result, TruckResult truck) throws IOException {
        Map<String, Object> model = heading(result.day());
        model.put("style", resource("papers.css"));
        model.put("foot", PlainText.shortened(truck.id(), PaperPage.LONGEST_ID) + ", " + foot(result));
        model.put("id", truck.id());
        model.put("liquids", truck.isLiquid());
        model.put("what", "calibration day");
        model.put("sheet", TruckSheet.of(truck, 1));
        return filled(
                List.of("paper.peb", "safety.peb", "liquids.peb", "truck.peb", "table.peb", "picture.peb"), model);
    }

    private static String foot(FleetResult result) {
        return result.day()
                        .site()
                        .map(site -> PlainText.shortened(site, PaperPage.LONGEST_SITE) + ", ")
                        .orElse("") + "calibration day " + result.day().day();
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
                .extension(new MinusSign())
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
        Map<String, Object> model = heading(day);
        model.put("rule", rule(day.decisionRule()));
        model.put("summary", result.summary());
        model.put("groups", Group.of(sheets));
        model.put("reach", reach(day.decisionRule()));
        model.put("chart", chart.picture().stream().toList());
        model.put("missing", chart.missing());
        model.put("beyondEdge", chart.beyondEdge());
        model.put("fleet", fleet(result));
        List<TankSheet> tanks = TankSheet.of(result);
        model.put("tanks", tanks);
        model.put(
                "tanksToMend",
                tanks.stream()
                        .filter(tank -> tank.assessment().needsAttention())
                        .toList());
        model.put("tankTable", TankSheet.table(tanks));
        model.put("sheets", sheets);
        return model;
    }

    private static Map<String, Object> heading(FleetDay day) {
        Map<String, Object> model = new HashMap<>();
        model.put("site", day.site().orElse("Calibration day"));
        model.put("day", day.day().toString());
        model.put("technician", day.technician().orElse(""));
        model.put("tolerance", Amounts.format(day.tolerance()));
        model.put(
                "liquids",
                day.trucks().stream().anyMatch(truck -> truck.spreader().isForLiquids()));
        model.put("seasonStart", day.seasonStart().toString());
        return model;
    }

    /** Trucks that are alike in what matters on the road; those with something to read about them are open. */
    record Group(String words, boolean isOpen, List<TruckSheet> sheets) {
        static List<Group> of(List<TruckSheet> sheets) {
            Map<Urgency, List<TruckSheet>> groups = new EnumMap<>(Urgency.class);
            for (TruckSheet sheet : sheets) {
                groups.computeIfAbsent(Urgency.of(sheet.truck().assessment()), urgency -> new ArrayList<>())
                        .add(sheet);
            }
            return groups.entrySet().stream()
                    .map(group -> new Group(
                            group.getKey().words(),
                            group.getValue().get(0).truck().needsAttention(),
                            group.getValue()))
                    .toList();
        }
    }

    /** The fleet at a glance, in the order of the day. */
    private static SheetTable fleet(FleetResult result) {
        return new SheetTable(
                "The fleet, in the order of the day",
                List.of(
                        "conveyor or pump",
                        "road speed",
                        "do next",
                        "in the display",
                        "calibration error",
                        "delivery error",
                        "laid, of target"),
                result.trucks().stream().map(ReportPage::fleetRow).toList(),
                List.of());
    }

    private static String rule(DecisionRule rule) {
        return rule.risk()
                .map(risk -> "An error counts as within the tolerance only where it is shown to be, at a risk of "
                        + Amounts.format(risk) + " at each limit; near a limit a catch can’t tell.")
                .orElse("An error counts as within the tolerance where it is measured to be, however uncertain it is.");
    }

    private static String reach(DecisionRule rule) {
        return rule.risk()
                .map(risk -> "Lines on both sides: where the true error may be, at a risk of " + Amounts.format(risk)
                        + " at each end. All of the line in the band is within, all of it beyond is outside.")
                .orElse(
                        "Lines on both sides: where the true error may be, in 95 of 100 such catches; the mark alone says"
                                + " whether it is within.");
    }

    private static Row fleetRow(TruckResult truck) {
        return Row.of(
                truck.id(),
                Cell.of(truck.metering().text()),
                Cell.of(truck.roadSpeed().text()),
                Cell.of(truck.instruction().text()),
                new Cell(
                        truck.display().text().orElse("—"),
                        truck.measuredText().map(m -> "measured " + m).orElse("")),
                truck.judged()
                        .filter(series -> series.last().calibrationError().isPresent())
                        .map(ReportPage::judged)
                        .orElse(Cell.of("—")),
                truck.judged()
                        .filter(series -> series.last().calibrationError().isEmpty())
                        .map(ReportPage::judged)
                        .orElseGet(() -> last(truck, v -> Cell.of(Figures.errorForPrint(v.deliveryError())))),
                last(truck, ReportPage::laid));
    }

    /** For example "251.0 of 260 lb/mi". */
    private static Cell laid(Verification verification) {
        Quantity<?> target = verification.source().run().targetRate();
        Quantity<?> laid = verification.deliveredRate();
        return Cell.of(Figures.of(Figures.text(laid, Figures.DIGITS), Amounts.format(target)));
    }

    private static Cell judged(VerificationSeries series) {
        return new Cell(
                Figures.errorWithin(series.judgement()).replace('-', '−'),
                "within: " + Figures.chance(series.judgement().conformity().within()));
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
