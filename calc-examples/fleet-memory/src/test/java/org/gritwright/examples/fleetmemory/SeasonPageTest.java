package org.gritwright.examples.fleetmemory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.gritwright.core.history.History;
import org.gritwright.core.judgement.Tolerance;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.Draw;
import org.gritwright.core.season.Flow;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.PileAccount;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.SeasonBalance;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.junit.jupiter.api.Test;

class SeasonPageTest {
    private static final List<Season> SEASONS = List.of(
            InventedSeason.of(0, 0, 0),
            InventedSeason.of(0.07, 0, 0),
            InventedSeason.of(0, 61.37, 9),
            InventedSeason.of(0, -30, -3));

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+\\.[0-9]+");

    private static String html(SeasonPage page) throws IOException {
        return Fixtures.unmarked(page.html(Templates.read()));
    }

    private static double printed(String cell) {
        return Double.parseDouble(cell.replace(" ton", "").replace('−', '-').replace("+", ""));
    }

    @Test
    void whatIsPrintedAddsUpOnBothSidesOfEachPileAndIsTheLibrarys() {
        for (Season season : SEASONS) {
            SeasonPage page = InventedSeason.page(season);
            for (PileSheet sheet : page.sheets()) {
                double in = 0;
                double out = 0;
                for (PageTable.Row row : sheet.table().rows()) {
                    double adjusted = printed(row.cells().get(1));
                    if (row.head().endsWith("came, together")) {
                        assertThat(adjusted).isCloseTo(in, within(1e-9));
                    } else if (row.head().endsWith("remains, together")) {
                        assertThat(adjusted).isCloseTo(out, within(1e-9)).isCloseTo(in, within(1e-9));
                    } else if (sheet.in().stream().anyMatch(line -> line.name().equals(row.head()))) {
                        in += adjusted;
                    } else {
                        out += adjusted;
                    }
                }
                PileAccount account =
                        page.balance().withFound().pile(sheet.pile().id());
                assertThat(sheet.in().size() + sheet.out().size())
                        .isEqualTo(account.flows().size());
                for (Flow flow : account.flows()) {
                    PileSheet.Line line = Stream.concat(sheet.in().stream(), sheet.out().stream())
                            .filter(one -> one.flow().equals(flow))
                            .findFirst()
                            .orElseThrow();
                    double tons = Math.abs(Amounts.in(flow.mass().value(), SpreadingUnits.SHORT_TON));
                    assertThat(line.printed() * sheet.rounding().step().doubleValue())
                            .isCloseTo(tons, within(0.01));
                }
            }
        }
    }

    @Test
    void aFlowIsAsWideAsItsMass() {
        for (Season season : SEASONS) {
            for (PileSheet sheet : InventedSeason.page(season).sheets()) {
                List<PileSheet.Line> lines = new ArrayList<>(FlowPicture.lines(sheet.in()));
                lines.addAll(FlowPicture.lines(sheet.out()));
                List<Drawing.Shape> flows = sheet.picture().wide().shapes().stream()
                        .filter(shape ->
                                shape.look().equals("flow") || shape.look().equals("found"))
                        .toList();
                assertThat(flows).hasSameSizeAs(lines);
                double total = sheet.in().stream()
                        .mapToDouble(PileSheet.Line::adjusted)
                        .sum();
                assertThat(lines.stream().mapToDouble(PileSheet.Line::adjusted).sum())
                        .as("both sides")
                        .isCloseTo(2 * total, within(1e-6 * total));
                for (int i = 0; i < lines.size(); i++) {
                    // M outer edge, C two handles and the inner edge, L the inner edge below, C back to the outer edge
                    // below.
                    double[] numbers = numbers(flows.get(i).d());
                    double wide = 240 * lines.get(i).adjusted() / total;
                    assertThat(numbers[9] - numbers[7]).as("at the pile").isCloseTo(wide, within(0.011));
                    assertThat(numbers[15] - numbers[1]).as("outside").isCloseTo(wide, within(0.011));
                }
            }
        }
    }

    private static double[] numbers(String d) {
        Matcher number = NUMBER.matcher(d);
        return number.results()
                .mapToDouble(one -> Double.parseDouble(one.group()))
                .toArray();
    }

