package org.gritwright.examples.fleetday;

import java.util.List;
import javax.measure.Quantity;
import org.gritwright.core.fleet.plan.TruckPlan;
import org.gritwright.units.quantity.ApplicationRate;
import org.gritwright.units.quantity.PrewetRate;
import org.gritwright.units.rate.PrewetRates;

/**
 * How a display is set where a liquid wets.
 *
 * @param dry the rate of the dry material
 * @param prewet the prewet rate
 */
record Prewetting(Quantity<ApplicationRate> dry, Quantity<PrewetRate> prewet) {

    /** All planned settings that come to one rate of the liquid; there is at least one. */
    static List<Prewetting> of(TruckPlan truck, Quantity<?> liquidRate) {
        return truck.plan().targetRates().stream()
                .flatMap(dry -> truck.plan().prewetRates().stream().map(prewet -> new Prewetting(dry, prewet)))
                .filter(one -> PrewetRates.liquidRateFromDryRate(one.dry(), one.prewet())
                        .equals(liquidRate))
                .toList();
    }
}
