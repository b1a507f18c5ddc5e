package org.gritwright.examples.fleetday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import org.gritwright.core.chart.CabCard;
import org.gritwright.core.chart.CardLine;
import org.gritwright.core.chart.CardSection;
import org.gritwright.core.chart.FeedbackLine;
import org.gritwright.core.chart.OpenLoopLine;
import org.gritwright.core.chart.RateBasis;
import org.gritwright.core.envelope.Demand;
import org.gritwright.core.fleet.day.FleetDay;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.quantity.ApplicationRate;

/**
 * What goes into a truck's cab, as the template reads it: a card to cut out, and charts.
 *
 * @param anchor the place in the page
 * @param id the truck
 * @param cards one card; none where no point of the truck may have a paper
 * @param charts the charts of its points
 * @param missing the points that have no paper, and what to do first
 * @param roadSpeed how far the road speed is checked, in words
 */
record CabSheet(
        String anchor, String id, List<Card> cards, List<ChartTable> charts, List<String> missing, String roadSpeed) {
    /** What ends a card's life before its last day. */
    private static final List<String> VOIDED_BY = List.of(
            "pump, valve, motor, hoses or sensor repaired",
            "gate, conveyor or chain changed, worn or bent",
            "other tires",
            "other material, supplier or moisture",
            "a value of the display changed",
            "a newer card");

    private static final String NOBODY = "not named";

    /**
     * A card.
     *
     * @param sections what to set and what then holds, for each material and gate opening
     * @param rule what happens beyond that
     * @param caveat what the range of the drive was measured without; empty if it was as at work
     * @param on the day of the catches
     * @param by who answers for it
     * @param validUntil its last day
     * @param voidedBy what voids it before
     */
    record Card(
            List<Section> sections,
            String rule,
            String caveat,
            String on,
            String by,
            String validUntil,
            List<String> voidedBy) {}

    /**
     * A material at a gate opening.
     *
     * @param set what to set
     */
    record Section(String material, String set, List<CabLine> lines) {}

    /** Whether there is anything for the cab. */
    boolean hasPaper() {
        return !cards.isEmpty() || !charts.isEmpty();
    }

    /** Only what is missing. */
    CabSheet withoutPaper() {
        return new CabSheet(anchor, id, List.of(), List.of(), missing, roadSpeed);
    }

    static CabSheet of(FleetResult result, TruckResult truck, int number) {
        List<Known> sections = new ArrayList<>();
        List<ChartTable> charts = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        if (truck.assessment().isRefused()) {
            missing.add(truck.instruction().text() + ".");
        }
        for (CabPoint point : CabPoint.of(truck.assessment())) {
            Optional<String> objection = point.objection();
            if (objection.isPresent()) {
                missing.add(point.name() + ": " + objection.get() + ".");
            } else {
                section(result.day(), point).ifPresent(sections::add);
                charts.addAll(CabCharts.of(point));
            }
        }
        return new CabSheet(
                "cab-" + number,
                truck.id(),
                sections.isEmpty() ? List.of() : List.of(card(result.day(), truck, sections)),
                charts,
                missing,
                truck.roadSpeed().words());
    }

    /** What a card says of a point, with what asks for each of its rates. */
    private record Known(CabPoint point, CardSection section, List<List<Demand>> askers) {
        Section words() {
            List<String> set = new ArrayList<>();
            if (!section.gate().equals(Setting.none())) {
                set.add("gate at " + section.gate());
            }
            section.display().ifPresent(value -> set.add("display at " + value));
            List<CabLine> lines = new ArrayList<>();
            section.lines().forEach(line -> lines.add(CabLine.of(point, line, askers.get(lines.size()))));
            return new Section(section.material(), String.join(", ", set), lines);
        }
    }

    /** None where nothing is asked for, so that there is nothing to say; the chart says all. */
    private static Optional<Known> section(FleetDay day, CabPoint point) {
        CabUnits units = CabUnits.of(point.discharge().orElseThrow().value());
        Map<Quantity<ApplicationRate>, List<Demand>> asked = CabCharts.asked(point.askedOnTheRoad(), units);
        return asked.isEmpty()
                ? Optional.empty()
                : Optional.of(new Known(
                        point,
                        new CardSection(
                                PlainText.oneLine(
                                        point.point().point().material().name()),
                                point.point().point().setting(),
                                point.display(),
                                asked.keySet().stream()
                                        .<CardLine<?>>map(rate -> line(day, point, rate))
                                        .toList()),
                        List.copyOf(asked.values())));
    }

    private static CardLine<ApplicationRate> line(FleetDay day, CabPoint point, Quantity<ApplicationRate> rate) {
        return point.envelope()
                .<CardLine<ApplicationRate>>map(envelope -> new FeedbackLine<>(envelope, RateBasis.perDistance(), rate))
                .orElseGet(() -> new OpenLoopLine<>(
                        point.discharge().orElseThrow(),
                        point.settings(),
                        RateBasis.perDistance(),
                        rate,
                        day.tolerance()));
    }

    private static String rule(List<Known> sections) {
        if (sections.stream().flatMap(one -> one.section().lines().stream()).anyMatch(OpenLoopLine.class::isInstance)) {
            return "Set the control for the road speed, and anew for another.";
        }
        return sections.size() > 1
                ? "Keep to these speeds, or set gate and display as for another."
                : "Keep to these speeds.";
    }

    private static Card card(FleetDay day, TruckResult truck, List<Known> sections) {
        // Every spreader before each season: University of Delaware T² Center, 2020.
        LocalDate last = day.seasonStart().plusYears(1).minusDays(1);
        CabCard card = new CabCard(
                PlainText.oneLine(truck.id()),
                day.day(),
                day.technician().map(PlainText::oneLine).orElse(NOBODY),
                Optional.of(last.isBefore(day.day()) ? day.day() : last),
                VOIDED_BY,
                sections.stream().map(Known::section).toList());
        return new Card(
                sections.stream().map(Known::words).toList(),
                rule(sections),
                sections.get(0).point().caveat().orElse(""),
                card.on().toString(),
                day.technician().isPresent() ? card.by() : "",
                card.validUntil().map(LocalDate::toString).orElse(""),
                card.voidedBy());
    }
}
