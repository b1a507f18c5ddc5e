package org.gritwright.core.statistics;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Numbers that may be absent: in texts, and boxed, since {@link OptionalDouble} itself can't be serialized. */
final class Optionals {

    private Optionals() {}

    static String text(OptionalDouble number) {
        return number.isPresent() ? String.valueOf(number.getAsDouble()) : "none";
    }

    /** Null where it is absent. */
    static @Nullable Double boxed(OptionalDouble number) {
        return number.isPresent() ? number.getAsDouble() : null;
    }

    static OptionalDouble unboxed(@Nullable Double number) {
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    /** A value with its uncertainty as text. */
    static String estimate(double value, OptionalDouble uncertainty, int degreesOfFreedom) {
        return uncertainty.isPresent()
                ? value + " (u " + uncertainty.getAsDouble() + ", " + degrees(degreesOfFreedom) + ")"
                : value + " (no uncertainty)";
    }

    static String degrees(int degreesOfFreedom) {
        return degreesOfFreedom + (degreesOfFreedom == 1 ? " degree of freedom" : " degrees of freedom");
    }
}
