package org.gritwright.units;

import java.io.Serializable;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;

/**
 * A conversion between two units of one kind, compiled once into plain doubles.
 *
 * <p>Kind and unit are checked when it is made: pounds per mile to pounds per lane-mile has no conversion until
 * somebody says how many lanes ({@code Rates}), and liters per kilometer are not an area although their dimension is.
 * Afterwards nothing is allocated and nothing is looked up.
 *
 * <p>A result is within 0.51 ulp of the exact rational product wherever it is at least 2⁻¹⁰¹⁶ in size and within 1 ulp
 * below that. The sign of zero is kept. Immutable, thread-safe, serializable.
 */
public final class Conversion implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Block that is checked while still in the first-level cache. */
    private static final int BLOCK = 1024;

    private final String fromLabel;
    private final String toLabel;
    private final ExactFactor exact;
    private final CompiledFactor factor;

    private Conversion(UnitSymbol<?> from, UnitSymbol<?> to, ExactFactor exact, CompiledFactor factor) {
        this.fromLabel = from.label();
        this.toLabel = to.label();
        this.exact = exact;
        this.factor = factor;
    }

    /**
     * Compiles the conversion from one unit to another.
     *
     * @param <Q> the kind of quantity
     * @param from the unit of the values given; one of the symbol table
     * @param to the unit of the results; one of the symbol table
     * @return the conversion
     * @throws InvalidInputException if a unit is not in the symbol table, if the two are of different kinds (which the
     *     compiler refuses where the types are known), or if a scale has an offset (temperatures)
     */
    public static <Q extends Quantity<Q>> Conversion between(Unit<Q> from, Unit<Q> to) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        SymbolTable.Entry<Q> source = SymbolTable.entryOf(from);
        SymbolTable.Entry<Q> target = SymbolTable.entryOf(source.row().kind(), to);
        FactorPair factors = factors(source);
        ExactFactor ofTarget = factors(target).toSystem();
        if (ofTarget.equals(ExactFactor.ONE)) {
            return new Conversion(source.row(), target.row(), factors.toSystem(), factors.intoSystem());
        }
        ExactFactor exact = factors.toSystem().dividedBy(ofTarget);
        return new Conversion(source.row(), target.row(), exact, CompiledFactor.of(exact));
    }

    private static FactorPair factors(SymbolTable.Entry<?> entry) {
        FactorPair factors = entry.factors();
        if (factors == null) {
            throw new InvalidInputException(
                    RefusalCode.WRONG_UNIT,
                    "unit",
                    "one that differs by a factor only (a temperature scale also has an offset)",
                    "\"" + entry.row().label() + "\"");
        }
        return factors;
    }

    /**
     * The exact factor: results are values times this.
     *
     * @return the factor in lowest terms
     */
    public ExactFactor exactFactor() {
        return exact;
    }

    /**
     * Converts one value.
     *
     * @param value a finite value in the first unit
     * @return the value in the second unit
     * @throws InvalidInputException if the value is not finite, or the result would overflow
     */
    public double convert(double value) {
        double result = factor.times(value);
        if (!(Math.abs(result) <= Double.MAX_VALUE)) {
            throw notFinite("value", value);
        }
        return result;
    }

    /**
     * Converts many values and then reports the first result that is not finite, once, after the loop.
     *
     * @param values values in the first unit
     * @param results receives the values in the second unit; may be {@code values} itself
     * @throws InvalidInputException if the lengths differ (nothing is written), or if a value is not finite or
     *     overflows (everything has been written; the message names the first such index)
     */
    public void convert(double[] values, double[] results) {
        checkLengths(values, results);
        int firstBad = -1;
        for (int from = 0; from < values.length; from += BLOCK) {
            int to = Math.min(from + BLOCK, values.length);
            factor.times(values, results, from, to);
            if (firstBad < 0 && !allFinite(results, from, to)) {
                firstBad = firstNotFinite(results, from);
            }
        }
        if (firstBad >= 0) {
            throw notFinite("value at index " + firstBad, results[firstBad]);
        }
    }

    /**
     * Converts many values without looking at the results: a value that is not finite gives a result that is not
     * finite, and an overflow gives an infinity.
     *
     * @param values values in the first unit
     * @param results receives the values in the second unit; may be {@code values} itself
     * @throws InvalidInputException if the lengths differ
     */
    public void convertUnchecked(double[] values, double[] results) {
        checkLengths(values, results);
        factor.times(values, results, 0, values.length);
    }

    private static void checkLengths(double[] values, double[] results) {
        Objects.requireNonNull(values, "values");
        Objects.requireNonNull(results, "results");
        if (values.length != results.length) {
            throw new InvalidInputException(
                    RefusalCode.INCONSISTENT,
                    "length of the results",
                    "that of the values, " + values.length,
                    String.valueOf(results.length),
                    String.valueOf(values.length));
        }
    }

    /**
     * 0·x is zero for a finite x and NaN otherwise; eight sums side by side hide the latency of the addition. A loop that
     * stops at the first bad one took more than half as long again.
     */
    private static boolean allFinite(double[] results, int from, int to) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        double e = 0;
        double f = 0;
        double g = 0;
        double h = 0;
        int i = from;
        for (; i + 7 < to; i += 8) {
            a += results[i] * 0;
            b += results[i + 1] * 0;
            c += results[i + 2] * 0;
            d += results[i + 3] * 0;
            e += results[i + 4] * 0;
            f += results[i + 5] * 0;
            g += results[i + 6] * 0;
            h += results[i + 7] * 0;
        }
        for (; i < to; i++) {
            a += results[i] * 0;
        }
        return a == 0 && b == 0 && c == 0 && d == 0 && e == 0 && f == 0 && g == 0 && h == 0;
    }

    private static int firstNotFinite(double[] results, int from) {
        int i = from;
        while (Double.isFinite(results[i])) {
            i++;
        }
        return i;
    }

    private InvalidInputException notFinite(String field, double value) {
        return new InvalidInputException(
                RefusalCode.NOT_FINITE,
                field,
                "finite after conversion from " + fromLabel + " to " + toLabel,
                String.valueOf(value));
    }

    /**
     * Two conversions are equal when they are between the same units.
     *
     * @param other another object
     * @return whether it is a conversion between the same units
     */
    @Override
    public boolean equals(Object other) {
        return other instanceof Conversion that && fromLabel.equals(that.fromLabel) && toLabel.equals(that.toLabel);
    }

    @Override
    public int hashCode() {
        return Objects.hash(fromLabel, toLabel);
    }

    /**
     * Says what is converted and by which factor.
     *
     * @return for example "lb/mi to kg/km: × 4123567/14630400"
     */
    @Override
    public String toString() {
        return fromLabel + " to " + toLabel + ": × " + exact;
    }
}
