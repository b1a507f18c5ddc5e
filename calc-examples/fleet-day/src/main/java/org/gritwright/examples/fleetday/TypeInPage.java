package org.gritwright.examples.fleetday;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.core.record.Document;
import org.gritwright.examples.fleetday.TypeInSheet.GraduateChoice;
import org.gritwright.examples.fleetday.TypeInSheet.ScaleChoice;

/**
 * The page on which a finished worksheet is typed in. It holds the day's document as it was planned and the document's schema, and
 * only its own script may run: whatever a name or a note says stays text.
 */
final class TypeInPage {
    private static final String SCHEMA = "/META-INF/schemas/fleet-day-2.schema.json";

    private static final List<String> SCRIPTS = List.of(
            "type-in-rules.js",
            "type-in-sheet.js",
            "type-in-check.js",
            "type-in-catch.js",
            "type-in-save.js",
            "type-in-page.js");

    private TypeInPage() {}

    static String html(DayPlan plan) throws IOException {
        List<TypeInSheet> sheets = new ArrayList<>();
        for (TruckPlan truck : plan.planned()) {
            sheets.add(TypeInSheet.of(plan, truck));
        }
        String style = code("report.css") + code("type-in.css");
        StringBuilder script = new StringBuilder("(() => {\n\"use strict\";\n");
        for (String name : SCRIPTS) {
            script.append(code(name));
        }
        script.append("})();\n");
        Map<String, Object> model = new HashMap<>();
        model.put("style", style);
        model.put("styleHash", hash(style));
        model.put("script", script.toString());
        model.put("scriptHash", hash(script.toString()));
        model.put("data", data(plan.day(), sheets));
        model.put("site", plan.day().site().orElse("Calibration day"));
        model.put("day", plan.day().day().toString());
        model.put(
                "refused",
                plan.refused().stream().map(truck -> truck.truck().id()).toList());
        return PageTemplate.of(List.of("type-in.peb")).filled(model);
    }

    private static String data(FleetDay day, List<TypeInSheet> sheets) throws IOException {
        ByteArrayOutputStream document = new ByteArrayOutputStream();
        Document.FLEET_DAY.write(day, document);
        String schema;
        try (InputStream in = Objects.requireNonNull(FleetDay.class.getResourceAsStream(SCHEMA), SCHEMA)) {
            schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        return ScriptData.inPage("{\"document\":" + document.toString(StandardCharsets.UTF_8) + ",\"schema\":" + schema
                + ",\"scales\":"
                + ScriptData.json(day.scales().stream().map(ScaleChoice::of).toList())
                + ",\"graduates\":"
                + ScriptData.json(
                        day.graduates().stream().map(GraduateChoice::of).toList())
                + ",\"sheets\":" + ScriptData.json(sheets) + "}");
    }

    /** As a browser sees it, which knows one kind of line end. */
    private static String code(String name) throws IOException {
        return PageTemplate.resource(name).replace("\r\n", "\n");
    }

    /** What a content security policy knows a script or a style by. */
    static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
