package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.record.CalibrationRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every database has to keep to. */
abstract class StoreContract {
    private static final List<Filed> ALL = Fixtures.all();
    private static final FleetDay DAY = Fixtures.FLEET.days().get(0);

    @TempDir
    Path folder;

    Database database;

    /** A new and empty one. */
    abstract Database fresh() throws Exception;

    @BeforeEach
    void begin() throws Exception {
        database = fresh();
    }

    private static CalibrationRecord record() {
        return Fixtures.records(DAY).get(0);
    }

    @Test
    void whatIsThereAlreadyChangesNothing() throws Exception {
        assertThat(Fixtures.keep(database, ALL)).isEqualTo(new Import.Result(ALL.size(), 0, 0, 0, 0));
        String before = Fixtures.export(database);

        assertThat(Fixtures.keep(database, ALL)).isEqualTo(new Import.Result(0, ALL.size(), 0, 0, 0));
        assertThat(Fixtures.export(database)).isEqualTo(before);
    }

    @Test
    void theOrderOfImportDoesntMatter() throws Exception {
        List<Filed> some = new ArrayList<>(ALL);
        some.add(Fixtures.filed(Fixtures.signed(record(), "R. Alder")));
        Fixtures.keep(database, some);
        String expected = Fixtures.export(database);
        Random random = new Random(4);

        for (int round = 0; round < 5; round++) {
            Collections.shuffle(some, random);
            Database other = fresh();
            int cut = random.nextInt(some.size());
            Fixtures.keep(other, some.subList(cut, some.size()));
            Fixtures.keep(other, some.subList(0, cut));

            assertThat(Fixtures.export(other)).isEqualTo(expected);
        }
    }

    @Test
    void anExportMakesAnIdenticalDatabase() throws Exception {
        Fixtures.keep(database, ALL);
        Fixtures.keep(
                database,
                List.of(Fixtures.filed(Fixtures.otherwise(DAY))),
                Optional.of("a pail was read wrong: \"ü\""));
        Path file = folder.resolve("export.jsonl");
        assertThat(Fixtures.run(database, "export", file).code()).isZero();

        Database other = fresh();
        assertThat(Fixtures.run(other, "import", file).err()).isEmpty();

        assertThat(Fixtures.export(other)).isEqualTo(Fixtures.export(database)).contains("a pail was read wrong");
        assertThat(Fixtures.run(other, "import", file).out()).contains(": 0 new, ");
    }

    @Test
    void aBackupIsRestoredIntoAnEmptyDatabaseOnly() throws Exception {
        Fixtures.keep(database, ALL);
        Path file = folder.resolve("backup.jsonl");
        assertThat(Fixtures.run(database, "backup", file).out()).contains("read them back");

        Database other = fresh();
        assertThat(Fixtures.run(other, "restore", file).out())
                .isEqualTo("Restored " + ALL.size() + " documents and 0 replaced" + System.lineSeparator());
        assertThat(Fixtures.export(other)).isEqualTo(Fixtures.export(database));
        assertThat(Fixtures.run(other, "restore", file).err()).contains("holds something already");
    }

    @Test
    void aSignedRecordTakesThePlaceOfTheSameUnsigned() throws Exception {
        Filed unsigned = Fixtures.filed(record());
        Filed signed = Fixtures.filed(Fixtures.signed(record(), "R. Alder"));
        Fixtures.keep(database, List.of(unsigned));

        assertThat(Fixtures.keep(database, List.of(signed))).isEqualTo(new Import.Result(0, 0, 0, 1, 0));
        assertThat(Fixtures.keep(database, List.of(unsigned))).isEqualTo(new Import.Result(0, 1, 0, 0, 0));
        assertThat(Fixtures.export(database)).contains("R. Alder").contains("\"replaced\":0");
    }

    @Test
    void twoSignaturesOfOneRecordAreAConflict() throws Exception {
        Fixtures.keep(database, List.of(Fixtures.filed(Fixtures.signed(record(), "R. Alder"))));

        assertThatThrownBy(
                        () -> Fixtures.keep(database, List.of(Fixtures.filed(Fixtures.signed(record(), "D. Finch")))))
                .hasMessageContaining("record C-01 2024-10-14 is signed otherwise")
                .hasMessageContaining("by D. Finch on 2024-10-14, and there by R. Alder on 2024-10-14");
    }

