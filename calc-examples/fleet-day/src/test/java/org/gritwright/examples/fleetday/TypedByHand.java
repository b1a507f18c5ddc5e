package org.gritwright.examples.fleetday;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** The boxes of the type-in page, written into a day's document by hand: what the page ought to save of a day with one truck. */
final class TypedByHand {
    private TypedByHand() {}

    static void into(ObjectNode day, String id, Map<String, String> boxes, UnaryOperator<String> unit) {
        ObjectNode truck = DemoDay.truck(day, id);
        ObjectNode held = truck.withArray("/inForce").get(0).deepCopy();
        for (Map.Entry<String, String> box : boxes.entrySet()) {
            String group = box.getKey().replaceFirst("/.*", "");
            String path = box.getKey().replaceFirst(".*/", "");
            String symbol = unit.apply(box.getKey());
            String text = symbol.isEmpty() ? box.getValue() : box.getValue() + " " + symbol;
            switch (group) {
                case "p0.c0", "p0.v0" ->
                    catchOf(day, truck, held, group.startsWith("p0.c")).accept(path, text);
                case "before" -> before(day, truck, path, text);
                case "road" -> road(truck, path, text);
                case "p0.held" ->
                    ((ObjectNode) truck.withArray("/inForce").get(0))
                            .put(path.equals("found") ? "value" : "since", text);
                default -> throw new IllegalArgumentException(group);
            }
        }
        if (boxes.containsKey("before/hopperLevel")) {
            ObjectNode conditions = truck.withObject("/calibrationCatches/0").withObject("/conditions");
            for (String field : List.of("oilTemperature", "engineSpeed", "hopperLevel")) {
                conditions.put(field, boxes.get("before/" + field) + " " + unit.apply("before/" + field));
            }
        }
    }

    private interface Entry {
        void accept(String path, String text);
    }

    private static ObjectNode scale(ObjectNode day, String id) {
        for (var scale : day.withArray("/scales")) {
            if (scale.get("id").asText().equals(id)) {
                return (ObjectNode) scale;
            }
        }
        throw new IllegalArgumentException(id);
    }

    /** The scale that is planned for all trucks of these tests but the metric one. */
    private static String planned(ObjectNode truck) {
        return switch (truck.get("id").asText()) {
            case "T-03" -> "hanging 2";
            case "T-15" -> "platform 3";
            default -> "hopper 5";
        };
    }

    private static Entry catchOf(ObjectNode day, ObjectNode truck, ObjectNode held, boolean isCalibration) {
        String list = isCalibration ? "/calibrationCatches" : "/verificationCatches";
        if (truck.withArray(list).isEmpty()) {
            ObjectNode made = truck.withArray(list)
                    .addObject()
                    .put("material", held.get("material").asText());
            if (held.has("setting")) {
                made.put("setting", held.get("setting").asText());
            }
            made.put("scale", planned(truck));
            if (!isCalibration) {
                made.put("inForce", held.get("value").asText())
                        .put("slot", held.get("slot").asText());
            }
        }
        ObjectNode one = (ObjectNode) truck.withArray(list).get(0);
        return (path, text) -> {
            if (path.equals("at")) {
                one.put("at", day.get("day").asText() + "T" + text + ":00-05:00");
            } else if (path.equals("primed")) {
                one.put("primed", Boolean.parseBoolean(text));
            } else if (path.startsWith("counted.")) {
                one.withObject("/counted").put(path.substring("counted.".length()), text);
            } else if (path.startsWith("containers.")) {
                if (one.withArray("/containers").isEmpty()) {
                    one.withArray("/containers")
                            .addObject()
                            .put("container", planned(truck).equals("hopper 5") ? "container 1" : "pail 1");
                }
                ((ObjectNode) one.withArray("/containers").get(0)).put(path.replaceFirst(".*\\.", ""), text);
            } else {
                one.put(path, text);
            }
        };
    }

    private static void before(ObjectNode day, ObjectNode truck, String path, String text) {
        if (path.equals("testWeight")) {
            scale(day, planned(truck))
                    .withArray("/checks")
                    .addObject()
                    .put("on", day.get("day").asText())
                    .put("testWeight", text);
        } else if (path.equals("reading")) {
            var checks = scale(day, planned(truck)).withArray("/checks");
            ((ObjectNode) checks.get(checks.size() - 1)).put("reading", text);
        } else if (path.equals("indicatedStep")) {
            ((ObjectNode) truck.withArray("/verificationCatches").get(0)).put(path, text);
        }
    }

    private static void road(ObjectNode truck, String path, String text) {
        ObjectNode road = truck.withObject("/roadSpeed").put("on", "2026-10-19");
        while (road.withArray("/runs").size() < 3) {
            road.withArray("/runs").addObject();
        }
        if (path.equals("inForce")) {
            road.put(path, text);
        } else if (path.equals("course")) {
            road.withArray("/runs").forEach(run -> ((ObjectNode) run).put("course", text));
        } else {
            ((ObjectNode) road.withArray("/runs").get(Integer.parseInt(path.substring("run".length())) - 1))
                    .put("pulses", text);
        }
    }
}
