package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.calibration.CalibrationInForce;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.judgement.Verdict;
import org.gritwright.core.metering.BuiltInTypes;
import org.gritwright.core.record.Document;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a season found at a truck isn't forgotten because a catch says otherwise. */
class SeasonDoubtsTest {
    private static final LocalDate LAST = LocalDate.of(2026, 4, 15);
    private static final LocalDate AFTER = LocalDate.of(2026, 10, 20);
    private static final LocalDate ON = LocalDate.of(2026, 12, 1);
    private static final LocalDate YEAR_LATER = LocalDate.of(2027, 5, 1);
    private static final String OFF = "C-07";

    private static final SeasonPage FOUND = InventedSeason.page(InventedSeason.of(0.07, 0, 0));

    /** Of the demo's fleet, whose last day is before the invented season's. */
    private static History history;

    @BeforeAll
    static void read(@TempDir Path folder) throws Exception {
        Database database = Database.of(folder.resolve("fleet.db").toString());
        Documents documents = new Documents(BuiltInTypes.registry());
        try (Store store = Store.make(database);
                Batch batch = Batch.in(database.folder())) {
            new InputFiles(documents).read(InventedSeasons.DEMO.write(folder.resolve("documents")), batch);
            Import.of(store, documents, batch, Optional.empty());
            history = new Memory(store, documents, InventedSeasons.YARD).ofFleet();
        }
    }

    private static History with(Event... more) {
        List<Event> events = new ArrayList<>(List.of(more));
        history.trucks().forEach(truck -> events.addAll(history.standing(truck)));
        return History.of(events, history.yard());
    }

    private static Optional<SeasonDoubts.Doubt> doubt(History known, LocalDate on, SeasonPage... seasons) {
        return new SeasonDoubts(known, List.of(seasons), on).of(OFF);
    }

    private static SeasonPage page(String name, LocalDate from, LocalDate to, Season season) {
        return new SeasonPage("Season " + name, from, to, List.of(), Tickets.NONE, season, season.balance());
    }

    private static SeasonPage later(Season season) {
        return page("2026/27", LocalDate.of(2026, 11, 1), LocalDate.of(2027, 4, 15), season);
    }

    private static CalibrationInForce held() {
        return history.asOf(OFF, FleetMemoryCommand.end(LAST, history.yard()))
                .values()
                .get(0)
                .value();
    }

    private static Measured<Dimensionless> percent(double value) {
        return Measured.of(
                Amounts.of(value, SpreadingUnits.PERCENT),
                Amounts.of(0.5, SpreadingUnits.PERCENT),
                Double.POSITIVE_INFINITY);
    }

    private static Event verified(LocalDate on, double error) {
        return Event.of(
                "catch of " + on,
                Since.of(on),
                OFF,
                new What.Verified(
                        held(),
                        percent(error),
                        List.of(),
                        Math.abs(error) > 4 ? Verdict.OUTSIDE_TOLERANCE : Verdict.WITHIN_TOLERANCE,
                        1,
                        Amounts.of(150, SpreadingUnits.POUND),
                        Optional.empty()),
                "day book");
    }

    private static Event calibrated(double errorOfHeld) {
        double kilograms = held().kilogramsPerRevolution() / (1 + errorOfHeld);
        return Event.of(
                "calibration",
                Since.of(AFTER),
                OFF,
                new What.Calibrated(
                        held().point(),
                        Measured.of(
                                Amounts.ofSi(kilograms, SpreadingUnits.POUND_PER_REVOLUTION),
                                Amounts.ofSi(0.005 * kilograms, SpreadingUnits.POUND_PER_REVOLUTION),
                                Double.POSITIVE_INFINITY),
                        List.of(),
                        3,
                        Optional.empty()),
                "day book");
    }

    @Test
    void aTruckThatASeasonFoundOffIsInDoubt() {
        assertThat(doubt(history, ON, FOUND)).hasValueSatisfying(doubt -> {
            assertThat(doubt.words().get(0)).startsWith("Season 2025/26: Truck C-07 over-reports by ");
            assertThat(doubt.words()).contains("Nobody has verified the truck since.");
            assertThat(doubt.toDo()).startsWith("a verification catch first, before anyone changes its value; ");
        });
        for (String other : List.of("C-05", "C-12", "C-20", "C-21", "C-01")) {
            assertThat(new SeasonDoubts(history, List.of(FOUND), ON).of(other))
                    .as(other)
                    .isEmpty();
        }
    }

