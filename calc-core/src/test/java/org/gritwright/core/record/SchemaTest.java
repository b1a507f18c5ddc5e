package org.gritwright.core.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gritwright.core.document.RejectedDocumentException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("jackson")
class SchemaTest {
    private static final Schema FLEET_DAY = schema(Document.FLEET_DAY);

    static Schema schema(Document<?> document) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(document.schema(), InputFormat.JSON);
    }

    static List<Document<?>> documents() {
        return List.of(
                Document.FLEET_DAY,
                Document.CALIBRATION_RECORD,
                Document.TANK_RECORD,
                Document.FLEET_EVENT,
                Document.SEASON_ACCOUNT);
    }

    @ParameterizedTest
    @MethodSource("documents")
    void theSchemaInTheJarIsTheOneThatTheDefinitionsGive(Document<?> document) throws IOException {
        String name = document.format().replace("gritwright/", "") + "-" + document.version() + ".schema.json";
        Path generated = Path.of("target", "schemas", name);
        Files.createDirectories(generated.getParent());
        Files.writeString(generated, document.schema());
        try (InputStream in = Document.class.getResourceAsStream("/META-INF/schemas/" + name)) {
            assertThat(in)
                    .as("src/main/resources/META-INF/schemas/%s; copy %s there", name, generated)
                    .isNotNull();
            assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .as("copy %s to src/main/resources/META-INF/schemas", generated)
                    .isEqualTo(document.schema());
        }
    }

    @ParameterizedTest
    @MethodSource("documents")
    void theJarHoldsTheSchemaOfEveryVersionThatIsRead(Document<?> document) {
        String name = document.format().replace("gritwright/", "");
        for (int version = 1; version <= document.version(); version++) {
            assertThat(Document.class.getResource("/META-INF/schemas/" + name + "-" + version + ".schema.json"))
                    .as("schema of %s, version %s", name, version)
                    .isNotNull();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "165.5",
                "\"165.5\"",
                "\"165,5 lb\"",
                "\"165.5  lb\"",
                "\"165.5 lb/mi\"",
                "\"0165 lb\"",
                "\"+165 lb\"",
                "\"NaN lb\"",
                "null"
            })
    void whatTheReaderRefusesAsAMassTheSchemaRefusesToo(String gross) {
        String broken = Document.FLEET_DAY.toText(FleetDays.small()).replace("\"165.5 lb\"", gross);
        assertThat(FLEET_DAY.validate(broken, InputFormat.JSON)).isNotEmpty();
        assertThat(DocumentRefusalTest.problems(broken)).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\'', textBlock = """
            "setting": "2 in"  | "setting": "2 lb"                                      | false
            "setting": "2 in"  | "setting": 2                                           | false
            "setting": "2 in"  | "setting": "2"                                         | true
            "setting": "2 in"  | "setting": "40 %"                                      | true
            "setting": "2 in"  | "setting": "50.8 mm"                                   | true
            "width": "22 in"   | "width": ["22 in", "5 cm"]                             | true
            "width": "22 in"   | "width": ["22 in", 5]                                  | false
            "width": "22 in"   | "width": [["22 in"]]                                   | false
            "gearRatio": "1"   | "gearRatio": "1", "curveModel": "table"                | true
            "gearRatio": "1"   | "gearRatio": "1", "curveModel": "spline"               | false
            "gearRatio": "1"   | "gearRatio": "1", "controlSettings": [{"setting": "2"}] | false
            "gearRatio": "1"   | "gearRatio": "1", "controlSettings": [{"setting": "2", "shaftSpeed": "9 rev/min"}] | true
            "name": "road salt" | "name": "road salt", "grainDiameter": "3 mm"          | true
            "name": "road salt" | "name": "road salt", "grainDiameter": "3 lb"          | false
            "pulses": "356 pulse" | "setting": "3", "time": "60 s"                      | true
            """)
    void readerAndSchemaAgreeOnGatesDrivesAndCurves(String part, String replacement, boolean good) {
        String small = Document.FLEET_DAY.toText(FleetDays.small());
        assertThat(small).contains(part);
        String text = small.replace(part, replacement);
        assertThat(FLEET_DAY.validate(text, InputFormat.JSON).isEmpty()).isEqualTo(good);
        if (good) {
            assertThatCode(() -> DocumentLawsTest.read(Document.FLEET_DAY, text))
                    .doesNotThrowAnyException();
        } else {
            assertThat(DocumentRefusalTest.problems(text)).isNotEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"165.5lb", "165.5 lbs", "1.655e2 lb", "-1 kg", "1 imp gal"})
    void readerAndSchemaAgreeOnSpellings(String gross) {
        String text = Document.FLEET_DAY.toText(FleetDays.small()).replace("165.5 lb", gross);
        boolean valid = FLEET_DAY.validate(text, InputFormat.JSON).isEmpty();
        boolean read = true;
        try {
            DocumentLawsTest.read(Document.FLEET_DAY, text);
        } catch (RejectedDocumentException e) {
            read = false;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertThat(valid).isEqualTo(read).isEqualTo(!gross.contains("gal"));
    }
}
