package org.gritwright.core.plausibility;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.measure.Unit;
import javax.measure.quantity.Volume;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Numbers that a tired person writes for another. Stateless, thread-safe. */
public final class Digits {
    private static final Pattern NUMBER = Pattern.compile("(0|[1-9]\\d*)(\\.\\d+)?");

    /** By what a length is wrong: decimal point misplaced, inches and centimeters or inches and millimeters mixed up. */
    public static final List<Double> LENGTH_FACTORS = List.of(10.0, 2.54, 25.4);

    /** A US gallon in liters. */
    public static final double LITERS_PER_GALLON = in(SpreadingUnits.US_GALLON, SpreadingUnits.LITER);

    /** An imperial gallon in US gallons. */
    public static final double GALLONS_PER_IMPERIAL = in(SpreadingUnits.IMPERIAL_GALLON, SpreadingUnits.US_GALLON);

    /** By what a volume is wrong: decimal point misplaced, liters and gallons mixed up. */
    public static final List<Double> VOLUME_FACTORS = List.of(10.0, LITERS_PER_GALLON);

    private Digits() {}

    private static double in(Unit<Volume> one, Unit<Volume> other) {
        return Amounts.in(Amounts.of(1, one), other);
    }

    private static String text(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    private static void addIfNumber(String candidate, Set<Double> numbers) {
        if (NUMBER.matcher(candidate).matches()) {
            numbers.add(Double.valueOf(candidate));
        }
    }

    /**
     * Every number with one digit less.
     *
     * @param number a finite number, 0 or more
     * @return the numbers, as a person would write them
     */
    public static Set<Double> withOneLess(double number) {
        String digits = text(number);
        Set<Double> shorter = new TreeSet<>();
        for (int i = 0; i < digits.length(); i++) {
            addIfNumber(digits.substring(0, i) + digits.substring(i + 1), shorter);
        }
        return shorter;
    }

    /**
     * Every number with one digit more.
     *
     * @param number a finite number, 0 or more
     * @return the numbers, as a person would write them
     */
    public static Set<Double> withOneMore(double number) {
        String digits = text(number);
        Set<Double> longer = new TreeSet<>();
        for (int i = 0; i <= digits.length(); i++) {
            for (char digit = '0'; digit <= '9'; digit++) {
                addIfNumber(digits.substring(0, i) + digit + digits.substring(i), longer);
            }
        }
        return longer;
    }

    /**
     * Every number with two neighboring digits exchanged.
     *
     * @param number a finite number, 0 or more
     * @return the numbers, as a person would write them
     */
    public static Set<Double> swapped(double number) {
        String digits = text(number);
        Set<Double> swapped = new TreeSet<>();
        for (int i = 0; i + 1 < digits.length(); i++) {
            char first = digits.charAt(i);
            char second = digits.charAt(i + 1);
            if (first != second && first != '.' && second != '.') {
                addIfNumber(digits.substring(0, i) + second + first + digits.substring(i + 2), swapped);
            }
        }
        return swapped;
    }
}
