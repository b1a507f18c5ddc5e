package org.gritwright.units;

import org.jspecify.annotations.Nullable;

/**
 * Numbers as text by JSON's grammar (RFC 8259, section 6), without any locale.
 *
 * <p>{@code Double.parseDouble} alone would take hexadecimal, a trailing "d" and "NaN".
 */
final class DecimalText {
    private static final int PLAIN_DIGITS = 21;
    private static final int PLAIN_ZEROS = 7;

    private DecimalText() {}

    /**
     * Where the number at the start of the text ends.
     *
     * @return the index after the number's last character; 0 if the text doesn't start with a number
     */
    static int endOfNumber(String text) {
        int at = text.startsWith("-") ? 1 : 0;
        int digits = endOfDigits(text, at);
        if (digits == at) {
            return 0;
        }
        at = text.charAt(at) == '0' ? at + 1 : digits;
        if (at < text.length() && text.charAt(at) == '.' && endOfDigits(text, at + 1) > at + 1) {
            at = endOfDigits(text, at + 1);
        }
        if (at < text.length() && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
            boolean signed = at + 1 < text.length() && (text.charAt(at + 1) == '+' || text.charAt(at + 1) == '-');
            int exponent = signed ? at + 2 : at + 1;
            int end = endOfDigits(text, exponent);
            at = end > exponent ? end : at;
        }
        return at;
    }

    private static int endOfDigits(String text, int from) {
        int at = from;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return at;
    }

    /** What is wrong with a number, by name, where the slip is a common one; else {@code null}. */
    static @Nullable String slip(String text, int endOfNumber) {
        if (endOfNumber == 0) {
            return slipAtStart(text);
        }
        String rest = text.substring(endOfNumber);
        char next = rest.isEmpty() ? ' ' : rest.charAt(0);
        if (next == ',') {
            return "no comma in a number: write a point for decimals and no thousands separator";
        }
        if (next == '.') {
            return "a digit after the point, and one point only";
        }
        if (next >= '0' && next <= '9') {
            return "no leading zero";
        }
        if (text.charAt(endOfNumber - 1) == '0' && (next == 'x' || next == 'X')) {
            return "no hexadecimal number";
        }
        boolean lone = rest.length() == 1 || rest.startsWith(" ", 1);
        if (lone && "dDfF".indexOf(next) >= 0) {
            return "no letter \"" + next + "\" after a number";
        }
        if (lone && "eE".indexOf(next) >= 0) {
            return "digits after the exponent's \"" + next + "\"";
        }
        return null;
    }

    private static String slipAtStart(String text) {
        String unsigned = text.startsWith("-") ? text.substring(1) : text;
        if (unsigned.startsWith("NaN")) {
            return "NaN is not a number";
        }
        if (unsigned.startsWith("Infinity")) {
            return "infinity is not a number";
        }
        if (unsigned.startsWith(".")) {
            return "a digit before the point";
        }
        if (text.startsWith("+")) {
            return "no plus sign before a number";
        }
        if (text.startsWith("\u2212")) {
            return "an ordinary hyphen for a minus sign";
        }
        return !unsigned.isEmpty() && Character.isDigit(unsigned.charAt(0)) ? "digits 0 to 9" : "a number first";
    }

    /** The value in decimals, with the fewest digits that read back as the same double; −0.0 as 0. */
    static String print(double value) {
        if (value == 0) {
            return "0";
        }
        if (value < 0) {
            return "-" + print(-value);
        }
        ShortestDecimal decimal = ShortestDecimal.of(value).stripped();
        StringBuilder text = new StringBuilder().append(decimal.digits());
        int precision = text.length();
        int pointAt = precision + decimal.exponent();
        if (pointAt > PLAIN_DIGITS || pointAt <= -PLAIN_ZEROS) {
            if (precision > 1) {
                text.insert(1, '.');
            }
            return text.append('e').append(pointAt - 1).toString();
        }
        if (pointAt <= 0) {
            return "0." + "0".repeat(-pointAt) + text;
        }
        if (pointAt < precision) {
            return text.insert(pointAt, '.').toString();
        }
        return text.append("0".repeat(pointAt - precision)).toString();
    }

    /** Whether a number's digits, by JSON's grammar, say something else than zero. */
    static boolean isNonZero(String number) {
        return number.chars().takeWhile(c -> c != 'e' && c != 'E').anyMatch(c -> c >= '1' && c <= '9');
    }
}
