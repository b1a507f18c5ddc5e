package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.util.NavigableSet;
import java.util.TreeSet;
import javax.measure.Quantity;
import org.gritwright.core.curve.DischargeCurve;
import org.gritwright.core.spi.Setting;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.quantity.DischargePerRevolution;

/**
 * A curve over gate openings that was fitted to a day's calibration, as numbers of a story's unit. Beyond the openings that were caught
 * it isn't asked: there it would be geometry alone.
 *
 * @param isEntered whether somebody wrote down that a value for one of its openings was entered, on that day or until the next curve
 * @param perKilogram what makes its numbers those of the unit
 */
record CurveFit(LocalDate day, boolean isEntered, DischargeCurve curve, double perKilogram) {
    private static final int STEPS = 24;

    /** What it gives at an opening, with the interval that holds it with 95 %; its ends are the value itself where nobody knows. */
    record Band(double opening, double low, double value, double high) {}

    boolean holds(double opening) {
        return opening >= curve.lowestCaught().si()
                && opening <= curve.highestCaught().si();
    }

    double at(double opening) {
        return number(discharge(opening).value());
    }

    Band band(double opening) {
        Measured<DischargePerRevolution> discharge = discharge(opening);
        double value = number(discharge.value());
        double half = discharge
                .expandedUncertainty(PointStory.COVERAGE)
                .map(this::number)
                .orElse(0.0);
        return new Band(opening, value - half, value, value + half);
    }

    /** Openings from the lowest to the highest that was caught; of a table each row, where it bends. */
    NavigableSet<Double> openings() {
        double low = curve.lowestCaught().si();
        double high = curve.highestCaught().si();
        NavigableSet<Double> openings = new TreeSet<>();
        curve.settings().forEach(setting -> openings.add(setting.si()));
        for (int i = 1; i < STEPS; i++) {
            openings.add(low + i * (high - low) / STEPS);
        }
        return openings;
    }

    /** For example "of 2025-10-14, in proportion to the geometry". */
    String words() {
        String model = switch (curve.model()) {
            case PROPORTIONAL -> "in proportion to the geometry";
            case DEAD_OPENING -> "with a dead opening of " + dead();
            case TABLE -> "a rising table";
        };
        return "of " + day + ", " + model + (isEntered ? "" : "; nobody wrote down that it was entered");
    }

    private String dead() {
        return Words.minus(Rounded.text(curve.deadOpening().orElseThrow().value(), 2));
    }

    private Measured<DischargePerRevolution> discharge(double opening) {
        Setting setting = curve.lowestCaught().withSi(opening);
        return curve.predict(setting).dischargePerRevolution();
    }

    private double number(Quantity<DischargePerRevolution> mass) {
        return Amounts.si(DischargePerRevolution.class, mass) * perKilogram;
    }
}
