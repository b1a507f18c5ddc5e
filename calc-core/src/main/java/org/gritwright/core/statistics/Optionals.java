package org.gritwright.core.statistics;

import java.util.OptionalDouble;

/** Numbers that may be absent, in texts. */
final class Optionals {

    private Optionals() {}

    static String text(OptionalDouble number) {
        return number.isPresent() ? String.valueOf(number.getAsDouble()) : "none";
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
