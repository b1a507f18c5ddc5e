package org.gritwright.examples.telemetry;

import java.io.Serializable;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.Travel;
import org.gritwright.units.Amounts;
import org.gritwright.units.SpreadingUnits;

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
    private final HashMap<String, Integer> slots = new HashMap<>();
    private final double metersPerInch;

    TruckSetup(String truck, RowEvaluator shaft, Travel road, Target target) {
        this.truck = truck;
        this.shaft = shaft;
        this.road = road;
        this.target = target;
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
