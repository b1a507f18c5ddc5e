package org.gritwright.core.spi;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;

/**
 * The checked values of a type's parameters. Immutable, thread-safe, a value: two are equal when all values are, as
 * entered.
 */
public final class Parameters {
    private final Map<String, Quantity<?>> values;

    private Parameters(Map<String, Quantity<?>> values) {
        this.values = Collections.unmodifiableMap(values);
    }

    /**
     * Checks values against the parameters that a type declares and fills in defaults.
     *
     * @param declared the type's parameters
     * @param given values by parameter name
     * @return the checked values
     * @throws InvalidInputException if a name is unknown, a value without default is missing, a value isn't accepted,
     *     or the type declares two parameters of one name
     */
    public static Parameters of(List<Parameter<?>> declared, Map<String, ? extends Quantity<?>> given) {
        Map<String, Quantity<?>> values = new TreeMap<>();
        for (Parameter<?> parameter : declared) {
            if (values.put(parameter.name(), checked(parameter, given.get(parameter.name()))) != null) {
                throw new InvalidInputException("parameter", "declared once", "\"" + parameter.name() + "\"");
            }
        }
        for (String name : given.keySet()) {
            if (!values.containsKey(name)) {
                throw new InvalidInputException("parameter", "one of " + values.keySet(), "\"" + name + "\"");
            }
        }
        return new Parameters(values);
    }

    private static <Q extends Quantity<Q>> Quantity<Q> checked(Parameter<Q> parameter, Quantity<?> given) {
        if (given == null) {
            return parameter
                    .standard()
                    .orElseThrow(() -> new InvalidInputException(parameter.name(), "given", "nothing"));
        }
        @SuppressWarnings("unchecked") // check() proves the kind
        Quantity<Q> value = (Quantity<Q>) given;
        return parameter.check(value);
    }

    /**
     * A parameter's value as entered.
     *
     * @param <Q> the kind of quantity
     * @param parameter one of the declared parameters
     * @return the value with its unit
     * @throws InvalidInputException if the parameter was not declared
     */
    public <Q extends Quantity<Q>> Quantity<Q> get(Parameter<Q> parameter) {
        Quantity<?> value = values.get(parameter.name());
        if (value == null) {
            throw new InvalidInputException("parameter", "one of " + values.keySet(), "\"" + parameter.name() + "\"");
        }
        @SuppressWarnings("unchecked") // check() proves the kind once more
        Quantity<Q> typed = (Quantity<Q>) value;
        return parameter.check(typed);
    }

    /**
     * A parameter's value in SI units.
     *
     * @param <Q> the kind of quantity
     * @param parameter one of the declared parameters
     * @return the value in SI units
     * @throws InvalidInputException if the parameter was not declared
     */
    public <Q extends Quantity<Q>> double si(Parameter<Q> parameter) {
        return Amounts.si(parameter.kind(), get(parameter));
    }

    /**
     * All values by name, as entered, defaults filled in.
     *
     * @return an unmodifiable map in the order of the names
     */
    public Map<String, Quantity<?>> asMap() {
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
        values.forEach((name, value) -> texts.put(name, Amounts.format(value)));
        return texts.toString();
    }
}
