package org.gritwright.core.json;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gritwright.core.document.ProblemCode;
import org.jspecify.annotations.Nullable;

/** A document on its way to the newest version: it is changed in place and remembers where everything stood. */
public final class Migrating {
    private final JsonNode.ObjectNode root;
    private final Problems problems;

    /** By identity: equal values stand in several places. */
    private final IdentityHashMap<JsonNode, Pointer> written = new IdentityHashMap<>();

    /** The old names of an object's renamed fields. */
    private final IdentityHashMap<JsonNode, Map<String, String>> oldNames = new IdentityHashMap<>();

    public Migrating(JsonNode.ObjectNode root, Problems problems) {
        this.root = root;
        this.problems = problems;
        remember(root, Pointer.ROOT);
    }

    private void remember(JsonNode node, Pointer pointer) {
        written.put(node, pointer);
        if (node instanceof JsonNode.ObjectNode object) {
            object.fields().forEach((name, part) -> remember(part, pointer.at(name)));
        } else if (node instanceof JsonNode.ArrayNode array) {
            for (int i = 0; i < array.items().size(); i++) {
                remember(array.items().get(i), pointer.at(i));
            }
        }
    }

    /** The objects in a list of an object; anything else is left to the reader, which says what is wrong with it. */
    public Stream<JsonNode.ObjectNode> objects(JsonNode.ObjectNode parent, String list) {
        List<JsonNode> items =
                parent.fields().get(list) instanceof JsonNode.ArrayNode array ? array.items() : List.of();
        return items.stream().filter(JsonNode.ObjectNode.class::isInstance).map(JsonNode.ObjectNode.class::cast);
    }

    /** The object in a field of an object, if there is one. */
    public Stream<JsonNode.ObjectNode> object(JsonNode.ObjectNode parent, String field) {
        return Stream.ofNullable(parent.fields().get(field))
                .filter(JsonNode.ObjectNode.class::isInstance)
                .map(JsonNode.ObjectNode.class::cast);
    }

    /** Gives a field another name; where it is missing, the reader asks for the old one. */
    public void rename(JsonNode.ObjectNode object, String from, String to) {
        Map<String, String> names = oldNames.computeIfAbsent(object, any -> new HashMap<>());
        names.put(to, names.getOrDefault(from, from));
        JsonNode value = object.fields().remove(from);
        if (value != null) {
            object.fields().put(to, value);
        }
    }

    /** Reports what the next version can't express, at the place where it was written. */
    public void refuse(JsonNode node, String expected) {
        problems.add(ProblemCode.NOT_ACCEPTED, written.getOrDefault(node, Pointer.ROOT), expected, node);
    }

    /** Where in the document something was that is at a place now; what was not there is where it was made. */
    public Pointer asWritten(Pointer now) {
        return now.parent() == null ? Pointer.ROOT : written(now, now.parent());
    }

    private Pointer written(Pointer now, Pointer parent) {
        JsonNode node = at(now);
        if (node != null && written.containsKey(node)) {
            return written.get(node);
        }
        JsonNode whole = at(parent);
        Pointer above = asWritten(parent);
        if (now.name() instanceof Integer index) {
            return above.at(index);
        }
        String name = now.name().toString();
        return above.at(
                whole == null ? name : oldNames.getOrDefault(whole, Map.of()).getOrDefault(name, name));
    }

    /** What is at a place now, or null. */
    private @Nullable JsonNode at(Pointer now) {
        if (now.parent() == null) {
            return root;
        }
        JsonNode parent = at(now.parent());
        if (parent instanceof JsonNode.ObjectNode object) {
            return object.fields().get(now.name().toString());
        }
        return parent instanceof JsonNode.ArrayNode array
                        && now.name() instanceof Integer index
                        && index < array.items().size()
                ? array.items().get(index)
                : null;
    }
}
