package org.gritwright.core.chart;

import java.util.List;
import javax.measure.Quantity;

/**
 * What a card says of one rate. Immutable, thread-safe, a value.
 *
 * @param <Q> the kind of rate
 */
public sealed interface CardLine<Q extends Quantity<Q>> permits FeedbackLine, OpenLoopLine {
    /**
     * What the rate is stated for.
     *
     * @return the basis
     */
    RateBasis<Q> basis();

    /**
     * The rate.
     *
     * @return greater than zero
     */
    Quantity<Q> rate();

    /**
     * What the driver has to know, in words.
     *
     * @return one or more sentences without a period, for example "slow down above 31 mi/h: the drive turns the shaft no faster"
     */
    List<String> words();
}