    @Test
    void aSeasonThatHasNotEndedSaysNothingYet() {
        assertThat(doubt(history, LAST.minusDays(1), FOUND)).isEmpty();
        assertThat(doubt(history, LAST, FOUND)).isPresent();
    }

    @Test
    void aCatchThatSaysWhatTheVerificationSaidAnswersNothing() {
        Event repair = Event.of(
                "repair",
                Since.of(AFTER.minusDays(1)),
                OFF,
                new What.Changed(Change.Part.CONVEYOR, Optional.empty()),
                "workshop");

        assertThat(doubt(with(repair, verified(AFTER, 0.2)), ON, FOUND)).hasValueSatisfying(doubt -> {
            assertThat(doubt.words().get(1))
                    .startsWith("The verification of 2026-10-20, error 0.2 % ± 1.0 %, doesn't show it");
            assertThat(doubt.toDo()).startsWith("one more verification catch first; if that doesn't show it either, ");
        });
        assertThat(doubt(with(calibrated(0.01)), ON, FOUND)).isPresent();
    }

    @Test
    void aCatchAfterTheSeasonThatShowsItAnswersIt() {
        assertThat(doubt(with(verified(AFTER, 6)), ON, FOUND)).isEmpty();
        assertThat(doubt(with(calibrated(0.06)), ON, FOUND)).isEmpty();
        assertThat(doubt(with(verified(LAST.minusDays(20), 6)), ON, FOUND))
                .as("in the season it is part of what the account knows")
                .isPresent();
        assertThat(doubt(with(verified(ON.plusDays(1), 6)), ON, FOUND))
                .as("after the day that is looked at")
                .isPresent();
        assertThat(doubt(with(verified(AFTER, -6)), ON, FOUND))
                .as("the other way")
                .isPresent();
    }

    @Test
    void aLaterSeasonAnswersItIfItWouldHaveFoundAsMuch() {
        SeasonPage found = InventedSeason.page(InventedSeason.of(0.12, 0, 0));
        Season good = InventedSeason.of(0, 0, 0);
        assertThat(doubt(history, YEAR_LATER, later(good), found)).isEmpty();
        assertThat(doubt(history, YEAR_LATER, later(good), FOUND))
                .as("7 % would be found with a chance below 95 %")
                .isPresent();
        assertThat(doubt(history, ON, later(good), found)).as("not ended yet").isPresent();
        assertThat(doubt(history, YEAR_LATER, page("other", LAST.minusDays(20), LAST.plusDays(60), good), found))
                .as("partly of the same days")
                .isPresent();
        assertThat(doubt(history, YEAR_LATER, later(new Season(good.piles(), withoutLoads(good))), found))
                .as("it would hardly have been found")
                .isPresent();
        assertThat(doubt(
                        history,
                        YEAR_LATER,
                        later(new Season(
                                good.piles(),
                                good.trucks().stream()
                                        .filter(truck -> !truck.id().equals(OFF))
                                        .toList())),
                        found))
                .as("the truck isn't in it")
                .isPresent();
        assertThat(doubt(history, YEAR_LATER, later(InventedSeason.of(0.12, 0, 0)), found))
                .as("found again")
                .hasValueSatisfying(doubt -> assertThat(doubt.season()).isEqualTo("Season 2026/27"));
    }

    private static List<TruckSeason> withoutLoads(Season season) {
        return season.trucks().stream()
                .map(truck -> truck.calibrationError()
                        .map(error -> TruckSeason.verified(truck.id(), error, truck.draws(), List.of()))
                        .orElse(truck))
                .toList();
    }

    @Test
    void ofSaltThatNobodyWroteDownNoTruckIsAccused() {
        // Both drew from one pile alone: either explains as much as the lost ticket.
        Season season = new Season(
                List.of(Pile.of(
                        "north",
                        "road salt",
                        InventedSeason.stated(500, 2),
                        List.of(),
                        InventedSeason.stated(500 - 160 + 90, 2))),
                List.of(drawing("C-05", 60), drawing(OFF, 100)));
        SeasonPage page = page("2025/26", LocalDate.of(2025, 11, 1), LAST, season);

        assertThat(page.balance().found()).singleElement().satisfies(found -> {
            assertThat(found.what()).isInstanceOf(Suspicion.PileOff.class);
            assertThat(found.confusion().same()).hasSize(2);
        });
        assertThat(doubt(history, ON, page)).isEmpty();
        assertThat(page.results().get(1))
                .endsWith(
                        " The season's numbers can't tell that from a single truck that is off, any one of 2: its page"
                                + " names them.");
    }

