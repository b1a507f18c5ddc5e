package org.gritwright.core.conformance;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Spi;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * Values to try a type with, made from what it says about its parameters: every parameter at its default or else in the
 * middle of its range, and each in turn at its lowest and its highest; a list always as rows that rise over the whole
 * range. The same parameters always give the same values.
 */
public final class TrialParameters {
    /** Rows of a list, unless its own limits want fewer or more. */
    private static final int ROWS = 5;

    /** A longer list than this is left to examples. */
    private static final int MOST_ROWS = 10_000;

    /** How far past a limit a value is that must be refused, as a part of the range. */
    private static final double PAST = 0.01;

    /** And as a part of the number itself: well above the rounding that is forgiven at a limit. */
    private static final double MORE_THAN_ROUNDING = 1e-9;

    private TrialParameters() {}

    /**
     * Sets of values for declared parameters.
     *
     * @param declared a type's parameters
     * @return sets of values by name, as {@link org.gritwright.core.spi.Parameters#of} takes them; a type may refuse some
     *     of them because the values don't go together
     * @throws InvalidInputException if there are more than {@value Spi#MOST_PARAMETERS}
     */
    public static List<Map<String, Object>> of(List<Parameter<?>> declared) {
        Map<String, Object> middle = new LinkedHashMap<>();
        List<Parameter<?>> parameters = Require.noMoreThan(Spi.MOST_PARAMETERS, "parameters", declared);
        parameters.forEach(parameter -> middle.put(parameter.name(), middle(parameter)));
        List<Map<String, Object>> sets = new ArrayList<>();
        sets.add(middle);
        for (Parameter<?> parameter : parameters) {
            if (!parameter.isList()) {
                for (Quantity<?> end : List.of(parameter.lowest(), parameter.highest())) {
                    Map<String, Object> varied = new LinkedHashMap<>(middle);
                    varied.put(parameter.name(), end);
                    sets.add(varied);
                }
            }
        }
        return Collections.unmodifiableList(sets);
    }

    /** The default or the middle of the range; for a list, rows over the range. */
    private static <Q extends Quantity<Q>> Object middle(Parameter<Q> parameter) {
        if (!parameter.isList()) {
            return parameter.standard().orElseGet(() -> between(parameter, 0.5));
        }
        int rows = Math.min(Math.max(parameter.fewest(), Math.min(parameter.most(), ROWS)), MOST_ROWS);
        List<Quantity<Q>> list = new ArrayList<>();
        for (int i = 0; i < rows; i++) {
            list.add(between(parameter, i / (rows - 1.0)));
        }
        return List.copyOf(list);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> between(Parameter<Q> parameter, double part) {
        if (part == 0) {
            return parameter.lowest();
        }
        if (part == 1) {
            return parameter.highest();
        }
        Unit<Q> unit = parameter.lowest().getUnit();
        double value = (1 - part) * numberIn(unit, parameter.lowest()) + part * numberIn(unit, parameter.highest());
        return Amounts.of(parameter.isWhole() ? Math.rint(value) : value, unit);
    }

    /** A quantity's number in another unit of its kind; also where the scales have different zeros, as temperatures. */
    private static <Q extends Quantity<Q>> double numberIn(Unit<Q> unit, Quantity<Q> quantity) {
        try {
            return Amounts.in(quantity, unit);
        } catch (InvalidInputException e) {
            return quantity.to(unit).getValue().doubleValue();
        }
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
        @SuppressWarnings("unchecked") // made by middle, or checked by the type
        Quantity<Q> quantity = (Quantity<Q>) value;
        Optional<Unit<Q>> other = UnitSymbol.ofKind(parameter.kind()).stream()
                .map(UnitSymbol::unit)
                .filter(unit -> !unit.equals(quantity.getUnit()))
                .findFirst();
        try {
            return other.isEmpty()
                    ? quantity
                    : parameter.check(Amounts.of(numberIn(other.get(), quantity), other.get()));
        } catch (InvalidInputException e) {
            // A whole number may not survive the other unit's rounding; it is left as it is.
            return quantity;
        }
    }

    /** Values that a parameter must refuse: past its limits, and between whole numbers; in rising order. */
    static <Q extends Quantity<Q>> List<Quantity<Q>> past(Parameter<Q> parameter) {
        Unit<Q> unit = parameter.lowest().getUnit();
        double lowest = numberIn(unit, parameter.lowest());
        double highest = numberIn(unit, parameter.highest());
        double size = Math.max(Math.abs(lowest), Math.abs(highest));
        double range = highest > lowest ? highest - lowest : Math.max(1, size);
        double step = parameter.isWhole() ? 1 : Math.max(PAST * range, MORE_THAN_ROUNDING * size);
        List<Quantity<Q>> values = new ArrayList<>();
        quantity(parameter, lowest - step, unit).ifPresent(values::add);
        if (parameter.isWhole()) {
            quantity(parameter, lowest + 0.5, unit).ifPresent(values::add);
        }
        quantity(parameter, highest + step, unit).ifPresent(values::add);
        return values;
    }

    /** Empty if the number is too large for a quantity. */
    private static <Q extends Quantity<Q>> Optional<Quantity<Q>> quantity(
            Parameter<Q> parameter, double number, Unit<Q> unit) {
        try {
            Quantity<Q> quantity = Amounts.of(number, unit);
            return Double.isFinite(Amounts.si(parameter.kind(), quantity)) ? Optional.of(quantity) : Optional.empty();
        } catch (InvalidInputException e) {
            return Optional.empty();
        }
    }

    /** The declaration with limits so wide that the values past the real ones get through to the type. */
    static <Q extends Quantity<Q>> Parameter<Q> widened(Parameter<Q> parameter) {
        List<Quantity<Q>> all = new ArrayList<>(past(parameter));
        all.add(parameter.lowest());
        all.add(parameter.highest());
        Comparator<Quantity<Q>> bySize = Comparator.comparingDouble(q -> Amounts.si(parameter.kind(), q));
        Parameter<Q> wide = Parameter.of(
                parameter.name(), parameter.kind(), Collections.min(all, bySize), Collections.max(all, bySize));
        return parameter.isList() ? wide.asList(parameter.fewest(), parameter.most()) : wide;
    }
}
