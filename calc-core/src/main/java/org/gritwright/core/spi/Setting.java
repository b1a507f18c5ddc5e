package org.gritwright.core.spi;

import java.io.Serializable;
import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.Conversion;
import org.gritwright.units.ExactFactor;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/**
 * Where a gate or a control stands, as a person reads it: a measured height, a painted mark, a percentage, or nothing to
 * set. Use it wherever a calibration, a catch or a prediction is for one position of the gate.
 *
 * <p>A setting keeps the number and unit it was read in, and two are equal when both are. Whether they are the same
 * position is another question: 2 in and 50.8 mm are, see {@link #position()}. A mark and a percentage never are: 40 on
 * one scale says nothing about 40 % on another. Immutable, thread-safe, a value.
 */
public sealed interface Setting extends Serializable {

    /** What a setting is read on. */
    enum Scale {
        /** A height above the conveyor, measured as a length. */
        HEIGHT("a height", "2 in"),
        /** A painted mark, a bare number. */
        MARK("the number of a painted mark", "3"),
        /** A percentage. */
        PERCENT("a percentage", "40 %"),
        /** There is nothing to set. */
        NONE("left out", "");

        private final String noun;
        private final String example;

        Scale(String noun, String example) {
            this.noun = noun;
            this.example = example;
        }

        /**
         * What a setting on this scale is.
         *
         * @return for example "a height"; "left out" where there is nothing to set
         */
        String noun() {
            return noun;
        }

        /**
         * In words, to follow "must be".
         *
         * @return for example "a height, for example \"2 in\""
         */
        public String words() {
            return example.isEmpty() ? noun : noun + ", for example \"" + example + "\"";
        }
    }

    /**
     * A measured height.
     *
     * @param height the height of the opening above the conveyor, 0 or more
     */
    record Height(Quantity<Length> height) implements Setting {
        /**
         * Checks the height.
         *
         * @throws InvalidInputException if it is negative
         */
        public Height {
            height = own(Require.notNegative(FIELD, Length.class, height));
        }

        @Override
        public String toString() {
            return Amounts.format(height);
        }
    }

    /**
     * A painted mark.
     *
     * @param number the number at the mark, without a unit, 0 or more
     */
    record Mark(Quantity<Dimensionless> number) implements Setting {
        /**
         * Checks the number.
         *
         * @throws InvalidInputException if it is negative or in another unit than one
         */
        public Mark {
            number = own(Require.notNegative(FIELD, Dimensionless.class, number));
            if (!number.getUnit().equals(SpreadingUnits.ONE)) {
                throw new InvalidInputException(FIELD, Scale.MARK.words(), Amounts.format(number));
            }
        }

        @Override
        public String toString() {
            return "mark " + Amounts.format(number);
        }
    }

    /**
     * A percentage.
     *
     * @param percentage the percentage, 0 % or more
     */
    record Percent(Quantity<Dimensionless> percentage) implements Setting {
        /**
         * Checks the percentage.
         *
         * @throws InvalidInputException if it is negative or in another unit than percent
         */
        public Percent {
            percentage = own(Require.notNegative(FIELD, Dimensionless.class, percentage));
            if (!percentage.getUnit().equals(SpreadingUnits.PERCENT)) {
                throw new InvalidInputException(FIELD, Scale.PERCENT.words(), Amounts.format(percentage));
            }
        }

        @Override
        public String toString() {
            return Amounts.format(percentage);
        }
    }

    /** Nothing to set: a fixed opening, or a conveyor that fills itself. */
    record None() implements Setting {
        @Override
        public String toString() {
            return "no setting";
        }
    }

    /**
     * A position on a scale, whatever unit it was read in: the key that tells calibration points apart.
     *
     * @param scale what the setting is read on
     * @param exact the exact number: meters, the mark's number, or the percentage as a ratio, without trailing zeros
     */
    record Position(Scale scale, BigDecimal exact) implements Serializable {
        /** Checks that nothing is null. */
        public Position {
            Require.given(Position.class, scale, exact);
        }
    }

    /** What a setting is called in a refusal. */
    String FIELD = "gate setting";

    /**
     * A measured height.
     *
     * @param height 0 or more
     * @return the setting
     * @throws InvalidInputException if it is negative
     */
    static Setting height(Quantity<Length> height) {
        return new Height(height);
    }

    /**
     * A painted mark.
     *
     * @param number 0 or more
     * @return the setting
     * @throws InvalidInputException if it is negative or not finite
     */
    static Setting mark(double number) {
        return new Mark(Amounts.of(number, SpreadingUnits.ONE));
    }

    /**
     * A percentage.
     *
     * @param percentage 0 or more, for example 40 for 40 %
     * @return the setting
     * @throws InvalidInputException if it is negative or not finite
     */
    static Setting percent(double percentage) {
        return new Percent(Amounts.of(percentage, SpreadingUnits.PERCENT));
    }

