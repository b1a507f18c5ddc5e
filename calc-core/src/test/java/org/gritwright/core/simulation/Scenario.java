package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.gritwright.core.fleet.assessment.NextStep;

/**
 * Trucks of one kind with one fault.
 *
 * @param trucks how many are simulated for figures
 * @param measures what is counted besides what is told
 */
record Scenario(String id, String words, Fault fault, Predicate<TrueTruck> fits, int trucks, List<Measure> measures) {

    /** What became of so many trucks from a seed on. */
    List<Tally> tallies(long firstSeed, int number) {
        List<Outcome> outcomes = Simulation.run(fault, fits, firstSeed, number);
        List<Tally> tallies = new ArrayList<>();
        Arrays.stream(NextStep.values())
                .forEach(step -> tallies.add(new Tally(
                        id,
                        step.name(),
                        (int) outcomes.stream()
                                .filter(outcome -> outcome.told().step() == step)
                                .count(),
                        outcomes.size())));
        tallies.add(new Tally(
                id,
                "visible",
                (int) outcomes.stream().filter(Outcome::isVisible).count(),
                outcomes.size()));
        tallies.add(new Tally(
                id,
                "tellable",
                (int) outcomes.stream().filter(Outcome::isTellable).count(),
                outcomes.size()));
        measures.forEach(measure -> tallies.add(Tally.of(id, measure, outcomes)));
        return tallies;
    }
}