    @Test
    void whatIsOtherUnderOneNameIsNamedAndRefusesAll() throws Exception {
        Fixtures.keep(database, List.of(Fixtures.filed(record())));
        String before = Fixtures.export(database);
        List<Filed> some = new ArrayList<>(ALL);
        some.removeIf(one -> one.document().name().toString().equals("record C-01 2024-10-14"));
        some.add(Fixtures.filed(Fixtures.otherwise(DAY)));

        assertThatThrownBy(() -> Fixtures.keep(database, some))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("record C-01 2024-10-14 is other than the one that is there: there \"gross\": \"")
                .hasMessageContaining("here \"gross\": \"34.8 lb\"")
                .hasMessageContaining("Nothing was imported");
        assertThat(Fixtures.export(database)).isEqualTo(before);
    }

    /** Sums of a truck, more than are kept at once. */
    private static Stream<String> sums(int count) {
        return IntStream.range(0, count).mapToObj(i -> sum("sum " + i, i));
    }

    private static String sum(String id, int pounds) {
        return ("{\"format\": \"gritwright/fleet-event\", \"formatVersion\": 1, \"id\": \"%s\", \"at\": \"2026-01-08\","
                        + " \"truck\": \"C-01\", \"source\": \"telemetry\", \"used\": {\"material\": \"road salt\", \"mass\": \"%d lb\"}}")
                .formatted(id, pounds);
    }

    @Test
    void whatIsOtherInOneImportIsToldWithWhereTheFirstStands() throws Exception {
        Path many = Files.write(folder.resolve("many.jsonl"), sums(1200).toList());
        Path few = Files.write(
                folder.resolve("few.jsonl"), List.of(sum("new", 7), sum("sum 1", 1), sum("sum 3", 4), sum("new", 8)));
        Fixtures.keep(database, ALL.subList(0, 1));
        String before = Fixtures.export(database);

        assertThat(Fixtures.run(database, "import", many, few).err().lines())
                .containsExactly(
                        few + ", line 3: event sum 3 is other than the one in " + many
                                + ", line 4: there \"mass\": \"3 lb\", here \"mass\": \"4 lb\", in line 10 as it is kept, below"
                                + " \"at\": \"2026-01-08\"",
                        few + ", line 4: event new is other than the one in " + few
                                + ", line 1: there \"mass\": \"7 lb\", here \"mass\": \"8 lb\", in line 10 as it is kept, below"
                                + " \"at\": \"2026-01-08\"",
                        "Nothing was imported. If the new one is right, import it with --why \"…\": the old one is kept"
                                + " with that reason.");
        assertThat(Fixtures.export(database)).isEqualTo(before);

        assertThat(Fixtures.run(database, "import", many, many).out()).contains("1200 new, 1200 known");
        assertThat(Fixtures.run(database, "import", many, few).err())
                .contains(
                        "event sum 3 is other than the one that is there", "event new is other than the one in " + few);
        assertThat(Fixtures.run(database, "import", "--why", "counted again", many, few)
                        .out())
                .contains("1 new, 1201 known, 2 replaced");
    }

    @Test
    void ofManyDocumentsThatCantBeUsedAThousandLinesAreTold() throws Exception {
        Path bad = Files.write(
                folder.resolve("bad.jsonl"),
                sums(1200).map(line -> line.replace(" lb", " mi")).toList());
        Path other = Files.writeString(folder.resolve("other.json"), "[]");
        Path good = Files.write(folder.resolve("good.jsonl"), sums(1200).toList());
        Path conflicts = Files.write(
                folder.resolve("conflicts.jsonl"),
                sums(1200).map(line -> line.replace(" lb", " kg")).toList());

        List<String> told =
                Fixtures.run(database, "import", bad, other).err().lines().toList();
        assertThat(told.get(0)).isEqualTo(bad + ", line 1 can't be used:");
        assertThat(told.get(1)).contains("/used/mass");
        assertThat(told.get(1000)).isEqualTo("and 1400 more lines about " + bad);
        assertThat(told.get(1001)).contains("other.json can't be used:");

        assertThat(Fixtures.run(database, "import", good, conflicts).err().lines())
                .hasSize(1002)
                .contains("and 200 more documents that are other than those under the same name");
    }

