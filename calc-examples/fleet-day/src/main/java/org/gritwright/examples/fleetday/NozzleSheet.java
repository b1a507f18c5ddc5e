package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Pressure;
import org.gritwright.core.fleet.day.BoomEntry;
import org.gritwright.core.fleet.day.NozzleEntry;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.examples.fleetday.PlanSheet.Box;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/**
 * The side of a truck's worksheet on which its boom's nozzles are written down, in the order of the document's fields.
 *
 * @param task what to catch
 * @param before boxes for what is the same for all
 * @param sections a row for each nozzle, section by section; rows without names where the document lists none
 */
record NozzleSheet(String task, List<Box> before, List<Section> sections) {
    /** Rows for nozzles that the document doesn't know. */
    private static final int UNKNOWN = 12;

    private static final int ROOMY_ROWS = 14;

    /** A longer name doesn't fit into its box. */
    private static final int LONGEST_NAME = 10;

    /**
     * A section of the boom.
     *
     * @param name its name; empty where it is written into the boxes
     * @param rows the boxes of each nozzle
     */
    record Section(String name, List<List<Box>> rows) {}

    static Optional<NozzleSheet> of(TruckPlan truck) {
        return truck.truck().boom().map(boom -> of(boom, TruckUnits.of(truck)));
    }

    private static NozzleSheet of(BoomEntry boom, TruckUnits units) {
        Optional<NozzleEntry> last = boom.nozzles().stream().findFirst();
        String volume = last.map(one -> TruckUnits.symbolOf(one.caught()))
                .orElse(units.isOwn(Amounts.of(1, SpreadingUnits.US_GALLON)) ? "fl oz" : "mL");
        Map<String, List<List<Box>>> sections = new LinkedHashMap<>();
        for (NozzleEntry nozzle : boom.nozzles()) {
            List<Box> row =
                    new ArrayList<>(List.of(Box.choice("nozzle", PlainText.shortened(nozzle.nozzle(), LONGEST_NAME))));
            row.addAll(caught(volume));
            sections.computeIfAbsent(nozzle.section(), any -> new ArrayList<>()).add(row);
        }
        for (int i = 0; i < UNKNOWN && last.isEmpty(); i++) {
            List<Box> row = new ArrayList<>(List.of(Box.of("section", ""), Box.of("nozzle", "")));
            row.addAll(caught(volume));
            sections.computeIfAbsent("", any -> new ArrayList<>()).add(row);
        }
        return new NozzleSheet(
                task(last),
                List.of(Box.of("pressure", units.symbol(Pressure.class)), Box.of("graduate", "")),
                sections.entrySet().stream()
                        .map(one -> new Section(one.getKey(), one.getValue()))
                        .toList());
    }

    private static List<Box> caught(String volume) {
        return List.of(
                Box.of("caught", volume),
                Box.of("marks every", volume),
                Box.of("time", "s"),
                Box.of("± time", "s"),
                Box.of("liquid", ""));
    }

    private static String task(Optional<NozzleEntry> last) {
        return "Each nozzle for the same time, half a minute or more, into one graduate, read at eye height when the foam is gone."
                + " All with the same liquid and at one pressure, the one that the boom works at, read at the nozzles if there is"
                + " a gauge."
                + last.map(one -> " In the day’s document: " + Amounts.format(one.time()) + " ± "
                                + Amounts.format(one.timeHalfWidth()) + ", marks every "
                                + Amounts.format(one.division())
                                + one.liquid().map(ran -> ", " + ran).orElse("") + ".")
                        .orElse("");
    }

    /** How the boxes are spaced: a class of the style sheets. */
    public String spacing() {
        int rows = sections.stream().mapToInt(section -> section.rows().size()).sum();
        return rows <= ROOMY_ROWS ? "" : "closest";
    }
}
