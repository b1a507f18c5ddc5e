package org.gritwright.core.solution;

import java.util.Optional;
import java.util.OptionalDouble;
import org.gritwright.core.statistics.MonotoneCurve;

/**
 * Where a salt's solutions begin to freeze. Two curves and what is between them: up to the weakest eutectic that a source gives it
 * falls, from the strongest on it rises. Between the two nobody knows which it is.
 *
 * @param weaker the negative of the temperature in °C by percent, from water to the weakest eutectic: so it rises
 * @param stronger the temperature in °C by percent, from the strongest eutectic on; absent where no table was read
 * @param strongestEutectic in percent
 * @param highest beyond which nothing is said, in percent
 * @param relativeLimit how far sources differ up to the eutectic, relative to how far the solution freezes below water
 */
record FreezingCurve(
        MonotoneCurve weaker,
        Optional<MonotoneCurve> stronger,
        double strongestEutectic,
        double highest,
        double relativeLimit) {
    /** What tables differ by anyway, in K: they are rounded, some to a degree Fahrenheit. */
    private static final double LIMIT = 0.05;

    double weakestEutectic() {
        return weaker.highest();
    }

    /** In °C, up to the weakest eutectic. */
    double celsiusOfWeaker(double percent) {
        // Subtracted, so that water freezes at 0 °C and not at -0 °C.
        return 0 - weaker.at(percent);
    }

    /** In °C, from the strongest eutectic on. */
    OptionalDouble celsiusOfStronger(double percent) {
        return stronger.isPresent() ? OptionalDouble.of(stronger.get().at(percent)) : OptionalDouble.empty();
    }

    double coldest() {
        return celsiusOfWeaker(weakestEutectic());
    }

    /** Half the width, in K, of what the freezing point of a weaker solution may be. */
    double limit(double celsius) {
        return LIMIT + relativeLimit * -celsius;
    }

    /** In K per percent, below 0: over a tenth of a percent that lies on the curve. */
    double slopeOfWeaker(double percent) {
        double below = Math.max(0, percent - 0.05);
        double above = Math.min(weakestEutectic(), percent + 0.05);
        return (celsiusOfWeaker(above) - celsiusOfWeaker(below)) / (above - below);
    }

    OptionalDouble percentOfWeaker(double celsius) {
        return percent(weaker, -celsius);
    }

    OptionalDouble percentOfStronger(double celsius) {
        return stronger.isPresent() ? percent(stronger.get(), celsius) : OptionalDouble.empty();
    }

    /** No curve here is level anywhere, so that the lowest is the highest. */
    private static OptionalDouble percent(MonotoneCurve curve, double value) {
        Optional<MonotoneCurve.Interval> found = curve.where(value);
        return found.isPresent() ? OptionalDouble.of(found.get().lowest()) : OptionalDouble.empty();
    }
}
