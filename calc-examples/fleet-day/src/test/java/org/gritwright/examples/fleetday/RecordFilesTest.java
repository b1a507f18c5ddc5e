package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.record.CalibrationRecord;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The records as files, held against the published schemas and read back. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RecordFilesTest {
    private static final Schema FLEET_DAY = schema("fleet-day-2.schema.json");
    private static final Schema CALIBRATION_RECORD = schema("calibration-record-2.schema.json");

    private Path output;

    private static Schema schema(String name) {
        try (InputStream in = Document.class.getResourceAsStream("/META-INF/schemas/" + name)) {
            String text = new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text, InputFormat.JSON);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @BeforeAll
    void run(@TempDir Path folder) {
        output = folder;
        assertThat(Run.of(Run.DEMO, output).exitCode()).isZero();
    }

    @Test
    void everyRecordFitsTheSchemaAndReadsBack() throws IOException, RejectedDocumentException {
        for (int number = 1; number <= 20; number++) {
            Path file = output.resolve("run-0001/records/T-%02d.json".formatted(number));
            assertThat(CALIBRATION_RECORD.validate(Run.text(file), InputFormat.JSON))
                    .as(file.toString())
                    .isEmpty();
            try (InputStream in = Files.newInputStream(file)) {
                CalibrationRecord record = Document.CALIBRATION_RECORD.read(in);
                assertThat(Document.CALIBRATION_RECORD.toText(record)).isEqualTo(Run.text(file));
                assertThat(record.entered().trucks()).hasSize(1);
            }
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "step": "enter-correction"      | "step": "have lunch"
            "toEnter": "5.68 lb/rev"        | "toEnter": 5.68
            "toEnter": "5.68 lb/rev"        | "toEnter": "5.68 lb per rev"
            "deliveredRate": "262           | "deliveredRate": "262,
            "findings":                     | "findngs":
            """)
    void aBrokenRecordFailsBoth(String good, String bad) throws IOException {
        String text = Run.text(output.resolve("run-0001/records/T-11.json"));
        String broken = text.replace(good, bad);
        assertThat(broken).isNotEqualTo(text);
        assertThat(CALIBRATION_RECORD.validate(broken, InputFormat.JSON)).isNotEmpty();
        assertThatThrownBy(() -> Document.CALIBRATION_RECORD.read(stream(broken)))
                .isInstanceOf(RejectedDocumentException.class);
    }

    @Test
    void theDemoFleetFitsTheSchema() throws IOException {
        assertThat(FLEET_DAY.validate(Run.text(Run.DEMO), InputFormat.JSON)).isEmpty();
    }

    @Test
    void theDocumentWithAMissingTareFailsBoth() throws IOException {
        assertThat(schema("fleet-day-1.schema.json").validate(Run.text(Run.TARE_MISSING), InputFormat.JSON))
                .singleElement()
                .satisfies(error ->
                        assertThat(error.toString()).contains("/trucks/0/calibrationCatches/0/containers/1", "tare"));
        assertThat(Run.of(Run.TARE_MISSING, output.resolve("refused")).exitCode())
                .isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "tolerance": "4 %"         | "tolerance": "4 lb"
            "tolerance": "4 %"         | "tolerance": 4
            "formatVersion": 2         | "formatVersion": 3
            "day": "2026-10-19"        | "day": "19.10.2026"
            "gearRatio": "4.8"         | "gearRatio": "4,8"
            "gearRatio": "4.8"         | "gearRatio": "0x5"
            "gearRatio": "4.8"         | "gearRatio": null
            "primed": true             | "primed": "yes"
            "coasting": "in-both"      | "coasting": "unknown"
            "gross": "23 kg"           | "gross": "23 kg/km"
            "gross": "23 kg"           | "gros": "23 kg"
            "gross": "23 kg"           | "gross": "23"
            """)
    void aBrokenDayFailsBoth(String good, String bad) throws IOException {
        String text = Run.text(Run.DEMO);
        String broken = text.replace(good, bad);
        assertThat(broken).isNotEqualTo(text);
        assertThat(FLEET_DAY.validate(broken, InputFormat.JSON)).isNotEmpty();
        assertThatThrownBy(() -> Document.FLEET_DAY.read(stream(broken))).isInstanceOf(RejectedDocumentException.class);
    }

    private static InputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }
}
