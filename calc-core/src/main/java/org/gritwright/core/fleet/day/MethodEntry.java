package org.gritwright.core.fleet.day;

/** A way to find out how much was caught, as it was written down: by a scale, or of a liquid in a container with marks. */
public sealed interface MethodEntry permits WeighingMethodEntry, ReadingMethodEntry {
    /**
     * What the yard calls it.
     *
     * @return its name, unique in a plan
     */
    String name();

    /**
     * How long each step takes.
     *
     * @return the times
     */
    StepTimes times();

    /**
     * Whether it is one for liquids.
     *
     * @return true if a liquid is read or weighed, false if grains are weighed
     */
    boolean isForLiquids();

    /**
     * How many containers may be filled in one catch.
     *
     * @return containers, or fills of one; 1 or more
     */
    int mostContainers();
}
