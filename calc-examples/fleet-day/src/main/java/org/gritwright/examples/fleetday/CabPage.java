package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.units.Amounts;

/** The papers for the cabs, a card and charts a truck: one HTML page that needs nothing else, and the same for {@link Papers}. */
final class CabPage {
    private static final List<String> TEMPLATES = List.of("cab.peb", "cab-truck.peb");

    private CabPage() {}

    static String html(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", ReportPage.resource("report.css") + ReportPage.resource("cab.css"));
        return ReportPage.filled(TEMPLATES, model);
    }

    static String paper(FleetResult result) throws IOException {
        Map<String, Object> model = model(result);
        model.put("style", ReportPage.resource("papers.css"));
        model.put(
                "foot",
                PlainText.shortened(site(result), PaperPage.LONGEST_SITE) + ", for the cabs, "
                        + result.day().day());
        return ReportPage.filled(TEMPLATES, model);
    }

    private static String site(FleetResult result) {
        return result.day().site().orElse("Calibration day");
    }

    private static Map<String, Object> model(FleetResult result) {
        List<CabSheet> sheets = new ArrayList<>();
        for (TruckResult truck : result.trucks()) {
            sheets.add(CabSheet.of(result, truck, sheets.size() + 1));
        }
        Map<String, Object> model = new HashMap<>();
        model.put("site", site(result));
        model.put("day", result.day().day().toString());
        model.put("tolerance", Amounts.format(result.day().tolerance()));
        model.put("sheets", sheets.stream().filter(CabSheet::hasPaper).toList());
        model.put(
                "without",
                sheets.stream().filter(sheet -> !sheet.missing().isEmpty()).toList());
        return model;
    }
}
