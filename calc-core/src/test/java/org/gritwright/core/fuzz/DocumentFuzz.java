package org.gritwright.core.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gritwright.core.document.DocumentLimits;
import org.gritwright.core.document.Problem;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.finding.Severity;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.MassProof;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.day.PlanEntry;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.json.JsonNode;
import org.gritwright.core.json.JsonText;
import org.gritwright.core.json.Problems;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.gritwright.units.InvalidInputException;

/**
 * Fleets' days and records with slips, each read, computed, written and read again. Whatever stands in a document, it is refused
 * with problems or computed with; nothing else may come out.
 */
public final class DocumentFuzz {
    private static final Set<MassProof> UNPROVEN =
            EnumSet.of(MassProof.NOT_PROVEN, MassProof.UNDECIDED, MassProof.NOT_CHECKED);

    private static final FleetAssessor ASSESSOR = FleetAssessor.of(BuiltInTypes.registry());
    private static final FleetPlanner PLANNER = FleetPlanner.of(BuiltInTypes.registry());

    /** A day as version 1 and as version 2 write it, one with drives and routes, and some records. */
    private static final Seeds SEEDS = Seeds.made();

    private DocumentFuzz() {}

    private record Seeds(List<JsonNode> days, List<JsonNode> records) {
        static Seeds made() {
            try {
                byte[] day = resource("fleet-day.json");
                List<JsonNode> records = new ArrayList<>();
                for (String id : List.of("T-01", "T-05", "T-09", "T-13", "T-17")) {
                    byte[] record = resource("records/" + id + ".json");
                    records.add(tree(record));
                    records.add(tree(written(
                            Document.CALIBRATION_RECORD, DocumentFuzz.read(Document.CALIBRATION_RECORD, record))));
                }
                FleetDay read = DocumentFuzz.read(Document.FLEET_DAY, day);
                return new Seeds(
                        List.of(
                                tree(written(Document.FLEET_DAY, read)),
                                tree(day),
                                tree(written(Document.FLEET_DAY, DrivenDay.made(read)))),
                        records);
            } catch (IOException | RejectedDocumentException e) {
                throw new IllegalStateException(e);
            }
        }

        private static byte[] resource(String name) throws IOException {
            try (InputStream in = DocumentFuzz.class.getResourceAsStream("/golden/version-1/" + name)) {
                return in.readAllBytes();
            }
        }

        private static JsonNode tree(byte[] text) throws IOException, RejectedDocumentException {
            return JsonText.read(
                    new ByteArrayInputStream(text), DocumentLimits.COMMON, new Problems(DocumentLimits.COMMON));
        }
    }

    /**
     * Reads bytes as choices of a document and of slips in it.
     *
     * @param data the choices
     */
    public static void fuzzerTestOneInput(byte[] data) {
        Choices choices = new Choices(data);
        if (choices.once(4)) {
            record(text(Slips.in(choices.of(SEEDS.records), choices), choices));
        } else {
            day(text(Slips.in(withFewTrucks(choices.of(SEEDS.days), choices), choices), choices));
        }
    }

    /** With one to three of its trucks, next to each other: quick to compute, and some to compare. */
    private static JsonNode withFewTrucks(JsonNode day, Choices choices) {
        JsonNode copy = Slips.copy(day);
        List<JsonNode> trucks = ((JsonNode.ArrayNode) ((JsonNode.ObjectNode) copy).get("trucks")).items();
        int first = choices.below(trucks.size());
        List<JsonNode> few = List.copyOf(trucks.subList(first, Math.min(trucks.size(), first + 1 + choices.below(3))));
        Map<String, JsonNode> fields = ((JsonNode.ObjectNode) copy).fields();
        fields.put("trucks", new JsonNode.ArrayNode(new ArrayList<>(few)));
        // One route names a truck; it has to be there.
        if (fields.get("routes") instanceof JsonNode.ArrayNode routes
                && few.get(0) instanceof JsonNode.ObjectNode truck
                && routes.items().get(0) instanceof JsonNode.ObjectNode route) {
            route.fields().put("trucks", new JsonNode.ArrayNode(new ArrayList<>(List.of(truck.get("id")))));
        }
        return copy;
    }

