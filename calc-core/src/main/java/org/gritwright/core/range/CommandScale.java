package org.gritwright.core.range;

import java.io.Serializable;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Comparison;
import org.gritwright.units.check.Require;

/**
 * The commands that a valve can be given. Immutable, thread-safe, a value.
 *
 * @param lowest the lowest
 * @param highest the highest, greater than the lowest
 * @param step by how much a command can be changed at least: from a millionth of the span to all of it
 */
public record CommandScale(Command lowest, Command highest, Command step) implements Serializable {
    private static final double MOST_STEPS = 1e6;

    /**
     * Checks the commands.
     *
     * @throws InvalidInputException if they aren't all of one kind, the scale is upside down, or the step is out of its range
     */
    public CommandScale {
        Require.given(CommandScale.class, lowest, highest, step);
        requireSame("highest command", lowest.in(), highest);
        requireSame("command step", lowest.in(), step);
        Require.that(highest.number() > lowest.number(), "highest command", "greater than " + lowest, highest);
        double span = highest.number() - lowest.number();
        Require.that(
                step.number() >= span / MOST_STEPS && !Comparison.isAbove(step.number(), span),
                "command step",
                "from a millionth of the span to all of it",
                step);
    }

    private static void requireSame(String field, Command.In in, Command command) {
        Require.that(command.in() == in, field, in.noun(), command);
    }

    /**
     * From 0 % to 100 %.
     *
     * @param step by how many percent a command can be changed at least
     * @return the scale
     * @throws InvalidInputException if the step is out of its range
     */
    public static CommandScale percent(double step) {
        return new CommandScale(Command.percent(0), Command.percent(100), Command.percent(step));
    }

    /**
     * A range of currents.
     *
     * @param lowest the lowest, in milliamperes
     * @param highest the highest
     * @param step by how much the current can be changed at least
     * @return the scale
     * @throws InvalidInputException if the scale is upside down, or the step is out of its range
     */
    public static CommandScale milliamperes(double lowest, double highest, double step) {
        return new CommandScale(
                Command.milliamperes(lowest), Command.milliamperes(highest), Command.milliamperes(step));
    }

    /**
     * A range of bare numbers, such as the settings of a control.
     *
     * @param lowest the lowest
     * @param highest the highest
     * @param step by how much a number can be changed at least
     * @return the scale
     * @throws InvalidInputException if the scale is upside down, or the step is out of its range
     */
    public static CommandScale numbers(double lowest, double highest, double step) {
        return new CommandScale(Command.number(lowest), Command.number(highest), Command.number(step));
    }

    /**
     * Checks that a command is one of the scale; between steps it may be.
     *
     * @param command the command
     * @return the command
     * @throws InvalidInputException if it is of another kind or outside
     */
    public Command require(Command command) {
        requireSame(Command.FIELD, lowest.in(), command);
        Require.that(
                command.number() >= lowest.number() && command.number() <= highest.number(),
                Command.FIELD,
                "within " + lowest + " to " + highest,
                command);
        return command;
    }

    double span() {
        return highest.number() - lowest.number();
    }

    Command at(double number) {
        return new Command(lowest.in(), number);
    }

    boolean isMoreThanAStep(Command from, Command to) {
        return to.exact().subtract(from.exact()).compareTo(step.exact()) > 0;
    }

    /** How many steps there are, the last one possibly a shorter one. */
    int steps() {
        return position(highest, RoundingMode.CEILING);
    }

    /** The command after so many steps from the lowest; after the last one the highest. */
    Command afterSteps(int steps) {
        BigDecimal exact = lowest.exact().add(step.exact().multiply(BigDecimal.valueOf(steps)));
        return exact.compareTo(highest.exact()) >= 0 ? highest : at(exact.doubleValue());
    }

    /** After how many steps the last command comes that isn't above this one. */
    int lastStepTo(Command command) {
        // The last step may be a shorter one.
        return command.number() >= highest.number() ? steps() : position(command, RoundingMode.FLOOR);
    }

    /** After how many steps the first command comes that isn't below this one. */
    int firstStepFrom(Command command) {
        return position(command, RoundingMode.CEILING);
    }

    private int position(Command command, RoundingMode rounding) {
        return command.exact()
                .subtract(lowest.exact())
                .divide(step.exact(), 0, rounding)
                .intValue();
    }
}
