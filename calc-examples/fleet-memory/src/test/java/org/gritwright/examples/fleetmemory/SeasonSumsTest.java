package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenEvent;
import org.gritwright.core.record.WrittenPile;
import org.gritwright.core.record.WrittenSeason;
import org.gritwright.core.record.WrittenTruckSeason;
import org.gritwright.core.season.StatedMass;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season's account beside the kept sums of telemetry. */
class SeasonSumsTest {
    private static final LocalDate FROM = LocalDate.of(2025, 11, 1);
    private static final LocalDate TO = LocalDate.of(2026, 3, 31);

    @TempDir
    private Path folder;

    private static Event sum(String truck, String day, double tons) {
        return Event.of(
                "telemetry " + truck + " " + day,
                Since.parse(day),
                truck,
                new What.Used(
                        "road salt", Optional.of(Since.parse(day)), Optional.empty(), Optional.empty(), tons(tons), 1),
                "telemetry");
    }

    private static Quantity<Mass> tons(double tons) {
        return Amounts.of(tons, SpreadingUnits.SHORT_TON);
    }

    private static WrittenTruckSeason truck(String id, WrittenTruckSeason.Source source, double... stated) {
        return new WrittenTruckSeason(
                id,
                Optional.empty(),
                List.of(new WrittenTruckSeason.Drawn(
                        "north",
                        FROM,
                        TO,
                        Arrays.stream(stated).mapToObj(SeasonSumsTest::tons).findFirst(),
                        source)),
                List.of());
    }

    private static WrittenSeason season(WrittenTruckSeason... trucks) {
        StatedMass surveyed = StatedMass.of(tons(500), tons(10));
        return new WrittenSeason(
                "2025/26",
                FROM,
                TO,
                List.of(new WrittenPile(
                        "north",
                        "road salt",
                        surveyed,
                        List.of(new WrittenPile.Survey(TO, StatedMass.of(tons(300), tons(6)))),
                        List.of(),
                        List.of(),
                        Optional.empty())),
                List.of(trucks));
    }

    private static History history(Event... events) {
        return History.of(List.of(events), InventedSeasons.YARD);
    }

    private static SeasonSums sums(History history, WrittenSeason account) throws BadInputException {
        return SeasonSums.of(history, account, List.of(account));
    }

    @Test
    void aDrawByTelemetryIsItsKeptSumsAndThePageSaysSo() throws Exception {
        WrittenSeason account = season(
                truck("C-01", WrittenTruckSeason.Source.TELEMETRY),
                truck("C-02", WrittenTruckSeason.Source.CONTROLLER, 100));
        History history = history(sum("C-01", "2025-12-01", 60), sum("C-01", "2026-01-10", 40));

        SeasonPage page = SeasonAccount.page(history, account, List.of(account));

        assertThat(page.season().trucks().get(0).draws())
                .singleElement()
                .satisfies(draw -> assertThat(draw.indicated()).isEqualTo(tons(100)));
        assertThat(page.texts()).contains("What telemetry counted of 1 truck is taken from its kept sums.");
    }

    @Test
    void whereTheSumsDontTellItTheAccountIsRefusedWithEachReason() {
        WrittenSeason account = season(
                truck("C-01", WrittenTruckSeason.Source.TELEMETRY),
                truck("C-02", WrittenTruckSeason.Source.TELEMETRY),
                truck("C-03", WrittenTruckSeason.Source.TELEMETRY));
        Event all = Event.of(
                "all",
                Since.parse("2026-04-15"),
                "C-02",
                new What.Used(
                        "road salt",
                        Optional.of(Since.parse("2025-11-01")),
                        Optional.empty(),
                        Optional.empty(),
                        tons(120),
                        1),
                "telemetry");
        Event twice = sum("C-03", "2025-12-01", 60);
        Event again = Event.of("again", twice.at(), "C-03", twice.what(), "telemetry");

        BadInputException refused = catchThrowableOfType(
                BadInputException.class,
                () -> SeasonAccount.page(history(all, twice, again), account, List.of(account)));

        assertThat(refused.lines())
                .satisfiesExactly(
                        line -> assertThat(line)
                                .startsWith("season 2025/26 can't be computed: these draws state no mass"),
                        line -> assertThat(line)
                                .startsWith("Truck C-01, 2025-11-01 to 2026-03-31 from pile north: No sum of"),
                        line -> assertThat(line).contains("C-02", "it reaches beyond 2025-11-01 to 2026-03-31"),
                        line -> assertThat(line).contains("C-03", "Two sums of what was laid have a time in common"));
    }

