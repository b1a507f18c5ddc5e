package org.gritwright.examples.fleetday;

import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.gritwright.units.Amounts;

/** Gate openings as people write them: 2 in and 50.8 mm are one. */
final class Openings {
    private static final double SAME_METRES = 1e-9;

    private Openings() {}

    static boolean areSame(Optional<Quantity<Length>> one, Optional<Quantity<Length>> other) {
        if (one.isEmpty() || other.isEmpty()) {
            return one.isEmpty() && other.isEmpty();
        }
        double difference = Amounts.si(Length.class, one.get()) - Amounts.si(Length.class, other.get());
        return Math.abs(difference) < SAME_METRES;
    }
}
