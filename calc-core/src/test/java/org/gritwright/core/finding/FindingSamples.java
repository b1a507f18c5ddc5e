package org.gritwright.core.finding;

import static org.gritwright.core.Samples.DAY;
import static org.gritwright.core.Samples.NOON;
import static org.gritwright.core.Samples.inches;
import static org.gritwright.core.Samples.pounds;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;

/** A finding of each code, with whatever arguments its code declares. */
public final class FindingSamples {
    private FindingSamples() {}

    public static List<Finding> all() {
        return List.of(FindingCode.values()).stream().map(FindingSamples::of).toList();
    }

    public static Finding of(FindingCode code) {
        Map<String, Argument> arguments = new TreeMap<>();
        code.slots().forEach(slot -> arguments.put(slot.name(), argument(slot)));
        return Finding.of(code, arguments);
    }

    private static Argument argument(Slot slot) {
        return switch (slot.kind()) {
            case NUMBER -> Argument.number(pounds(161.25));
            case DATE -> Argument.date(DAY);
            case TIME -> Argument.time(NOON);
            case NAME -> Argument.name("hanging 4");
            case TERM ->
                slot.isList() ? Argument.several(slot.terms()) : slot.terms().get(0);
            case UNKNOWN ->
                Argument.several(
                        List.of(Argument.Unknown.of(Term.COUNT), Argument.Unknown.accuracyOfScale("hanging 4")));
            case SLIP -> Argument.several(slips());
            case REFUSAL -> Argument.refusal(new InvalidInputException("gate opening", "at most 12 in", "14 in"));
        };
    }

    private static List<Slip> slips() {
        List<Slip> slips = new ArrayList<>();
        slips.add(Slip.byFactor(Term.GATE_SETTING, Slip.Mistake.TOO_LARGE, 25.4, inches(2.25)));
        slips.add(Slip.of(Term.GATE_SETTING, Slip.Mistake.DIGIT_DROPPED, List.of(inches(12), inches(20))));
        slips.add(Slip.byFactor(Term.GEAR_RATIO, Slip.Mistake.TOO_SMALL, 2, Amounts.of(6, SpreadingUnits.ONE)));
        return slips;
    }
}
