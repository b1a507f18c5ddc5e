package org.gritwright.core.weighing;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import javax.measure.Quantity;
import org.gritwright.core.finding.Finding;

/**
 * What one catch caught and how that was measured: weighed on a scale or, of a liquid, weighed or read from a graduated container.
 * Use it wherever only the amount and its errors matter. Implementations are immutable, thread-safe values.
 *
 * <p>Numbers are in the SI unit of the kind that counts: kilograms of a solid, cubic meters of a liquid.
 */
public sealed interface Caught permits CaughtMass, CaughtVolume {
    /**
     * The amount.
     *
     * @return a mass or, of a liquid, a volume; greater than zero
     */
    Quantity<?> total();

    /**
     * The amount as a number.
     *
     * @return kilograms or cubic meters, greater than zero
     */
    double si();

    /**
     * The standard uncertainty of the rounding of all readings.
     *
     * @return kilograms or cubic meters
     */
    double roundingSi();

    /**
     * The containers that were weighed.
     *
     * @return the containers; none where nothing was weighed
     */
    default List<Weighing> weighings() {
        return List.of();
    }

    /**
     * All that was read, as numbers: what tells one catch from another.
     *
     * @return gross and tare of each container in kilograms, or each fill in cubic meters
     */
    List<Double> readingsSi();

    /**
     * How many readings were rounded, each on its own.
     *
     * @return one or more
     */
    int readings();

    /**
     * The rounding of one reading, as it was read.
     *
     * @return the standard uncertainty: division ÷ √12 (JCGM 100:2008, the GUM, F.2.2.1), in the division's unit
     */
    Quantity<?> readingUncertainty();

    /**
     * The step of the reading.
     *
     * @return the division of the scale or of the container
     */
    Quantity<?> division();

    /**
     * How many divisions were caught.
     *
     * @return amount ÷ division, greater than zero
     */
    double divisions();

    /**
     * The day of measuring.
     *
     * @return the day
     */
    LocalDate measuredOn();

    /**
     * What it was measured with.
     *
     * @return the id of the scale or of the graduated container
     */
    String instrument();

    /**
     * Whether the amount was weighed.
     *
     * @return true for a scale, false for a graduated container
     */
    boolean isWeighed();

    /**
     * How far off the amount may be by an error in proportion to it, which all catches measured with the same thing have in
     * common: the span of a scale, the volume of a container.
     *
     * @return the relative limit; none if nobody knows
     */
    OptionalDouble relativeSpanLimit();

    /**
     * What is assumed where {@link #relativeSpanLimit} isn't known.
     *
     * @return the relative limit
     */
    double assumedSpanLimit();

    /**
     * Whether a wrong span would have been noticed.
     *
     * @return true if a test near the amount, or the class of a container, bounds it
     */
    boolean isSpanTested();

    /**
     * How uncertain the amount is because a mass was turned into a volume.
     *
     * @return the relative standard uncertainty of the density, shared by all catches of that density; 0 where none was needed
     */
    default double relativeDensityUncertainty() {
        return 0;
    }

    /**
     * What a person should know about the measuring.
     *
     * @return the findings, possibly none
     */
    List<Finding> findings();
}
