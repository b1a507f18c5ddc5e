package org.gritwright.core.solution;

import java.util.Optional;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.check.Require;

/**
 * The solutions that begin to freeze at one temperature: there are two, one on either side of the eutectic, and a freezing point
 * alone doesn't tell them apart. A density does. Immutable, thread-safe, a value.
 *
 * @param weaker the one up to the eutectic
 * @param stronger the one beyond the eutectic, absent where no table was read
 */
public record FreezingMatch(Solution weaker, Optional<Solution> stronger) {
    /** Checks that all is given. */
    public FreezingMatch {
        Require.given(FreezingMatch.class, weaker, stronger);
    }

    /**
     * The one that was meant, by a density that was read too, if only roughly.
     *
     * @param other the solution by its density
     * @return the weaker or the stronger, whichever is on the other's side of the eutectic
     * @throws InvalidInputException if the other is of another salt, if its side is undecided, or if it is beyond the eutectic and
     *     no table was read there
     */
    public Solution beside(Solution other) {
        Require.that(
                other.salt() == weaker.salt(),
                "solution by its density",
                "of " + weaker.salt().words(),
                other.salt().words());
        return switch (other.side()) {
            case UP_TO_EUTECTIC -> weaker;
            case BEYOND_EUTECTIC ->
                stronger.orElseThrow(() -> refused("up to the eutectic, where freezing points are known", other));
            case UNDECIDED -> throw refused("on one side of the eutectic for certain", other);
        };
    }

    private static InvalidInputException refused(String accepted, Solution other) {
        return new InvalidInputException(
                "solution by its density", accepted, other.share().toString());
    }
}
