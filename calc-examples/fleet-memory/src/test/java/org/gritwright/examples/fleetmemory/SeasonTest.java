package org.gritwright.examples.fleetmemory;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gritwright.core.history.History;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.FoundError;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season's account, from the document to what is said. */
class SeasonTest {
    /** No seed was chosen: these are the first ones. */
    private static final int SEEDS = 20;

    private static final Pattern SUM = Pattern.compile("(was there or came|left or remains), together +.*");
    private static final Pattern NUMBER = Pattern.compile("[−+]?[0-9.]+(?= ton)");

    private static History history;

    @TempDir
    private Path folder;

    @BeforeAll
    static void read(@TempDir Path documents) throws Exception {
        Database database = Database.of(documents.resolve("fleet.db").toString());
        Documents read = new Documents(BuiltInTypes.registry());
        try (Batch batch = Batch.in(documents);
                Store store = Store.make(database)) {
            new InputFiles(read).read(InventedSeasons.DEMO.write(documents.resolve("documents")), batch);
            Import.of(store, read, batch, Optional.empty());
            history = new Memory(store, read, InventedSeasons.YARD).ofFleet();
        }
    }

    private static InventedAccount account(long seed, double overReport, int lost) {
        return new InventedAccount(InventedSeasons.DEMO, 2024, overReport, lost, seed);
    }

    /** The demo's account, its loads weighed on a scale of another name and uncertainty. */
    private static SeasonPage weighedOn(String name, String uncertainty) throws Exception {
        String text = Document.SEASON_ACCOUNT
                .toText(InventedAccount.DEMO.written())
                .replaceAll(
                        "\"name\": \"loader [23]\",(\\s+)\"standardUncertainty\": \"0.5 %\"",
                        "\"name\": \"" + name + "\",$1\"standardUncertainty\": \"" + uncertainty + "\"");
        assertThat(text).contains(name);
        WrittenSeason account = Document.SEASON_ACCOUNT.read(new ByteArrayInputStream(text.getBytes(UTF_8)));
        return SeasonAccount.page(history, account, List.of(account));
    }

    @Test
    void aScaleThatWeighedTheCatchesAndTheLoadsHasOneError() throws Exception {
        SeasonPage same = weighedOn("hanging 2", "0.15 %");
        SeasonPage other = weighedOn("hanging 7", "0.15 %");
        SeasonPage otherwise = weighedOn("hanging 2", "0.5 %");
        TruckSeason shared = same.season().trucks().get(1);
        TruckSeason apart = other.season().trucks().get(1);

        assertThat(shared.common()).isEqualTo(shared.loads().get(0).weighed().common());
        assertThat(apart.common()).isEmpty();
        assertThat(uncertainty(shared)).isLessThan(uncertainty(apart));
        assertThat(same.texts()).noneMatch(text -> text.contains("hanging 2"));
        assertThat(otherwise.texts())
                .filteredOn(text -> text.contains("hanging 2"))
                .singleElement()
                .asString()
                .startsWith(
                        "The account says that hanging 2 is uncertain by 0.5 %, and the records of verifications by ")
                .endsWith(": the account's is taken.");
    }

    private static double uncertainty(TruckSeason truck) {
        return Amounts.in(
                truck.calibrationError().orElseThrow().standardUncertainty().orElseThrow(), SpreadingUnits.PERCENT);
    }

