package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What the report says of one truck, with the cautions: a page of its own, or its own paper. */
final class TruckPage {
    static final String FOLDER = "trucks";

    private final Map<String, Object> heading;
    private final String foot;
    private final PageTemplate template;

    private TruckPage(FleetResult result, String style, String template) throws IOException {
        this.heading = new HashMap<>(ReportPage.heading(result.day()));
        this.heading.put("style", PageTemplate.resource(style));
        this.heading.put("what", "calibration day");
        this.heading.put("report", "../" + OutputFolder.REPORT);
        this.foot = ReportPage.foot(result);
        this.template = PageTemplate.of(
                List.of(template, "safety.peb", "liquids.peb", "truck.peb", "table.peb", "picture.peb"));
    }

    /** As a page beside a report that is an overview. */
    static TruckPage html(FleetResult result) throws IOException {
        return new TruckPage(result, "report.css", "truck-page.peb");
    }

    /** For {@link Papers}. */
    static TruckPage paper(FleetResult result) throws IOException {
        return new TruckPage(result, "papers.css", "paper.peb");
    }

    String of(TruckResult truck) throws IOException {
        Map<String, Object> model = new HashMap<>(heading);
        model.put("foot", PlainText.shortened(truck.id(), PaperPage.LONGEST_ID) + ", " + foot);
        model.put("id", truck.id());
        model.put("liquids", truck.isLiquid());
        model.put("sheet", TruckSheet.of(truck, 1));
        return template.filled(model);
    }
}
