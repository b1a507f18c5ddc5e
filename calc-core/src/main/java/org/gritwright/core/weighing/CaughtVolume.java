package org.gritwright.core.weighing;

import javax.measure.Quantity;
import javax.measure.quantity.Volume;

/** What one catch of a liquid caught, as a volume: read from a graduated container, or weighed and divided by the density. */
public sealed interface CaughtVolume extends Caught permits ReadVolume, WeighedVolume {
    /**
     * The caught volume.
     *
     * @return the volume, greater than zero
     */
    @Override
    Quantity<Volume> total();

    /**
     * The caught volume as a number.
     *
     * @return cubic meters, greater than zero
     */
    @Override
    double si();
}
