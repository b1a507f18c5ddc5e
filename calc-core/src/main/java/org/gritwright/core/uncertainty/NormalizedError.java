package org.gritwright.core.uncertainty;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * Two results compared: E_n = (a − b) ÷ √(U_a² + U_b²), with expanded uncertainties U for a coverage of 95 % (Proficiency
 * Testing, Inc., proficiencytestinginc.com/statistical-analysis, for the formula and its limit of 1; ISO 13528 and ISO/IEC
 * 17043 have it too, from memory). Immutable, thread-safe, a value.
 *
 * <p>The two must be independent. An error common to both, like the span of one scale, cancels in the difference and has to
 * be left out of both uncertainties ({@link Budget#without}).
 *
 * @param value E_n; between −1 and 1 the two agree
 */
public record NormalizedError(double value) implements Serializable {
    private static final double COVERAGE = 0.95;

    /**
     * Checks the number.
     *
     * @throws InvalidInputException if it is not finite
     */
    public NormalizedError {
        Require.finite("normalized error", value);
    }

    /**
     * Compares two results.
     *
     * @param <Q> their kind
     * @param a one result
     * @param b the other
     * @return the normalized error
     * @throws InvalidInputException if one has no uncertainty, or both have an uncertainty of 0
     */
    public static <Q extends Quantity<Q>> NormalizedError between(Measured<Q> a, Measured<Q> b) {
        Objects.requireNonNull(a, "a");
        Objects.requireNonNull(b, "b");
        double difference = a.value().getValue().doubleValue()
                - Amounts.in(b.value(), a.value().getUnit());
        double uncertainty = Math.hypot(expanded(a, a), expanded(b, a));
        Require.that(uncertainty > 0, "uncertainty of the results to compare", "greater than 0", "0");
        return new NormalizedError(difference / uncertainty);
    }

    private static <Q extends Quantity<Q>> double expanded(Measured<Q> result, Measured<Q> like) {
        return result.expandedUncertainty(COVERAGE)
                .map(u -> Amounts.in(u, like.value().getUnit()))
                .orElseThrow(() -> new InvalidInputException(
                        "result to compare", "one with an uncertainty", Amounts.format(result.value())));
    }

    /**
     * Whether the two agree within their uncertainties.
     *
     * @return true for −1 to 1
     */
    public boolean isAgreement() {
        return !Comparison.isAbove(Math.abs(value), 1);
    }
}
