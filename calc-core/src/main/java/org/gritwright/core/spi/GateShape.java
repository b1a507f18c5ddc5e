package org.gritwright.core.spi;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.UnitSymbol;
import org.gritwright.units.check.Require;

/** What a gate leaves open: something that can be set, something fixed, or nothing at all. Immutable, thread-safe. */
public sealed interface GateShape {

    /** A gate that can be set, by its measured opening or by the setting of a painted mark. */
    final class Adjustable<Q extends Quantity<Q>> implements GateShape {
        private final Class<Q> kind;
        private final Quantity<Q> lowest;
        private final Quantity<Q> highest;
        private final Quantity<Q> closed;
        private final OpenArea area;

        private Adjustable(Class<Q> kind, Quantity<Q> lowest, Quantity<Q> highest, Quantity<Q> closed, OpenArea area) {
            this.kind = kind;
            this.lowest = Require.notNegative("lowest gate opening", kind, lowest);
            this.highest = Require.atLeast("highest gate opening", kind, highest, lowest);
            this.closed = closed;
            this.area = Objects.requireNonNull(area, "area");
        }

        /**
         * The same gate with a closed position.
         *
         * @param position the highest opening at which nothing is open
         * @return the shape
         * @throws InvalidInputException if the position is not within the limits
         */
        public Adjustable<Q> closedAt(Quantity<Q> position) {
            Require.within("closed position", kind, position, lowest, highest);
            return new Adjustable<>(kind, lowest, highest, position, area);
        }

        /**
         * What the gate is set by.
         *
         * @return a length, or a bare number for a setting
         */
        public Class<Q> kind() {
            return kind;
        }

        /**
         * The smallest opening that can be set.
         *
         * @return 0 or more
         */
        public Quantity<Q> lowest() {
            return lowest;
        }

        /**
         * The largest opening that can be set.
         *
         * @return not below the lowest
         */
        public Quantity<Q> highest() {
            return highest;
        }

        /**
         * The highest opening at which nothing is open.
         *
         * @return the closed position, if the type declares one
         */
        public Optional<Quantity<Q>> closed() {
            return Optional.ofNullable(closed);
        }

        /**
         * The cross-section as a function of the opening.
         *
         * @return the function
         */
        public OpenArea area() {
            return area;
        }
    }

    /**
     * A gate that can't be set.
     *
     * @param area its cross-section, greater than zero
     */
    record Fixed(Quantity<Area> area) implements GateShape {
        /**
         * Checks the area.
         *
         * @throws InvalidInputException if it is not greater than zero
         */
        public Fixed {
            Require.positive("open area", Area.class, area);
        }
    }

    /** No gate: the conveyor fills itself. */
    record None() implements GateShape {}

    /**
     * A gate that is set by a measured opening.
     *
     * @param lowest the smallest opening that can be set, 0 or more
     * @param highest the largest opening that can be set, not below the lowest
     * @param area the cross-section as a function of the opening in metres
     * @return the shape, without a closed position
     * @throws InvalidInputException if the lowest opening is negative or above the highest
     */
    static Adjustable<Length> byOpening(Quantity<Length> lowest, Quantity<Length> highest, OpenArea area) {
        return adjustable(Length.class, lowest, highest, area);
    }

    /**
     * A gate that is set by a measured opening, a length, or by a painted mark, a bare number.
     *
     * @param <Q> what the gate is set by
     * @param kind {@code Length.class} or {@code Dimensionless.class}
     * @param lowest the smallest opening that can be set, 0 or more
     * @param highest the largest opening that can be set, not below the lowest
     * @param area the cross-section as a function of the opening in metres, or of the setting
     * @return the shape, without a closed position
     * @throws InvalidInputException if the kind is another, or the lowest opening is negative or above the highest
     */
    static <Q extends Quantity<Q>> Adjustable<Q> adjustable(
            Class<Q> kind, Quantity<Q> lowest, Quantity<Q> highest, OpenArea area) {
        if (!kind.equals(Length.class) && !kind.equals(Dimensionless.class)) {
            throw new InvalidInputException(
                    "what a gate is set by", "a length or a bare number", UnitSymbol.kindName(kind));
        }
        return new Adjustable<>(kind, lowest, highest, null, area);
    }

    /**
     * A gate that can't be set.
     *
     * @param area its cross-section
     * @return the shape
     * @throws InvalidInputException if the area is not greater than zero
     */
    static Fixed fixed(Quantity<Area> area) {
        return new Fixed(area);
    }

    /**
     * No gate.
     *
     * @return the shape
     */
    static None none() {
        return new None();
    }
}
