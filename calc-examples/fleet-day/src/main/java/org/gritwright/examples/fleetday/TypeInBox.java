package org.gritwright.examples.fleetday;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.gritwright.core.fleet.day.EnteredRanges;
import org.gritwright.core.metering.OpenLoop;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;

/**
 * A box of the worksheet that the day's document has a field for.
 *
 * @param field where the document has it, as "definition/path"
 * @param label what the paper calls it
 * @param unit its unit, or empty
 * @param name what the library calls it in a refusal
 * @param rule what the library asks of its number beside the range: positive, not-negative, whole, whole-positive, or nothing
 * @param range what its number can be; none where the range depends on the scale, or there is none
 */
record TypeInBox(String field, String label, String unit, String name, String rule, Optional<Range> range) {

    /**
     * What a number in the box's unit can be.
     *
     * @param name what the library calls a number outside
     * @param lowest the lowest
     * @param highest the highest
     * @param words both as the library says them, for example "0.001 g to 1000 t"
     */
    record Range(String name, double lowest, double highest, String words) {

        /** The library's range of a field, in a unit. */
        static Optional<Range> of(String field, Unit<?> unit) {
            String name = field.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
            return EnteredRanges.of(field, UnitSymbol.of(unit).kind())
                    .map(range -> of(name, range.lowest(), range.highest(), unit));
        }

        static Range of(String name, Quantity<?> lowest, Quantity<?> highest, Unit<?> unit) {
            return new Range(
                    name,
                    in(lowest, unit),
                    in(highest, unit),
                    Amounts.format(lowest) + " to " + Amounts.format(highest));
        }
    }

    /** What the library calls a number, and asks of it; a test compares each with what it says. */
    private record Asked(String name, String rule) {}

    private static final Map<String, Asked> ASKED = Map.ofEntries(
            Map.entry("scale-check/testWeight", new Asked("test weight", "positive")),
            Map.entry("scale-check/reading", new Asked("reading of the test weight", "not-negative")),
            Map.entry("catch/counted.start", new Asked("counter at the start", "whole")),
            Map.entry("catch/counted.stop", new Asked("counter at the stop", "whole")),
            Map.entry("catch/counted.modulus", new Asked("counter modulus", "whole")),
            Map.entry("catch/counted.revolutions", new Asked("counted revolutions", "positive")),
            Map.entry("catch/counted.standardUncertainty", new Asked("uncertainty of the count", "not-negative")),
            Map.entry("catch/counted.shaftSpeed", new Asked("shaft speed", "positive")),
            Map.entry("catch/counted.setting", new Asked("control setting", "not-negative")),
            Map.entry("catch/counted.time", new Asked("running time", "positive")),
            Map.entry("catch/testSpeed", new Asked("test speed", "positive")),
            Map.entry("catch/targetRate", new Asked("target rate", "positive")),
            Map.entry("catch/runTime", new Asked("run time", "positive")),
            Map.entry("catch/indicated", new Asked("indicated mass", "positive")),
            Map.entry("catch/indicatedStep", new Asked("resolution of the indicated mass", "positive")),
            Map.entry("catch/density.value", new Asked("density of the liquid", "positive")),
            Map.entry("catch/density.standardUncertainty", new Asked("standard uncertainty", "")),
            Map.entry("catch/prewetRate", new Asked("prewet rate", "not-negative")),
            Map.entry("in-force/value", new Asked("calibration", "positive")),
            Map.entry("road-speed/inForce", new Asked("road-speed value", "positive")),
            Map.entry("course-run/course", new Asked("length of the course", "positive")),
            Map.entry("course-run/pulses", new Asked("road-speed pulses", "whole-positive")));

    private static final List<String> PARTS_OF_A_WHOLE = List.of("conditions/hopperLevel", "conditions/moisture");

    /** Of a liquid the library names the volume. */
    private static final Map<String, Asked> ASKED_OF_A_VOLUME = Map.of(
            "catch/indicated", new Asked("indicated volume", "positive"),
            "catch/indicatedStep", new Asked("resolution of the indicated volume", "positive"));

    /** Their unit and range are those of the scale that is chosen on the page. */
    private static final List<String> ON_THE_SCALE = List.of("scale-check/testWeight", "scale-check/reading");

    static TypeInBox of(PlanSheet.Box box) {
        return of(box.field(), box.label(), box.unit());
    }

    static TypeInBox of(String field, String label, String unit) {
        Asked asked = isVolume(unit) && ASKED_OF_A_VOLUME.containsKey(field)
                ? Objects.requireNonNull(ASKED_OF_A_VOLUME.get(field))
                : ASKED.getOrDefault(field, new Asked(label, ""));
        if (ON_THE_SCALE.contains(field)) {
            return new TypeInBox(field, label, "@scale", asked.name(), asked.rule(), Optional.empty());
        }
        if (PARTS_OF_A_WHOLE.contains(field)) {
            return new TypeInBox(
                    field,
                    label,
                    unit,
                    asked.name(),
                    asked.rule(),
                    Optional.of(new Range(label, 0, 100, "0 % to 100 %")));
        }
        String name = field.replaceFirst("^.*[/.]", "");
        Optional<Range> range = unit.isEmpty() ? Optional.empty() : Range.of(name, unit(unit));
        return new TypeInBox(field, label, unit, asked.name(), asked.rule(), range);
    }

    private static boolean isVolume(String unit) {
        return !unit.isEmpty()
                && !unit.equals("%")
                && UnitSymbol.of(unit(unit)).kind().equals(Volume.class);
    }

    /** A control setting lies within the truck's table, in the unit of the table. */
    TypeInBox within(List<OpenLoop.Row> table) {
        Quantity<?> lowest = table.get(0).setting();
        Quantity<?> highest = table.get(table.size() - 1).setting();
        return new TypeInBox(
                field,
                label,
                TruckUnits.symbolOf(lowest),
                name,
                rule,
                Optional.of(Range.of(name, lowest, highest, lowest.getUnit())));
    }

    /** The same box under another name of the library's. */
    TypeInBox asked(String otherName, String otherRule) {
        return new TypeInBox(field, label, unit, otherName, otherRule, range);
    }

    /** The unit of a symbol; the worksheet prints no others. */
    static Unit<?> unit(String symbol) {
        return symbol.isEmpty()
                ? SpreadingUnits.ONE
                : UnitSymbol.all().stream()
                        .filter(row -> row.symbol().equals(symbol))
                        .findFirst()
                        .orElseThrow()
                        .unit();
    }

    /** The number of a quantity in a unit of its kind; scales of temperature have an offset, which only the units themselves know. */
    @SuppressWarnings({"unchecked", "rawtypes"}) // the kinds are compared when it is converted
    static double in(Quantity<?> quantity, Unit<?> unit) {
        return UnitSymbol.of(unit).kind().equals(Temperature.class)
                ? ((Quantity) quantity).to((Unit) unit).getValue().doubleValue()
                : Amounts.in((Quantity) quantity, (Unit) unit);
    }
}