    /** In one of sixteen bytes are changed too. */
    private static byte[] text(JsonNode tree, Choices choices) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            JsonText.write(tree, out);
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be written", e);
        }
        byte[] text = out.toByteArray();
        if (!choices.once(16)) {
            return text;
        }
        int at = choices.below(text.length);
        return switch (choices.below(4)) {
            case 0 -> Arrays.copyOf(text, at);
            case 1 -> joined(Arrays.copyOf(text, at), Arrays.copyOfRange(text, at / 2, text.length));
            case 2 -> joined(text, Arrays.copyOf(text, at));
            default -> {
                text[at] = (byte) choices.oneByte();
                yield text;
            }
        };
    }

    private static byte[] joined(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    private static <T> T read(Document<T> document, byte[] text) throws IOException, RejectedDocumentException {
        return document.read(new ByteArrayInputStream(text));
    }

    private static <T> byte[] written(Document<T> document, T content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.write(content, out);
        return out.toByteArray();
    }

    private static void day(byte[] text) {
        try {
            FleetDay day = read(Document.FLEET_DAY, text);
            FleetDay again = readBack(Document.FLEET_DAY, day);
            List<TruckAssessment> trucks = ASSESSOR.assess(day);
            Check.equal(
                    "trucks assessed",
                    trucks.stream().map(TruckAssessment::truck).toList(),
                    day.trucks());
            List<CalibrationRecord> records = records(day, trucks);
            Check.equal("records of an assessment made again", records(again, ASSESSOR.assess(again)), records);
            trucks.forEach(DocumentFuzz::advice);
            for (CalibrationRecord record : records) {
                readBack(Document.CALIBRATION_RECORD, record);
            }
            day.plan().ifPresent(plan -> Check.equal("a plan made again", plan(again, plan), plan(day, plan)));
        } catch (RejectedDocumentException e) {
            refusal(e);
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be read", e);
        }
    }

    /** The plan in words, or why there is none: what is planned for may not be in the day. */
    private static String plan(FleetDay day, PlanEntry plan) {
        try {
            return PLANNER.plan(day, plan).trucks().toString();
        } catch (InvalidInputException e) {
            return e.getMessage();
        }
    }

    private static List<CalibrationRecord> records(FleetDay day, List<TruckAssessment> trucks) {
        return trucks.stream().map(truck -> CalibrationRecord.of(day, truck)).toList();
    }

    private static void record(byte[] text) {
        try {
            readBack(Document.CALIBRATION_RECORD, read(Document.CALIBRATION_RECORD, text));
        } catch (RejectedDocumentException e) {
            refusal(e);
        } catch (IOException e) {
            throw new UncheckedIOException("memory can't fail to be read", e);
        }
    }

    /** What was accepted can be written, and what is written is read as the same. */
    private static <T> T readBack(Document<T> document, T content) throws IOException {
        byte[] text = written(document, content);
        try {
            T again = read(document, text);
            Check.equal("what was read back", again, content);
            Check.that(Arrays.equals(written(document, again), text), "written again the same");
            return again;
        } catch (RejectedDocumentException e) {
            throw new AssertionError("what was written is refused", e);
        }
    }

    /** A truck with nothing to do has nothing against it. */
    private static void advice(TruckAssessment truck) {
        Check.that(
                truck.isRefused() == (truck.nextStep() == NextStep.FIX_RECORD), "refused and told to mend the record");
        boolean doubted = truck.findings().stream()
                .map(Finding::code)
                .anyMatch(code -> code.doubtsData() || code.severity() == Severity.ERROR);
        Check.that(!doubted || truck.nextStep().needsAttention(), "told what to do about findings of errors");
        boolean proven = !UNPROVEN.contains(truck.massProof());
        Check.that(proven || truck.nextStep().needsAttention(), "told what to do about an unproven value");
    }

    private static void refusal(RejectedDocumentException refused) {
        DocumentLimits limits = DocumentLimits.COMMON;
        Check.that(!refused.problems().isEmpty(), "a refusal with problems");
        Check.that(refused.problems().size() <= limits.problems(), "problems within their number");
        Check.that(refused.getMessage().length() <= 2 * limits.problemsLength(), "problems within their length");
        for (Problem problem : refused.problems()) {
            Check.that(problem.pointer().isEmpty() || problem.pointer().startsWith("/"), "a JSON pointer");
            Check.that(!problem.expected().isEmpty() && !problem.found().isEmpty(), "a problem in words");
        }
    }
}
