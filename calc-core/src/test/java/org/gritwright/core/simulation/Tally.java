package org.gritwright.core.simulation;

import java.util.List;
import java.util.Locale;

/**
 * How many of so many trucks of a scenario.
 *
 * @param scenario its id
 * @param key of a measure, or of what is told
 */
record Tally(String scenario, String key, int hits, int trials) {

    static Tally of(String scenario, Measure measure, List<Outcome> outcomes) {
        List<Outcome> counted = outcomes.stream().filter(measure::counts).toList();
        int hits = (int) counted.stream().filter(measure::hits).count();
        return new Tally(scenario, measure.id(), hits, counted.size());
    }

    static Tally parse(String line) {
        String[] cells = line.split(",", -1);
        return new Tally(cells[0], cells[1], Integer.parseInt(cells[2]), Integer.parseInt(cells[3]));
    }

    String line() {
        return scenario + "," + key + "," + hits + "," + trials;
    }

    double share() {
        return trials == 0 ? 0 : hits / (double) trials;
    }

    double upperBound() {
        return Rates.upperBound(hits, trials);
    }

    double lowerBound() {
        return Rates.lowerBound(hits, trials);
    }

    /** With a share, for example "17 of 69, 24.6 %". */
    String words() {
        return trials == 0 ? "0 of 0" : String.format(Locale.ROOT, "%d of %d, %.1f %%", hits, trials, 100 * share());
    }
}
