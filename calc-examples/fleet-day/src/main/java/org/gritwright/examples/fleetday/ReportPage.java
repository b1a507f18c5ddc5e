package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javax.measure.Quantity;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.judgement.DecisionRule;
import org.gritwright.core.verification.Verification;
import org.gritwright.core.verification.VerificationSeries;
import org.gritwright.examples.fleetday.SheetTable.Cell;
import org.gritwright.examples.fleetday.SheetTable.Row;
import org.gritwright.units.Amounts;

/**
 * The report: one HTML page that needs nothing else, made from the templates beside this class. Of a day with very many trucks it
 * is an overview, and what it says of each is a {@link TruckPage}.
 */
final class ReportPage {
    private ReportPage() {}

    private static final List<String> TEMPLATES =
            List.of("report.peb", "safety.peb", "liquids.peb", "truck.peb", "table.peb", "picture.peb");

    static String html(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", PageTemplate.resource("report.css"));
        return PageTemplate.of(TEMPLATES).filled(model);
    }

    /** The same for {@link Papers}. */
    static String paper(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", PageTemplate.resource("papers.css"));
        model.put("foot", foot(result));
        return PageTemplate.of(TEMPLATES).filled(model);
    }

    static String foot(FleetResult result) {
        return result.day()
                        .site()
                        .map(site -> PlainText.shortened(site, PaperPage.LONGEST_SITE) + ", ")
                        .orElse("") + "calibration day " + result.day().day();
    }

    private static Map<String, Object> model(FleetResult result) throws IOException {
        FleetDay day = result.day();
        List<TruckResult> trucks = result.mostUrgentFirst();
        List<TruckSheet> sheets = new ArrayList<>();
        if (!result.isSplit()) {
            trucks.forEach(truck -> sheets.add(TruckSheet.of(truck, sheets.size() + 1)));
        }
        ErrorChart chart = chart(result, trucks);
        Map<String, Object> model = heading(day);
        model.put("rule", rule(day.decisionRule()));
        model.put("summary", result.summary());
        model.put("groups", Group.of(result, trucks));
        model.put("isSplit", result.isSplit());
        model.put("most", FleetResult.MOST_ON_ONE_PAGE);
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

    static Map<String, Object> heading(FleetDay day) {
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

    /** Of very many trucks only the first that need attention. */
    private static ErrorChart chart(FleetResult result, List<TruckResult> mostUrgentFirst) {
        return new ErrorChart(
                result.day(),
                result.isSplit()
                        ? mostUrgentFirst.stream()
                                .filter(TruckResult::needsAttention)
                                .limit(FleetResult.MOST_ON_ONE_PAGE)
                                .toList()
                        : result.trucks());
    }

    /** A truck, and where the report says more about it. */
    record Linked(TruckResult truck, String place) {}

    /** Trucks that are alike in what matters on the road; those with something to read about them are open. */
    record Group(String words, boolean isOpen, List<Linked> trucks) {
        static List<Group> of(FleetResult result, List<TruckResult> mostUrgentFirst) {
            Map<Urgency, List<Linked>> groups = new EnumMap<>(Urgency.class);
            int number = 1;
            for (TruckResult truck : mostUrgentFirst) {
                String place = result.isSplit() ? TruckPage.FOLDER + "/" + truck.pageFile() : "#truck-" + number;
                groups.computeIfAbsent(Urgency.of(truck.assessment()), urgency -> new ArrayList<>())
                        .add(new Linked(truck, place));
                number++;
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
}