    private static TruckSeason drawing(String id, double tons) {
        return TruckSeason.verified(id, percent(0), List.of(Draw.of("north", InventedSeason.tons(tons))), List.of());
    }

    @Test
    void ofTrucksThatNothingTellsApartEachIsInDoubt() {
        SeasonPage page = page(
                "2025/26",
                LocalDate.of(2025, 11, 1),
                LAST,
                new Season(
                        List.of(pile("north", 450), pile("south", 450)),
                        List.of(drawingBoth("C-05", 150, 0), drawingBoth(OFF, 150, 0.1), drawingBoth("C-12", 150, 0))));

        assertThat(page.balance().found().get(0).what()).isInstanceOf(Suspicion.TruckReports.class);
        SeasonDoubts doubts = new SeasonDoubts(history, List.of(page), ON);
        for (String truck : List.of("C-05", OFF, "C-12")) {
            assertThat(doubts.of(truck))
                    .hasValueSatisfying(doubt -> assertThat(doubt.words().get(0))
                            .startsWith("Season 2025/26: Truck " + truck + " over-reports by ")
                            .contains(
                                    " Or it is one of trucks ",
                                    " instead: the season's numbers can hardly tell them apart."));
        }
    }

    private static Pile pile(String id, double drawn) {
        return Pile.of(
                id, "road salt", InventedSeason.stated(1000, 1), List.of(), InventedSeason.stated(1000 - drawn, 1));
    }

    private static TruckSeason drawingBoth(String id, double tons, double overReport) {
        double indicated = tons * (1 + overReport);
        return TruckSeason.verified(
                id,
                percent(0),
                List.of(
                        Draw.of("north", InventedSeason.tons(indicated)),
                        Draw.of("south", InventedSeason.tons(indicated))),
                List.of());
    }

    @Test
    void itStandsOnThePagesAndInTheListOfWhatIsDue() throws Exception {
        SeasonPage found =
                page("2025/26", LocalDate.of(2025, 4, 1), LocalDate.of(2026, 1, 31), InventedSeason.of(0.07, 0, 0));
        Overview fleet = Overview.of(history, Tolerance.percent(4), 1, List.of(), Fixtures.TODAY);
        String before = Objects.requireNonNull(Pages.of(fleet, List.of()).get(Pages.FIRST));
        Overview with = fleet.with(new BalancedSeasons(List.of(found), List.of()));

        assertThat(before)
                .contains("Nothing due, and why that may be believed")
                .doesNotContain("in doubt all the same");
        String first = Fixtures.unmarked(Objects.requireNonNull(Pages.of(with).get(Pages.FIRST)));
        String doubted = first.substring(
                first.indexOf("in doubt all the same"), first.indexOf("Nothing due, and why that may be believed"));
        assertThat(doubted)
                .contains(
                        "C-07</a>",
                        "<b>To do:</b> a verification catch first, ",
                        "Season 2025/26: Truck C-07 over-reports by ");
        assertThat(first.substring(first.indexOf("Nothing due, and why"), first.indexOf("The fleet, truck by truck")))
                .doesNotContain("C-07</a>");
        assertThat(first)
                .contains(
                        "nothing due at 22 trucks, of which 1 can’t be believed: see below.",
                        "nothing by the rules; Season 2025/26 found it off");
        assertThat(Fixtures.unmarked(Objects.requireNonNull(Pages.of(with).get(PageNames.of("truck", OFF)))))
                .contains(
                        "that proves nothing:",
                        "<b>To do:</b> a verification catch first, ",
                        "Truck C-07 over-reports by ");
        assertThat(String.join("\n", DueText.lines(with)))
                .contains("in doubt all the same:\nC-07\n  Season 2025/26: Truck C-07 over-reports by ")
                .contains("  to do: a verification catch first, ");
    }