    @Test
    void whatABackupLacksIsToldAloneThoughItsDocumentsCantBeReadEither() throws Exception {
        Fixtures.keep(database, ALL);
        Path changed = Files.writeString(
                folder.resolve("changed.jsonl"), Fixtures.export(database).replace("34.", "33."));

        assertThat(Fixtures.run(fresh(), "restore", changed).err().lines())
                .singleElement()
                .asString()
                .contains("the lines before it aren't those that the program wrote");
    }

    @Test
    void withAReasonItIsReplacedAndTheOldOneIsKept() throws Exception {
        Filed old = Fixtures.filed(record());
        Filed now = Fixtures.filed(Fixtures.otherwise(DAY));
        Fixtures.keep(database, List.of(old));

        assertThat(Fixtures.keep(database, List.of(now), Optional.of("a pail was read wrong")))
                .isEqualTo(new Import.Result(0, 0, 0, 0, 1));
        try (Store store = Store.open(database)) {
            assertThat(store.find(old.document().name())).contains(now.document());
            assertThat(store.replaced(old.document().name()))
                    .containsExactly(new Replaced(old.document(), now.document().content(), "a pail was read wrong"));
        }
        // The file of old lies about still, and is no news.
        assertThat(Fixtures.keep(database, List.of(old))).isEqualTo(new Import.Result(0, 1, 1, 0, 0));
        assertThat(new Import.Result(0, 1, 1, 0, 0).words())
                .isEqualTo("0 new, 1 known (1 of them replaced earlier; what took their place stands)");
    }

    @Test
    void anExportBringsItsReasonsAlong() throws Exception {
        Filed old = Fixtures.filed(record());
        Fixtures.keep(database, List.of(old));
        Fixtures.keep(database, List.of(Fixtures.filed(Fixtures.otherwise(DAY))), Optional.of("a pail was read wrong"));
        Database other = fresh();
        Fixtures.keep(other, List.of(old));
        Path file = Files.writeString(folder.resolve("export.jsonl"), Fixtures.export(database));

        assertThat(Fixtures.run(other, "import", file).out()).contains("0 new, 0 known, 1 replaced");
        assertThat(Fixtures.export(other)).isEqualTo(Fixtures.export(database));
    }

