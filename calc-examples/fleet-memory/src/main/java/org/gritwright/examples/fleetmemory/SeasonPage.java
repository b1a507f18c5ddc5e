package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.gritwright.core.season.Confusion;
import org.gritwright.core.season.Delivery;
import org.gritwright.core.season.Flow;
import org.gritwright.core.season.FoundError;
import org.gritwright.core.season.OtherUse;
import org.gritwright.core.season.Pile;
import org.gritwright.core.season.PileAccount;
import org.gritwright.core.season.Season;
import org.gritwright.core.season.SeasonBalance;
import org.gritwright.core.season.SeasonFigures;
import org.gritwright.core.season.StatedMass;
import org.gritwright.core.season.Suspicion;
import org.gritwright.core.season.TruckSeason;
import org.gritwright.units.Amounts;

/**
 * A season that was made to add up, as a page: a picture of flows for each pile, the same as numbers that add up, the trucks, and what doesn't
 * fit in the library's own words.
 *
 * @param title what it is called, for example "Season 2025/26"
 * @param from its first day
 * @param to its last day
 * @param texts what is said above its pictures, a paragraph each
 * @param tickets its delivery tickets
 */
record SeasonPage(
        String title,
        LocalDate from,
        LocalDate to,
        List<String> texts,
        Tickets tickets,
        Season season,
        SeasonBalance balance) {
    /** Of so many suspects it is told what they can't be told from. */
    private static final int TOLD = 5;

    /** A truck that is so far off is worth a search (common practice, no source). */
    private static final double MUCH = 0.1;

    private static final double MOST = 1;

    /** Where nothing is wrong, nineteen of twenty scores are lower (95 % of a normal distribution, 1.96): nobody needs to read these. */
    private static final double CHANCE = 2;

    /** A suspect in words. */
    record Suspect(String sentence, String score, List<String> confused) {}

    SeasonPage {
        texts = List.copyOf(texts);
    }

    public String file() {
        return PageNames.of("season", title.replaceFirst("^Season ", ""));
    }

    String html(Templates templates) throws IOException {
        List<PileSheet> sheets = sheets();
        Map<String, Object> model = new HashMap<>();
        model.put("title", title);
        model.put("texts", texts.stream().map(Words::minus).toList());
        model.put("first", Pages.FIRST);
        model.put("sentences", sentences().stream().map(Words::minus).toList());
        model.put("piles", sheets);
        model.put("step", sheets.isEmpty() ? "" : sheets.get(0).rounding().text(1));
        model.put("trucks", trucks(sheets));
        List<Suspect> suspects = suspects();
        int first = (int) balance.suspicions().stream()
                .filter(one -> one.score() >= CHANCE)
                .count();
        model.put("suspects", suspects.subList(0, first));
        model.put("byChance", suspects.subList(first, suspects.size()));
        model.put("critical", score(balance.power().critical()));
        return templates.filled("season.peb", model);
    }

    /** One unit and one step for the whole page, so that numbers of several piles add up too. */
    List<PileSheet> sheets() {
        if (season.piles().isEmpty()) {
            return List.of();
        }
        Unit<Mass> unit = season.piles().get(0).opening().mass().getUnit();
        SeasonFigures figures = balance.withFound();
        Rounding rounding = Rounding.of(
                unit,
                season.piles().stream().flatMap(SeasonPage::written).toList(),
                figures.piles().stream()
                        .map(SeasonPage::in)
                        .max(Comparator.comparingDouble(mass -> Amounts.in(mass, unit)))
                        .orElseThrow());
        return season.piles().stream()
                .map(pile -> PileSheet.of(pile, figures.pile(pile.id()), season.trucks(), rounding, tickets))
                .toList();
    }

    /** What was surveyed, and what stands on tickets and in lists. */
    private static Stream<Quantity<Mass>> written(Pile pile) {
        return Stream.of(
                        Stream.of(pile.opening()),
                        pile.surveys().stream(),
                        pile.deliveries().stream().map(Delivery::mass),
                        pile.otherUses().stream().map(OtherUse::mass))
                .flatMap(masses -> masses)
                .map(StatedMass::mass);
    }

    private static Quantity<Mass> in(PileAccount account) {
        return account.flows().stream()
                .filter(flow -> flow.kind().isIn())
                .map(flow -> flow.mass().value())
                .reduce(Quantity::add)
                .orElseThrow();
    }

    PageTable trucks(List<PileSheet> sheets) {
        Map<String, Map<PileSheet, Long>> drawn = new LinkedHashMap<>();
        season.trucks().forEach(truck -> drawn.put(truck.id(), new LinkedHashMap<>()));
        for (PileSheet sheet : sheets) {
            Stream.of(sheet.in(), sheet.out())
                    .forEach(side -> side.stream()
                            .filter(line -> line.flow().kind() == Flow.Kind.TRUCK)
                            .forEach(line -> drawn.computeIfAbsent(line.flow().name(), name -> new LinkedHashMap<>())
                                    .put(sheet, side == sheet.out() ? line.printed() : -line.printed())));
        }
        List<String> columns = new ArrayList<>(List.of("truck"));
        sheets.forEach(sheet -> columns.add("from pile " + sheet.pile().id()));
        columns.addAll(List.of(
                "together",
                "error by its verification",
                "error, adjusted, with 95 %",
                "smallest over-report that would be found"));
        List<PageTable.Row> rows = new ArrayList<>();
        drawn.forEach((truck, bySheet) -> rows.add(row(truck, bySheet, sheets)));
        return new PageTable(
                "What the trucks drew, adjusted",
                columns,
                rows,
                List.of("An error is indicated ÷ true − 1: above zero, the truck reports more than it takes. Of an"
                        + " over-report as small as stated, 95 of 100 would be found. Where none up to 100 % would be, it"
                        + " stands above why."));
    }

    /** Whether it adds up, and what was found: what a truck's own records speak against may be believed no longer. */
    public List<String> results() {
        return Stream.concat(
                        balance.sentences().stream().limit(1),
                        balance.found().stream().map(SeasonPage::result))
                .map(Words::minus)
                .toList();
    }

    /** With trucks that explain the same, which the season's page names. */
    private static String result(FoundError found) {
        long trucks = found.confusion().same().stream()
                .filter(Suspicion.TruckReports.class::isInstance)
                .count();
        return found.what().sentence()
                + (trucks == 0
                        ? ""
                        : " The season's numbers can't tell that from "
                                + (trucks == 1
                                        ? "a truck that is off"
                                        : "a single truck that is off, any one of " + trucks)
                                + ": its page names "
                                + (trucks == 1 ? "it." : "them."));
    }

    /** What the library says, and of which trucks it can't. */
    List<String> sentences() {
        List<String> sentences = new ArrayList<>(balance.sentences());
        sentences.addAll(unseen());
        return sentences;
    }

    private PageTable.Row row(String truck, Map<PileSheet, Long> drawn, List<PileSheet> sheets) {
        List<String> cells = new ArrayList<>();
        long together = 0;
        for (PileSheet sheet : sheets) {
            Optional<Long> mass = Optional.ofNullable(drawn.get(sheet));
            cells.add(mass.map(sheet.rounding()::text).orElse(PageTable.NONE));
            together += mass.orElse(0L);
        }
        cells.add(drawn.isEmpty() ? PageTable.NONE : sheets.get(0).rounding().text(together));
        Optional<TruckSeason> known =
                season.trucks().stream().filter(one -> one.id().equals(truck)).findFirst();
        cells.add(known.map(one -> one.calibrationError().map(Words::error).orElse("not verified"))
                .orElse(PageTable.NONE));
        cells.add(known.flatMap(one ->
                        balance.withFound().truck(one.id()).calibrationError().map(Words::error))
                .orElse("nothing tells"));
        double smallest = known.map(one -> smallest(one.id())).orElse(Double.POSITIVE_INFINITY);
        cells.add(smallest <= MOST ? Words.percent(smallest) : "none up to 100 %");
        return new PageTable.Row(truck, Optional.empty(), cells);
    }

    /** The smallest over-report that would be found; infinite if none would. */
    private double smallest(String truck) {
        return balance.smallestOverReport(truck)
                .map(size -> Amounts.si(Dimensionless.class, size))
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** That nothing was found says nothing of these; with what would tell. */
    List<String> unseen() {
        List<String> trucks = season.trucks().stream()
                .map(TruckSeason::id)
                .filter(truck -> smallest(truck) > MUCH)
                .toList();
        if (trucks.isEmpty()) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        words.add("Of " + Words.count(trucks.size(), "truck") + " not even an over-report of "
                + Math.round(100 * MUCH)
                + " % would have been found with a chance of 95 %, so that nothing here says that "
                + (trucks.size() == 1 ? "it is" : "they are") + " right: " + String.join(", ", trucks)
                + ". Weigh some loads of each, beside what it indicates of them.");
        words.addAll(hidden());
        return words;
    }

    /** Trucks in which not even the largest error that is looked for would be seen, by the reason. */
    private List<String> hidden() {
        Map<String, List<String>> byReason = new LinkedHashMap<>();
        season.trucks().stream()
                .filter(truck -> smallest(truck.id()) > MOST)
                .forEach(truck -> byReason.computeIfAbsent(reason(truck), any -> new ArrayList<>())
                        .add(truck.id()));
        return byReason.entrySet().stream()
                .map(one -> "An error of any size up to 100 % could hide in "
                        + Words.count(one.getValue().size(), "truck") + ", because " + one.getKey() + ": "
                        + String.join(", ", one.getValue()) + ".")
                .toList();
    }

    private static String reason(TruckSeason truck) {
        if (truck.calibrationError().isEmpty()) {
            return "no verification says what the display should have shown";
        }
        return truck.loads().isEmpty()
                ? "no load was weighed, and what lay on the piles is known too coarsely to show it"
                : "the weighed loads are too few or too uncertain to show it";
    }

    private List<Suspect> suspects() {
        List<Suspect> suspects = new ArrayList<>();
        List<Suspicion> all = balance.suspicions();
        for (Suspicion one : all) {
            suspects.add(new Suspect(
                    Words.minus(one.sentence()),
                    score(one.score()),
                    suspects.size() < TOLD
                            ? confused(balance.confusedWith(one), all.subList(0, suspects.size()))
                            : List.of()));
        }
        return suspects;
    }

    static String score(double score) {
        return String.format(Locale.ROOT, "%.1f", score);
    }

    /** Those that nothing tells apart have their words once, at the first of them. */
    private static List<String> confused(Confusion confusion, List<Suspicion> before) {
        for (int i = 0; i < before.size(); i++) {
            if (confusion.same().contains(before.get(i))) {
                return List.of("The season's numbers can't tell that from number " + (i + 1) + " above.");
            }
        }
        return confusion.sentences().stream().map(Words::minus).toList();
    }
}