    @Test
    void sumsBeyondWhatANumberHoldsAreNamed() {
        WrittenSeason account = season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY));
        History history = history(sum("C-01", "2025-12-01", 1.5e305), sum("C-01", "2025-12-02", 1.5e305));

        assertThat(catchThrowableOfType(
                                BadInputException.class, () -> SeasonAccount.page(history, account, List.of(account)))
                        .lines())
                .singleElement()
                .asString()
                .startsWith("season 2025/26 can't be computed: ");
    }

    private List<String> texts(double stated, WrittenTruckSeason.Source source, Event... sums) throws Exception {
        return sums(history(sums), season(truck("C-01", source, stated))).texts();
    }

    @Test
    void whatTheAccountStatesAndTelemetryCountedMayBeTwoThings() throws Exception {
        Event counted = sum("C-01", "2025-12-01", 100);

        assertThat(texts(100.9, WrittenTruckSeason.Source.TELEMETRY, counted)).isEmpty();
        assertThat(texts(104.9, WrittenTruckSeason.Source.CONTROLLER, counted)).isEmpty();
        assertThat(texts(50, WrittenTruckSeason.Source.CONTROLLER)).isEmpty();
        assertThat(texts(101.2, WrittenTruckSeason.Source.TELEMETRY, counted))
                .containsExactly(
                        "Truck C-01, 2025-11-01 to 2026-03-31 from pile north: the account states 101.2 ton by"
                                + " telemetry, and the kept sums of its telemetry are 100 ton: one of both is wrong, or doesn't have all.");
        assertThat(texts(94, WrittenTruckSeason.Source.CONTROLLER, counted))
                .singleElement()
                .asString()
                .contains("states 94 ton by its controller");
    }

    @Test
    void aTruckThatFellSilentBeforeTheOthersIsAskedAbout() throws Exception {
        WrittenSeason account = season(
                truck("C-01", WrittenTruckSeason.Source.TELEMETRY), truck("C-02", WrittenTruckSeason.Source.TELEMETRY));
        Event[] sums = {
            sum("C-01", "2025-12-01", 60),
            sum("C-02", "2026-01-10", 40),
            sum("C-02", "2025-12-20", 40),
            sum("C-01", "2025-12-20", 60)
        };

        assertThat(sums(history(sums), account).texts())
                .containsExactly(
                        "What telemetry counted of 2 trucks is taken from its kept sums.",
                        "Truck C-01, 2025-11-01 to 2026-03-31 from pile north: its last sum is of 2025-12-20, and others"
                                + " have some until 2026-01-10. Did it stand, or wasn't it heard?",
                        "The last kept sum of all is of 2026-01-10, and the last draw ends on 2026-03-31. Was nothing"
                                + " laid since, or are later sums still to be imported?");
        assertThat(sums(history(sums[1], sum("C-01", "2025-12-21", 60)), account)
                        .texts())
                .noneMatch(text -> text.contains("Did it stand"));
    }

    /** Of some trucks, all of which draw by telemetry in all of the season. */
    private static List<String> questions(String days) throws Exception {
        List<Event> events = new ArrayList<>();
        List<WrittenTruckSeason> trucks = new ArrayList<>();
        for (String line : days.lines().toList()) {
            String[] words = line.split(" ");
            trucks.add(truck(words[0], WrittenTruckSeason.Source.TELEMETRY));
            for (String day : List.of(words).subList(1, words.length)) {
                events.add(sum(words[0], (day.compareTo("10") > 0 ? "2025-" : "2026-") + day, 10));
            }
        }
        List<String> texts = sums(
                        history(events.toArray(Event[]::new)), season(trucks.toArray(WrittenTruckSeason[]::new)))
                .texts();
        assertThat(texts.get(0)).contains("is taken from its kept sums");
        return texts.subList(1, texts.size());
    }

    @Test
    void aTruckThatWasFirstHeardWeeksAfterTheOthersIsAskedAbout() throws Exception {
        assertThat(questions("""
                        C-01 12-01 12-10 01-08 01-20 02-03 02-20 03-15
                        C-02 12-22 01-08 01-20 02-03 02-20 03-15"""))
                .containsExactly(
                        "Truck C-02, 2025-11-01 to 2026-03-31 from pile north: its first sum is of 2025-12-22, and others"
                                + " have some from 2025-12-01 on. Did it stand, or wasn't it heard?");
        assertThat(questions("""
                        C-01 12-01 12-10 01-08 01-20 02-03 02-20 03-15
                        C-02 12-21 01-08 01-20 02-03 02-20 03-15""")).isEmpty();
    }

    @Test
    void aTruckThatWasNotHeardForWeeksWhileOthersWorkedIsAskedAbout() throws Exception {
        assertThat(questions("""
                        C-01 12-01 12-20 01-12 01-20 01-31 02-03 02-09 02-20 03-15
                        C-02 12-01 12-20 01-12 01-20 01-31 02-21 03-15"""))
                .containsExactly(
                        "Truck C-02, 2025-11-01 to 2026-03-31 from pile north: it has no sum between 2026-01-31 and"
                                + " 2026-02-21, and others have some of 3 days in between. Did it stand, or wasn't it heard?");
        assertThat(questions("""
                        C-01 12-01 12-20 01-12 01-20 01-31 02-03 02-09 02-15 03-15
                        C-02 12-01 12-20 01-12 01-20 01-31 02-20 03-12""")).isEmpty();
        assertThat(questions("""
                        C-01 12-01 12-20 01-12 01-31 02-03 02-09 02-21 03-15
                        C-02 12-01 12-20 01-12 01-31 02-21 03-15""")).isEmpty();
    }

    @Test
    void aTruckThatWasRenamedIsAskedAboutOnceByBothNames() throws Exception {
        assertThat(questions("""
                        C-01 12-01 12-20 01-08 01-20 02-03 02-20 03-15
                        C-02 12-01 12-20 01-08
                        T-2 01-20 02-03 02-20 03-15"""))
                .containsExactly(
                        "Truck C-02, 2025-11-01 to 2026-03-31 from pile north: its last sum is of 2026-01-08, and those of"
                                + " truck T-2 begin on 2026-01-20, while others have some from 2025-12-01 until 2026-03-15."
                                + " Is that one truck by two names, or wasn't one of both heard?");
        assertThat(questions("""
                        C-01 12-01 12-20 01-08
                        C-02 12-01 12-20 01-08
                        T-1 01-20 02-03 02-20 03-15
                        T-2 01-20 02-03 02-20 03-15"""))
                .satisfiesExactly(
                        one -> assertThat(one)
                                .startsWith("Truck C-01")
                                .contains("Those of trucks T-1, T-2 begin there"),
                        one -> assertThat(one)
                                .startsWith("Truck C-02")
                                .contains("Those of trucks T-1, T-2 begin there"),
                        one -> assertThat(one).startsWith("Truck T-1").contains("its first sum is of 2026-01-20"),
                        one -> assertThat(one).startsWith("Truck T-2").contains("its first sum is of 2026-01-20"));
    }

    @Test
    void aStatedMassBesideSumsThatContradictEachOtherIsSaidNotToBeCompared() throws Exception {
        Event counted = sum("C-01", "2025-12-01", 100);
        Event again = Event.of("again", counted.at(), "C-01", counted.what(), "telemetry");

        assertThat(texts(100, WrittenTruckSeason.Source.CONTROLLER, counted, again))
                .singleElement()
                .asString()
                .startsWith(
                        "Truck C-01, 2025-11-01 to 2026-03-31 from pile north: what the account states can't be compared"
                                + " with the kept sums of its telemetry. Two sums of what was laid have a time in common: ");
    }

    @Test
    void twoYardsWithAnAccountEachDontMissEachOthersSums() throws Exception {
        LocalDate middle = LocalDate.of(2026, 1, 15);
        WrittenSeason north = drawing("north", FROM, middle);
        WrittenSeason south = drawing("south", middle.plusDays(1), TO);
        WrittenSeason both = drawing("south", middle, TO);
        History history = history(sum("C-01", "2025-12-01", 60), sum("C-01", "2026-03-20", 40));

        assertThat(sums(history, north).texts()).anyMatch(text -> text.startsWith("In no draw of this account: 1 sum"));
        assertThat(SeasonSums.of(history, north, List.of(north, south)).texts())
                .noneMatch(text -> text.contains("no draw") || text.contains("counts in both"));
        assertThat(SeasonSums.of(history, north, List.of(north, both)).texts())
                .contains(
                        "Truck C-01, 2025-11-01 to 2026-01-15 from pile north: the account of season south has its draw of"
                                + " 2026-01-15 to 2026-03-31 from pile south, and what it laid in the days of both counts in both.");
    }

    private static WrittenSeason drawing(String pile, LocalDate from, LocalDate to) {
        WrittenPile north = season().piles().get(0);
        return new WrittenSeason(
                pile,
                FROM,
                TO,
                List.of(new WrittenPile(
                        pile,
                        north.material(),
                        north.opening(),
                        north.surveys(),
                        north.deliveries(),
                        north.otherUses(),
                        north.unexplained())),
                List.of(new WrittenTruckSeason(
                        "C-01",
                        Optional.empty(),
                        List.of(new WrittenTruckSeason.Drawn(
                                pile, from, to, Optional.empty(), WrittenTruckSeason.Source.TELEMETRY)),
                        List.of())));
    }

    @Test
    void sumsOfATruckThatNoAccountHasAreAskedAbout() throws Exception {
        WrittenSeason account = season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY));

        assertThat(sums(history(sum("C-01", "2026-03-20", 60), sum("C-09", "2026-03-20", 60)), account)
                        .texts())
                .contains(
                        "Of trucks that aren't in this account, and in no draw of another: 1 sum of what truck C-09 laid of"
                                + " road salt in these days. Did they draw from these piles?");
    }

    private static Event begun(String from, String day) {
        return Event.of(
                "telemetry C-01 " + from,
                Since.parse(day),
                "C-01",
                new What.Used(
                        "road salt", Optional.of(Since.parse(from)), Optional.empty(), Optional.empty(), tons(60), 1),
                "telemetry");
    }

    @Test
    void sumsByAnotherOffsetThanTheYardsAreTold() throws Exception {
        WrittenSeason account = season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY));

        assertThat(sums(history(begun("2026-03-20T00:00-05:00", "2026-03-20")), account)
                        .texts())
                .contains(
                        "Days of kept sums begin at -05:00, and those of the yard at -06:00. Say the yard's --offset here,"
                                + " or sum again by it.");
        assertThat(sums(history(begun("2026-03-20T00:00-06:00", "2026-03-20")), account)
                        .texts())
                .hasSize(1);
    }

    @Test
    void sumsThatEndLongBeforeTheDrawsAreAskedAbout() throws Exception {
        WrittenSeason account = season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY));

        assertThat(sums(history(sum("C-01", "2026-03-10", 60)), account).texts())
                .anyMatch(text -> text.startsWith("The last kept sum of all is of 2026-03-10"));
        assertThat(sums(history(sum("C-01", "2026-03-11", 60)), account).texts())
                .hasSize(1);
    }

    @Test
    void sumsThatAreInNoDrawAreAskedAbout() throws Exception {
        WrittenSeason account = season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY));
        Event salt = sum("C-01", "2026-03-20", 60);
        Event capital = Event.of(
                "capital", Since.parse("2026-02-01"), "C-01", What.Used.of("Road salt", tons(20)), "telemetry");

        assertThat(sums(history(salt, capital, sum("C-01", "2025-10-31", 5), sum("C-01", "2026-04-01", 5)), account)
                        .texts())
                .hasSize(2)
                .anySatisfy(text -> assertThat(text)
                        .startsWith("In no draw of this account: 1 sum of what its trucks laid of Road salt, such as ")
                        .contains("2026-02-01, C-01: laid 20 ton of Road salt"));
    }

    private static WrittenTruckSeason.Drawn draw(String pile, LocalDate from, LocalDate to, double stated) {
        return new WrittenTruckSeason.Drawn(
                pile, from, to, Optional.of(tons(stated)), WrittenTruckSeason.Source.TELEMETRY);
    }

    @Test
    void drawsFromTwoPilesOfOneMaterialAreComparedWithTheirSumsTogether() throws Exception {
        WrittenPile north = season().piles().get(0);
        WrittenPile south = new WrittenPile(
                "south",
                north.material(),
                north.opening(),
                north.surveys(),
                north.deliveries(),
                north.otherUses(),
                north.unexplained());
        History history = history(sum("C-01", "2025-12-01", 60), sum("C-01", "2026-01-10", 40));

        assertThat(twoPiles(history, north, south, TO, 45)).isEmpty();
        assertThat(twoPiles(history, north, south, TO, 65))
                .containsExactly(
                        "Truck C-01, 2025-11-01 to 2026-03-31 from pile north, south: the account states 120 ton by"
                                + " telemetry, and the kept sums of its telemetry are 100 ton: one of both is wrong, or doesn't have all.");
        assertThat(twoPiles(history, north, south, LocalDate.of(2026, 1, 31), 45))
                .isEmpty();
    }

    private static List<String> twoPiles(
            History history, WrittenPile north, WrittenPile south, LocalDate to, double stated) throws Exception {
        WrittenTruckSeason truck = new WrittenTruckSeason(
                "C-01",
                Optional.empty(),
                List.of(draw("north", FROM, TO, 55), draw("south", FROM, to, stated)),
                List.of());
        return sums(history, new WrittenSeason("2025/26", FROM, TO, List.of(north, south), List.of(truck)))
                .texts();
    }

    @Test
    void anAccountThatIsntCompleteDoesntKeepThePagesOfTrucksBack() throws Exception {
        Database database = Database.of(folder.resolve("fleet.db").toString());
        Path account = Fixtures.write(
                folder.resolve("account.json"),
                Document.SEASON_ACCOUNT,
                season(truck("C-01", WrittenTruckSeason.Source.TELEMETRY)));
        Fixtures.keep(database, Fixtures.all());
        Fixtures.run(database, "import", account);

        Fixtures.Run pages = Fixtures.run(database, "pages", "--output", folder.resolve("pages"));

        assertThat(pages.code()).isZero();
        assertThat(pages.out()).contains("season 2025/26 can't be computed", "Truck C-01, 2025-11-01", "begin with ");
        assertThat(Fixtures.unmarked(Files.readString(folder.resolve("pages").resolve(Pages.FIRST))))
                .contains("Seasons that can’t be made to add up yet", "Truck C-01, 2025-11-01")
                .doesNotContain("Seasons that were made to add up");
        assertThat(Fixtures.run(database, "season").code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
    }

    private static String line(Event event) {
        return Document.FLEET_EVENT.toLine(WrittenEvent.of(event).orElseThrow());
    }

    @Test
    void aFileMayHaveADocumentInEachLine() throws Exception {
        Path file = folder.resolve("laid-sums.jsonl");
        List<Event> sums = Stream.of("2025-12-01", "2025-12-09", "2025-12-27")
                .map(day -> sum("C-01", day, 20))
                .toList();
        List<String> lines =
                new ArrayList<>(sums.stream().map(SeasonSumsTest::line).toList());
        lines.add(1, "");
        Files.write(file, lines);
        Database database = Database.of(folder.resolve("fleet.db").toString());

        assertThat(Fixtures.run(database, "import", file).out())
                .isEqualToIgnoringNewLines("Imported 1 file: 3 new, 0 known");
        assertThat(Fixtures.run(database, "import", file).out())
                .isEqualToIgnoringNewLines("Imported 1 file: 0 new, 3 known");
        Files.writeString(file, lines.get(0).replace("40000 lb", "41000 lb").replace("20 ton", "21 ton"));
        assertThat(Fixtures.run(database, "import", file).err()).contains("telemetry C-01 2025-12-01", "is other than");
    }

    @Test
    void whatCantBeUsedOfLinesIsToldWithItsLineAndNothingIsKept() throws Exception {
        Path file = folder.resolve("laid-sums.jsonl");
        String good = line(sum("C-01", "2025-12-01", 20));
        Files.write(
                file,
                List.of(
                        good,
                        line(sum("C-01", "2025-12-02", 20)).replace("ton\"", "barrels\""),
                        good.substring(0, 60),
                        "{\"format\":\"example.org/salt-bill\"}",
                        good + good,
                        "{\"day\":1}"));
        Database database = Database.of(folder.resolve("fleet.db").toString());

        Fixtures.Run run = Fixtures.run(database, "import", file);

        assertThat(run.code()).isEqualTo(FleetMemoryCommand.BAD_INPUT);
        assertThat(run.err())
                .contains(
                        "laid-sums.jsonl, line 2 can't be used:",
                        "laid-sums.jsonl, line 3 can't be used: a file of several documents has one in each line",
                        "laid-sums.jsonl, line 4 can't be used: it says \"format\": \"example.org/salt-bill\"",
                        "laid-sums.jsonl, line 5 can't be used: a file of several documents has one in each line",
                        "laid-sums.jsonl, line 6 can't be used: a file of several documents has one in each line")
                .doesNotContain("line 1 can't be used");
        assertThat(folder.resolve("fleet.db")).doesNotExist();
    }
}