    @Test
    void whatWasWrittenDownStandsBesideItAsItWasWritten() {
        PileSheet north =
                InventedSeason.page(InventedSeason.of(0.07, 0, 0)).sheets().get(0);
        assertThat(row(north, "opening")).startsWith("500.30 ton");
        assertThat(row(north, "ticket N-3")).startsWith("61.37 ton");
        assertThat(row(north, "brine making")).startsWith("21.30 ton");
        // 260.01 ton and 7 % more.
        assertThat(row(north, "truck C-07")).startsWith("278.21 ton");
        assertThat(north.gap()).startsWith("As written down, 1236.74 ton was there or came and 1254.94 ton left");
        PileSheet south =
                InventedSeason.page(InventedSeason.of(0.07, 0, 0)).sheets().get(1);
        assertThat(row(south, "trucks C-20, C-21")).startsWith("140.10 ton");
        assertThat(row(south, "unexplained")).startsWith("nothing");
    }

    private static String row(PileSheet sheet, String head) {
        return sheet.table().rows().stream()
                .filter(row -> row.head().equals(head))
                .map(row -> String.join("; ", row.cells()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(head));
    }

    @Test
    void whatNobodyWroteDownIsDrawnOnItsSide() {
        PileSheet more =
                InventedSeason.page(InventedSeason.of(0, 61.37, 0)).sheets().get(0);
        assertThat(more.in()).extracting(PileSheet.Line::name).contains("not written");
        PileSheet less =
                InventedSeason.page(InventedSeason.of(0, -61.37, 0)).sheets().get(0);
        assertThat(less.out()).extracting(PileSheet.Line::name).contains("not there");
        assertThat(less.out()).allSatisfy(line -> assertThat(line.adjusted()).isNotNegative());
    }

    @Test
    void whatIsWrongBetweenSurveysStandsWithTheirDays() throws IOException {
        Pile north = new Pile(
                        "north",
                        "road salt",
                        InventedSeason.stated(500, 5),
                        List.of(
                                InventedSeason.stated(400, 5),
                                InventedSeason.stated(300, 5),
                                InventedSeason.stated(200, 5)),
                        List.of(),
                        List.of(),
                        Optional.empty())
                .surveyed(
                        LocalDate.of(2026, 11, 1),
                        List.of(LocalDate.of(2027, 1, 15), LocalDate.of(2027, 2, 20), LocalDate.of(2027, 4, 15)));
        TruckSeason truck = TruckSeason.verified(
                "C-05",
                Measured.of(
                        Amounts.of(0, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY),
                List.of(
                        new Draw("north", 1, InventedSeason.tons(100)),
                        new Draw("north", 2, InventedSeason.tons(180)),
                        new Draw("north", 3, InventedSeason.tons(100))),
                List.of());
        SeasonPage page = InventedSeason.page(new Season(List.of(north), List.of(truck)));
        String html = html(page);

        assertThat(html)
                .contains("Pile north, between the surveys of 2027-01-15 and 2027-02-20: ")
                .contains("The survey of 2027-01-15 of pile north found ")
                .contains("not written, between the surveys of 2027-01-15 and 2027-02-20")
                .doesNotContainPattern("period \\d");
        assertThat(page.sheets().get(0).picture().wide().labels())
                .extracting(Drawing.Label::text)
                .anyMatch(text -> text.startsWith("not written…, "));
    }

    @Test
    void suspectsStandInTheLibrarysOrderAndWords() throws IOException {
        SeasonPage page = InventedSeason.page(InventedSeason.of(0.07, 0, 0));
        SeasonBalance balance = page.balance();
        String html = html(page).replace("&#39;", "'");
        assertThat(balance.suspicions()).hasSizeGreaterThan(3);
        assertThat(Pattern.compile("<li><p>(.*?) Score [0-9.]+[:.]")
                        .matcher(html)
                        .results()
                        .map(one -> one.group(1)))
                .isEqualTo(balance.suspicions().stream()
                        .map(Suspicion::sentence)
                        .map(Words::minus)
                        .toList());
        assertThat(html).contains(balance.sentences().stream().map(Words::minus).toList());
        // What chance alone brings stands in a list that opens, and goes on counting.
        String opens = html.substring(html.indexOf("<summary>With scores below 2"));
        long clear =
                balance.suspicions().stream().filter(one -> one.score() >= 2).count();
        assertThat(clear).isBetween(1L, balance.suspicions().size() - 1L);
        assertThat(opens)
                .contains("brings: " + (balance.suspicions().size() - clear) + "<", "start=\"" + (clear + 1) + "\"");
        assertThat(opens.split(" Score [0-9.]+[:.]", -1))
                .hasSize((int) (balance.suspicions().size() - clear + 1));
        balance.found()
                .get(0)
                .confusion()
                .reasons()
                .forEach(reason -> assertThat(html).contains(reason));
        assertThat(balance.found().get(0).confusion().reasons()).isNotEmpty();
    }

    @Test
    void suspectsThatNothingTellsApartHaveTheirReasonsOnce() throws IOException {
        Season season = new Season(
                List.of(Pile.of(
                        "north",
                        "road salt",
                        InventedSeason.stated(500, 2),
                        List.of(),
                        InventedSeason.stated(500 - 160 + 90, 2))),
                List.of(fromNorth("C-05", 60), fromNorth("C-07", 100)));
        String html = html(InventedSeason.page(season)).replace("&#39;", "'");
        String suspects = html.substring(html.indexOf("<h2>Suspects"));

        assertThat(suspects.split("No load of trucks C-05, C-07 was weighed", -1))
                .hasSize(2);
        assertThat(suspects.split("<li>The season's numbers can't tell that from number 1 above.</li>", -1))
                .hasSize(3);
    }

    private static TruckSeason fromNorth(String id, double tons) {
        return TruckSeason.verified(
                id,
                Measured.of(
                        Amounts.of(0, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY),
                List.of(Draw.of("north", InventedSeason.tons(tons))),
                List.of());
    }

    @Test
    void theTrucksDrawsAddUpOverThePiles() throws IOException {
        SeasonPage page = InventedSeason.page(InventedSeason.of(0.07, 0, 0));
        String html = html(page);
        long drawn = 0;
        for (PileSheet sheet : page.sheets()) {
            drawn += sheet.out().stream()
                    .filter(line -> line.name().equals("truck C-05"))
                    .mapToLong(PileSheet.Line::printed)
                    .sum();
        }
        assertThat(html).contains(page.sheets().get(0).rounding().text(drawn));
        assertThat(html).contains("C-20, C-21", "nothing tells", "none up to 100 %");
    }

    @Test
    void whatASeasonFoundStandsOnTheFirstPageToo() throws IOException {
        SeasonPage page = InventedSeason.page(InventedSeason.of(0.07, 0, 0));
        Overview none = Overview.of(
                History.of(List.of(), ZoneOffset.UTC), Tolerance.percent(4), 1, List.of(), LocalDate.of(2026, 12, 1));
        String html = Fixtures.unmarked(
                        Objects.requireNonNull(Pages.of(none, List.of(page)).get(Pages.FIRST)))
                .replace("&#39;", "'");

        assertThat(page.balance().found()).isNotEmpty();
        assertThat(html)
                .contains("<p>It doesn't add up within the stated uncertainties")
                .contains(
                        "<p>" + Words.minus(page.balance().found().get(0).what().sentence()) + "</p>");
    }

    /** Whoever reads the table of the trucks finds in the words above why nothing would be found. */
    @Test
    void whereAnErrorOfAnySizeCouldHideItIsSaidWhy() {
        Season season = InventedSeason.of(0, 0, 0);
        List<TruckSeason> trucks = new ArrayList<>(season.trucks());
        trucks.add(TruckSeason.verified(
                "C-30",
                Measured.of(
                        Amounts.of(0, SpreadingUnits.PERCENT),
                        Amounts.of(1, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY),
                List.of(Draw.of("north", InventedSeason.tons(2))),
                List.of()));
        SeasonPage page = InventedSeason.page(new Season(season.piles(), trucks));

        assertThat(page.unseen())
                .contains(
                        "An error of any size up to 100 % could hide in 2 trucks, because no verification says what the display"
                                + " should have shown: C-20, C-21.",
                        "An error of any size up to 100 % could hide in 1 truck, because no load was weighed, and what lay on"
                                + " the piles is known too coarsely to show it: C-30.");
        for (PageTable.Row row : page.trucks(page.sheets()).rows()) {
            boolean isHidden = row.cells().get(row.cells().size() - 1).equals("none up to 100 %");
            assertThat(page.unseen().stream()
                            .anyMatch(words -> words.startsWith("An error of any size") && words.contains(row.head())))
                    .as(row.head())
                    .isEqualTo(isHidden);
        }
    }

    @Test
    void manyTicketsAreOneFlow() {
        Season few = InventedSeason.of(0, 0, 0);
        List<Delivery> many = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            many.add(Delivery.of("M-" + i, InventedSeason.stated(10 + i / 100.0, 0.1)));
        }
        Season season = new Season(
                List.of(
                        few.piles().get(0),
                        new Pile(
                                "south",
                                "road salt",
                                InventedSeason.stated(600, 6),
                                List.of(InventedSeason.stated(700, 6)),
                                many,
                                List.of(),
                                Optional.empty())),
                few.trucks());
        PileSheet south = InventedSeason.page(season).sheets().get(1);
        assertThat(south.table().rows()).hasSizeGreaterThan(60);
        assertThat(south.picture().wide().labels())
                .extracting(Drawing.Label::text)
                .contains("60 tickets, 618.30 ton");
    }

    @Test
    void ticketsThatNothingIsOddAboutAreOneLineAndStandOneByOneInAListThatOpens() throws IOException {
        Season season = InventedSeason.of(0, 0, 0);
        Map<String, LocalDate> days = new HashMap<>();
        for (int i = 1; i <= 12; i++) {
            days.put("N-" + i, LocalDate.of(2025, 11, i));
        }
        SeasonPage page = new SeasonPage(
                "Season 2025/26",
                LocalDate.of(2025, 11, 1),
                LocalDate.of(2026, 4, 15),
                List.of(),
                new Tickets(days, Set.of("N-5", "N-12")),
                season,
                season.balance());
        PileSheet north = page.sheets().get(0);

        assertThat(north.folded().rows())
                .extracting(PageTable.Row::head)
                .contains("10 other tickets, 2025-11-01 to 2025-11-11", "ticket N-5", "ticket N-12")
                .doesNotContain("ticket N-1");
        for (int cell : List.of(0, 1, 3)) {
            assertThat(sum(north.folded(), cell)).isCloseTo(sum(north.table(), cell), within(1e-9));
        }
        assertThat(north.tickets("all").columns())
                .containsExactly("ticket", "day", "written down", "adjusted", "with 95 %", "adjusted by");
        assertThat(north.tickets("all").rows())
                .hasSize(12)
                .first()
                .satisfies(row -> assertThat(row.cells()).startsWith("2025-11-01", "61.37 ton"));
        String html = html(page);
        String[] details = html.split("<details class=\"table\">|</details>");
        assertThat(details).hasSizeGreaterThanOrEqualTo(5);
        assertThat(details[1]).contains("All 12 tickets of pile north one by one", ">N-1</th>", ">N-12</th>");
        // No day is known of the other pile's.
        assertThat(details[3])
                .contains("All 7 tickets of pile south one by one", ">S-7</th>")
                .doesNotContain("day");
        assertThat(details[2]).contains("the command “export” writes: not on paper", "7 tickets<");
        assertThat(details[0] + details[2] + details[4]).doesNotContain(">ticket N-3</th>", ">ticket S-1</th>");
    }

    private static double sum(PageTable table, int cell) {
        return table.rows().stream()
                .filter(row -> !row.head().endsWith(", together"))
                .map(row -> row.cells().get(cell))
                .filter(text -> !text.equals("nothing"))
                .mapToDouble(SeasonPageTest::printed)
                .sum();
    }

    @Test
    void aTicketThatIsMovedByMoreThanItMayBeOffStandsByItself() {
        // Of one scale, all masses of which are off.
        Pile north = Pile.of(
                "north",
                "road salt",
                InventedSeason.stated(100, 1),
                List.of(
                        Delivery.of("N-1", InventedSeason.stated(60, 0.1)),
                        Delivery.of("N-2", InventedSeason.stated(60, 0.1)),
                        Delivery.of("N-3", InventedSeason.stated(60, 30))),
                InventedSeason.stated(180, 1));
        PileSheet sheet = InventedSeason.page(new Season(List.of(north), List.of()))
                .sheets()
                .get(0);

        assertThat(sheet.folded().rows()).extracting(PageTable.Row::head).contains("3 tickets");
        PileSheet.Line usual = sheet.in().get(1);
        PileSheet.Line moved = new PileSheet.Line(
                usual.flow(),
                usual.name(),
                usual.adjusted() + 2 * usual.half() + 1,
                usual.printed(),
                usual.half(),
                usual.written(),
                usual.writtenPrinted());
        List<PileSheet.Line> in = new ArrayList<>(sheet.in());
        in.set(1, moved);
        PileSheet other = new PileSheet(sheet.pile(), sheet.rounding(), Tickets.NONE, in, sheet.out(), sheet.sum());
        assertThat(other.folded().rows())
                .extracting(PageTable.Row::head)
                .contains("ticket N-1", "2 other tickets")
                .doesNotContain("ticket N-2");
    }

    @Test
    void ofManyTrucksTheSmallestAreOneFlowButNeverWhatNobodyWroteDown() {
        List<TruckSeason> many = new ArrayList<>();
        for (int i = 1; i <= 40; i++) {
            many.add(TruckSeason.verified(
                    "C-" + i,
                    Measured.of(
                            Amounts.of(0, SpreadingUnits.PERCENT),
                            Amounts.of(1, SpreadingUnits.PERCENT),
                            Double.POSITIVE_INFINITY),
                    List.of(Draw.of("north", InventedSeason.tons(50 + i))),
                    List.of()));
        }
        Pile north = Pile.of(
                        "north",
                        "road salt",
                        InventedSeason.stated(2900, 5),
                        List.of(),
                        InventedSeason.stated(2900 - 2820 - 15, 1))
                .losing(InventedSeason.tons(10));
        List<String> labels =
                InventedSeason.page(new Season(List.of(north), many)).sheets().get(0).picture().wide().labels().stream()
                        .map(Drawing.Label::text)
                        .toList();

        // 43 lines, 23 of them by themselves.
        assertThat(labels)
                .anyMatch(text -> text.matches("19 more, [0-9]+ ton"))
                .anyMatch(text -> text.matches("unexplained, [0-9]+ ton"));
    }

    @Property
    void sharesAddUpAndEachIsANeighborOfItsNumber(
            @ForAll @Size(min = 1, max = 50) List<@DoubleRange(min = -1e6, max = 1e6) Double> numbers) {
        List<Long> shares = Shares.of(numbers);
        double sum = numbers.stream().mapToDouble(Double::doubleValue).sum();
        assertThat(shares.stream().mapToLong(Long::longValue).sum()).isEqualTo(Math.round(sum));
        for (int i = 0; i < numbers.size(); i++) {
            assertThat(Math.abs(shares.get(i) - numbers.get(i))).isLessThanOrEqualTo(1);
        }
    }

    @Test
    void massesArePrintedAsFineAsTheyWereWrittenDown() {
        Rounding pounds = Rounding.of(
                SpreadingUnits.POUND,
                List.of(Amounts.of(48_620, SpreadingUnits.POUND)),
                Amounts.of(2_473_480, SpreadingUnits.POUND));
        assertThat(pounds.text(48_620)).isEqualTo("48620 lb");
        Rounding tons = Rounding.of(
                SpreadingUnits.SHORT_TON,
                List.of(Amounts.of(48_620, SpreadingUnits.POUND)),
                Amounts.of(500, SpreadingUnits.SHORT_TON));
        assertThat(tons.step()).isEqualByComparingTo("0.01");
        assertThat(tons.half(0.2)).isEqualTo("below 0.01 ton");
        assertThat(tons.half(0)).isEqualTo("± 0.00 ton");
    }
}
