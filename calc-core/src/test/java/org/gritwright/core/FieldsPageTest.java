package org.gritwright.core;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.fleet.plan.FleetPlanner;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The page that explains every field leaves none out, and its example is as good as it says. */
@Tag("jackson")
class FieldsPageTest {

    private static List<FieldTable.Field> fields() throws IOException {
        return FieldTable.of(Page.FIELDS).fields();
    }

    @Test
    void theTableIsTheOneThatTheSchemaGives() throws IOException {
        Page.FIELDS.assertHolds("fields", FieldTable.of(Page.FIELDS).text());
    }

    @Test
    void everyFieldHasAMeaning() throws IOException {
        assertThat(fields())
                .hasSizeGreaterThan(100)
                .allSatisfy(field -> assertThat(field.meaning())
                        .as("%s.%s in fields.properties", field.object(), field.name())
                        .isNotBlank());
    }

    @Test
    void everyWordOfAChoiceIsExplained() throws IOException {
        assertThat(fields())
                .allSatisfy(field -> assertThat(field.words())
                        .allSatisfy(word -> assertThat(field.meaning()).contains(word)));
    }

    @Test
    void everyFieldStandsInTheExample() throws IOException {
        assertThat(fields())
                .allSatisfy(field -> assertThat(field.example())
                        .as("%s.%s in the example", field.object(), field.name())
                        .isNotBlank());
    }

    @Test
    void nothingIsExplainedThatIsNoField() throws IOException {
        Properties words = new Properties();
        try (InputStream in =
                Objects.requireNonNull(Document.class.getResourceAsStream("fields.properties"), "fields.properties")) {
            words.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        List<String> known = new ArrayList<>(fields().stream()
                .flatMap(field -> Stream.of(field.object(), "document", "catch").map(of -> of + "." + field.name()))
                .toList());
        List<String> others = new ArrayList<>(fieldsOf(Document.FLEET_EVENT, "event-"));
        others.addAll(fieldsOf(Document.SEASON_ACCOUNT, "season-"));
        known.addAll(others);
        assertThat(known).containsAll(words.stringPropertyNames());
        assertThat(words.stringPropertyNames()).containsAll(others);
    }

    /** The fields of another document, which no day has: by the names of their objects in the schema. */
    private static List<String> fieldsOf(Document<?> document, String ownObjects) throws IOException {
        JsonNode schema = new ObjectMapper().readTree(document.schema());
        List<String> names = new ArrayList<>();
        String whole = document.format().replace("gritwright/", "") + ".";
        schema.get("properties").fieldNames().forEachRemaining(field -> names.add(whole + field));
        names.removeAll(List.of(whole + "$schema", whole + "format", whole + "formatVersion"));
        schema.get("$defs").fields().forEachRemaining(object -> {
            if (object.getKey().startsWith(ownObjects)) {
                object.getValue()
                        .get("properties")
                        .fieldNames()
                        .forEachRemaining(field -> names.add(object.getKey() + "." + field));
            }
        });
        return names;
    }

    @Test
    void theExampleCanBeComputedAndPlanned() throws IOException, RejectedDocumentException {
        String example = Page.FIELDS.code("every field");
        FleetDay day = Document.FLEET_DAY.read(new ByteArrayInputStream(example.getBytes(StandardCharsets.UTF_8)));
        assertThat(FleetAssessor.of(BuiltInTypes.registry()).assess(day))
                .flatExtracting(TruckAssessment::refusals)
                .isEmpty();
        assertThat(FleetAssessor.of(BuiltInTypes.registry()).assessTanks(day))
                .hasSize(3)
                .flatExtracting(TankAssessment::refusals)
                .isEmpty();
        assertThat(FleetPlanner.of(BuiltInTypes.registry())
                        .plan(day, day.plan().orElseThrow())
                        .trucks())
                .flatExtracting(truck -> truck.refusal().stream().toList())
                .isEmpty();
    }
}
