package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.history.History;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No slip of a tired person ends in a list that seems to have nothing to do, or in the loss of a file. */
class SlipsTest {
    private static final FleetDay DAY = Fixtures.FLEET.days().get(0);

    @TempDir
    private Path folder;

    private Database database;
    private Path day;

    @BeforeEach
    void prepare() throws Exception {
        database = Database.of(folder.resolve("fleet.db").toString());
        day = Fixtures.write(folder.resolve("day.json"), Document.FLEET_DAY, DAY);
        assertThat(Fixtures.run(database, "import", day).out()).hasLineCount(1);
    }

    private Fixtures.Run repaired(String truck, String on) throws Exception {
        Path event = Files.writeString(folder.resolve("shop.json"), """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "shop 1",
                 "at": "%s", "truck": "%s", "source": "shop book", "changed": {"part": "gate"}}
                """.formatted(on, truck));
        return Fixtures.run(database, "import", event);
    }

    private String index() throws Exception {
        Path pages = folder.resolve("pages");
        assertThat(Fixtures.run(database, "pages", "--output", pages).code()).isZero();
        return Fixtures.unmarked(Files.readString(pages.resolve(Pages.FIRST)));
    }

    @Test
    void aRepairOfATruckWrittenOtherwiseIsToldOnImportAndAsLongAsItIsKept() throws Exception {
        for (String other : new String[] {"c-01", "C-01 ", "C 1", "C01"}) {
            database = Database.of(
                    folder.resolve("fleet " + other.hashCode() + ".db").toString());
            Fixtures.run(database, "import", day);

            String told = "Look whether these are one truck: ";
            assertThat(repaired(other, "2025-01-08").out()).contains(told, "\"C-01\"", "\"" + other + "\"");
            assertThat(Fixtures.run(database, "due").out()).contains(told, "\"" + other + "\"");
            assertThat(Fixtures.run(database, "check").out()).contains(told, "\"" + other + "\"");
        }
        assertThat(index()).contains("Look whether these are one truck: &quot;C-01&quot; and &quot;C01&quot;");
    }

    @Test
    void trucksWhoseNumbersDifferAreNotTakenForOne() throws Exception {
        assertThat(repaired("C-011", "2025-01-08").out()).doesNotContain("one truck");
        assertThat(repaired("C-0-1", "2025-01-08").out()).doesNotContain("one truck");
    }

    @Test
    void aRepairInAWrongYearIsToldAsNotCounted() throws Exception {
        assertThat(repaired("C-02", "2052-01-08").out())
                .contains("Of days after today, 2026-02-10: entries of truck \"C-02\", the last of 2052-01-08");

        String told = "not counted: entries of truck \"C-02\", the last of 2052-01-08";
        assertThat(Fixtures.run(database, "due").out()).contains(told);
        assertThat(Fixtures.run(database, "due", "--on", "2052-01-08").out()).doesNotContain("not counted");
        assertThat(index()).contains("the last of 2052-01-08");
    }

    @Test
    void anAccountThatEndsInAWrongYearIsToldAsNotCounted() {
        SeasonPage season = InventedSeason.page(InventedSeason.of(0.07, 0, 0));
        Overview fleet = Overview.of(
                        History.of(List.of(), InventedSeasons.YARD),
                        Tolerance.percent(4),
                        1,
                        List.of(),
                        season.to().minusDays(1))
                .with(new BalancedSeasons(List.of(season), List.of()));

        assertThat(Slips.of(fleet))
                .containsExactly("Season 2025/26 ends on 2026-04-15, after 2026-04-14, and so what its account finds"
                        + " doesn't count yet. Look whether its year is right.");
        assertThat(DueText.lines(fleet)).containsAll(Slips.of(fleet));
    }

    @Test
    void aTicketInAnotherUnitThanTheOthersIsAskedAbout() throws Exception {
        String account = Document.SEASON_ACCOUNT.toText(InventedAccount.DEMO.written());
        String mistaken = account.replaceFirst(
                "(\"ticket\": \"2036\",\\s+\"on\": \"[\\d-]+\",\\s+\"mass\": \"[\\d.]+) ton\"", "$1 t\"");

        assertThat(SeasonAccount.otherUnits(InventedAccount.DEMO.written())).isEmpty();
        assertThat(SeasonAccount.otherUnits(Document.SEASON_ACCOUNT.read(
                        new ByteArrayInputStream(mistaken.getBytes(StandardCharsets.UTF_8)))))
                .hasValue("Tickets are in several units: 1 in t (such as 2036), 63 in ton (such as 2031). Look whether"
                        + " that is what stands on them.");
    }