    @Test
    void twoImportersAtOnceLoseAndDoubleNothing() throws Exception {
        Fixtures.keep(database, ALL);
        String expected = Fixtures.export(database);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            for (int round = 0; round < 3; round++) {
                Database shared = fresh();
                List<Future<Import.Result>> results = new ArrayList<>();
                for (int importer = 0; importer < 4; importer++) {
                    // Each has three quarters of it, so that all is there twice or more; the first of them makes the
                    // tables.
                    int without = importer;
                    List<Filed> part = new ArrayList<>();
                    for (int i = 0; i < ALL.size(); i++) {
                        if (i % 4 != without) {
                            part.add(ALL.get(i));
                        }
                    }
                    results.add(threads.submit(() -> Fixtures.keep(shared, part)));
                }
                int added = 0;
                for (Future<Import.Result> result : results) {
                    added += result.get(120, TimeUnit.SECONDS).added();
                }

                assertThat(added).isEqualTo(ALL.size());
                assertThat(Fixtures.export(shared)).isEqualTo(expected);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void twoProgramsThatImportAtOnceLoseAndDoubleNothing() throws Exception {
        List<Path> files = Fixtures.FLEET.write(folder.resolve("documents"));
        Fixtures.keep(database, ALL);
        Database shared = fresh();
        int third = files.size() / 3;

        // What lies in the middle both bring, and the tables either may make.
        Process one = Program.importing(shared, files.subList(0, 2 * third));
        Process other = Program.importing(shared, files.subList(third, files.size()));

        assertThat(one.waitFor()).isZero();
        assertThat(other.waitFor()).isZero();
        assertThat(Fixtures.export(shared)).isEqualTo(Fixtures.export(database));
    }

    @Test
    void anImportThatIsKilledFromOutsideLeavesAllOrNothing() throws Exception {
        List<Path> files = Fixtures.FLEET.write(folder.resolve("documents"));
        Fixtures.keep(database, ALL.subList(0, 1));
        String nothing = Fixtures.export(database);
        Database whole = fresh();
        Fixtures.keep(whole, ALL);
        String all = Fixtures.export(whole);

        // Wherever it was then: before it began, in the middle, or done.
        for (long milliseconds = 400; milliseconds <= 2200; milliseconds += 600) {
            Process process = Program.importing(database, files);
            process.waitFor(milliseconds, TimeUnit.MILLISECONDS);
            process.destroyForcibly().waitFor();

            assertThat(Fixtures.export(database)).isIn(nothing, all);
            assertThat(Fixtures.run(database, "check").out()).contains("all whole");
        }
        assertThat(Fixtures.run(database, "import", files.toArray()).code()).isZero();
        assertThat(Fixtures.export(database)).isEqualTo(all);
    }

    @Test
    void theDatabasesOfTwoYardsMergeIntoOneThatHasAllOfBoth() throws Exception {
        Fixtures.keep(database, List.of(Fixtures.filed(record())));
        Fixtures.keep(database, List.of(Fixtures.filed(Fixtures.otherwise(DAY))), Optional.of("a pail was read wrong"));
        Fixtures.keep(database, ALL.subList(1, 2 * ALL.size() / 3));
        Database other = fresh();
        Fixtures.keep(other, ALL.subList(ALL.size() / 3, ALL.size()));
        Path north = Files.writeString(folder.resolve("north.jsonl"), Fixtures.export(database));
        Path south = Files.writeString(folder.resolve("south.jsonl"), Fixtures.export(other));

        Database northFirst = fresh();
        Database southFirst = fresh();
        Database atOnce = fresh();
        assertThat(Fixtures.run(northFirst, "import", north).code()).isZero();
        assertThat(Fixtures.run(northFirst, "import", south).code()).isZero();
        assertThat(Fixtures.run(southFirst, "import", south).code()).isZero();
        assertThat(Fixtures.run(southFirst, "import", north).code()).isZero();
        assertThat(Fixtures.run(atOnce, "import", south, north).code()).isZero();

        String merged = Fixtures.export(northFirst);
        assertThat(Fixtures.export(southFirst)).isEqualTo(merged);
        assertThat(Fixtures.export(atOnce)).isEqualTo(merged);
        // All of both, each once, and what was replaced with its reason.
        assertThat(merged.lines())
                .contains(documents(north))
                .contains(documents(south))
                .doesNotHaveDuplicates();
        assertThat(merged).contains("a pail was read wrong");
        Database whole = fresh();
        Fixtures.keep(whole, ALL);
        Fixtures.keep(whole, List.of(Fixtures.filed(Fixtures.otherwise(DAY))), Optional.of("a pail was read wrong"));
        assertThat(merged).isEqualTo(Fixtures.export(whole));
    }

    /** The lines of an export but for its first and its last, which tell of the others. */
    private static String[] documents(Path export) throws Exception {
        List<String> lines = Files.readAllLines(export);
        return lines.subList(1, lines.size() - 1).toArray(String[]::new);
    }

    @Test
    void aKilledImportLeavesAllOrNothing() throws Exception {
        Path documents = folder.resolve("documents");
        List<Path> files = Fixtures.FLEET.write(documents);
        Fixtures.keep(database, ALL.subList(0, 1));
        String nothing = Fixtures.export(database);
        Database whole = fresh();
        assertThat(Fixtures.run(whole, "import", files.toArray()).code()).isZero();
        String all = Fixtures.export(whole);
        for (int kill = 0; kill < 6; kill++) {
            Process process = KilledImport.start(database, ALL, kill);
            assertThat(process.waitFor()).isEqualTo(KilledImport.KILLED);
            assertThat(Fixtures.export(database)).isIn(nothing, all);
            assertThat(Fixtures.run(database, "check").out()).contains("all whole");
        }
        assertThat(Fixtures.export(database)).isEqualTo(nothing);

        assertThat(Fixtures.run(database, "import", files.toArray()).code()).isZero();
        assertThat(Fixtures.export(database)).isEqualTo(all);
    }

    @Test
    void theTablesOfANewerProgramAreRefused() throws Exception {
        Fixtures.keep(database, ALL);
        try (Connection connection = database.connect(true);
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
                            + " installed_by, execution_time, success) VALUES (99, '2', 'later', 'SQL', 'V2__later.sql', 'me', 1, true)");
        }

        Fixtures.Run run = Fixtures.run(database, "due");
        assertThat(run.err()).contains("has tables of version 2, made by a newer version of this program");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
    }

    @Test
    void tablesOfSomethingElseAreLeftAlone() throws Exception {
        try (Connection connection = database.connect(true);
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE others (name TEXT)");
        }

        assertThat(Fixtures.run(database, "due").err()).contains("holds tables of something else");
        try (Connection connection = database.connect(true);
                Statement statement = connection.createStatement()) {
            assertThat(statement.executeQuery("SELECT * FROM others").next()).isFalse();
        }
    }

    @Test
    void aChangedTextIsFound() throws Exception {
        Fixtures.keep(database, ALL);
        try (Connection connection = database.connect(true);
                Statement statement = connection.createStatement()) {
            statement.execute(
                    "UPDATE document SET text = replace(text, '34.', '33.') WHERE identity = 'C-01 2024-10-14'");
        }
        Fixtures.Run run = Fixtures.run(database, "check");

        assertThat(run.out()).contains("record C-01 2024-10-14: its text isn't the one that was kept");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.DAMAGED);
        // And a backup of it is no backup.
        Path file = folder.resolve("backup.jsonl");
        assertThat(Fixtures.run(database, "backup", file).err()).contains("isn't the one that its SHA-256 was made of");
        assertThat(file).doesNotExist();
    }

