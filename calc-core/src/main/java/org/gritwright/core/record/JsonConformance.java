package org.gritwright.core.record;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import org.gritwright.core.conformance.Law;
import org.gritwright.core.conformance.TrialParameters;
import org.gritwright.core.conformance.Violation;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.JsonText;
import org.gritwright.core.json.Pointer;
import org.gritwright.core.json.Problems;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.RejectedType;
import org.gritwright.core.spi.SpreaderType;

/**
 * Checks that a type's parameters survive being written to a document and read again: the law
 * {@code json-round-trip}. It stands apart from the other laws because only this package knows documents; it needs
 * Jackson. What a type throws becomes a violation, never an exception of the check.
 */
public final class JsonConformance {

    private JsonConformance() {}

    /**
     * Checks a type.
     *
     * @param type a conveyor, gate, pump or flow-meter type that obeys the other laws
     * @return what it violates; empty if it obeys the law
     */
    public static List<Violation> check(SpreaderType type) {
        return check(type, List.of());
    }

    /**
     * Checks a type, with examples beside the values made from what it declares.
     *
     * @param type a conveyor, gate, pump or flow-meter type that obeys the other laws
     * @param examples further sets of parameters by name
     * @return what it violates; empty if it obeys the law
     */
    public static List<Violation> check(SpreaderType type, List<? extends Map<String, ?>> examples) {
        Objects.requireNonNull(type, "type");
        Objects.requireNonNull(examples, "examples");
        List<Map<String, ?>> sets = new ArrayList<>();
        try {
            sets.addAll(TrialParameters.of(type.parameters()));
        } catch (Throwable thrown) {
            return List.of(
                    new Violation(Law.JSON_ROUND_TRIP, "parameters() can't be tried: " + RejectedType.reason(thrown)));
        }
        sets.addAll(examples);
        return sets.stream()
                .flatMap(set -> whyNot(type, set).stream())
                .map(how -> new Violation(Law.JSON_ROUND_TRIP, how))
                .limit(1)
                .toList();
    }

    /** Why a set doesn't survive, if it doesn't. */
    private static Optional<String> whyNot(SpreaderType type, Map<String, ?> set) {
        try {
            TypedEntry entry = new TypedEntry(type.id().name(), type.id().version(), set);
            Parameters before = Parameters.of(type.parameters(), set);
            ByteArrayOutputStream text = new ByteArrayOutputStream();
            JsonText.write(FleetDayCodecs.BOOK.get(TypedEntry.class).write(entry), text);
            Problems problems = new Problems(DocumentLimits.COMMON);
            JsonNode node =
                    JsonText.read(new ByteArrayInputStream(text.toByteArray()), DocumentLimits.COMMON, problems);
            TypedEntry read = FleetDayCodecs.BOOK.get(TypedEntry.class).read(node, Pointer.ROOT, problems);
            problems.throwIfAny();
            Parameters after = Parameters.of(
                    type.parameters(), Objects.requireNonNull(read).parameters());
            // As text: number and unit are the same, of whatever make the quantities are.
            boolean same = entry.type().equals(read.type())
                    && entry.version() == read.version()
                    && before.toString().equals(after.toString());
            return same ? Optional.empty() : Optional.of(after + " in place of " + before);
        } catch (Throwable thrown) {
            return Optional.of(RejectedType.reason(thrown) + ", with the parameters " + new TreeSet<>(set.keySet()));
        }
    }
}
