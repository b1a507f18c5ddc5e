package org.gritwright.core.simulation;

import java.util.List;
import java.util.Locale;
import org.gritwright.core.fleet.assessment.NextStep;

/** What is wrong with the truck itself. */
final class TruckFaults {

    private TruckFaults() {}

    static List<Fault> all() {
        return List.of(
                drift("drift-5-to-8", 0.05, 0.08),
                drift("drift-8-to-12", 0.08, 0.12),
                drift("drift-12-to-15", 0.12, 0.15));
    }

    /** The value in force is out of date: the new one is to be entered. */
    private static Fault drift(String id, double least, double most) {
        return Fault.of(
                        id,
                        String.format(
                                Locale.ROOT,
                                "discharge drifted by %.0f to %.0f %% since the value was found",
                                100 * least,
                                100 * most))
                .where(truck -> truck.plan().verificationCatches() > 0
                        && truck.plan().reading() != TrueTruck.Reading.NEITHER
                        && !truck.plan().enters())
                .withTruth((truck, draw) -> truck.drifted(draw.uniform(least, most) * (draw.chance(0.5) ? 1 : -1)))
                .told(NextStep.ENTER_CORRECTION);
    }
}
