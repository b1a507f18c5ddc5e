package org.gritwright.examples.fleetday;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.gritwright.core.finding.Finding;
import org.gritwright.core.fleet.assessment.ToDo;
import org.gritwright.core.fleet.day.FlowMeterEntry;
import org.gritwright.core.fleet.day.MeteringEntry;
import org.gritwright.core.fleet.day.SpreaderEntry;
import org.gritwright.core.fleet.day.TruckDay;
import org.gritwright.core.fleet.day.TypedEntry;
import org.gritwright.units.Amounts;

/**
 * One truck's sheet as the report's template reads it.
 *
 * @param anchor the place in the page
 * @param truck the truck's result
 * @param then what to do after the next step, with material and gate opening
 * @param equipment the equipment on the truck
 * @param notes remarks that were written down
 * @param settings tables of what the displays and the drive hold
 * @param catches tables of the catches
 * @param boom what its boom shows, if it has one
 * @param budgets where the uncertainties come from
 * @param curves the discharge curves over several gate openings
 * @param envelopes what the truck can do at each calibration point
 * @param findings everything that a person should know
 */
record TruckSheet(
        String anchor,
        TruckResult truck,
        List<String> then,
        String equipment,
        List<String> notes,
        List<SheetTable> settings,
        List<SheetTable> catches,
        List<BoomSheet> boom,
        List<BudgetSheet> budgets,
        List<CurveSheet> curves,
        List<EnvelopeSheet> envelopes,
        List<FindingLine> findings) {

    private static final int LONGEST_LIST = 12;

    /**
     * A finding.
     *
     * @param severity how much it matters, in a word
     * @param sentence the sentence
     */
    record FindingLine(String severity, String sentence) {
        static FindingLine of(Finding finding) {
            String word = switch (finding.severity()) {
                case ERROR -> "Error";
                case WARNING -> "Check";
                case NOTE -> "Note";
            };
            return new FindingLine(word, finding.sentence());
        }
    }

    static TruckSheet of(TruckResult truck, int number) {
        SheetTables tables = new SheetTables(truck);
        return new TruckSheet(
                "truck-" + number,
                truck,
                truck.assessment().toDo().stream().skip(1).map(ToDo::toString).toList(),
                equipment(truck.assessment().truck()),
                notes(truck.assessment().truck()),
                Stream.concat(tables.settings().stream(), truck.assessment().drive().map(DriveTable::of).stream())
                        .toList(),
                tables.catches(),
                truck.assessment().boom().map(BoomSheet::of).stream().toList(),
                BudgetSheet.of(truck),
                curves(truck),
                envelopes(truck),
                truck.assessment().findings().stream().map(FindingLine::of).toList());
    }

    private static List<CurveSheet> curves(TruckResult truck) {
        Optional<Quantity<?>> gateReading =
                truck.assessment().truck().spreader().gateReading();
        return truck.assessment().curves().stream()
                .map(curve -> CurveSheet.of(curve, gateReading))
                .toList();
    }

    private static List<EnvelopeSheet> envelopes(TruckResult truck) {
        return CabPoint.of(truck.assessment()).stream()
                .flatMap(point -> point.point().envelope().stream()
                        .map(envelope -> EnvelopeSheet.of(point.name(), envelope, point.asked(), point.isSetByHand())))
                .toList();
    }

    static String equipment(TruckDay truck) {
        MeteringEntry metering = truck.spreader();
        String machine = words(metering.machine());
        if (metering instanceof FlowMeterEntry) {
            return machine;
        }
        return machine + "; "
                + (metering instanceof SpreaderEntry spreader ? words(spreader.gate()) + "; " : "")
                + metering.pulsesPerRevolution().map(Amounts::format).orElse("no shaft sensor")
                + ", gear ratio " + Amounts.format(truck.spreader().gearRatio())
                + (truck.spreader().controlSettings().isEmpty()
                        ? ""
                        : "; loaded shaft speed by control setting: "
                                + truck.spreader().controlSettings().stream()
                                        .map(row -> Amounts.format(row.setting()) + " → "
                                                + Amounts.format(row.shaftSpeed()))
                                        .collect(Collectors.joining(", ")));
    }

    /** For example "drag chain (chain pitch 2.25 in, teeth 7)". */
    private static String words(TypedEntry entry) {
        boolean hasLists = entry.parameters().values().stream().anyMatch(List.class::isInstance);
        String parameters = entry.parameters().entrySet().stream()
                .map(parameter -> words(parameter.getKey()) + " " + value(parameter.getValue()))
                .collect(Collectors.joining(hasLists ? "; " : ", "));
        return entry.type().replace('-', ' ') + (parameters.isEmpty() ? "" : " (" + parameters + ")");
    }

    /** A long list by its ends; the record has all of it. */
    private static String value(Object value) {
        if (!(value instanceof List<?> list)) {
            return Amounts.format((Quantity<?>) value);
        }
        List<String> values = list.stream().map(TruckSheet::value).toList();
        return values.size() <= LONGEST_LIST
                ? String.join(", ", values)
                : values.get(0) + ", " + values.get(1) + " … " + values.get(values.size() - 1) + ", " + values.size()
                        + " in all";
    }

    /** A name in camel case as words. */
    private static String words(String name) {
        return name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    private static List<String> notes(TruckDay truck) {
        List<String> notes = new ArrayList<>();
        truck.notes().ifPresent(notes::add);
        truck.changes()
                .forEach(change -> notes.add(change.on() + ", "
                        + change.part().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " changed"
                        + change.notes().map(text -> ": " + text).orElse("")));
        Stream.concat(
                        truck.calibrationCatches().stream().map(c -> c.entry()),
                        truck.verificationCatches().stream().map(v -> v.entry()))
                .flatMap(entry -> entry.notes().stream())
                .forEach(notes::add);
        return notes;
    }
}
