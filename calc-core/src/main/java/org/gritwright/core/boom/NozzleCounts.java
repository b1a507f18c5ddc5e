package org.gritwright.core.boom;

/**
 * From how many nozzles to how many a rate holds over a range of speeds. More than the most would run below their lowest pressure
 * at the lowest speed, fewer than the fewest above their highest pressure at the highest speed. Where the most are fewer than the
 * fewest, no number of them does it: the speeds are farther apart than the flows, which go with the root of the pressure only, so
 * that four times the pressure is twice the speed. Immutable, thread-safe, a value.
 *
 * @param fewest the fewest nozzles
 * @param most the most nozzles; fewer than the fewest where no number does it
 */
public record NozzleCounts(int fewest, int most) {

    /**
     * Whether any number of nozzles does it.
     *
     * @return false where the speeds are too far apart
     */
    public boolean isPossible() {
        return most >= fewest;
    }
}
