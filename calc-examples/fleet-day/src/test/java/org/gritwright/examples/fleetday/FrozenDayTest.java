package org.gritwright.examples.fleetday;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.gritwright.core.document.RejectedDocumentException;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Test;

/**
 * A day that was frozen with everything it gave, so that no change of the code moves a number unnoticed. The table of facts
 * never changes; a number that moves on purpose stands in the table of changes beside it, and the commit says why.
 */
class FrozenDayTest {
    /** The documents of format version 1 stand where the library's own tests read them, too. */
    private static final Path VERSION_1 = Path.of("../../calc-core/src/test/resources/golden/version-1");

    private static final Path FROZEN = Path.of("src/test/resources/frozen-day");
    private static final Path TODAY = Path.of("target/frozen-day/facts.csv");

    private static FactTable table(String name) throws IOException {
        return FactTable.parse(Run.text(FROZEN.resolve(name)));
    }

    /** Written to a file as well, for whoever has to see where a difference comes from. */
    private static FactTable today() throws IOException, RejectedDocumentException {
        FactTable table = new FactTable();
        try (InputStream in = Files.newInputStream(VERSION_1.resolve("fleet-day.json"))) {
            FleetDay day = Document.FLEET_DAY.read(in);
            FleetResult result = FleetResult.of(day, FleetAssessor.of(BuiltInTypes.registry()));
            result.trucks().forEach(truck -> Facts.add(table, truck.assessment()));
            CsvFacts.add(table, FleetCsv.text(result));
        }
        Files.createDirectories(TODAY.getParent());
        Files.writeString(TODAY, table.text());
        return table;
    }

    @Test
    void theFrozenDayGivesTheFrozenFactsButForTheChangesOnPurpose() throws IOException, RejectedDocumentException {
        assertThat(table("facts.csv").changedBy(table("changes.csv")).differencesTo(today()))
                .as("facts of %s against those of today, %s", FROZEN, TODAY.toAbsolutePath())
                .isEmpty();
    }

    /** The table was made by the library; the documents of that day, read without it, say the same. */
    @Test
    void theFrozenFactsAreThoseOfTheRecordsAndTheTableOfThatDay() throws IOException {
        FactTable table = new FactTable();
        List<String> unread = new ArrayList<>();
        List<Path> records;
        try (Stream<Path> files = Files.list(VERSION_1.resolve("records"))) {
            records = files.sorted().toList();
        }
        for (Path file : records) {
            ObjectNode record = (ObjectNode) new ObjectMapper().readTree(Run.text(file));
            new FrozenRecord(record).addTo(table).forEach(pointer -> unread.add(file.getFileName() + pointer));
        }
        String csv = Run.text(FROZEN.resolve("fleet-day.csv"));
        CsvFacts.add(table, csv);

        assertThat(records).hasSize(20);
        assertThat(table("facts.csv").differencesTo(table)).isEmpty();
        assertThat(unread).as("fields of records that no fact was taken from").isEmpty();
        assertThat(CsvFacts.unreadColumns(csv)).containsExactlyElementsOf(CsvFacts.SENTENCES);
    }
}
