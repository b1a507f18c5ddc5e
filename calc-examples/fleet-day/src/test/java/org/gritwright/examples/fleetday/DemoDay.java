package org.gritwright.examples.fleetday;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;

/** The demo fleet's day, and variants of it. */
final class DemoDay {
    private static final ObjectMapper JSON = new ObjectMapper();

    private DemoDay() {}

    /** The document after a change. */
    static String changed(Consumer<ObjectNode> change) throws IOException {
        return changed(Run.DEMO, change);
    }

    /** Another demo's document after a change. */
    static String changed(Path demo, Consumer<ObjectNode> change) throws IOException {
        ObjectNode day = (ObjectNode) JSON.readTree(Run.text(demo));
        change.accept(day);
        keepRoutes(day);
        return JSON.writeValueAsString(day);
    }

    static Path write(Path file, Consumer<ObjectNode> change) throws IOException {
        return Files.writeString(file, changed(change));
    }

    static FleetResult result(Consumer<ObjectNode> change) throws IOException, RejectedDocumentException {
        byte[] text = changed(change).getBytes(StandardCharsets.UTF_8);
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(text));
        return FleetResult.of(day, FleetAssessor.of(BuiltInTypes.registry()));
    }

    static ObjectNode truck(ObjectNode day, String id) {
        for (var truck : day.withArray("trucks")) {
            if (truck.get("id").asText().equals(id)) {
                return (ObjectNode) truck;
            }
        }
        throw new IllegalArgumentException(id);
    }

    /** Leaves these trucks in the day, in this order. */
    static void cut(ObjectNode day, String... ids) {
        List<ObjectNode> left = Stream.of(ids).map(id -> truck(day, id)).toList();
        day.putArray("trucks").addAll(left);
    }

    /** Leaves one truck in the day. */
    static ObjectNode only(ObjectNode day, String id) {
        ObjectNode truck = truck(day, id);
        ArrayNode trucks = day.putArray("trucks");
        trucks.add(truck);
        return truck;
    }

    /** Gives a truck another id, in its routes too. */
    static void rename(ObjectNode day, String id, String other) {
        truck(day, id).put("id", other);
        for (var route : day.withArray("routes")) {
            ArrayNode named = (ArrayNode) route.get("trucks");
            for (int i = 0; i < named.size(); i++) {
                if (named.get(i).asText().equals(id)) {
                    named.set(i, other);
                }
            }
        }
    }

    /** A route names no truck that a change took away or gave another id. */
    private static void keepRoutes(ObjectNode day) {
        List<String> ids = new ArrayList<>();
        day.withArray("trucks").forEach(truck -> ids.add(truck.path("id").asText()));
        ArrayNode routes = day.withArray("routes");
        for (int i = routes.size() - 1; i >= 0; i--) {
            ArrayNode named = (ArrayNode) routes.get(i).get("trucks");
            for (int j = named.size() - 1; j >= 0; j--) {
                if (!ids.contains(named.get(j).asText())) {
                    named.remove(j);
                }
            }
            if (named.isEmpty()) {
                routes.remove(i);
            }
        }
    }
}
