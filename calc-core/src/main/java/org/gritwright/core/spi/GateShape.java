package org.gritwright.core.spi;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;

/** What a gate leaves open: something that can be set, something fixed, or nothing at all. Immutable, thread-safe. */
public sealed interface GateShape extends Serializable {

    /**
     * A gate that can be set, on one scale: by its measured height, by a painted mark or in percent. Its limits are
     * settings that a person can make.
     *
     * @param lowest the smallest opening that can be set
     * @param highest the largest opening that can be set, a setting on the same scale, not below the lowest
     * @param closed the highest setting at which nothing is open, if the type declares one
     * @param area the cross-section as a function of the setting
     */
    record Adjustable(Setting lowest, Setting highest, Optional<Setting> closed, OpenArea area) implements GateShape {
        /**
         * Checks the limits.
         *
         * @throws InvalidInputException if there is nothing to set, the settings are on different scales, or one is not within
         *     the limits
         */
        public Adjustable {
            Require.given(Adjustable.class, lowest, highest, closed, area);
            Setting.Scale scale = lowest.scale();
            if (scale == Setting.Scale.NONE) {
                throw new InvalidInputException(
                        "lowest gate setting", "a height, the number of a painted mark, or a percentage", text(lowest));
            }
            if (highest.scale() != scale) {
                throw new InvalidInputException(
                        "highest gate setting", scale.noun() + ", as the lowest is, " + text(lowest), text(highest));
            }
            if (Comparison.isAbove(lowest.si(), highest.si())) {
                throw new InvalidInputException("highest gate setting", "at least " + text(lowest), text(highest));
            }
            closed.ifPresent(position ->
                    new Adjustable(lowest, highest, Optional.empty(), area).check("closed position", position));
        }

        /**
         * The same gate with a closed position.
         *
         * @param position the highest setting at which nothing is open
         * @return the shape
         * @throws InvalidInputException if the position is on another scale or not within the limits
         */
        public Adjustable closedAt(Setting position) {
            return new Adjustable(lowest, highest, Optional.of(position), area);
        }

        /**
         * The same gate, set by its measured height, with a closed position.
         *
         * @param height the largest height at which nothing is open
         * @return the shape
         * @throws InvalidInputException if the gate isn't set by its height, or the height is not within the limits
         */
        public Adjustable closedAt(Quantity<Length> height) {
            return closedAt(Setting.height(Require.notNegative("closed position", Length.class, height)));
        }

        /**
         * What the gate is set on.
         *
         * @return heights, marks or percentages; never {@link Setting.Scale#NONE}
         */
        public Setting.Scale scale() {
            return lowest.scale();
        }

        /**
         * A setting of this gate as the number that {@link #area()} takes.
         *
         * @param setting a setting on the gate's scale, within its limits
         * @return meters, the mark's number, or the percentage as a ratio; never outside the limits, not even by the
         *     rounding of a unit's conversion
         * @throws InvalidInputException if the setting is on another scale or not within the limits
         */
        public double number(Setting setting) {
            check(Setting.FIELD, setting);
            return within(setting.si());
        }

        /**
         * A number within the limits, or off them by no more than rounding, brought within.
         *
         * @param si meters, a mark's number, or a percentage as a ratio
         * @return the number, never outside the limits
         * @throws InvalidInputException if it is farther outside than by rounding, or not a number
         */
        public double number(double si) {
            if (Double.isNaN(si) || isOutside(si)) {
                throw new InvalidInputException(Setting.FIELD, "within " + limits(), String.valueOf(si));
            }
            return within(si);
        }

        private void check(String field, Setting setting) {
            if (setting.scale() != scale()) {
                throw new InvalidInputException(field, scale().noun() + " from " + limits(), text(setting));
            }
            if (isOutside(setting.si())) {
                throw new InvalidInputException(field, "within " + limits(), text(setting));
            }
        }

        private boolean isOutside(double si) {
            return Comparison.isAbove(lowest.si(), si) || Comparison.isAbove(si, highest.si());
        }

        private double within(double si) {
            return Math.max(lowest.si(), Math.min(highest.si(), si));
        }

        private String limits() {
            return text(lowest) + " to " + text(highest);
        }

        /**
         * Scale and limits.
         *
         * @return for example "set by a height from 0 in to 24 in, closed at 0.375 in"
         */
        private Object writeReplace() {
            return SerialForm.of(this);
        }

        @Override
        public String toString() {
            return "set by " + scale().noun() + " from " + limits()
                    + closed.map(position -> ", closed at " + text(position)).orElse("");
        }

        /** As it is written, without a word before it. */
        private static String text(Setting setting) {
            return setting.quantity().map(Amounts::format).orElse("nothing");
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
            Quantity<Area> checked = Require.positive("open area", Area.class, area);
            // Our own copy: somebody else's quantity may answer otherwise, or throw, when it is asked again.
            area = Amounts.of(checked.getValue().doubleValue(), checked.getUnit());
        }

        /**
         * The area.
         *
         * @return for example "fixed at 0.02 m²"
         */
        @Override
        public String toString() {
            return "fixed at " + Amounts.format(area);
        }
    }

    /** No gate: the conveyor fills itself. */
    record None() implements GateShape {
        /**
         * In words.
         *
         * @return "no gate"
         */
        @Override
        public String toString() {
            return "no gate";
        }
    }

    /**
     * A gate that is set by its measured height.
     *
     * @param lowest the smallest height that can be set, 0 or more
     * @param highest the largest height that can be set, not below the lowest
     * @param area the cross-section as a function of the height in meters
     * @return the shape, without a closed position
     * @throws InvalidInputException if the lowest height is negative or above the highest
     */
    static Adjustable byOpening(Quantity<Length> lowest, Quantity<Length> highest, OpenArea area) {
        Require.notNegative("lowest gate opening", Length.class, lowest);
        Require.atLeast("highest gate opening", Length.class, highest, lowest);
        return adjustable(Setting.height(lowest), Setting.height(highest), area);
    }

    /**
     * A gate that is set on one scale: measured heights, painted marks, or percentages, as
     * {@code adjustable(Setting.percent(8), Setting.percent(100), ratio -> 0.05 * ratio)}.
     *
     * @param lowest the smallest opening that can be set
     * @param highest the largest opening that can be set, on the lowest's scale and not below it
     * @param area the cross-section as a function of the height in meters, of the mark's number, or of the percentage as
     *     a ratio, 0.08 for 8 %
     * @return the shape, without a closed position
     * @throws InvalidInputException if there is nothing to set, the two are on different scales, or the lowest is above
     *     the highest
     */
    static Adjustable adjustable(Setting lowest, Setting highest, OpenArea area) {
        return new Adjustable(lowest, highest, Optional.empty(), area);
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
