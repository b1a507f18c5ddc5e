package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What is simulated. Stated before the assessment was changed for it; a scenario is never left out for what came of it.
 *
 * <p>While working, seeds from {@link #WORKING_SEED} on are used. Final figures come from seeds from {@link #FINAL_SEED} on,
 * which nobody looks at before the work is done.
 */
final class Scenarios {
    static final long WORKING_SEED = 1_000_000;
    static final long FINAL_SEED = 9_000_000;

    static final int TRUCKS_A_FAULT = 300;
    static final int HEALTHY_TRUCKS = 2000;
    private static final int TRUCKS_OF_A_KIND = 300;

    private static final List<Measure> OF_FAULTS = List.of(
            Measure.FAULT_UNSEEN,
            Measure.CONTRADICTION_UNSEEN,
            Measure.CAUSE_FIRST,
            Measure.CAUSE_NAMED,
            Measure.CONTRADICTION_CORRECTED);

    private static final List<Measure> OF_DRIFTS =
            List.of(Measure.DRIFT_UNSEEN, Measure.DRIFT_CORRECTED, Measure.DRIFT_FAULT, Measure.CORRECTION_MISSES);

    private Scenarios() {}

    static List<Scenario> all() {
        List<Scenario> all = new ArrayList<>();
        all.add(new Scenario(
                "healthy",
                "healthy",
                Fault.NONE,
                truck -> true,
                HEALTHY_TRUCKS,
                List.of(
                        Measure.HEALTHY_NOTHING,
                        Measure.HEALTHY_FALSE,
                        Measure.HEALTHY_WARNED,
                        Measure.HEALTHY_CATCH_MORE,
                        Measure.CATCH_MORE_SAYS_HOW_MUCH)));
        all.add(healthy(
                "healthy-one-pulse",
                "healthy, 1 pulse a revolution",
                truck -> truck.pulsesPerRevolution() == 1 && truck.plan().reading() != TrueTruck.Reading.NEITHER,
                Measure.HEALTHY_FAULT));
        all.add(healthy(
                "healthy-count-and-display",
                "healthy, counted and displayed to 0.1",
                truck -> truck.hasSensor()
                        && truck.plan().reading() == TrueTruck.Reading.BOTH
                        && truck.plan().stepped() == 0.1,
                Measure.HEALTHY_FAULT));
        for (int catches : List.of(1, 2, 3, 5)) {
            all.add(healthy(
                    "healthy-catches-" + catches,
                    "healthy, 16 pulses or more, calibration catches: " + catches,
                    truck -> truck.pulsesPerRevolution() >= 16
                            && truck.plan().calibrationCatches() == catches
                            && truck.plan().verificationCatches() > 0,
                    Measure.HEALTHY_CATCH_MORE));
        }
        TruckFaults.all().forEach(fault -> all.add(fault(fault, OF_DRIFTS)));
        Faults.ALL.stream().skip(TruckFaults.all().size()).forEach(fault -> all.add(fault(fault, OF_FAULTS)));
        return List.copyOf(all);
    }

    private static Scenario healthy(String id, String words, Predicate<TrueTruck> fits, Measure measure) {
        return new Scenario(id, words, Fault.NONE, fits, TRUCKS_OF_A_KIND, List.of(measure));
    }

    private static Scenario fault(Fault fault, List<Measure> measures) {
        return new Scenario(fault.id(), fault.words(), fault, truck -> true, TRUCKS_A_FAULT, measures);
    }
}