    @Test
    void theWeighedTruckIsFoundTheLostTicketNamedAndTheOtherTruckSaidToBeUnknown() throws Exception {
        int truckFirst = 0;
        int pileNamed = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            SeasonPage page =
                    SeasonAccount.page(history, account(seed, 0.07, 2045).written(), List.of());
            List<FoundError> found = page.balance().found();
            truckFirst += !found.isEmpty() && isTruck(found.get(0).what()) ? 1 : 0;
            pileNamed += found.stream().anyMatch(SeasonTest::namesNorth) ? 1 : 0;
            assertThat(page.unseen())
                    .isNotEmpty()
                    .allSatisfy(words -> assertThat(words).contains("C-22").doesNotContain("C-16"));
        }
        assertThat(truckFirst).isGreaterThanOrEqualTo(19);
        assertThat(pileNamed).isGreaterThanOrEqualTo(19);
    }

    private static boolean isTruck(Suspicion what) {
        return what instanceof Suspicion.TruckReports truck && truck.truck().equals("C-16");
    }

    private static boolean namesNorth(FoundError found) {
        return isNorth(found.what())
                || found.confusion().same().stream().anyMatch(SeasonTest::isNorth)
                || found.confusion().alike().stream().anyMatch(one -> isNorth(one.other()));
    }

    private static boolean isNorth(Suspicion what) {
        return what instanceof Suspicion.PileOff pile && pile.pile().equals(InventedAccount.NORTH);
    }

    @Test
    void whereNothingIsWrongHardlyAnythingIsFound() throws Exception {
        int alarms = 0;
        for (int seed = 0; seed < SEEDS; seed++) {
            alarms += SeasonAccount.page(history, account(seed, 0, 0).written(), List.of())
                            .balance()
                            .found()
                            .isEmpty()
                    ? 0
                    : 1;
        }
        // At 5 %: three or more of twenty have a chance of 7.5 %, five or more one of 0.3 %.
        assertThat(alarms).isLessThan(5);
    }

    @Test
    void whatIsPrintedOfAPileAddsUp() throws Exception {
        for (int seed = 0; seed < SEEDS; seed++) {
            List<String> lines = new SeasonText(SeasonAccount.page(
                            history, account(seed, 0.07, 2045).written(), List.of()))
                    .lines();
            long from = 0;
            int sums = 0;
            for (String line : lines) {
                List<Long> numbers = NUMBER.matcher(line)
                        .results()
                        .map(result -> tenths(result.group()))
                        .toList();
                if (line.startsWith("Pile ")) {
                    from = 0;
                } else if (SUM.matcher(line.strip()).matches()) {
                    assertThat(numbers.get(1)).as(line).isEqualTo(from);
                    from = 0;
                    sums++;
                } else if (line.startsWith("  ") && numbers.size() >= 2 && !line.contains("  C-")) {
                    from += numbers.get(line.contains("nothing ") ? 0 : 1);
                }
            }
            assertThat(sums).isEqualTo(4);
        }
    }

    private static long tenths(String number) {
        return Math.round(10 * Double.parseDouble(number.replace('−', '-').replace("+", "")));
    }

    @Test
    void anAccountIsKeptLikeAnyDocumentAndChangedOnlyWithAReason() throws Exception {
        Database database = Database.of(folder.resolve("fleet.db").toString());
        WrittenSeason written = account(1, 0.07, 2045).written();
        Path file = Fixtures.write(folder.resolve("season.json"), Document.SEASON_ACCOUNT, written);
        Path other = Fixtures.write(
                folder.resolve("other.json"),
                Document.SEASON_ACCOUNT,
                account(2, 0.07, 2045).written());

        assertThat(Fixtures.run(database, "import", file).out()).contains("1 new");
        assertThat(Fixtures.run(database, "import", file).out()).contains("1 known");
        Fixtures.Run refused = Fixtures.run(database, "import", other);
        assertThat(refused.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(refused.err()).contains("season 2024/25 is other than the one that is there");
        assertThat(Fixtures.run(database, "import", "--why", "the crew surveyed again", other)
                        .out())
                .contains("1 replaced");
        assertThat(Fixtures.run(database, "check").out()).contains("1 document and 1 replaced: all whole");
        Path export = Files.writeString(folder.resolve("export.jsonl"), Fixtures.export(database));
        Database copy = Database.of(folder.resolve("copy.db").toString());
        assertThat(Fixtures.run(copy, "import", export).code()).isZero();
        assertThat(Fixtures.export(copy)).isEqualTo(Fixtures.export(database));
    }

    @Test
    void ofTrucksWithoutRecordsItIsSaidThatNothingIsKnown() throws Exception {
        Database database = Database.of(folder.resolve("fleet.db").toString());
        Path file = Fixtures.write(
                folder.resolve("season.json"),
                Document.SEASON_ACCOUNT,
                account(1, 0.07, 2045).written());
        Fixtures.run(database, "import", file);

        String said = Fixtures.run(database, "season", "2024/25").out();
        assertThat(said).contains("Truck C-01 counts as not verified. No record of it is kept.", "not verified");
        assertThat(Fixtures.run(database, "season", "2019/20").err())
                .contains("there is no account of season \"2019/20\"; known are 2024/25");
    }

    private static WrittenSeason stating(WrittenSeason season, double percent) {
        return new WrittenSeason(
                season.season(),
                season.from(),
                season.to(),
                season.piles(),
                season.trucks().stream()
                        .map(truck -> truck.id().equals("C-02")
                                ? new WrittenTruckSeason(
                                        truck.id(),
                                        Optional.of(new WrittenTruckSeason.CalibrationError(
                                                Amounts.of(percent, SpreadingUnits.PERCENT),
                                                Amounts.of(0.7, SpreadingUnits.PERCENT),
                                                Optional.empty())),
                                        truck.draws(),
                                        truck.weighedLoads())
                                : truck)
                        .toList());
    }

    @Test
    void anAccountAndRecordsThatDisagreeAboutATruckAreToldOf() throws Exception {
        WrittenSeason season = account(1, 0.07, 2045).written();

        assertThat(SeasonAccount.page(history, stating(season, 9), List.of()).texts())
                .anyMatch(text -> text.startsWith("Truck C-02: the account says its error, not the records (")
                        && text.endsWith("), and they don't agree: one of both is wrong."));
        assertThat(SeasonAccount.page(history, stating(season, 0), List.of()).texts())
                .contains("Truck C-02: the account says its error, not the records.");
    }

    @Test
    void anAccountThatCameUnderTwoNamesIsToldOf() throws Exception {
        WrittenSeason season = account(1, 0.07, 2045).written();
        WrittenSeason again =
                new WrittenSeason("winter 24", season.from(), season.to(), season.piles(), season.trucks());

        assertThat(SeasonAccount.page(history, season, List.of(again, season)).texts())
                .contains("The account of season winter 24 has days and piles of this one: is it the same?");
        assertThat(SeasonAccount.page(history, season, List.of(season)).texts())
                .noneMatch(text -> text.contains("is it the same?"));
    }

    @Test
    void withoutAnAccountItIsSaidSo() throws Exception {
        Database database = Database.of(folder.resolve("fleet.db").toString());
        Fixtures.keep(database, Fixtures.all().subList(0, 1));

        Fixtures.Run run = Fixtures.run(database, "season");
        assertThat(run.err()).contains("no account of a season was imported yet");
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
    }

    @Test
    void anAccountThatContradictsItselfIsRefusedWithItsPlace() throws Exception {
        Path file = Fixtures.write(
                folder.resolve("season.json"),
                Document.SEASON_ACCOUNT,
                account(1, 0.07, 2045).written());
        String text = Files.readString(file);
        Database database = Database.of(folder.resolve("fleet.db").toString());

        Files.writeString(file, text.replace("\"ticket\": \"2033\"", "\"ticket\": \"2032\""));
        assertRefused(database, file, "2032");
        Files.writeString(file, text.replaceFirst("\"pile\": \"north\"", "\"pile\": \"nowhere\""));
        assertRefused(database, file, "nowhere");
        Files.writeString(file, text.replaceFirst("\"on\": \"2025-03-31\"", "\"on\": \"2025-04-01\""));
        assertRefused(database, file, "2025-04-01");
        Files.writeString(file, text.replaceFirst("\"mass\": \"(\\d+) ton\"", "\"mass\": $1"));
        assertRefused(database, file, "/piles/0/opening/mass");
    }

    private static void assertRefused(Database database, Path file, String what) {
        Fixtures.Run run = Fixtures.run(database, "import", file);
        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        Matcher place = Pattern.compile("line \\d+, column \\d+").matcher(run.err());
        assertThat(run.err()).contains("season.json can't be used:", what);
        assertThat(place.find()).as(run.err()).isTrue();
    }
}
