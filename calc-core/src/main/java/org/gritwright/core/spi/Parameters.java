package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.NearestName;
import org.gritwright.units.check.Require;
import org.jspecify.annotations.Nullable;

/**
 * The checked values of a type's parameters. Immutable, thread-safe, serializable, a value: two are equal when all values
 * are, as entered.
 */
public final class Parameters implements Serializable {
    private static final long serialVersionUID = 1L;

    private final Map<String, List<Quantity<?>>> values;

    private Parameters(Map<String, List<Quantity<?>>> values) {
        this.values = Collections.unmodifiableMap(values);
    }

    /**
     * Checks values against the parameters that a type declares and fills in defaults.
     *
     * @param declared the type's parameters
     * @param given by parameter name: a {@link Quantity}, or a {@link List} of quantities where the parameter is a list
     * @return the checked values
     * @throws InvalidInputException if a name is unknown, a value without default is missing, a value isn't accepted or
     *     is no quantity, or the type declares two parameters of one name, none in place of one, or more than 1000
     */
    public static Parameters of(List<Parameter<?>> declared, Map<String, ?> given) {
        List<Parameter<?>> bounded = TypeCheck.bounded(Objects.requireNonNull(declared, "declared"));
        Map<String, List<Quantity<?>>> values = new TreeMap<>();
        Set<String> names = bounded.stream().map(Parameter::name).collect(Collectors.toCollection(TreeSet::new));
        // A misspelled name first: it is why another one is missing.
        for (String name : given.keySet()) {
            if (!names.contains(name)) {
                throw unknown(names, name);
            }
        }
        for (Parameter<?> parameter : bounded) {
            if (values.put(parameter.name(), checked(parameter, given.get(parameter.name()))) != null) {
                throw new InvalidInputException("parameter", "declared once", "\"" + parameter.name() + "\"");
            }
        }
        return new Parameters(values);
    }

    private static InvalidInputException unknown(Set<String> known, String name) {
        String nearest = NearestName.of(name, known)
                .map(near -> "; nearest: \"" + near + "\"")
                .orElse("");
        return new InvalidInputException(
                "parameter",
                known.isEmpty() ? "left out, as the type has none" : "one of " + String.join(", ", known) + nearest,
                "\"" + name + "\"");
    }

    private static <Q extends Quantity<Q>> List<Quantity<?>> checked(Parameter<Q> parameter, @Nullable Object given) {
        if (given == null) {
            return List.of(parameter
                    .standard()
                    .orElseThrow(() -> new InvalidInputException(parameter.name(), "given", "nothing")));
        }
        List<?> items = given instanceof List<?> list ? list : List.of(given);
        if ((given instanceof List<?>) != parameter.isList()
                || items.size() < parameter.fewest()
                || items.size() > parameter.most()) {
            throw new InvalidInputException(
                    parameter.name(),
                    parameter.isList() ? "a list of " + parameter.fewest() + " to " + parameter.most() : "one value",
                    given instanceof List<?> ? "a list of " + items.size() : "one value");
        }
        List<Quantity<?>> values = new ArrayList<>();
        for (Object item : items) {
            try {
                values.add(checkedItem(parameter, item));
            } catch (InvalidInputException e) {
                String field = parameter.isList() ? e.field() + ", value " + (values.size() + 1) : e.field();
                throw new InvalidInputException(field, e.accepted(), e.value());
            }
        }
        return List.copyOf(values);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> checkedItem(Parameter<Q> parameter, Object item) {
        if (!(item instanceof Quantity<?>)) {
            throw new InvalidInputException(
                    parameter.name(),
                    "a quantity from " + Amounts.format(parameter.lowest()) + " to "
                            + Amounts.format(parameter.highest()),
                    item == null ? "null" : item + " (" + item.getClass().getSimpleName() + ")");
        }
        @SuppressWarnings("unchecked") // check() proves the kind
        Quantity<Q> value = (Quantity<Q>) item;
        Quantity<Q> checked = parameter.check(value);
        // Our own copy, so that equality and serialization don't depend on somebody else's quantity.
        return Amounts.of(checked.getValue().doubleValue(), checked.getUnit());
    }

    /**
     * A parameter's value as entered.
     *
     * @param <Q> the kind of quantity
     * @param parameter one of the declared parameters, not a list
     * @return the value with its unit, within the parameter's limits
     * @throws InvalidInputException if no parameter of that name was declared, it is a list of more than one, or this
     *     parameter doesn't accept the value, as one with other limits than those declared may not
     */
    public <Q extends Quantity<Q>> Quantity<Q> get(Parameter<Q> parameter) {
        List<Quantity<Q>> list = list(parameter);
        Require.that(list.size() == 1, parameter.name(), "one value", () -> "a list of " + list.size());
        return list.get(0);
    }

    /**
     * The values of a list.
     *
     * @param <Q> the kind of quantity
     * @param parameter one of the declared parameters
     * @return the values with their units, as entered, each within the parameter's limits; one for a parameter that is
     *     no list
     * @throws InvalidInputException if no parameter of that name was declared, or this parameter doesn't accept a value,
     *     as one with other limits than those declared may not
     */
    public <Q extends Quantity<Q>> List<Quantity<Q>> list(Parameter<Q> parameter) {
        List<Quantity<?>> list = values.get(parameter.name());
        if (list == null) {
            throw unknown(values.keySet(), parameter.name());
        }
        return list.stream().map(item -> checkedItem(parameter, item)).toList();
    }

    /**
     * A parameter's value in SI units.
     *
     * @param <Q> the kind of quantity
     * @param parameter one of the declared parameters, not a list
     * @return the value in SI units
     * @throws InvalidInputException as for {@link #get}
     */
    public <Q extends Quantity<Q>> double si(Parameter<Q> parameter) {
        return Amounts.si(parameter.kind(), get(parameter));
    }

    /**
     * All values by name, as entered, defaults filled in; one value for a parameter that is no list.
     *
     * @return an unmodifiable map in the order of the names
     */
    public Map<String, List<Quantity<?>>> asMap() {
        return values;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Parameters that && values.equals(that.values);
    }

    @Override
    public int hashCode() {
        return values.hashCode();
    }

    /**
     * The values by name.
     *
     * @return for example "{chainPitch=2.25 in, teeth=7}"
     */
    @Override
    public String toString() {
        Map<String, String> texts = new TreeMap<>();
        values.forEach((name, list) ->
                texts.put(name, list.stream().map(Amounts::format).collect(Collectors.joining(", "))));
        return texts.toString();
    }
}