    @Test
    void eventsInACircleAreRefused() throws Exception {
        String event = """
                {"format": "gritwright/fleet-event", "formatVersion": 1, "id": "%s", "at": "2025-01-08", "truck": "C-01",
                 "source": "shop book", "changed": {"part": "gate"}, "supersedes": {"id": "%s", "why": "mistaken"}}
                """;
        Path one = Files.writeString(folder.resolve("one.json"), event.formatted("one", "two"));
        Path two = Files.writeString(folder.resolve("two.json"), event.formatted("two", "one"));
        assertThat(Fixtures.run(database, "import", one).code()).isZero();
        String before = Fixtures.export(database);

        assertThat(Fixtures.run(database, "import", two).err()).contains("can't be kept together");
        assertThat(Fixtures.export(database)).isEqualTo(before);
    }

    @Test
    void theHistoryFollowsFromTheDocuments() throws Exception {
        Fixtures.keep(database, ALL);

        assertThat(Fixtures.run(database, "truck", "C-01").out())
                .contains("Truck C-01 on 2026-02-10")
                .contains("slot 1, road salt at 2 in: ")
                .contains(", proven, error ")
                .contains("R. Alder (record C-01 2024-10-14)")
                .contains("Nothing contradicts itself.");
        assertThat(Fixtures.run(database, "truck", "C-03", "--on", "2025-01-20").out())
                .doesNotContain("2025-10");
        assertThat(Fixtures.run(database, "truck", "C-99").err())
                .contains("nothing is known of truck \"C-99\"; known are C-01, C-02, C-03, C-04");
    }

    @Test
    void anImportThatFailsInTheMiddleLeavesNothing() throws Exception {
        Fixtures.keep(database, ALL.subList(0, 2));
        String before = Fixtures.export(database);
        try (Store store = Store.make(database)) {
            assertThatThrownBy(() -> store.writing(() -> {
                        store.add(
                                ALL.subList(2, 6).stream().map(Filed::document).toList());
                        throw new BadInputException("in the middle");
                    }))
                    .hasMessage("in the middle");
        }

        assertThat(Fixtures.export(database)).isEqualTo(before);
    }
}
