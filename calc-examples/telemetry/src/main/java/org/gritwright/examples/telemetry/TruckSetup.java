package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Length;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.Travel;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;
import org.jspecify.annotations.Nullable;

/**
 * What a worker needs to evaluate one truck's rows: plain arrays and numbers, made on the driver, so that no worker needs the types
 * behind the calibrations. Immutable.
 */
final class TruckSetup implements Serializable {
    private static final long serialVersionUID = 1L;

    /** What a row's slot is taken for where nobody calibrated it. */
    private static final int UNKNOWN_SLOT = -1;

    private final String truck;
    private final RowEvaluator shaft;
    private final Travel road;
    private final Target target;
    private final @Nullable Liquid liquid;
    private final HashMap<String, Integer> slots = new HashMap<>();
    private final double metersPerInch;

    /**
     * What counts the liquid that wets what is laid.
     *
     * @param counter it evaluates the counter of the pump or the meter
     * @param statedGallonsPerTon how much of it is asked for; NaN where nobody says, or routes say different things
     */
    record Liquid(RowEvaluator counter, double statedGallonsPerTon) implements Serializable {
        private static final long serialVersionUID = 1L;
    }

    TruckSetup(String truck, RowEvaluator shaft, Travel road, Target target, Optional<Liquid> liquid) {
        this.truck = truck;
        this.shaft = shaft;
        this.road = road;
        this.target = target;
        this.liquid = liquid.orElse(null);
        List<String> names = shaft.slots();
        for (int i = 0; i < names.size(); i++) {
            slots.put(names.get(i), i);
        }
        this.metersPerInch = Amounts.si(Length.class, Amounts.of(1, SpreadingUnits.INCH));
    }

    String truck() {
        return truck;
    }

    RowEvaluator shaft() {
        return shaft;
    }

    Travel road() {
        return road;
    }

    Target target() {
        return target;
    }

    Optional<Liquid> liquid() {
        return Optional.ofNullable(liquid);
    }

    /** The same with another evaluator of its shaft. */
    TruckSetup with(RowEvaluator other) {
        return new TruckSetup(truck, other, road, target, liquid());
    }

    Map<String, Integer> slots() {
        return Map.copyOf(slots);
    }

    int slot(String name) {
        return slots.getOrDefault(name, UNKNOWN_SLOT);
    }

    /** Where the gate stands, as the library's rows have it. */
    double meters(double gateInches) {
        return gateInches * metersPerInch;
    }
}
