package org.gritwright.core.fuzz;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gritwright.core.json.JsonNode;
import org.gritwright.units.UnitSymbol;

/** Changes a JSON tree as people and broken programs do: values, names and whole parts. */
final class Slips {
    private static final Pattern AMOUNT = Pattern.compile("(-?[0-9][0-9.eE+-]*)(.*)", Pattern.DOTALL);
    private static final List<String> SYMBOLS =
            UnitSymbol.all().stream().map(UnitSymbol::symbol).toList();

    private static final List<String> WORDS =
            List.of("true", "false", "null", "0", "-1", "1", "2", "3", "1e9", "1.5", "99999999999", "1e999");

    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "NaN lb",
            "1e999 lb",
            "-0 lb",
            "2026-10-19",
            "2026-02-30",
            "0000-01-01",
            "+999999999-12-31",
            "2026-10-19T08:00-05:00",
            "2026-10-19T24:00Z",
            "2026-10-19T08:00+18:00",
            "drag-chain",
            "belt",
            "auger",
            "no-gate",
            "sliding-gate",
            "example.org/unknown",
            "salt",
            "guarded",
            "simple",
            "=1+1",
            "</script><b>",
            "\u202e",
            "\u0000",
            "\ud800",
            "x".repeat(201),
            "a-".repeat(2000),
            "n".repeat(10_001));

    private final Choices choices;
    private final JsonNode root;

    private Slips(Choices choices, JsonNode root) {
        this.choices = choices;
        this.root = root;
    }

    /** The tree with as many changes as the choices last for, but no more than ten. */
    static JsonNode in(JsonNode whole, Choices choices) {
        Slips slips = new Slips(choices, copy(whole));
        for (int i = 0; i < 10 && !choices.isEmpty(); i++) {
            slips.make();
        }
        return slips.root;
    }

    static JsonNode copy(JsonNode node) {
        if (node instanceof JsonNode.ObjectNode object) {
            Map<String, JsonNode> fields = new LinkedHashMap<>();
            object.fields().forEach((name, value) -> fields.put(name, copy(value)));
            return new JsonNode.ObjectNode(fields);
        }
        if (node instanceof JsonNode.ArrayNode array) {
            return new JsonNode.ArrayNode(
                    new ArrayList<>(array.items().stream().map(Slips::copy).toList()));
        }
        return node;
    }

    /** Something in an object or an array. */
    private sealed interface Place {
        JsonNode get();

        void set(JsonNode node);

        void remove();

        void add(String name, JsonNode node);
    }

    private record FieldPlace(Map<String, JsonNode> fields, String name) implements Place {
        @Override
        public JsonNode get() {
            return fields.get(name);
        }

        @Override
        public void set(JsonNode node) {
            fields.put(name, node);
        }

        @Override
        public void remove() {
            fields.remove(name);
        }

        @Override
        public void add(String other, JsonNode node) {
            fields.put(other, node);
        }
    }

    private record ItemPlace(List<JsonNode> items, int index) implements Place {
        @Override
        public JsonNode get() {
            return items.get(index);
        }

        @Override
        public void set(JsonNode node) {
            items.set(index, node);
        }

        @Override
        public void remove() {
            items.remove(index);
        }

        @Override
        public void add(String name, JsonNode node) {
            items.add(index, node);
        }
    }

    private List<Place> places() {
        List<Place> places = new ArrayList<>();
        collect(root, places);
        return places;
    }

    private static void collect(JsonNode node, List<Place> places) {
        if (node instanceof JsonNode.ObjectNode object) {
            object.fields().forEach((name, value) -> {
                places.add(new FieldPlace(object.fields(), name));
                collect(value, places);
            });
        } else if (node instanceof JsonNode.ArrayNode array) {
            for (int i = 0; i < array.items().size(); i++) {
                places.add(new ItemPlace(array.items(), i));
                collect(array.items().get(i), places);
            }
        }
    }

    private void make() {
        List<Place> places = places();
        if (places.isEmpty()) {
            return;
        }
        Place place = choices.of(places);
        switch (choices.below(11)) {
            case 0, 1, 2 -> place.set(changed(place.get()));
            case 3 -> place.remove();
            case 4 -> {
                Place other = choices.of(places);
                JsonNode here = copy(place.get());
                place.set(copy(other.get()));
                // Not into itself: the copies are apart.
                other.set(here);
            }
            case 5 -> place.set(copy(choices.of(places).get()));
            case 6 -> place.add(name(places), copy(place.get()));
            case 7 -> {
                JsonNode moved = place.get();
                place.remove();
                place.add(name(places), moved);
            }
            case 8 -> place.set(new JsonNode.WordNode(choices.of(WORDS)));
            case 9 -> place.set(new JsonNode.TextNode(choices.once(4) ? choices.text(40) : choices.of(TEXTS)));
            default -> many(place);
        }
    }

    private String name(List<Place> places) {
        return choices.of(places) instanceof FieldPlace field && !choices.once(8) ? field.name() : choices.text(12);
    }

    private void many(Place place) {
        if (place.get() instanceof JsonNode.ArrayNode array && !array.items().isEmpty()) {
            JsonNode item = choices.of(array.items());
            for (int i = choices.below(24); i > 0; i--) {
                array.items().add(copy(item));
            }
        } else {
            place.set(
                    choices.once(2)
                            ? new JsonNode.ArrayNode(new ArrayList<>(List.of(copy(place.get()))))
                            : new JsonNode.ObjectNode(new LinkedHashMap<>()));
        }
    }

    private JsonNode changed(JsonNode node) {
        if (!(node instanceof JsonNode.TextNode text)) {
            return new JsonNode.WordNode(
                    choices.number().replace("NaN", "1e-999").replace("Infinity", "1e999"));
        }
        Optional<Matcher> amount = Optional.of(AMOUNT.matcher(text.text())).filter(Matcher::matches);
        if (amount.isEmpty() || choices.once(6)) {
            int at = choices.below(text.text().length() + 1);
            return new JsonNode.TextNode(text.text().substring(0, at)
                    + choices.text(3)
                    + text.text()
                            .substring(
                                    Math.min(at + choices.below(3), text.text().length())));
        }
        String number = amount.get().group(1);
        String unit = amount.get().group(2);
        return new JsonNode.TextNode(
                switch (choices.below(4)) {
                    case 0 -> choices.number() + unit;
                    case 1 -> number + " " + choices.of(SYMBOLS);
                    case 2 -> number + "e" + (choices.below(9) - 4) + unit;
                    default -> swapped(number) + unit;
                });
    }

    /** Two digits of a number the wrong way round. */
    private String swapped(String number) {
        int at = choices.below(number.length());
        return number.substring(0, at)
                + new StringBuilder(number.substring(at, Math.min(number.length(), at + 2))).reverse()
                + number.substring(Math.min(number.length(), at + 2));
    }
}
