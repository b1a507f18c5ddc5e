package org.gritwright.units;

import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;

/** Reads a number and a unit, strictly: every refusal says at which character reading stopped, and quotes the text. */
final class AmountReader {
    private static final int QUOTED = 100;

    /** What a text says. */
    record Reading(double number, UnitSymbol<?> row) {}

    /** {@code null} when any kind will do. */
    private final @Nullable Class<?> kind;

    private final String text;

    private AmountReader(@Nullable Class<?> kind, String text) {
        this.kind = kind;
        this.text = text;
    }

    static Reading read(Class<? extends Quantity<?>> kind, String text) {
        SymbolTable.checkKind(kind);
        return new AmountReader(kind, text).read();
    }

    static Reading readAny(String text) {
        return new AmountReader(null, text).read();
    }

    private Reading read() {
        int end = DecimalText.endOfNumber(text);
        String slip = DecimalText.slip(text, end);
        if (slip != null) {
            throw refusal(RefusalCode.NOT_A_NUMBER, end, slip);
        }
        checkSpacing(end);
        UnitSymbol<?> row = row(text.startsWith(" ", end) ? end + 1 : end);
        return new Reading(number(end), row);
    }

    private void checkSpacing(int end) {
        int last = text.length() - 1;
        if (end > last) {
            return;
        }
        if (isSpace(text.charAt(last))) {
            throw refusal(RefusalCode.MALFORMED, last, "no space at the end");
        }
        char next = text.charAt(end);
        if (isSpace(next)) {
            if (next != ' ') {
                throw refusal(RefusalCode.MALFORMED, end, "an ordinary space or none after the number");
            }
            char afterNext = text.charAt(end + 1);
            if (isSpace(afterNext)) {
                throw refusal(RefusalCode.MALFORMED, end + 1, "one space at most after the number");
            }
            if (afterNext >= '0' && afterNext <= '9') {
                throw refusal(RefusalCode.NOT_A_NUMBER, end, "no space within a number");
            }
        }
    }

    private static boolean isSpace(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }

    private String field() {
        return kind == null ? "quantity" : UnitSymbol.kindName(kind);
    }

    private double number(int end) {
        String digits = text.substring(0, end);
        double value = Double.parseDouble(digits);
        if (Double.isInfinite(value) || (value == 0 && DecimalText.isNonZero(digits))) {
            throw new InvalidInputException(
                    RefusalCode.OUT_OF_RANGE,
                    field(),
                    "within the range of a double, about 5e-324 to 1.8e308",
                    quoted(),
                    DecimalText.print(Double.MIN_VALUE),
                    DecimalText.print(Double.MAX_VALUE));
        }
        return value;
    }

    private UnitSymbol<?> row(int start) {
        String spelling = text.substring(start);
        SymbolTable.Entry<?> entry = SymbolTable.bySpelling(spelling);
        if (entry != null && (kind == null || entry.row().kind().equals(kind))) {
            return entry.row();
        }
        NearestSymbols.Hint hint = NearestSymbols.instead(kind, spelling);
        throw refusal(hint.code(), start, hint.words(), hint.arguments());
    }

    private InvalidInputException refusal(RefusalCode code, int position, String why) {
        return refusal(code, position, why, List.of(String.valueOf(position + 1)));
    }

    private InvalidInputException refusal(RefusalCode code, int position, String why, List<String> arguments) {
        String wanted = kind == null ? "a number and a unit" : "a number and a unit of " + field();
        return new InvalidInputException(
                code,
                field(),
                wanted + " (at character " + (position + 1) + ": " + why + ")",
                quoted(),
                arguments.toArray(String[]::new));
    }

    /** The text between quotation marks, shortened when long; what can't be seen is written as its code. */
    private String quoted() {
        StringBuilder quoted = new StringBuilder("\"");
        for (char c : text.substring(0, Math.min(text.length(), QUOTED)).toCharArray()) {
            boolean invisible =
                    Character.isISOControl(c) || (isSpace(c) && c != ' ') || Character.getType(c) == Character.FORMAT;
            quoted.append(invisible ? String.format(Locale.ROOT, "\\u%04x", (int) c) : String.valueOf(c));
        }
        return quoted.append(text.length() > QUOTED ? "…\"" : "\"").toString();
    }
}