    /** C-09 lost a slot: what is to be done for that doesn't push away what a season found. */
    @Test
    void aTruckOfWhichSomethingIsDueIsInDoubtAllTheSame() throws Exception {
        Season season = InventedSeason.of(0.07, 0, 0);
        SeasonPage found = page(
                "2025/26",
                LocalDate.of(2025, 4, 1),
                LocalDate.of(2026, 1, 31),
                new Season(
                        season.piles(),
                        season.trucks().stream()
                                .map(truck -> truck.id().equals(OFF)
                                        ? TruckSeason.verified(
                                                "C-09",
                                                truck.calibrationError().orElseThrow(),
                                                truck.draws(),
                                                truck.loads())
                                        : truck)
                                .toList()));
        Overview fleet = Overview.of(history, Tolerance.percent(4), 1, List.of(), Fixtures.TODAY)
                .with(new BalancedSeasons(List.of(found), List.of("season 2024/25 can't be computed: why")));

        assertThat(String.join("\n", DueText.lines(fleet)))
                .contains("C-09, of which something is due as well\n  Season 2025/26: Truck C-09 over-reports by ")
                .contains("say nothing of any truck yet:\n  season 2024/25 can't be computed: why");
        assertThat(Fixtures.unmarked(Objects.requireNonNull(Pages.of(fleet).get(PageNames.of("truck", "C-09")))))
                .contains(
                        "read the display and enter",
                        "<h2>What a season found</h2>",
                        "<li>Season 2025/26: Truck C-09 ");
        assertThat(Fixtures.unmarked(Objects.requireNonNull(Pages.of(fleet).get(Pages.FIRST))))
                .contains("<p>Season 2025/26: Truck C-09 ");
    }

    @Test
    void theCommandOfATruckSaysWhatTheListAndItsPageSay(@TempDir Path folder) throws Exception {
        String database = folder.resolve("fleet.db").toString();
        List<String> arguments = new ArrayList<>(List.of("import", "--database", database));
        InventedSeasons.DEMO.write(folder.resolve("documents")).forEach(file -> arguments.add(file.toString()));
        assertThat(Fixtures.Run.of(arguments.toArray(String[]::new)).code()).isZero();
        Path pages = folder.resolve("pages");
        assertThat(Fixtures.Run.of("pages", "--database", database, "--output", pages.toString())
                        .code())
                .isZero();
        String due = Fixtures.Run.of("due", "--database", database).out();
        String page = Fixtures.unmarked(Files.readString(pages.resolve("truck-c-16.html")))
                .replace("&#39;", "'");

        String out = Fixtures.Run.of("truck", "C-16", "--database", database).out();
        List<String> found = out.substring(out.indexOf("What a season found:"), out.indexOf("What its display holds:"))
                .lines()
                .skip(1)
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        assertThat(found)
                .hasSize(3)
                .allSatisfy(line -> assertThat(due).contains("  " + line))
                .allSatisfy(line -> assertThat(page).contains(line.replace("to do:", "<b>To do:</b>")));
        assertThat(out).contains(Caution.line(), "What a season found beside that stands above.");

        assertThat(Fixtures.Run.of("truck", "C-16", "--database", database, "--on", "2025-03-30")
                        .out())
                .as("the season isn't over")
                .contains("What its display holds:")
                .doesNotContain("season found");
        assertThat(Fixtures.Run.of("truck", "C-22", "--database", database).out())
                .doesNotContain("season found");
    }

    @Test
    void anAccountThatWasReplacedAccusesNobody(@TempDir Path folder) throws Exception {
        String database = folder.resolve("fleet.db").toString();
        List<String> arguments = new ArrayList<>(List.of("import", "--database", database));
        InventedSeasons.DEMO.write(folder.resolve("documents")).forEach(file -> arguments.add(file.toString()));
        assertThat(Fixtures.Run.of(arguments.toArray(String[]::new)).code()).isZero();
        assertThat(Fixtures.Run.of("due", "--database", database).out())
                .contains("in doubt all the same:\nC-16\n  Season 2024/25: Truck C-16 over-reports by 7")
                .doesNotContain("C-01", "C-22");

        Path mended = Fixtures.write(
                folder.resolve("mended.json"),
                Document.SEASON_ACCOUNT,
                new InventedAccount(InventedSeasons.DEMO, 2024, 0, 0, 11).written());
        assertThat(Files.exists(mended)).isTrue();
        assertThat(Fixtures.Run.of(
                                "import", "--database", database, "--why", "loads were typed wrong", mended.toString())
                        .err())
                .isEmpty();
        assertThat(Fixtures.Run.of("due", "--database", database).out()).doesNotContain("C-16");
    }
}
