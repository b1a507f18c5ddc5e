package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can't be used is told plainly, with file and place, and changes nothing. */
class BadInputTest {
    private static final FleetDay DAY = Fixtures.FLEET.days().get(0);

    @TempDir
    private Path folder;

    private Database database;
    private Path good;

    @BeforeEach
    void prepare() throws Exception {
        database = Database.of(folder.resolve("fleet.db").toString());
        good = Fixtures.write(folder.resolve("good.json"), Document.FLEET_DAY, DAY);
    }

    /** Together with a file that is good, of which nothing may be kept either. */
    private Fixtures.Run refused(Path file, String... expected) {
        Fixtures.Run run = Fixtures.run(database, "import", good, file);
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(expected).doesNotContain("\tat ").doesNotContain("Exception");
        assertThat(folder.resolve("fleet.db")).doesNotExist();
        return run;
    }

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("bad.json"), text);
    }

    @Test
    void anEmptyFile() throws Exception {
        refused(file(""), "bad.json can't be used: it is empty");
    }

    @Test
    void aFolder() throws Exception {
        refused(Files.createDirectory(folder.resolve("days")), "days: it is a folder; name the files in it");
    }

    @Test
    void noFile() {
        refused(folder.resolve("nowhere.json"), "can't read ", "nowhere.json: no such file");
    }

    @Test
    void aTruncatedDocument() throws Exception {
        String text = Files.readString(good);
        refused(file(text.substring(0, text.length() / 2)), "bad.json can't be used:", "line ");
    }

    @Test
    void noJson() throws Exception {
        refused(file("truck,day\nC-01,2024-10-14\n"), "bad.json can't be used:", "line 1");
    }

    @Test
    void anotherFormat() throws Exception {
        refused(
                file("{\"format\": \"example.org/salt-bill\"}"),
                "it says \"format\": \"example.org/salt-bill\", and is no fleet day");
    }

    @Test
    void aDateThatIsNone() throws Exception {
        refused(
                file(Files.readString(good).replace("\"day\": \"2024-10-14\"", "\"day\": \"2026-13-01\"")),
                "/day",
                "2026-13-01");
    }

    @Test
    void aDayThatCantBeComputedWithIsRefusedWholeWithItsPlace() throws Exception {
        String text = Files.readString(good);
        int gross = text.indexOf("\"gross\"", text.indexOf("\"C-02\""));
        Fixtures.Run run = refused(
                file(text.substring(0, gross)
                        + text.substring(gross).replaceFirst("\"gross\": \"[^\"]+\"", "\"gross\": \"1 lb\"")),
                "bad.json can't be computed with, and nothing of it is kept:",
                "truck C-02, line ");
        assertThat(run.err().lines()).hasSize(2);
    }

    @Test
    void everyFileThatCantBeUsedIsTold() throws Exception {
        Path empty = Files.createFile(folder.resolve("empty.json"));
        Fixtures.Run run = Fixtures.run(database, "import", empty, good, file("[]"));

        assertThat(run.err()).contains("empty.json can't be used", "bad.json can't be used");
    }

    @Test
    void anEventWithAnIdOfWhatRecordsTell() throws Exception {
        refused(file("""
                        {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "record C-01 2024-10-14, C-01, calibrated",
                         "at": "2025-01-08", "truck": "C-01", "source": "shop book", "changed": {"part": "gate"}}
                        """), "begins like those of what calibration records tell");
    }

    @Test
    void anExportThatWasCutOffOrChanged() throws Exception {
        Database other = Database.of(folder.resolve("other.db").toString());
        Fixtures.keep(other, Fixtures.all());
        List<String> lines = Fixtures.export(other).lines().toList();

        refused(lines(lines.subList(0, lines.size() - 1)), "it was cut off; the line that ends an export is missing");
        refused(file(String.join("\n", lines).substring(0, 3000)), "can't be used: it is no JSON, or was cut off");
        refused(
                lines(Stream.concat(lines.stream().limit(3), lines.stream().skip(4))
                        .toList()),
                "the lines before it aren't those that the program wrote");
        refused(
                lines(lines.stream().map(line -> line.replace("34.", "33.")).toList()),
                "the lines before it aren't those that the program wrote");
        refused(
                lines(lines.stream()
                        .map(line -> line.replace("\"formatVersion\":1}", "\"formatVersion\":2}"))
                        .toList()),
                "needs a newer version of this program");
    }

    private Path lines(List<String> lines) throws Exception {
        return file(String.join("\n", lines) + "\n");
    }

    @Test
    void optionsThatCantBe() throws Exception {
        Fixtures.keep(database, Fixtures.all());

        assertThat(Fixtures.run(database, "due", "--on", "2026-13-01").err())
                .contains("Invalid value for option '--on'")
                .contains("2026-13-01");
        assertThat(Fixtures.run(database, "due", "--tolerance", "0").err()).contains("--tolerance must be above 0");
        assertThat(Fixtures.run(database, "drift", "--false-alarms", "-1").err())
                .contains("--false-alarms must be above 0");
        assertThat(Fixtures.run(database, "import", good, "--why", " ").err()).contains("--why must say why");
        assertThat(Fixtures.Run.of("due", "--database", "jdbc:other:here?password=secret")
                        .err())
                .contains("jdbc:other:here: give a file")
                .doesNotContain("secret");
        assertThat(Fixtures.run(database, "export", folder).err()).contains("it is a folder");
        assertThat(Fixtures.run(database, "export", folder.resolve("no/where.jsonl"))
                        .err())
                .contains("there is no folder ");
    }

    @Test
    void aPlanThatCantBe() throws Exception {
        Fixtures.keep(database, Fixtures.all());

        assertThat(planned("truck;material;mass\n")).contains("its first line must be truck,material,mass");
        assertThat(planned("truck,material,mass\nC-01,road salt\n"))
                .contains("row 1 can't be used: it must have 3 values");
        assertThat(planned("truck,material,mass\nC-01,road salt,12 mi\n")).contains("row 1 can't be used: ", "12 mi");
        assertThat(planned("truck,material,mass\nC-01,road salt,120 ton\n")).isEmpty();
        assertThat(Fixtures.run(database, "due", "--planned", folder.resolve("nowhere.csv"))
                        .err())
                .contains("nowhere.csv: no such file");
    }

    @Test
    void whatWasPackedOrSavedOtherwiseIsToldByName() throws Exception {
        Path bad = folder.resolve("bad.json");
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(Files.readAllBytes(good));
        }
        refused(Files.write(bad, packed.toByteArray()), "bad.json can't be used: it is compressed (gzip); unpack it");
        refused(
                Files.write(bad, Files.readString(good).getBytes(StandardCharsets.UTF_16)),
                "bad.json can't be used: its text is UTF-16; save it as UTF-8");
    }

    @Test
    void aLastLineThatWasCutOffIsToldWithItsEnd() throws Exception {
        String line = Document.FLEET_DAY.toLine(DAY);
        refused(
                file(line + "\n" + line.substring(0, 200)),
                "bad.json, line 2 can't be used: it ends in the middle of a document, behind \"",
                line.substring(180, 200),
                "the file was cut off");
    }

    @Test
    void aWrongOptionIsToldWithWhatIsAcceptedAndNothingElse() throws Exception {
        Fixtures.keep(database, Fixtures.all());
        for (List<String> wrong : List.of(
                List.of("--on", "10/19/2026", "year-month-day, such as 2026-10-19"),
                List.of("--on", "2026-02-30", "year-month-day, such as 2026-10-19"),
                List.of("--offset", "6", "such as -06:00"),
                List.of("--tolerance", "4%", "must be a number alone, such as 4"),
                List.of("--planned", "plan\0.csv", "can't be the name of a file here"))) {
            Fixtures.Run run = Fixtures.run(database, "due", wrong.get(0), wrong.get(1));
            assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
            assertThat(run.err()).contains(wrong.get(0), wrong.get(2)).doesNotContain("Exception", "java.");
            assertThat(run.err().lines()).hasSize(2);
        }
        assertThat(Fixtures.Run.of().err()).contains("Missing required subcommand", "Commands:");
    }

    @Test
    void aPlanThatASpreadsheetSavedIsRead() throws Exception {
        Fixtures.keep(database, Fixtures.all());
        assertThat(planned("\uFEFFtruck,material,mass\r\nC-01,road salt,120 ton\r\n"))
                .isEmpty();
        assertThat(planned("truck;material;mass\nC-01;road salt;1 ton\n")).contains("and is: truck;material;mass");
        assertThat(planned("truck,material,mass\nC-01,road salt,1 ton\nC-01,road salt,2 ton\n"))
                .contains("plan.csv, row 2 can't be used: truck \"C-01\" with road salt stands in row 1 already");
        Files.write(
                folder.resolve("latin.csv"),
                "truck,material,mass\nM\u00fc,x,1 ton".getBytes(StandardCharsets.ISO_8859_1));
        assertThat(Fixtures.run(database, "due", "--planned", folder.resolve("latin.csv"))
                        .err())
                .contains("latin.csv", "save it as UTF-8");
    }

    private String planned(String text) throws Exception {
        Path plan = Files.writeString(folder.resolve("plan.csv"), text);
        return Fixtures.run(database, "due", "--planned", plan).err();
    }
}
