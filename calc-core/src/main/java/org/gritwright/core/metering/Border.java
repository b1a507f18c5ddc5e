package org.gritwright.core.metering;

import java.util.Map;
import java.util.Objects;
import java.util.function.BiPredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import org.gritwright.core.spi.Parameters;
import org.gritwright.core.spi.RejectedType;
import org.gritwright.core.spi.SpreaderType;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;

/**
 * The border to a type that others wrote: what crosses it is present, finite and not negative (a pump's or flow meter's volume more
 * than 0), and an id is the same when asked again. Anything else, and whatever a type throws except an {@link OutOfMemoryError}, becomes an error that names the type, with
 * its cause; a type's own {@link InvalidInputException} passes. Whether functions answer the same whenever asked is for the
 * conformance kit to see: to ask each twice would double the work of every evaluation.
 */
final class Border {

    private Border() {}

    /** The id, asked twice. */
    static TypeId id(SpreaderType type) {
        String name = type.getClass().getName();
        TypeId id = given(name, "id", type::id);
        TypeId again = given(name, "id", type::id);
        if (!id.equals(again)) {
            throw failed(id.toString(), "id", "the same whenever asked", String.valueOf(again));
        }
        return id;
    }

    /** The parameters, checked; what is refused is said to be this type's. */
    static Parameters parameters(SpreaderType type, TypeId id, Map<String, ?> given) {
        Objects.requireNonNull(given, "given");
        return given(id.toString(), "parameters", () -> {
            try {
                return Parameters.of(given(id.toString(), "parameters", type::parameters), given);
            } catch (InvalidInputException e) {
                throw e.code() == RefusalCode.TYPE_FAILED ? e : e.withField(e.field() + " of " + id.name());
            }
        });
    }

    /** What a type gives, not null. */
    static <T> T given(TypeId id, String what, Supplier<T> question) {
        return given(id.toString(), what, question);
    }

    private static <T> T given(String type, String what, Supplier<T> question) {
        T answer;
        try {
            answer = question.get();
        } catch (Throwable thrown) {
            throw failed(type, what, thrown);
        }
        if (answer == null) {
            throw failed(type, what, "given by the type", "null");
        }
        return answer;
    }

    /** What a type gives, not null, asked twice: the second time it is the same, as far as one can see. */
    static <T> T same(TypeId id, String what, Supplier<T> question, BiPredicate<T, T> isSame) {
        T answer = given(id, what, question);
        if (!isSame.test(answer, given(id, what, question))) {
            throw failed(id.toString(), what, "the same whenever asked", "a different one the second time");
        }
        return answer;
    }

    /** A number that a type's function answers: finite and 0 or more. */
    static double number(TypeId id, String what, String unit, DoubleUnaryOperator function, double at) {
        double value = asked(id, what, function, at);
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw failed(id.toString(), what, "finite and 0 or more", value + " " + unit);
        }
        return value;
    }

    /** A number that a type's function answers: finite and more than 0. */
    static double positive(TypeId id, String what, String unit, DoubleUnaryOperator function, double at) {
        double value = asked(id, what, function, at);
        if (!(value > 0) || Double.isInfinite(value)) {
            throw failed(id.toString(), what, "finite and greater than 0", value + " " + unit);
        }
        return value;
    }

    private static double asked(TypeId id, String what, DoubleUnaryOperator function, double at) {
        try {
            return function.applyAsDouble(at);
        } catch (Throwable thrown) {
            throw failed(id.toString(), what, thrown);
        }
    }

    private static InvalidInputException failed(String type, String what, Throwable thrown) {
        if (thrown instanceof InvalidInputException refusal) {
            return refusal;
        }
        if (thrown instanceof InterruptedException) {
            Thread.currentThread().interrupt();
        }
        InvalidInputException failure = failed(type, what, "given by the type", RejectedType.reason(thrown));
        failure.initCause(thrown);
        return failure;
    }

    static InvalidInputException failed(String type, String what, String accepted, String value) {
        return new InvalidInputException(RefusalCode.TYPE_FAILED, what + " of type " + type, accepted, value, type);
    }
}
