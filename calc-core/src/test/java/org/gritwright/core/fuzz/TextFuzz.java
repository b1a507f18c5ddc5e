package org.gritwright.core.fuzz;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;

/** Texts that are quantities or nearly so. */
public final class TextFuzz {
    private static final List<UnitSymbol<?>> ROWS = UnitSymbol.all();

    /** What people type where a space should be. */
    private static final List<String> SPACES = List.of(" ", "", "  ", "\t", "\u00a0", "\u202f", "\n", "-");

    private TextFuzz() {}

    /**
     * Reads bytes as choices of a text and of the kind that it is read as.
     *
     * @param data the choices
     */
    public static void fuzzerTestOneInput(byte[] data) {
        Choices choices = new Choices(data);
        UnitSymbol<?> wanted = choices.of(ROWS);
        read(wanted, text(wanted, choices), choices);
    }

    private static String text(UnitSymbol<?> wanted, Choices choices) {
        String text =
                choices.number() + choices.of(SPACES) + spelling(choices.once(3) ? choices.of(ROWS) : wanted, choices);
        for (int i = choices.below(3); i > 0; i--) {
            int at = choices.below(text.length() + 1);
            int end = Math.min(text.length(), at + choices.below(3));
            text = text.substring(0, at) + choices.text(3) + text.substring(end);
        }
        return choices.once(8) ? choices.text(255) : text;
    }

    private static String spelling(UnitSymbol<?> row, Choices choices) {
        String spelling = row.spellings().isEmpty() || !choices.once(2) ? row.symbol() : choices.of(row.spellings());
        return choices.once(6) ? spelling.toUpperCase(Locale.ROOT) : spelling;
    }

    private static <Q extends Quantity<Q>> void read(UnitSymbol<Q> wanted, String text, Choices choices) {
        Quantity<Q> read;
        try {
            read = Amounts.parse(wanted.kind(), text);
        } catch (InvalidInputException e) {
            refusal(e);
            return;
        }
        double value = read.getValue().doubleValue();
        // As the text has it: a minus before a zero is lost in a quantity.
        String digits = text.substring(0, digits(text));
        Check.that(value == new BigDecimal(digits).doubleValue(), "the number of the text");
        Check.equal("read as any kind", Amounts.parseAny(text), read);
        Check.equal("written and read", Amounts.parse(wanted.kind(), Amounts.format(read)), read);
        convert(read, choices.of(UnitSymbol.ofKind(wanted.kind())));
    }

    private static int digits(String text) {
        int end = 0;
        while (end < text.length() && "-+.eE0123456789".indexOf(text.charAt(end)) >= 0) {
            // An "e" that begins a unit's symbol has no digits after it.
            boolean exponent = "eE".indexOf(text.charAt(end)) >= 0;
            if (exponent && !text.substring(end + 1).matches("(?s)[-+]?[0-9].*")) {
                break;
            }
            end++;
        }
        return end;
    }

    private static <Q extends Quantity<Q>> void convert(Quantity<Q> read, UnitSymbol<Q> other) {
        try {
            double there = Amounts.in(read, other.unit());
            Check.that(Double.isFinite(there), "a finite number");
            double back = Conversion.between(other.unit(), read.getUnit()).convert(there);
            double value = read.getValue().doubleValue();
            boolean tiny = Math.abs(there) < 1e-300 || Math.abs(value) < 1e-300;
            // A temperature's offset may be much larger than its number.
            double allowed = 1e-15 * Math.max(Math.abs(value), 1000);
            Check.that(tiny || Math.abs(back - value) <= allowed, "there and back again");
            Check.that(Double.isFinite(Amounts.si(other.kind(), read)), "a finite number in SI units");
        } catch (InvalidInputException e) {
            refusal(e);
        }
    }

    private static void refusal(InvalidInputException refused) {
        Check.that(refused.getMessage().length() < 2000, "a refusal of bounded length");
        Check.that(refused.getMessage().chars().noneMatch(Character::isISOControl), "a refusal that can be shown");
        Check.that(!refused.field().isEmpty() && !refused.accepted().isEmpty(), "field and rule");
    }
}
