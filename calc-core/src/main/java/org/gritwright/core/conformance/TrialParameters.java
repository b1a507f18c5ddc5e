package org.gritwright.core.conformance;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.spi.Parameter;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;

/**
 * Values to try a type with, made from what it says of its parameters: every parameter in the middle of its range, and
 * each in turn at its lowest and its highest. Always the same for the same parameters.
 */
public final class TrialParameters {
    /** Rows of a list, unless its own limits want fewer or more. */
    private static final int ROWS = 5;

    private TrialParameters() {}

    /**
     * Sets of values for declared parameters.
     *
     * @param declared a type's parameters
     * @return sets of values by name, as {@link org.gritwright.core.spi.Parameters#of} takes them; a type may refuse some
     *     of them because the values don't go together
     */
    public static List<Map<String, Object>> of(List<Parameter<?>> declared) {
        Map<String, Object> middle = new LinkedHashMap<>();
        declared.forEach(parameter -> middle.put(parameter.name(), valueAt(parameter, 0.5)));
        List<Map<String, Object>> sets = new ArrayList<>();
        sets.add(middle);
        for (Parameter<?> parameter : declared) {
            for (double part : parameter.isList() ? new double[0] : new double[] {0, 1}) {
                Map<String, Object> varied = new LinkedHashMap<>(middle);
                varied.put(parameter.name(), valueAt(parameter, part));
                sets.add(varied);
            }
        }
        return Collections.unmodifiableList(sets);
    }

    /** A value at a part of the range; the default for the middle, if there is one; for a list, rows over the range. */
    private static <Q extends Quantity<Q>> Object valueAt(Parameter<Q> parameter, double part) {
        if (parameter.isList()) {
            int rows = Math.max(parameter.fewest(), Math.min(parameter.most(), ROWS));
            List<Quantity<Q>> list = new ArrayList<>();
            for (int i = 0; i < rows; i++) {
                list.add(between(parameter, rows == 1 ? part : i / (rows - 1.0)));
            }
            return List.copyOf(list);
        }
        return part == 0.5 ? parameter.standard().orElseGet(() -> between(parameter, part)) : between(parameter, part);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> between(Parameter<Q> parameter, double part) {
        double lowest = Amounts.si(parameter.kind(), parameter.lowest());
        double highest = Amounts.si(parameter.kind(), parameter.highest());
        if (part == 0) {
            return parameter.lowest();
        }
        if (part == 1) {
            return parameter.highest();
        }
        double value = lowest + part * (highest - lowest);
        return Amounts.ofSi(
                parameter.isWhole() ? Math.rint(value) : value,
                parameter.lowest().getUnit());
    }

    /** The same values in other units, as far as their kinds have others. */
    static Map<String, Object> inOtherUnits(List<Parameter<?>> declared, Map<String, Object> values) {
        Map<String, Object> others = new LinkedHashMap<>(values);
        declared.forEach(parameter -> others.computeIfPresent(
                parameter.name(),
                (name, value) -> value instanceof List<?> list
                        ? list.stream()
                                .map(item -> inOtherUnit(parameter, item))
                                .toList()
                        : inOtherUnit(parameter, value)));
        return others;
    }

    private static <Q extends Quantity<Q>> Quantity<Q> inOtherUnit(Parameter<Q> parameter, Object value) {
        @SuppressWarnings("unchecked") // made by valueAt, or checked by the type
        Quantity<Q> quantity = (Quantity<Q>) value;
        Optional<Unit<Q>> other = UnitSymbol.ofKind(parameter.kind()).stream()
                .map(UnitSymbol::unit)
                .filter(unit -> !unit.equals(quantity.getUnit()))
                .findFirst();
        try {
            return other.isEmpty()
                    ? quantity
                    : parameter.check(Amounts.ofSi(Amounts.si(parameter.kind(), quantity), other.get()));
        } catch (InvalidInputException e) {
            // A whole number may not survive the other unit's rounding; it is left as it is.
            return quantity;
        }
    }

    /** A parameter of the same name with limits far beyond, and the values that the real one must refuse. */
    static <Q extends Quantity<Q>> List<Quantity<?>> past(Parameter<Q> parameter) {
        Unit<Q> unit = parameter.lowest().getUnit();
        double lowest = Amounts.si(parameter.kind(), parameter.lowest());
        double highest = Amounts.si(parameter.kind(), parameter.highest());
        double beyond = Math.abs(lowest) + Math.abs(highest) + 1;
        List<Quantity<?>> values = new ArrayList<>();
        values.add(Amounts.ofSi(lowest - beyond, unit));
        values.add(Amounts.ofSi(highest + beyond, unit));
        if (parameter.isWhole()) {
            values.add(Amounts.ofSi(lowest + 0.5, unit));
        }
        return values;
    }

    /** The declaration with limits so wide that values past the real ones get through to the type. */
    static <Q extends Quantity<Q>> Parameter<Q> widened(Parameter<Q> parameter) {
        Unit<Q> unit = parameter.lowest().getUnit();
        double lowest = Amounts.si(parameter.kind(), parameter.lowest());
        double highest = Amounts.si(parameter.kind(), parameter.highest());
        double beyond = 2 * (Math.abs(lowest) + Math.abs(highest) + 1);
        Parameter<Q> wide = Parameter.of(
                parameter.name(),
                parameter.kind(),
                Amounts.ofSi(lowest - beyond, unit),
                Amounts.ofSi(highest + beyond, unit));
        return parameter.isList() ? wide.asList(parameter.fewest(), parameter.most()) : wide;
    }
}
