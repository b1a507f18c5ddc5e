package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.gritwright.core.calibration.Change;
import org.gritwright.core.calibration.Since;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.history.Event;
import org.gritwright.core.history.History;
import org.gritwright.core.history.What;
import org.gritwright.core.history.drift.DriftChart;
import org.gritwright.core.history.drift.Stretch;
import org.gritwright.core.history.drift.Trend;
import org.gritwright.core.history.due.Due;
import org.gritwright.core.history.due.DueSettings;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.record.Document;
import org.gritwright.core.record.WrittenEvent;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PagesTest {
    /** Ids that hurt: of markup, of folders, alike on disks that don't tell case, with nothing that a file may be called. */
    static final List<String> HOSTILE =
            List.of("<script>document.title='run'</script>", "../x", "T/7", "T 7", "t-7", "T-7");

    private static final Tolerance TOLERANCE = Tolerance.percent(4);
    private static final Pattern LINK = Pattern.compile("href=\"([^\"#]+)\"");

    private static Overview demo;
    private static Map<String, String> pages;

    @TempDir
    private Path folder;

    @BeforeAll
    static void make(@TempDir Path made) throws Exception {
        Database database = Database.of(made.resolve("fleet.db").toString());
        List<Filed> all = new ArrayList<>();
        for (FleetDay day : InventedSeasons.DEMO.days()) {
            all.addAll(Fixtures.filed(Document.FLEET_DAY, day, "day"));
        }
        for (WrittenEvent event : InventedSeasons.DEMO.events()) {
            all.addAll(Fixtures.filed(Document.FLEET_EVENT, event, "event"));
        }
        Fixtures.keep(database, all);
        demo = Overview.of(
                        history(database),
                        TOLERANCE,
                        1,
                        List.of(planned("C-20", 400), planned("C-09", 20)),
                        InventedSeasons.DEMO_DAY)
                .with(curves(database));
        pages = Pages.of(demo, List.of());
    }

    private static DueSettings.Planned planned(String truck, double tons) {
        return new DueSettings.Planned(truck, InventedDay.MATERIAL, Amounts.of(tons, SpreadingUnits.SHORT_TON));
    }

    static History history(Database database) throws Exception {
        try (Store store = Store.open(database)) {
            return new Memory(store, Fixtures.DOCUMENTS, InventedSeasons.YARD).ofFleet();
        }
    }

    private static FittedCurves curves(Database database) throws Exception {
        try (Store store = Store.open(database)) {
            return new Memory(store, Fixtures.DOCUMENTS, InventedSeasons.YARD).curves();
        }
    }

    /** A database of the small fleet whose trucks have other ids, and one more that only an event tells of. */
    static Database hostile(Path folder) throws Exception {
        Database database = Database.of(folder.resolve("hostile.db").toString());
        List<Filed> all = new ArrayList<>();
        for (FleetDay day : new InventedSeasons(HOSTILE.size(), 2024, 2, 1, 5).days()) {
            String text = Document.FLEET_DAY.toText(day);
            for (int i = 0; i < HOSTILE.size(); i++) {
                text = text.replace("\"" + InventedSeasons.id(i + 1) + "\"", "\"" + HOSTILE.get(i) + "\"");
            }
            all.addAll(
                    Fixtures.DOCUMENTS.read(Document.FLEET_DAY.format(), text.getBytes(StandardCharsets.UTF_8), "day"));
        }
        Event repair = Event.of(
                "shop 1",
                Since.of(LocalDate.of(2026, 1, 5)),
                "Z-99",
                new What.Changed(Change.Part.CONVEYOR, Optional.of("<b>new</b> chain " + "M".repeat(200))),
                "shop book");
        all.addAll(Fixtures.filed(Document.FLEET_EVENT, WrittenEvent.of(repair).orElseThrow(), "event"));
        Fixtures.keep(database, all);
        return database;
    }

    private static String page(String truck) {
        return Objects.requireNonNull(pages.get(PageNames.of("truck", truck)), truck);
    }

    /** What a browser would show, each tag a blank. */
    private static String text(String html) {
        return Fixtures.unmarked(html.substring(html.indexOf("<body>")))
                .replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&amp;", "&")
                .replaceAll("\\s+", " ");
    }

    @Test
    void allThatIsDueStandsOnTheFirstPageInTheLibrarysOrderWithItsReasonsAndWork() {
        assertThat(demo.dues()).extracting(Due::truck).containsExactly("C-20", "C-09");
        String html = Objects.requireNonNull(pages.get(Pages.FIRST));
        String list = text("<body>" + html.substring(html.indexOf("<ol class=\"dues\">"), html.indexOf("</ol>")));
        int at = 0;
        for (Due due : demo.dues()) {
            List<String> words = new ArrayList<>(
                    List.of(due.truck(), due.point().toString(), due.work().words()));
            due.reasons().forEach(reason -> words.add(when(reason.by()) + ": " + reason.words()));
            words.add("Expected error " + Words.expected(due.expectedError()));
            words.add(Argument.number(due.atStake()).words() + " of what is planned");
            for (String one : words) {
                at = list.indexOf(one, at) + one.length();
                assertThat(at).as(one + " in " + list).isGreaterThanOrEqualTo(one.length());
            }
            assertThat(text(page(due.truck()))).contains(due.work().words());
        }
        assertThat(Amounts.si(Mass.class, demo.dues().get(0).atStake())).isPositive();
    }

    private static String when(LocalDate by) {
        return (by.isBefore(InventedSeasons.DEMO_DAY) ? "Overdue since " : "By ") + by;
    }

    @Test
    void whatIsOverdueIsSaidToBeAndWhatIsDueOnTheDayIsNot() {
        assertThat(text(Objects.requireNonNull(pages.get(Pages.FIRST))))
                .contains("Overdue since 2026-01-27: ", "overdue since 2026-01-27");
        List<Overview> days = Stream.of(LocalDate.of(2026, 2, 2), LocalDate.of(2026, 2, 3))
                .map(on -> Overview.of(demo.history(), TOLERANCE, 1, List.of(), on))
                .toList();
        assertThat(days.get(0).dues())
                .anySatisfy(due -> assertThat(
                                FleetPage.DueWords.of(due, days.get(0).on(), List.of())
                                        .reasons())
                        .contains("By 2026-02-02: not checked since a change"));
        assertThat(days.get(1).dues())
                .anySatisfy(due -> assertThat(
                                FleetPage.DueWords.of(due, days.get(1).on(), List.of())
                                        .reasons())
                        .contains("Overdue since 2026-02-02: not checked since a change"));
    }

    @Test
    void everyTruckHasAPageAndEveryLinkLeadsToOne() {
        assertThat(pages).hasSize(25);
        for (String truck : demo.history().trucks()) {
            assertThat(text(page(truck))).contains("Truck " + truck);
        }
        pages.values().forEach(html -> {
            Matcher link = LINK.matcher(html);
            while (link.find()) {
                assertThat(pages).containsKey(link.group(1));
            }
        });
    }

    @Test
    void whereNothingIsDueItIsSaidWhyThatMayBeBelieved() {
        for (TruckOverview truck : demo.trucks()) {
            if (truck.dues().isEmpty()) {
                assertThat(truck.quiet()).isEqualTo(TruckOverview.Quiet.PROVEN);
                assertThat(truck.belief().get(0))
                        .matches(
                                ".*: proven, last caught on 2026-01-16, 25 days ago, error .* %, nothing changed since\\.");
                assertThat(text(Objects.requireNonNull(pages.get(Pages.FIRST))))
                        .contains(truck.belief().stream().map(Words::minus).toList());
            }
        }
        // What drifts is said even where nothing is due.
        assertThat(text(Objects.requireNonNull(pages.get(Pages.FIRST))))
                .contains("Watch road salt at 2 in: the charts alarmed on 2025-01-16");
    }

    @Test
    void cautionsStandOnEveryPage() {
        pages.values()
                .forEach(html -> assertThat(text(html))
                        .contains(Caution.FIRST, "Lock out first:", "maker’s manual and licensed practice come first"));
    }

    @Test
    void theNumbersOfTheChartsAreTheLibrarys() {
        for (Drifts.OfPoint point : demo.drifts().points()) {
            PointStory story = PointStory.of(demo.history(), demo.drifts(), point, demo.at());
            String html = text(page(point.history().truck()));
            int signals = 0;
            List<DriftChart.Point> all = new ArrayList<>();
            for (Stretch stretch : point.history().stretches()) {
                all.addAll(DriftChart.of(stretch, demo.drifts().rule().orElseThrow())
                        .points());
            }
            assertThat(story.catches()).hasSameSizeAs(all);
            for (int i = 0; i < all.size(); i++) {
                DriftChart.Point one = all.get(i);
                double pounds = Amounts.in(one.implied().discharge().value(), SpreadingUnits.POUND_PER_REVOLUTION);
                assertThat(story.catches().get(i).value()).isCloseTo(pounds, within(1e-12));
                assertThat(html).contains(String.format(Locale.ROOT, "%.3f ± ", pounds));
                one.ewma()
                        .ifPresent(ewma -> assertThat(html)
                                .contains(String.format(Locale.ROOT, "%.2f (±%.2f)", ewma.value(), ewma.limit())
                                        .replace("-0.00", "0.00")
                                        .replace('-', '−')));
                one.cusum()
                        .ifPresent(sum -> assertThat(html)
                                .contains(String.format(
                                        Locale.ROOT, "%.2f, %.2f (%.2f)", sum.above(), sum.below(), sum.limit())));
                signals += one.isSignal() ? 1 : 0;
            }
            assertThat(story.catches().stream().filter(PointStory.Caught::isSignal))
                    .hasSize(signals);
        }
        assertThat(text(page("C-07")).split(" ALARM ", -1)).hasSize(3);
        assertThat(page("C-07").split("class=\"ring\"", -1))
                .as("rings on three charts, drawn wide and narrow")
                .hasSize(1 + 2 * (2 + 2 + 2));
        assertThat(page("C-08")).doesNotContain("class=\"ring\"");
    }

    /** What is drawn about the line is the interval by which the library says when the tolerance is left. */
    @Test
    void theIntervalAboutTheLineMeetsTheToleranceOnTheDayThatIsSaid() {
        Drifts.OfPoint point = point("C-07");
        PointStory story = PointStory.of(demo.history(), demo.drifts(), point, demo.at());
        Trend.Leaving leaving = point.leaving(TOLERANCE, demo.at()).orElseThrow();
        double held = story.steps().get(story.steps().size() - 1).value().orElseThrow();
        Instant earliest = leaving.earliest().orElseThrow();
        assertThat(held / story.line().at(earliest).low() - 1).isGreaterThan(0.04);
        assertThat(held / story.line().at(earliest.minus(Duration.ofDays(1))).low() - 1)
                .isLessThan(0.04);
        Instant latest = leaving.latest().orElseThrow();
        assertThat(held / story.line().at(latest).high() - 1).isGreaterThan(0.04);
        assertThat(text(page("C-07"))).contains("leaves ±4 % between " + day(earliest) + " and " + day(latest));
    }

    private static LocalDate day(Instant at) {
        return at.atOffset(InventedSeasons.YARD).toLocalDate();
    }

    private static Drifts.OfPoint point(String truck) {
        return demo.drifts().points().stream()
                .filter(one -> one.history().truck().equals(truck))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatTheDisplayHeldIsDrawnAsItWasChanged() {
        PointStory story = PointStory.of(demo.history(), demo.drifts(), point("C-12"), demo.at());
        assertThat(story.steps())
                .extracting(step -> step.value().orElseThrow())
                .containsExactly(5.2, 5.22, 5.2, 5.47, 5.52);
        PointStory lost = PointStory.of(demo.history(), demo.drifts(), point("C-09"), demo.at());
        assertThat(lost.steps().get(lost.steps().size() - 1).value()).isEmpty();
        assertThat(text(page("C-09"))).contains("2026-01-27 nobody knows", "controller reset or replaced");
        assertThat(text(page("C-12"))).contains("1 2024-12-09 conveyor changed: new chain and sprockets D. Finch");
        assertThat(page("C-12").split("class=\"event\"", -1)).hasSize(3);
        // The mistaken event was withdrawn.
        assertThat(page("C-03")).doesNotContain("class=\"event\"", "straightened");
    }

    @Test
    void curvesOfAllSeasonsStandOnOneChartAndOneOpeningIsSaidInWords() {
        String html = text(page("C-05"));
        assertThat(html)
                .contains("road salt, the curves of all seasons")
                .contains("season from 2025-11-01 season from 2024-11-01 season from 2023-11-01 Lines: the curves")
                .contains("season at 2 in at 3 in curve from 2023-11-01")
                .contains("of 2025-10-14, in proportion to the geometry");
        assertThat(text(page("C-07")))
                .contains("Caught at one opening only, 2 in: there is no curve over the opening to draw.");
        SeasonCurves curves = SeasonCurves.of(
                        demo,
                        demo.drifts().points().stream()
                                .filter(one -> one.history().truck().equals("C-05"))
                                .map(one -> PointStory.of(demo.history(), demo.drifts(), one, demo.at()))
                                .toList())
                .get(0);
        assertThat(curves.seasons())
                .hasSize(3)
                .allSatisfy(season -> assertThat(season.byOpening()).hasSize(2));
        // In October a truck is made ready for the season to come.
        assertThat(curves.seasons()
                        .get(2)
                        .byOpening()
                        .firstEntry()
                        .getValue()
                        .caught()
                        .by()
                        .at()
                        .day())
                .isEqualTo(LocalDate.of(2026, 1, 16));
        assertThat(curves.seasons())
                .extracting(season -> season.fit().orElseThrow().day())
                .containsExactly(LocalDate.of(2023, 10, 14), LocalDate.of(2024, 10, 14), LocalDate.of(2025, 10, 14));
    }

    @Test
    void whatCameLaterDoesNotCount() throws IOException {
        Overview before = Overview.of(demo.history(), TOLERANCE, 1, List.of(), LocalDate.of(2024, 12, 20));
        String html = Fixtures.unmarked(
                Objects.requireNonNull(Pages.of(before, List.of()).get(PageNames.of("truck", "C-12"))));
        assertThat(html).contains("2024-12-05").doesNotContain("2025-01-16", "2026-01");
    }

    @Test
    void theSameDatabaseMakesTheSamePages() throws Exception {
        Database database = hostile(folder);
        Path one = folder.resolve("one");
        Path other = folder.resolve("other");
        for (Path output : List.of(one, other)) {
            Fixtures.Run run = Fixtures.run(database, "pages", "--output", output);
            assertThat(run.err()).isEmpty();
            assertThat(run.code()).isZero();
            assertThat(run.out()).contains("Wrote 7 pages of trucks; begin with " + output.resolve("index.html"));
        }
        assertThat(content(one)).isEqualTo(content(other)).hasSize(8);
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left.filter(path -> path.toString().endsWith(".part"))).isEmpty();
        }
    }

    private static Map<String, String> content(Path folder) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                content.put(file.getFileName().toString(), Files.readString(file));
            }
        }
        return content;
    }

    @Test
    void idsThatLookLikeMarkupOrFoldersDoNoHarm() throws Exception {
        Overview fleet = Overview.of(history(hostile(folder)), TOLERANCE, 1, List.of(), Fixtures.TODAY);
        Map<String, String> made = Pages.of(fleet, List.of());
        assertThat(made.keySet()).hasSize(8).allSatisfy(name -> assertThat(name).matches("[a-z0-9][a-z0-9_-]*\\.html"));
        assertThat(made.keySet().stream().map(name -> name.toLowerCase(Locale.ROOT)))
                .doesNotHaveDuplicates();
        made.values().forEach(html -> {
            assertThat(html).doesNotContain("<script", "<b>new</b>");
            assertThat(html).doesNotContainPattern("(src|href)=\"(http|//|\\.\\.)");
        });
        assertThat(text(made.get(PageNames.of("truck", HOSTILE.get(0))))).contains("Truck " + HOSTILE.get(0));
    }

    @Test
    void aTruckThatOnlyARepairTellsOfIsNotSaidToBeInOrder() throws Exception {
        Overview fleet = Overview.of(history(hostile(folder)), TOLERANCE, 1, List.of(), Fixtures.TODAY);
        Map<String, String> made = Pages.of(fleet, List.of());
        String first = text(made.get(Pages.FIRST));
        assertThat(first)
                .contains("Nobody knows what these displays hold")
                .contains("Z-99 Nothing is known of what its display holds. Read the display.");
        assertThat(text(made.get(PageNames.of("truck", "Z-99"))))
                .contains("No rule asks for anything now, but that proves nothing:", "Nothing was ever caught");
    }

    @Test
    void aNameDependsOnTheIdAlone() {
        assertThat(PageNames.of("truck", "C-07")).isEqualTo("truck-c-07.html");
        assertThat(PageNames.of("truck", "T-7")).isEqualTo("truck-t-7.html");
        assertThat(PageNames.of("truck", "t-7")).matches("truck-t-7_[0-9a-f]{16}\\.html");
        assertThat(PageNames.of("truck", "T 7")).isNotEqualTo(PageNames.of("truck", "T/7"));
        assertThat(PageNames.of("truck", "x".repeat(500))).hasSizeLessThan(80);
        assertThat(PageNames.of("truck", "CON")).isEqualTo("truck-con.html");
    }

    @Test
    void aFolderThatIsThereIsLeftAsItIs() throws Exception {
        Path taken = Files.createDirectory(folder.resolve("taken"));
        Files.writeString(taken.resolve("notes.txt"), "mine");
        Database database = hostile(folder);
        assertThat(Fixtures.run(database, "pages", "--output", taken).code()).isEqualTo(2);
        assertThat(Fixtures.run(database, "pages", "--output", taken).err())
                .contains("is there already; name a folder that isn't there yet");
        assertThat(content(taken)).containsOnly(Map.entry("notes.txt", "mine"));
        assertThat(Fixtures.run(database, "pages", "--output", folder.resolve("no/where"))
                        .err())
                .contains("there is no folder " + folder.resolve("no"));
    }

    @Test
    void whereOnePageCantBeWrittenNoneIs() {
        Path output = folder.resolve("output");
        Map<String, String> some = new TreeMap<>(Map.of("a.html", "a", "b/none.html", "b"));
        assertThat(catchThrowable(() -> PageFolder.write(output, some))).isInstanceOf(IOException.class);
        assertThat(folder).isEmptyDirectory();
    }
}
