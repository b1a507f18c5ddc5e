package org.gritwright.examples.telemetry;

import java.time.Instant;
import java.util.List;
import org.gritwright.core.history.Contradiction;
import org.gritwright.core.telemetry.Counter;
import org.gritwright.core.telemetry.Onset;
import org.gritwright.core.telemetry.RowEvaluator;
import org.gritwright.core.telemetry.RowSums;
import org.gritwright.core.telemetry.Timeline;

/**
 * What the driver knows of a truck. Where an error grew with turns or amount, its rows are passed over twice: first to count how much it was
 * in all between the value's being right and the error's being found, then to correct.
 *
 * @param setup what evaluates its rows: in the only pass, or in the first of two
 * @param timeline what its slots held when, and what verifications found
 * @param counter of its shaft
 * @param pulsesPerTurn how many of its pulses a turn has
 * @param from the earliest time of a row
 * @param until the latest
 * @param contradictions what its records say that can't all be so
 */
record TruckPlan(
        TruckSetup setup,
        Timeline timeline,
        Counter counter,
        double pulsesPerTurn,
        Instant from,
        Instant until,
        List<Contradiction> contradictions) {
    /** What is asked of a truck beside its shaft's evaluator, which follows from the rest. */
    interface Rest {
        TruckSetup with(RowEvaluator shaft);
    }

    static TruckPlan of(
            Timeline timeline,
            Counter counter,
            double pulsesPerTurn,
            Instant from,
            Instant until,
            List<Contradiction> contradictions,
            Rest rest) {
        RowEvaluator shaft = isOfTwoPasses(timeline)
                ? RowEvaluator.firstPass(timeline, counter, from, until)
                : RowEvaluator.compile(timeline, counter, from, until);
        return new TruckPlan(
                rest.with(shaft), timeline, counter, pulsesPerTurn, from, until, List.copyOf(contradictions));
    }

    static boolean isOfTwoPasses(Timeline timeline) {
        return timeline.corrections().stream()
                .anyMatch(one -> one.found().isShown()
                        && (one.onset() == Onset.Gradually.WITH_TURNS || one.onset() == Onset.Gradually.WITH_AMOUNT));
    }

    boolean isOfTwoPasses() {
        return isOfTwoPasses(timeline);
    }

    /** What evaluates its rows in the second pass, after what the first counted. */
    TruckSetup secondPass(RowSums counted) {
        return setup.with(RowEvaluator.secondPass(timeline, counter, from, until, counted));
    }

    /** What evaluates its rows as its display did: nothing is corrected backwards. */
    TruckSetup asIndicated() {
        return setup.with(RowEvaluator.compile(Timeline.of(timeline.entries()), counter, from, until));
    }

    /** What verifications found, and how it is taken to have come about. */
    List<Timeline.Correction> corrections() {
        return timeline.corrections();
    }
}
