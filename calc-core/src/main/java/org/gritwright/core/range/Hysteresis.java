package org.gritwright.core.range;

import java.io.Serializable;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.units.check.Require;
import org.gritwright.units.check.SerialForm;
import org.gritwright.units.quantity.RotationalSpeed;

/**
 * By how much the command for one speed differs between the way up and the way down: the largest difference, in percent of the
 * scale's span. That definition is ours; a standard may word it otherwise.
 *
 * <p>It is looked for at the speeds that were measured in either direction and that both can hold, below a plateau. As the
 * largest of several it comes out rather too large where speeds scatter. The limits are those of an interval that contains the true
 * one in at least 95 % of all cases: all speeds together are right so often (Bonferroni). Immutable, thread-safe, a value.
 *
 * @param ofSpan the largest difference, in percent of the span
 * @param at the speed where it is
 * @param lowest the lower limit; absent where no command was measured twice
 * @param highest the upper limit, present with the lower one
 */
public record Hysteresis(
        Quantity<Dimensionless> ofSpan,
        Quantity<RotationalSpeed> at,
        Optional<Quantity<Dimensionless>> lowest,
        Optional<Quantity<Dimensionless>> highest)
        implements Serializable {
    private static final double MISSED = 0.05;

    /**
     * Checks the values.
     *
     * @throws org.gritwright.units.InvalidInputException if one is negative, or there is one limit only
     */
    public Hysteresis {
        Require.given(Hysteresis.class, ofSpan, at, lowest, highest);
        Require.notNegative("hysteresis", Dimensionless.class, ofSpan);
        Require.notNegative("shaft speed", RotationalSpeed.class, at);
        lowest.ifPresent(limit -> Require.notNegative("hysteresis", Dimensionless.class, limit));
        highest.ifPresent(limit -> Require.notNegative("hysteresis", Dimensionless.class, limit));
        Require.that(
                lowest.isPresent() == highest.isPresent(),
                "limits of the hysteresis",
                "given together",
                lowest.isPresent() ? "the lower only" : "the upper only");
    }

    /** Of two curves that have speeds in common. */
    static Optional<Hysteresis> between(DriveCurve rising, DriveCurve falling) {
        double slowest = Math.max(rising.speeds()[0], falling.speeds()[0]);
        double fastest = Math.min(rising.fastestBelowKnee(), falling.fastestBelowKnee());
        List<Double> speeds = DoubleStream.concat(DoubleStream.of(rising.speeds()), DoubleStream.of(falling.speeds()))
                .filter(speed -> speed >= slowest && speed <= fastest)
                .distinct()
                .sorted()
                .boxed()
                .toList();
        if (speeds.isEmpty()) {
            return Optional.empty();
        }
        double greatest = -1;
        double at = 0;
        for (double speed : speeds) {
            double apart = apart(
                    rising.commandsFor(speed).orElseThrow(),
                    falling.commandsFor(speed).orElseThrow());
            if (apart > greatest) {
                greatest = apart;
                at = speed;
            }
        }
        Optional<double[]> limits = limits(rising, falling, speeds);
        return Optional.of(new Hysteresis(
                rising.ofSpan(greatest),
                rising.told(at),
                limits.map(both -> rising.ofSpan(both[0])),
                limits.map(both -> rising.ofSpan(both[1]))));
    }

    private static Optional<double[]> limits(DriveCurve rising, DriveCurve falling, List<Double> speeds) {
        double coverage = 1 - MISSED / (2 * speeds.size());
        double lowest = 0;
        double highest = 0;
        for (double speed : speeds) {
            Optional<CommandInterval> up = rising.commandsFor(speed, coverage);
            Optional<CommandInterval> down = falling.commandsFor(speed, coverage);
            if (up.isEmpty() || down.isEmpty()) {
                return Optional.empty();
            }
            lowest = Math.max(lowest, apart(up.get(), down.get()));
            highest = Math.max(highest, spread(up.get(), down.get()));
        }
        return Optional.of(new double[] {lowest, highest});
    }

    /** The distance of the nearest two commands. */
    private static double apart(CommandInterval one, CommandInterval other) {
        return Math.max(
                0,
                Math.max(
                        one.from().number() - other.to().number(),
                        other.from().number() - one.to().number()));
    }

    /** The distance of the farthest two commands. */
    private static double spread(CommandInterval one, CommandInterval other) {
        return Math.max(
                one.to().number() - other.from().number(),
                other.to().number() - one.from().number());
    }

    private Object writeReplace() {
        return SerialForm.of(this);
    }
}
