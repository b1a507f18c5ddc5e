package org.gritwright.examples.fleetday;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Sheets to print and fill in by pen, for what is measured beside a calibration: the range of a drive, and a row of pans across
 * the road. They name no truck and no day.
 */
final class BlankSheets {
    private static final List<String> TEMPLATES =
            List.of("blank-sheets.peb", "blank-range.peb", "blank-across.peb", "blank-parts.peb");

    private BlankSheets() {}

    static String html() throws IOException {
        Map<String, Object> model = new HashMap<>();
        model.put(
                "style",
                PageTemplate.resource("report.css")
                        + PageTemplate.resource("plan.css")
                        + PageTemplate.resource("blank.css"));
        return PageTemplate.of(TEMPLATES).filled(model);
    }

    /** The same for {@link Papers}. */
    static String paper() throws IOException {
        Map<String, Object> model = new HashMap<>();
        model.put("style", PageTemplate.resource("papers.css"));
        model.put("foot", "");
        return PageTemplate.of(TEMPLATES).filled(model);
    }
}
