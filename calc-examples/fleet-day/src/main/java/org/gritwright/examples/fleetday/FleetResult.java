package org.gritwright.examples.fleetday;

import java.util.List;
import org.gritwright.core.fleet.assessment.FleetAssessor;
import org.gritwright.core.fleet.assessment.NextStep;
import org.gritwright.core.fleet.assessment.TankAssessment;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.fleet.day.FleetDay;

/**
 * What the day shows, for the table, the report and the console alike.
 *
 * @param day the day as it was written down
 * @param trucks the trucks in the order of the day
 * @param tanks the tanks in the order of the day
 */
record FleetResult(FleetDay day, List<TruckResult> trucks, List<TankAssessment> tanks) {
    /** A browser and its reader can do with so many trucks on a page. */
    static final int MOST_ON_ONE_PAGE = 200;

    /** The whole day's. */
    static FleetResult of(FleetDay day, FleetAssessor assessor) {
        return of(day, assessor.assessInParallel(day), assessor.assessTanks(day));
    }

    static FleetResult of(FleetDay day, List<TruckAssessment> assessments, List<TankAssessment> tanks) {
        RecordNames names = new RecordNames();
        return new FleetResult(
                day,
                assessments.stream()
                        .map(truck ->
                                TruckResult.of(truck, names.next(truck.truck().id())))
                        .toList(),
                tanks);
    }

    /** Whether the report is an overview, and what it says of a truck a page of its own. */
    boolean isSplit() {
        return trucks.size() > MOST_ON_ONE_PAGE;
    }

    List<TruckResult> mostUrgentFirst() {
        return trucks.stream().sorted(Urgency.order()).toList();
    }

    /** Whether a truck or a tank does. */
    boolean needsAttention() {
        return trucksInNeed() > 0 || tanksInNeed() > 0;
    }

    private long trucksInNeed() {
        return trucks.stream().filter(TruckResult::needsAttention).count();
    }

    private long tanksInNeed() {
        return tanks.stream().filter(TankAssessment::needsAttention).count();
    }

    /** For example "20 trucks: 7 need attention, 2 lack only a road-speed check, 11 have nothing to do. 4 tanks: 3 need attention." */
    String summary() {
        long attention = trucksInNeed();
        long roadSpeed = withNextStep(NextStep.CHECK_ROAD_SPEED);
        long nothing = withNextStep(NextStep.NOTHING);
        long prewets = trucks.stream()
                .filter(truck -> truck.assessment().truck().wets().isPresent())
                .count();
        return Words.count(trucks.size() - prewets, "truck")
                + (prewets == 0 ? "" : " and " + Words.count(prewets, "prewet")) + ": " + attention + " "
                + Words.verb(attention, "needs", "need")
                + " attention, " + roadSpeed + " " + Words.verb(roadSpeed, "lacks", "lack")
                + " only a road-speed check, "
                + nothing + " " + Words.verb(nothing, "has", "have") + " nothing to do."
                + (tanks.isEmpty() ? "" : " " + ofTanks());
    }

    private String ofTanks() {
        long attention = tanksInNeed();
        return Words.count(tanks.size(), "tank") + ": " + attention + " " + Words.verb(attention, "needs", "need")
                + " attention.";
    }

    private long withNextStep(NextStep step) {
        return trucks.stream()
                .filter(truck -> truck.assessment().nextStep() == step)
                .count();
    }
}
