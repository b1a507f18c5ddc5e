package org.gritwright.examples.fleetday;

import java.util.Comparator;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.fleet.assessment.TruckAssessment;
import org.gritwright.core.roadspeed.RoadSpeedCheck;
import org.gritwright.units.Amounts;

/** In which order trucks matter on the road; among those that lay the wrong amount, by how much. */
enum Urgency {
    WRONG("On the road they lay the wrong amount"),
    UNCLEAR("Something that was written down can’t be right"),
    UNPROVEN("Not proven yet"),
    ROAD_SPEED("Only the road speed is still to be checked"),
    NONE("Nothing to do");

    private final String words;

    Urgency(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    static Urgency of(TruckAssessment truck) {
        return switch (truck.nextStep()) {
            case ENTER_CORRECTION, FIX_ROAD_SPEED, SET_BOOM_PRESSURE, MEND_NOZZLES, CHECK_DELIVERY, FIT_TO_DRIVE ->
                WRONG;
            case FIX_RECORD, FIND_FAULT, MATCH_DISPLAY, CHECK_ENTRIES -> UNCLEAR;
            case CONFIRM_CORRECTION, CALIBRATE, CATCH_MORE, CATCH_NOZZLES, MEASURE_RANGE, VERIFY -> UNPROVEN;
            case CHECK_ROAD_SPEED -> ROAD_SPEED;
            case NOTHING -> NONE;
        };
    }

    /** The most urgent first. */
    static Comparator<TruckResult> order() {
        return Comparator.comparing((TruckResult truck) -> of(truck.assessment()))
                .thenComparing(Comparator.comparingDouble(Urgency::laidWrong).reversed())
                .thenComparing(truck -> truck.assessment().nextStep());
    }

    /** By what part too much or too little is laid by what the next step is about; 0 where that isn't known. */
    private static double laidWrong(TruckResult truck) {
        Optional<Quantity<Dimensionless>> error = switch (truck.assessment().nextStep()) {
            case ENTER_CORRECTION -> truck.judged().map(series -> series.error());
            case FIX_ROAD_SPEED -> truck.assessment().roadSpeed().map(RoadSpeedCheck::effectOnRate);
            case CHECK_DELIVERY -> truck.lastVerification().map(last -> last.deliveryError());
            // What a drive doesn't hold is wrong at the ends of what it is asked for only.
            default -> Optional.empty();
        };
        return error.map(e -> Math.abs(Amounts.si(Dimensionless.class, e))).orElse(0.0);
    }
}
