package org.gritwright.examples.fleetmemory;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Mass;
import org.gritwright.core.finding.Argument;
import org.gritwright.core.history.Held;
import org.gritwright.core.history.SlotState;
import org.gritwright.core.history.due.Due;
import org.gritwright.units.Amounts;

/** The fleet: what is due first, and every truck in a line. */
final class FleetPage {
    private FleetPage() {}

    /**
     * Something that is due, in words.
     *
     * @param link where its truck's page is
     */
    record DueWords(
            String truck,
            String link,
            String point,
            List<String> reasons,
            String error,
            String stake,
            String work,
            List<String> doubt) {
        /** @param doubt what the account of a season says of the truck */
        static DueWords of(Due due, LocalDate on, List<String> doubt) {
            return new DueWords(
                    due.truck(),
                    PageNames.of("truck", due.truck()),
                    due.point().toString(),
                    due.reasons().stream()
                            .map(reason ->
                                    Words.capital(Words.due(reason.by(), on)) + ": " + Words.minus(reason.words()))
                            .toList(),
                    Words.expected(due.expectedError()),
                    Amounts.si(Mass.class, due.atStake()) > 0
                            ? Argument.number(due.atStake()).words()
                            : "",
                    Words.minus(due.work().words()),
                    doubt);
        }
    }

    /** A truck with nothing due, and why that may be believed or not. */
    record QuietWords(String truck, String link, List<String> belief, List<String> toDo) {}

    static String html(Overview fleet, List<TruckOverview> trucks, Templates templates) throws IOException {
        Map<String, Object> model = new HashMap<>(about(fleet));
        model.put("summary", summary(fleet, trucks));
        model.put(
                "dues",
                fleet.dues().stream()
                        .map(due -> DueWords.of(due, fleet.on(), doubt(trucks, due.truck())))
                        .toList());
        model.put("unknown", quiet(trucks, TruckOverview.Quiet.UNKNOWN));
        model.put("doubtful", quiet(trucks, TruckOverview.Quiet.DOUBTFUL));
        model.put("proven", quiet(trucks, TruckOverview.Quiet.PROVEN));
        model.put("fleet", table(trucks));
        model.put("contradictions", Contradictions.sentences(fleet.ofNoTruck()));
        model.put("slips", Slips.of(fleet));
        model.put("charts", charts(fleet));
        model.put("seasons", fleet.seasons().pages());
        model.put(
                "withoutPage",
                fleet.seasons().withoutPage().stream().map(Words::minus).toList());
        return templates.filled("fleet.peb", model);
    }

    /** What all pages of a fleet begin with. */
    static Map<String, Object> about(Overview fleet) {
        return Map.of(
                "day", fleet.on().toString(),
                "tolerance", fleet.tolerance().toString(),
                "isPlanned", fleet.isPlanned());
    }

    private static String summary(Overview fleet, List<TruckOverview> trucks) {
        long doubtful = trucks.stream()
                .filter(truck -> truck.dues().isEmpty() && truck.quiet() != TruckOverview.Quiet.PROVEN)
                .count();
        String doubt = doubtful == 0 ? "." : ", of which " + doubtful + " can’t be believed: see below.";
        long quiet = trucks.stream().filter(truck -> truck.dues().isEmpty()).count();
        if (fleet.dues().isEmpty()) {
            return "Nothing is due by the rules on " + fleet.on() + " or within a month, at "
                    + Words.count(trucks.size(), "truck") + doubt;
        }
        return Words.count(fleet.dues().size(), "calibration point") + " of "
                + Words.count(trucks.size() - quiet, "truck") + " due on " + fleet.on()
                + " or within a month; nothing due at " + Words.count(quiet, "truck") + doubt;
    }

    private static List<QuietWords> quiet(List<TruckOverview> trucks, TruckOverview.Quiet kind) {
        return trucks.stream()
                .filter(truck -> truck.dues().isEmpty() && truck.quiet() == kind)
                .map(truck -> new QuietWords(
                        truck.id(),
                        PageNames.of("truck", truck.id()),
                        truck.belief().stream().map(Words::minus).toList(),
                        toDo(truck)))
                .toList();
    }

    private static List<String> doubt(List<TruckOverview> trucks, String id) {
        return trucks.stream()
                .filter(truck -> truck.id().equals(id))
                .flatMap(truck -> doubt(truck).stream())
                .toList();
    }

    /** What a season's account says of a truck. */
    static List<String> doubt(TruckOverview truck) {
        return truck.doubt().stream()
                .flatMap(doubt -> doubt.words().stream())
                .map(Words::minus)
                .toList();
    }

    /** What a season's account asks for beside the rules. */
    static List<String> toDo(TruckOverview truck) {
        return truck.doubt().stream().map(SeasonDoubts.Doubt::toDo).toList();
    }

    private static PageTable table(List<TruckOverview> trucks) {
        return PageTable.of(
                "The fleet, truck by truck",
                List.of(
                        "truck",
                        "in the display",
                        "how sure",
                        "error, with 95 %",
                        "last verified",
                        "drift",
                        "contradictions",
                        "due"),
                trucks.stream().flatMap(truck -> rows(truck).stream()).toList());
    }

    /** A line a value in the display, and one where nobody knows. */
    private static List<PageTable.Row> rows(TruckOverview truck) {
        List<PageTable.Row> rows = new ArrayList<>();
        for (SlotState slot : truck.state().slots()) {
            for (Held held : slot.values()) {
                rows.add(row(
                        truck,
                        held.value().point() + ": " + held.value().factor(),
                        held.standing().words(),
                        held.error().map(Words::error).orElse(PageTable.NONE),
                        truck.verified(held),
                        truck.drift(held)));
            }
            slot.lost()
                    .ifPresent(lost -> rows.add(row(
                            truck,
                            "slot " + slot.slot() + ": nobody knows",
                            "lost on " + lost.at().day(),
                            PageTable.NONE,
                            PageTable.NONE,
                            truck.driftOfOthers())));
        }
        return rows.isEmpty()
                ? List.of(row(
                        truck,
                        "nothing is known",
                        PageTable.NONE,
                        PageTable.NONE,
                        PageTable.NONE,
                        truck.driftOfOthers()))
                : rows;
    }

    private static PageTable.Row row(
            TruckOverview truck, String holds, String sure, String error, String verified, String drift) {
        return new PageTable.Row(
                truck.id(),
                Optional.of(PageNames.of("truck", truck.id())),
                List.of(
                        holds,
                        sure,
                        error,
                        verified,
                        Words.minus(drift),
                        truck.contradictions().count(),
                        by(truck)));
    }

    /** By when something is due at the truck. */
    private static String by(TruckOverview truck) {
        return truck.dues().stream()
                .map(Due::by)
                .min(Comparator.naturalOrder())
                .map(day -> Words.due(day, truck.fleet().on()))
                .orElse(truck.doubt()
                        .map(doubt -> "nothing by the rules; " + doubt.season() + " found it off")
                        .orElse("nothing"));
    }

    /** What stands behind the words on drift. */
    private static List<String> charts(Overview fleet) {
        return new DriftText(fleet.history(), fleet.drifts(), fleet.tolerance(), fleet.allowed(), fleet.at())
                .about().stream().map(Words::minus).toList();
    }
}
