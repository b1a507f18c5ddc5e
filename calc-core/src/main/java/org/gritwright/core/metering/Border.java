package org.gritwright.core.metering;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.InvalidInputException;

/**
 * The border to a type that others wrote: what comes over it is given, finite, not negative and the same when asked
 * again, or becomes an error that names the type.
 */
final class Border {

    private Border() {}

    /** The id, asked twice. */
    static TypeId id(SpreaderType type) {
        TypeId id = given(type, "id", type.id());
        TypeId again = type.id();
        if (!id.equals(again)) {
            throw new InvalidInputException("id of type " + id, "the same whenever asked", String.valueOf(again));
        }
        return id;
    }

    static Parameters parameters(SpreaderType type, Map<String, ?> given) {
        return Parameters.of(given(type, "parameters", type.parameters()), given);
    }

    /** What a type gives, not null. */
    static <T> T given(SpreaderType type, String what, T fromType) {
        if (fromType == null) {
            throw new InvalidInputException(what + " of type " + type.id(), "given by the type", "null");
        }
        return fromType;
    }

    /**
     * A number that two functions of a type agree on, made one after the other from the same parameters: a type that
     * keeps state between calls, or throws dice, is caught by the difference.
     */
    static <F> double number(TypeId id, String what, String unit, F function, F again, ToDoubleFunction<F> ask) {
        double value = ask.applyAsDouble(function);
        if (!(value >= 0 && value <= Double.MAX_VALUE)) {
            throw new InvalidInputException(what + " of type " + id, "finite and 0 or more", value + " " + unit);
        }
        double second = ask.applyAsDouble(again);
        if (Double.compare(value, second) != 0) {
            throw new InvalidInputException(
                    what + " of type " + id, "the same whenever asked", value + " and " + second + " " + unit);
        }
        return value;
    }
}
