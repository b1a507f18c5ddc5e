package org.gritwright.examples.fleetday;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Takes the same facts out of a calibration record's JSON of format version 1, without the library. Every field that it
 * reads it removes: what is left over nobody has looked at.
 */
final class FrozenRecord {
    /** Prose, and what follows from the code of a finding. */
    private static final Set<String> SENTENCES = Set.of("sentence", "severity");

    private final ObjectNode record;

    FrozenRecord(ObjectNode record) {
        this.record = record.deepCopy();
    }

    /** Adds all facts and returns the fields that are none, by their JSON pointers. */
    List<String> addTo(FactTable table) {
        record.remove(Set.of("format", "formatVersion"));
        JsonNode truck = record.remove("entered").get("trucks").get(0);
        FactSheet sheet = FactSheet.of(table, truck.get("id").asText());
        refusal(sheet);
        for (ObjectNode one : objects(record, "calibrations")) {
            FactSheet part = of(sheet, one).part("calibration");
            move(one, "catches", part, "catches");
            move(one, "estimator", part, "estimator");
            move(one, "dischargePerRevolution", part, "discharge per revolution");
            move(one, "standardUncertainty", part, "standard uncertainty");
            move(one, "sampleDeviation", part, "sample deviation");
            move(one, "apparentFill", part, "apparent fill");
            move(one, "massPerStart", part, "mass per start");
            move(one, "massPerStartUncertainty", part, "mass per start, standard uncertainty");
            budget(one, part);
        }
        objects(record, "curves").forEach(one -> curve(one, sheet));
        List<String> times = times(truck);
        for (ObjectNode one : objects(record, "verifications")) {
            verification(one, of(sheet, one).at(times.remove(0)).part("verification"));
        }
        objects(record, "corrections")
                .forEach(one -> correction(one, of(sheet, one).part("correction")));
        for (ObjectNode one : objects(record, "startUps")) {
            FactSheet part = of(sheet, one).part("start-up");
            move(one, "lostMassPerStart", part, "lost mass per start");
            move(one, "lostTimePerStart", part, "lost time per start");
            move(one, "steadyError", part, "steady error");
            move(one, "steadyErrorUncertainty", part, "steady error, standard uncertainty");
        }
        roadSpeed(sheet.part("road speed"));
        move(record, "massPerRevolution", sheet, "mass proof");
        move(record, "roadSpeedValue", sheet, "road proof");
        move(record, "nextStep", sheet, "next step");
        sheet.putFindings(
                objects(record, "findings").stream().map(FrozenRecord::finding).toList());
        List<String> left = new ArrayList<>();
        leaves(record, "", left);
        return left;
    }

    private void refusal(FactSheet sheet) {
        JsonNode refusal = record.remove("refusal");
        sheet.put("refused", refusal == null ? "no" : "yes");
        List<String> amounts = refusal == null ? List.of() : FrozenWords.amounts(refusal.asText());
        for (int i = 0; i < amounts.size(); i++) {
            sheet.number(i + 1).put("refused/amount", amounts.get(i));
        }
    }

    /** A verification is without its time; the catches that were entered have theirs. */
    private static List<String> times(JsonNode truck) {
        List<OffsetDateTime> times = new ArrayList<>();
        truck.path("verificationCatches")
                .forEach(one -> times.add(OffsetDateTime.parse(one.get("at").asText())));
        times.sort(Comparator.naturalOrder());
        return new ArrayList<>(times.stream().map(OffsetDateTime::toString).toList());
    }

    private static void curve(ObjectNode one, FactSheet all) {
        String material = one.remove("material").asText();
        FactSheet sheet = all.of(material, "").part("curve");
        move(one, "model", sheet, "model");
        move(one, "catches", sheet, "catches");
        move(one, "effectiveBulkDensity", sheet, "effective bulk density");
        move(one, "effectiveBulkDensityUncertainty", sheet, "effective bulk density, standard uncertainty");
        move(one, "deadOpening", sheet, "dead opening");
        move(one, "deadOpeningUncertainty", sheet, "dead opening, standard uncertainty");
        move(one, "misfitChance", sheet, "chance of the misfit");
        for (ObjectNode point : objects(one, "points")) {
            FactSheet row = all.of(material, point.remove("opening").asText()).part("curve");
            move(point, "dischargePerRevolution", row, "discharge per revolution");
            move(point, "standardUncertainty", row, "standard uncertainty");
        }
    }

    private static void verification(ObjectNode one, FactSheet sheet) {
        move(one, "inForce", sheet, "in force");
        move(one, "testDistance", sheet, "test distance");
        move(one, "expected", sheet, "expected");
        move(one, "indicated", sheet, "indicated");
        move(one, "caught", sheet, "caught");
        move(one, "calibrationError", sheet, "calibration error");
        move(one, "deliveryError", sheet, "delivery error");
        move(one, "equivalentLostTime", sheet, "lost time");
        move(one, "deliveredRate", sheet, "delivered rate");
        move(one, "verdict", sheet, "verdict");
        for (String name : List.of("judgement", "together")) {
            if (one.get(name) instanceof ObjectNode judgement) {
                judgement(judgement, sheet.part(name));
            }
        }
    }