    /** Whoever runs as root may write everywhere. */
    @Test
    void aFolderThatNothingMayBeWrittenIntoIsNamed() throws Exception {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        Assumptions.assumeTrue(closed.toFile().setWritable(false) && !Files.isWritable(closed));

        assertThat(Fixtures.run(database, "export", closed.resolve("all.jsonl")).err())
                .contains("nothing may be written into " + closed);
        assertThat(Fixtures.run(database, "pages", "--output", closed.resolve("pages"))
                        .err())
                .contains("nothing may be written into " + closed);
    }

    @Test
    void aTruckOfWhichNothingIsKnownIsListedWithWhatIsDue() throws Exception {
        repaired("X-9", "2025-01-08");

        assertThat(Fixtures.run(database, "due").out())
                .contains("That is no sign that they are in order:", "X-9", "Read the display.");
    }

    @Test
    void beforeAnythingWasWrittenDownNobodyKnows() {
        assertThat(Fixtures.run(database, "due", "--on", "1900-01-01").out())
                .contains("0 calibration points of 2 trucks", "That is no sign that they are in order:", "C-02");
    }

    @Test
    void aPlanForATruckOrMaterialThatIsntKnownIsTold() throws Exception {
        Path plan = Files.writeString(folder.resolve("plan.csv"), """
                truck,material,mass
                c-01,road salt,120 ton
                C-01,sand,120 ton
                C-02,road salt,120 ton
                """);

        assertThat(Fixtures.run(database, "due", "--planned", plan).out())
                .contains(
                        "truck \"c-01\" with \"road salt\" counts for nothing: known trucks are \"C-01\", \"C-02\".",
                        "truck \"C-01\" with \"sand\" counts for nothing: known of this truck is \"road salt\".")
                .doesNotContain("truck \"C-02\" with");
    }

    @Test
    void whereACorrectedWeightDiffersIsTold() throws Exception {
        Path other = Fixtures.write(folder.resolve("other.json"), Document.CALIBRATION_RECORD, Fixtures.otherwise(DAY));

        assertThat(Fixtures.run(database, "import", other).err())
                .contains("here \"gross\": \"34.8 lb\", in line ", "below \"container\": \"")
                .doesNotContain(",,");
    }

    private Fixtures.Run summed(String day, String offset) throws Exception {
        Path sum = Files.writeString(folder.resolve("sums.jsonl"), """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "telemetry C-01 %1$s", "at": "%1$s", \
                "truck": "C-01", "source": "telemetry", "used": {"material": "road salt", "from": "%1$sT00:00%2$s", \
                "mass": "9 ton"}}
                """.formatted(day, offset));
        return Fixtures.run(database, "import", sum);
    }

    @Test
    void sumsByAnotherOffsetThanBeforeAreTold() throws Exception {
        assertThat(summed("2026-01-08", "-06:00").out()).hasLineCount(1);
        assertThat(summed("2026-01-09", "-06:00").out()).hasLineCount(1);

        assertThat(summed("2026-01-10", "-05:00").out())
                .contains(
                        "Days of sums begin by several offsets: -05:00 (such as \"telemetry C-01 2026-01-10\"), -06:00"
                                + " (such as \"telemetry C-01 2026-01-09\"). Hours near midnight may be in two of them");
        // The same day anew is other than the one that is there, though all else is the same.
        assertThat(summed("2026-01-08", "-05:00").err())
                .contains("event telemetry C-01 2026-01-08 is other than the one that is there", "T00:00:00-05:00");
    }

    @Test
    void theSeasonThatIsToComeIsNoSlip() {
        assertThat(Fixtures.run(database, "due", "--on", DAY.day().toString()).out())
                .doesNotContain("not counted");
    }

    @Test
    void aDatabaseWithoutTrucksSaysSo() throws Exception {
        Database empty = Database.of(folder.resolve("empty.db").toString());
        Store.make(empty).close();

        assertThat(Fixtures.run(empty, "due").out()).contains("Nothing is kept of any truck yet");
    }

    @Test
    void anEmptyFileIsNoDatabaseAndStaysEmpty() throws Exception {
        Path file = Files.createFile(folder.resolve("typed.json"));

        assertThat(Fixtures.run(Database.of(file.toString()), "due").err()).contains("typed.json", "it is empty");
        assertThat(file).isEmptyFile();
    }

    @Test
    void noExportOrBackupTakesThePlaceOfAFile() throws Exception {
        String before = Files.readString(day);
        String kept = Fixtures.export(database);
        for (String command : new String[] {"export", "backup"}) {
            for (Path file : new Path[] {day, folder.resolve("fleet.db")}) {
                Fixtures.Run run = Fixtures.run(database, command, file);
                assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
                assertThat(run.err()).contains(file.toString(), "name a file that isn't there yet");
            }
        }
        assertThat(day).hasContent(before);
        assertThat(Fixtures.export(database)).isEqualTo(kept);
    }
}
