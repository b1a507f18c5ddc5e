package org.gritwright.core.record;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.gritwright.core.conformance.Law;
import org.gritwright.core.conformance.TrialParameters;
import org.gritwright.core.conformance.Violation;
import org.gritwright.core.fleet.TypedEntry;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.units.InvalidInputException;

/**
 * Checks that a conveyor or gate type's parameters survive being written to a document and read again: the law
 * {@code json-round-trip}. It stands apart from the other laws because only this package knows documents; it needs
 * Jackson.
 */
public final class JsonConformance {

    private JsonConformance() {}

    /**
     * Checks a type.
     *
     * @param type a conveyor or gate type that obeys the other laws
     * @return what it violates; empty if it obeys the law
     */
    public static List<Violation> check(SpreaderType type) {
        return check(type, List.of());
    }

    /**
     * Checks a type, with examples beside the values made from what it declares.
     *
     * @param type a conveyor or gate type that obeys the other laws
     * @param examples further sets of parameters by name
     * @return what it violates; empty if it obeys the law
     */
    public static List<Violation> check(SpreaderType type, List<? extends Map<String, ?>> examples) {
        List<Map<String, ?>> sets = new ArrayList<>(TrialParameters.of(type.parameters()));
        sets.addAll(examples);
        return sets.stream()
                .map(set -> survives(type, set))
                .filter(Objects::nonNull)
                .map(how -> new Violation(Law.JSON_ROUND_TRIP, how))
                .limit(1)
                .toList();
    }

    /** Null, or why not. */
    private static String survives(SpreaderType type, Map<String, ?> set) {
        TypedEntry entry = new TypedEntry(type.id().name(), type.id().version(), set);
        try {
            Parameters before = Parameters.of(type.parameters(), set);
            ByteArrayOutputStream text = new ByteArrayOutputStream();
            JsonText.write(FleetDayCodecs.TYPED.write(entry), text);
            Problems problems = new Problems(DocumentLimits.COMMON.problems());
            JsonNode node =
                    JsonText.read(new ByteArrayInputStream(text.toByteArray()), DocumentLimits.COMMON, problems);
            TypedEntry read = FleetDayCodecs.TYPED.read(node, Pointer.ROOT, problems);
            problems.throwIfAny();
            boolean same = entry.equals(read) && before.equals(Parameters.of(type.parameters(), read.parameters()));
            return same ? null : read + " in place of " + entry;
        } catch (InvalidInputException | IOException | RejectedDocumentException e) {
            return e.getMessage() + ", with " + set;
        }
    }
}