    private static void judgement(ObjectNode one, FactSheet sheet) {
        move(one, "catches", sheet, "catches");
        move(one, "error", sheet, "error");
        move(one, "verdict", sheet, "verdict");
        move(one, "risk", sheet, "risk");
        move(one, "guardBand", sheet, "guard band");
        move(one, "probabilityBelow", sheet, "probability below");
        move(one, "probabilityWithin", sheet, "probability within");
        move(one, "probabilityAbove", sheet, "probability above");
        move(one, "advice", sheet, "advice");
        move(one, "furtherCatches", sheet, "further catches");
        move(one, "furtherMass", sheet, "further mass");
        budget(one, sheet);
    }

    private static void budget(ObjectNode owner, FactSheet all) {
        ObjectNode budget = (ObjectNode) owner.get("budget");
        FactSheet sheet = all.part("budget");
        move(budget, "combined", sheet, "standard uncertainty");
        move(budget, "expanded", sheet, "expanded uncertainty");
        move(budget, "degreesOfFreedom", sheet, "degrees of freedom");
        JsonNode largest = budget.remove("dominant");
        if (largest != null) {
            sheet.put("largest component", FrozenWords.component(largest.asText()));
        }
        for (ObjectNode component : objects(budget, "components")) {
            FactSheet row =
                    sheet.part(FrozenWords.component(component.remove("name").asText()));
            move(component, "evaluation", row, "evaluation");
            move(component, "distribution", row, "distribution");
            move(component, "standardUncertainty", row, "standard uncertainty");
            move(component, "contribution", row, "contribution");
            move(component, "degreesOfFreedom", row, "degrees of freedom");
            move(component, "group", row, "group");
            move(component, "share", row, "share");
        }
    }

    private static void correction(ObjectNode one, FactSheet sheet) {
        move(one, "asFound", sheet, "as found");
        move(one, "computed", sheet, "computed");
        move(one, "toEnter", sheet, "to enter");
        move(one, "asLeft", sheet, "as left");
        move(one, "status", sheet, "status");
        move(one, "basis", sheet, "basis");
        List<ObjectNode> steps = objects(one, "history");
        for (int i = 0; i < steps.size(); i++) {
            FactSheet row = sheet.number(i + 1).part("history");
            move(steps.get(i), "on", row, "on");
            move(steps.get(i), "action", row, "action");
            move(steps.get(i), "value", row, "value");
            move(steps.get(i), "error", row, "error");
            move(steps.get(i), "expandedUncertainty", row, "expanded uncertainty");
            move(steps.get(i), "verdict", row, "verdict");
        }
    }

    private void roadSpeed(FactSheet sheet) {
        if (record.get("roadSpeed") instanceof ObjectNode check) {
            move(check, "inForce", sheet, "in force");
            move(check, "measured", sheet, "measured");
            move(check, "standardUncertainty", sheet, "standard uncertainty");
            move(check, "error", sheet, "error");
            move(check, "effectOnRate", sheet, "effect on rate");
            move(check, "verdict", sheet, "verdict");
        }
    }

    private static FactSheet.FindingFact finding(ObjectNode one) {
        one.remove(SENTENCES);
        return FactSheet.FindingFact.of(
                one.remove("code").asText(), texts(one.remove("numbers")), texts(one.remove("words")));
    }

    private static Map<String, String> texts(JsonNode fields) {
        Map<String, String> texts = new HashMap<>();
        if (fields != null) {
            fields.properties()
                    .forEach(field -> texts.put(field.getKey(), field.getValue().asText()));
        }
        return texts;
    }

    private static FactSheet of(FactSheet sheet, ObjectNode one) {
        String material = one.remove("material").asText();
        JsonNode opening = one.remove("opening");
        return sheet.of(material, opening == null ? "" : opening.asText());
    }

    private static void move(ObjectNode from, String field, FactSheet to, String what) {
        JsonNode value = from.remove(field);
        if (value != null) {
            to.put(what, value.asText());
        }
    }

    private static List<ObjectNode> objects(ObjectNode owner, String field) {
        List<ObjectNode> objects = new ArrayList<>();
        owner.path(field).forEach(one -> objects.add((ObjectNode) one));
        return objects;
    }

    private static void leaves(JsonNode node, String pointer, List<String> found) {
        if (node.isValueNode()) {
            found.add(pointer);
        }
        node.properties().forEach(field -> leaves(field.getValue(), pointer + "/" + field.getKey(), found));
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                leaves(node.get(i), pointer + "/" + i, found);
            }
        }
    }
}
