package org.gritwright.core.fuzz;

import static org.gritwright.units.SpreadingUnits.INCH;
import static org.gritwright.units.SpreadingUnits.METER;
import static org.gritwright.units.SpreadingUnits.SQUARE_METER;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javax.measure.quantity.Length;
import org.gritwright.core.spi.FillLimits;
import org.gritwright.core.spi.GateShape;
import org.gritwright.core.spi.Parameter;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.spi.Spi;
import org.gritwright.core.spi.TypeId;
import org.gritwright.units.Amounts;

/** What a type does when it is asked: mostly what it should. */
record Moods(Choices choices) {
    static final Parameter<Length> PITCH = Parameter.length("pitch", Amounts.of(1, INCH), Amounts.of(1, METER));
    static final Map<String, ?> ENTERED = Map.of("pitch", Amounts.of(2.25, INCH));
    private static final Parameter<Length> LENGTH = Parameter.length(
                    "length", Amounts.of(1, INCH), Amounts.of(1, METER))
            .withDefault(Amounts.of(3, INCH));

    private static final List<Supplier<Throwable>> THROWN = List.of(
            () -> new IllegalStateException("out of order"),
            NullPointerException::new,
            () -> new IOException("checked"),
            () -> new NoClassDefFoundError("org/example/Missing"),
            () -> new AssertionError("never"),
            StackOverflowError::new);

    private static final List<Double> NUMBERS = List.of(
            0.0,
            -0.0,
            -1.0,
            Double.NaN,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.MIN_VALUE,
            Double.MAX_VALUE,
            1e-200,
            1e200,
            1e-9,
            1e9);

    /** Throws now and then. */
    void ask() {
        if (choices.once(24)) {
            Moods.<RuntimeException>sneak(choices.of(THROWN).get());
        }
    }

    @SuppressWarnings("unchecked") // that's how checked exceptions get past the compiler
    private static <T extends Throwable> void sneak(Throwable thrown) throws T {
        throw (T) thrown;
    }

    boolean isOdd() {
        ask();
        return choices.once(8);
    }

    double number(double usual) {
        return isOdd() ? choices.of(NUMBERS) : usual;
    }

    TypeId id(String usual) {
        return isOdd()
                ? choices.of(Arrays.asList(
                        null, TypeId.of("example.org/other", 1), TypeId.of("drag-chain", 1), TypeId.of(usual, 2)))
                : TypeId.of(usual, 1);
    }

    int level() {
        return isOdd() ? choices.below(256) - 8 : Spi.LEVEL;
    }

    List<Parameter<?>> parameters() {
        if (!isOdd()) {
            return List.of(PITCH, LENGTH);
        }
        return switch (choices.below(6)) {
            case 0 -> null;
            case 1 -> Arrays.asList(PITCH, null);
            case 2 -> List.of(PITCH, PITCH);
            case 3 -> Collections.nCopies(Integer.MAX_VALUE, PITCH);
            case 4 -> List.of(LENGTH);
            default -> {
                List<Parameter<?>> many = new ArrayList<>(List.of(PITCH));
                for (int i = choices.below(4); i > 0; i--) {
                    many.add(Parameter.wholeNumber("n" + i, 0, i).asList(0, i));
                }
                yield many;
            }
        };
    }

    GateShape shape(double width) {
        if (!isOdd()) {
            return GateShape.byOpening(Amounts.of(0, INCH), Amounts.of(12, INCH), height -> number(width * height));
        }
        return switch (choices.below(7)) {
            case 0 -> null;
            case 1 -> GateShape.none();
            case 2 -> GateShape.fixed(Amounts.of(number(0.02), SQUARE_METER));
            case 3 -> GateShape.adjustable(Setting.mark(1), Setting.mark(choices.below(20)), this::number);
            case 4 -> GateShape.adjustable(Setting.percent(0), Setting.percent(choices.below(256)), this::number);
            case 5 ->
                GateShape.byOpening(Amounts.of(0, INCH), Amounts.of(12, INCH), this::number)
                        .closedAt(Amounts.of(choices.below(16), INCH));
            default -> GateShape.byOpening(Amounts.of(number(0), INCH), Amounts.of(number(12), INCH), null);
        };
    }

    FillLimits fill() {
        if (!isOdd()) {
            return FillLimits.COMMON;
        }
        return choices.once(2) ? null : new FillLimits(number(0.3), number(0.5), number(1.15), number(1.3));
    }
}
