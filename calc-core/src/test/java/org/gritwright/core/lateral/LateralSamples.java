package org.gritwright.core.lateral;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

/** Rows of pans, half a meter each way, so that a pan's grams × 4 are its g/m². */
final class LateralSamples {
    private LateralSamples() {}

    static Quantity<Length> meters(double meters) {
        return Amounts.of(meters, SpreadingUnits.METER);
    }

    static Quantity<Mass> grams(double grams) {
        return Amounts.of(grams, SpreadingUnits.GRAM);
    }

    static RoadStrip strip(double left, double right) {
        return new RoadStrip(meters(left), meters(right));
    }

    static Pan pan(double position, double grams) {
        return Pan.of(meters(position), meters(0.5), meters(0.5), grams(grams));
    }

    /** A pan weighed to a standard uncertainty in grams. */
    static Pan pan(double position, double grams, double uncertainty) {
        return new Pan(meters(position), meters(0.5), meters(0.5), grams(grams), Optional.of(grams(uncertainty)));
    }

    /** Pans from a first position on, so far apart. */
    static List<Pan> row(double first, double apart, double... grams) {
        List<Pan> pans = new ArrayList<>();
        for (int i = 0; i < grams.length; i++) {
            pans.add(pan(first + i * apart, grams[i]));
        }
        return pans;
    }

    /** A row without gaps, in the middle of which the truck drove. */
    static SpreadPattern touching(double... grams) {
        return SpreadPattern.of(row(-(grams.length - 1) / 4.0, 0.5, grams));
    }

    static double number(Quantity<?> quantity) {
        return quantity.getValue().doubleValue();
    }

    static double number(Measured<?> measured) {
        return number(measured.value());
    }

    static double uncertainty(Measured<?> measured) {
        return number(measured.standardUncertainty().orElseThrow());
    }
}