    /**
     * Nothing to set.
     *
     * @return the setting
     */
    static Setting none() {
        return new None();
    }

    /**
     * A setting from a quantity, whose unit says the scale.
     *
     * @param reading a length, a bare number, or a percentage; 0 or more
     * @return the setting
     * @throws InvalidInputException if it is none of these, or negative
     */
    @SuppressWarnings("unchecked") // the kind is compared first
    static Setting of(Quantity<?> reading) {
        Objects.requireNonNull(reading, "reading");
        Class<?> kind = UnitSymbol.of(reading.getUnit()).kind();
        if (kind.equals(Length.class)) {
            return new Height((Quantity<Length>) reading);
        }
        if (reading.getUnit().equals(SpreadingUnits.ONE)) {
            return new Mark((Quantity<Dimensionless>) reading);
        }
        if (reading.getUnit().equals(SpreadingUnits.PERCENT)) {
            return new Percent((Quantity<Dimensionless>) reading);
        }
        throw new InvalidInputException(
                FIELD, "a height, the number of a painted mark, or a percentage", Amounts.format(reading));
    }

    /**
     * What the setting is read on.
     *
     * @return the scale
     */
    default Scale scale() {
        return match(height -> Scale.HEIGHT, mark -> Scale.MARK, percent -> Scale.PERCENT, () -> Scale.NONE);
    }

    /**
     * The setting as it was read.
     *
     * @return a length, a bare number or a percentage; none where there is nothing to set
     */
    default Optional<Quantity<?>> quantity() {
        return match(
                height -> Optional.of(height.height()),
                mark -> Optional.of(mark.number()),
                percent -> Optional.of(percent.percentage()),
                Optional::empty);
    }

    /**
     * The setting as the number that an {@link OpenArea} takes.
     *
     * @return meters, the mark's number, or the percentage as a ratio; 0 where there is nothing to set
     */
    default double si() {
        return match(
                height -> Amounts.si(Length.class, height.height()),
                mark -> Amounts.si(Dimensionless.class, mark.number()),
                percent -> Amounts.si(Dimensionless.class, percent.percentage()),
                () -> 0.0);
    }

    /**
     * A number as a setting on this one's scale and in its unit: the way back from {@link #si}.
     *
     * @param si meters, a mark's number, or a ratio
     * @return the setting
     * @throws InvalidInputException if the number is negative or not finite
     */
    default Setting withSi(double si) {
        return match(
                height -> height(Amounts.ofSi(si, height.height().getUnit())),
                mark -> mark(si),
                percent -> new Percent(Amounts.ofSi(si, SpreadingUnits.PERCENT)),
                Setting::none);
    }

    /**
     * The position that this setting is, exactly: what was read is taken as the decimal number it is written as.
     *
     * @return the position, equal for 2 in and 50.8 mm
     */
    default Position position() {
        return new Position(
                scale(),
                match(
                        height -> exact(height.height(), SpreadingUnits.METER),
                        mark -> exact(mark.number(), SpreadingUnits.ONE),
                        percent -> exact(percent.percentage(), SpreadingUnits.ONE),
                        () -> BigDecimal.ZERO));
    }

    /** Our own copy, so that equality and serialization don't depend on somebody else's quantity. */
    private static <Q extends Quantity<Q>> Quantity<Q> own(Quantity<Q> checked) {
        return Amounts.of(checked.getValue().doubleValue(), checked.getUnit());
    }

    private static <Q extends Quantity<Q>> BigDecimal exact(Quantity<Q> reading, javax.measure.Unit<Q> unit) {
        ExactFactor factor = Conversion.between(reading.getUnit(), unit).exactFactor();
        // Every length and ratio of the symbol table is a finite decimal of its SI unit.
        BigDecimal decimal = new BigDecimal(factor.numerator()).divide(new BigDecimal(factor.denominator()));
        return BigDecimal.valueOf(reading.getValue().doubleValue())
                .multiply(decimal)
                .stripTrailingZeros();
    }

    /**
     * Whether this and another setting are one position, whatever unit they were read in.
     *
     * @param other another setting
     * @return true for 2 in and 50.8 mm
     */
    default boolean isSameAs(Setting other) {
        return position().equals(other.position());
    }

    /**
     * Does one thing for each kind of setting.
     *
     * @param <T> the type of the result
     * @param height for a measured height
     * @param mark for a painted mark
     * @param percent for a percentage
     * @param none where there is nothing to set
     * @return what was done for this setting's kind
     */
    default <T> T match(
            Function<Height, T> height, Function<Mark, T> mark, Function<Percent, T> percent, Supplier<T> none) {
        if (this instanceof Height one) {
            return height.apply(one);
        }
        if (this instanceof Mark one) {
            return mark.apply(one);
        }
        return this instanceof Percent one ? percent.apply(one) : none.get();
    }
}
