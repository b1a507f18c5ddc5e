package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gritwright.units.Amounts;

/**
 * The papers for the cabs, a card and charts a truck: one HTML page that needs nothing else, and the same for {@link Papers}. Of a
 * day with very many trucks it is an overview, and each truck's are a page of their own.
 */
final class CabPage {
    static final String FOLDER = "cabs";

    /** Takes a truck's own page. */
    @FunctionalInterface
    interface Pages {
        void write(TruckResult truck, String page) throws IOException;
    }

    /**
     * A truck in an overview.
     *
     * @param id the truck
     * @param page its own page; empty if it has none
     */
    record Linked(String id, String page) {}

    private final FleetResult result;
    private final Map<String, Object> heading = new HashMap<>();
    private final PageTemplate template;

    private CabPage(FleetResult result, String style) throws IOException {
        this.result = result;
        heading.put("style", style);
        heading.put("site", site(result));
        heading.put("day", result.day().day().toString());
        heading.put("tolerance", Amounts.format(result.day().tolerance()));
        this.template = PageTemplate.of(List.of("cab.peb", "cab-truck.peb"));
    }

    /** @param own takes the trucks' own pages, if they have some */
    static String html(FleetResult result, Pages own) throws IOException {
        String style = PageTemplate.resource("report.css") + PageTemplate.resource("cab.css");
        return new CabPage(result, style).page(own);
    }

    static String paper(FleetResult result, Pages own) throws IOException {
        CabPage page = new CabPage(result, PageTemplate.resource("papers.css"));
        page.heading.put(
                "foot",
                PlainText.shortened(site(result), PaperPage.LONGEST_SITE) + ", for the cabs, "
                        + result.day().day());
        return page.page(own);
    }

    private static String site(FleetResult result) {
        return result.day().site().orElse("Calibration day");
    }

    private String page(Pages own) throws IOException {
        List<CabSheet> sheets = new ArrayList<>();
        List<CabSheet> without = new ArrayList<>();
        List<Linked> linked = new ArrayList<>();
        int number = 1;
        for (TruckResult truck : result.trucks()) {
            CabSheet sheet = CabSheet.of(result, truck, number++);
            if (!sheet.missing().isEmpty()) {
                without.add(result.isSplit() ? sheet.withoutPaper() : sheet);
            }
            if (sheet.hasPaper() && result.isSplit()) {
                own.write(truck, filled(List.of(sheet), List.of(), List.of(), "../" + OutputFolder.CAB));
                linked.add(new Linked(sheet.id(), FOLDER + "/" + truck.pageFile()));
            } else if (sheet.hasPaper()) {
                sheets.add(sheet);
            }
        }
        return filled(sheets, without, linked, "");
    }

    private String filled(List<CabSheet> sheets, List<CabSheet> without, List<Linked> linked, String overview)
            throws IOException {
        Map<String, Object> model = new HashMap<>(heading);
        model.put("sheets", sheets);
        model.put("without", without);
        model.put("linked", linked);
        model.put("overview", overview);
        return template.filled(model);
    }
}
