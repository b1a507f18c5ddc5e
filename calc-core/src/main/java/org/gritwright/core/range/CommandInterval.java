package org.gritwright.core.range;

import java.io.Serializable;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * All commands from one to another: where something is known to lie, or all that do the same. Immutable, thread-safe, a value.
 *
 * @param from the lowest
 * @param to the highest, not below the lowest
 */
public record CommandInterval(Command from, Command to) implements Serializable {
    /**
     * Checks the commands.
     *
     * @throws InvalidInputException if they are of two kinds, or upside down
     */
    public CommandInterval {
        Require.given(CommandInterval.class, from, to);
        Require.that(
                from.in() == to.in() && from.number() <= to.number(),
                "end of the commands",
                from.in().noun() + ", at least " + from,
                to);
    }

    /**
     * Whether it is one command only.
     *
     * @return true if both ends are the same
     */
    public boolean isSingle() {
        return from.number() == to.number();
    }

    /**
     * Whether a command lies in it.
     *
     * @param command a command
     * @return true within the ends, the ends included
     */
    public boolean contains(Command command) {
        return command.in() == from.in() && command.number() >= from.number() && command.number() <= to.number();
    }

    double width() {
        return to.number() - from.number();
    }

    /**
     * As it is written.
     *
     * @return for example "34 % to 36 %", or "35 %" for a single command
     */
    @Override
    public String toString() {
        return isSingle() ? from.toString() : from + " to " + to;
    }
}
