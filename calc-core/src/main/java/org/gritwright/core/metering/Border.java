package org.gritwright.core.metering;

import java.util.List;
import java.util.Map;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.InvalidInputException;

/**
 * The border to a type that others wrote: what crosses it is present, finite and not negative, and an id is the same
 * when asked again; anything else becomes an error that names the type. Whether functions answer the same whenever
 * asked is for the conformance kit to see: to ask each twice would double the work of every evaluation.
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

    /** The parameters, checked; what is refused is said to be this type's. */
    static Parameters parameters(SpreaderType type, TypeId id, Map<String, ?> given) {
        List<Parameter<?>> declared = given(type, "parameters", type.parameters());
        try {
            return Parameters.of(declared, given);
        } catch (InvalidInputException e) {
            throw new InvalidInputException(e.field() + " of " + id.name(), e.accepted(), e.value());
        }
    }

    /** What a type gives, not null. */
    static <T> T given(SpreaderType type, String what, T fromType) {
        if (fromType == null) {
            throw new InvalidInputException(what + " of type " + type.id(), "given by the type", "null");
        }
        return fromType;
    }

    /** A number that a type's function answers: finite and 0 or more. */
    static double number(TypeId id, String what, String unit, double value) {
        if (!(value >= 0 && value <= Double.MAX_VALUE)) {
            throw new InvalidInputException(what + " of type " + id, "finite and 0 or more", value + " " + unit);
        }
        return value;
    }
}
