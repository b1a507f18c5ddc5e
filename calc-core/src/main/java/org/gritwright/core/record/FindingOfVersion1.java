package org.gritwright.core.record;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.finding.FindingCode;
import org.gritwright.core.finding.Slot;
import org.gritwright.core.finding.Term;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.Schema;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * A finding as records of format version 1 have it: its numbers and its English words apart. Where the words are one of
 * a fixed choice they become that; a name and a date stand as they are; what was prose stays prose.
 */
final class FindingOfVersion1 {
    /** The English of version 1, whatever the terms are called today. */
    private static final Map<String, Term> TERMS = Map.ofEntries(
            Map.entry("calibration error", Term.CALIBRATION_ERROR),
            Map.entry("delivery error", Term.DELIVERY_ERROR),
            Map.entry("caught but not counted", Term.CAUGHT_ONLY),
            Map.entry("counted but not caught", Term.COUNTED_ONLY),
            Map.entry("k·g(h)", Term.PROPORTIONAL),
            Map.entry("k·g(h − h0)", Term.DEAD_OPENING),
            Map.entry("a rising table", Term.TABLE),
            Map.entry("hydraulic", Term.HYDRAULIC),
            Map.entry("sensor", Term.SENSOR),
            Map.entry("tyre", Term.TIRE),
            Map.entry("material", Term.MATERIAL));

    private FindingOfVersion1() {}

    /**
     * Gives a finding the form of today, in place: its arguments together.
     *
     * @param finding a finding of version 1
     */
    static void toToday(JsonNode.ObjectNode finding) {
        Map<String, JsonNode> fields = finding.fields();
        Map<String, JsonNode> arguments = new LinkedHashMap<>();
        Map<String, Slot> slots = slots(fields.get("code"));
        for (String part : new String[] {"numbers", "words"}) {
            if (fields.remove(part) instanceof JsonNode.ObjectNode given) {
                given.fields().forEach((name, value) -> arguments.put(name, today(slots.get(name), value)));
            }
        }
        // Version 1 said by its sign which way a rate was off.
        if (slots.containsKey("way") && arguments.get("effect") instanceof JsonNode.TextNode effect) {
            boolean less = effect.text().startsWith("-");
            arguments.put("effect", Schema.text(less ? effect.text().substring(1) : effect.text()));
            arguments.put("way", Schema.text((less ? Term.TOO_LITTLE : Term.TOO_MUCH).id()));
        }
        if (slots.containsKey("laid") && arguments.get("error") instanceof JsonNode.TextNode error) {
            double ratio = Amounts.si(Dimensionless.class, Amounts.parse(Dimensionless.class, error.text()));
            boolean ofDelivery = arguments.get("which") instanceof JsonNode.TextNode which
                    && which.text().equals(Term.DELIVERY_ERROR.id());
            double laid = ofDelivery ? ratio : 1 / (1 + ratio) - 1;
            arguments.put("laid", Schema.text(Amounts.format(Amounts.ofSi(Math.abs(laid), SpreadingUnits.PERCENT))));
            arguments.put("way", Schema.text((laid > 0 ? Term.TOO_MUCH : Term.TOO_LITTLE).id()));
        }
        if (!arguments.isEmpty()) {
            fields.put("arguments", new JsonNode.ObjectNode(arguments));
        }
    }

    private static Map<String, Slot> slots(@Nullable JsonNode code) {
        Map<String, Slot> byName = new HashMap<>();
        Arrays.stream(FindingCode.values())
                .filter(one -> Schema.text(one.id()).equals(code))
                .flatMap(one -> one.slots().stream())
                .forEach(slot -> byName.put(slot.name(), slot));
        return byName;
    }

    private static JsonNode today(@Nullable Slot slot, JsonNode value) {
        boolean isTerm = slot != null && slot.kind() == Argument.Kind.TERM;
        Term term = isTerm && value instanceof JsonNode.TextNode text ? TERMS.get(text.text()) : null;
        return term == null ? value : Schema.text(term.id());
    }
}
