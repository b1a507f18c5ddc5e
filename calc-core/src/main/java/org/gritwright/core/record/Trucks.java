package org.gritwright.core.record;

import java.util.List;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.Pointer;

/** Which truck a place in a document belongs to: a person knows it by its id and not by its number in the list. */
final class Trucks {
    private static final int LONGEST_ID = 40;

    private Trucks() {}

    /**
     * The truck at a place.
     *
     * @param root a fleet's day, or a record with one in it, of any version
     * @return for example "truck T-04"; empty outside of trucks, and where the id can't be read either
     */
    static String at(JsonNode.ObjectNode root, Pointer pointer) {
        Pointer parent = pointer.parent();
        if (parent == null) {
            return "";
        }
        if (pointer.name() instanceof Integer index && isOfDay(parent)) {
            JsonNode day = root.fields().getOrDefault("entered", root);
            return day instanceof JsonNode.ObjectNode object
                            && object.fields().get("trucks") instanceof JsonNode.ArrayNode trucks
                    ? name(trucks.items(), index)
                    : "";
        }
        return at(root, parent);
    }

    /** A route has a list of trucks too. */
    private static boolean isOfDay(Pointer trucks) {
        return trucks.equals(Pointer.ROOT.at("trucks"))
                || trucks.equals(Pointer.ROOT.at("entered").at("trucks"));
    }

    private static String name(List<JsonNode> trucks, int index) {
        if (index < trucks.size()
                && trucks.get(index) instanceof JsonNode.ObjectNode truck
                && truck.fields().get("id") instanceof JsonNode.TextNode id
                && !id.text().isBlank()) {
            String text = id.text();
            return "truck " + (text.length() <= LONGEST_ID ? text : text.substring(0, LONGEST_ID) + "…");
        }
        return "";
    }
}
