package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.balance.GlobalTest;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;

/** A season's balance as sentences. */
final class Report {
    /** Chances below are told as such. */
    private static final double LEAST = 0.0001;

    private Report() {}

    static List<String> of(SeasonBalance balance) {
        List<String> sentences = new ArrayList<>();
        GlobalTest test = balance.asStated().test();
        List<FoundError> found = balance.found();
        String chance = percent(test.probability());
        if (test.degreesOfFreedom() == 0) {
            sentences.add("There is nothing to check: no number tells of another.");
        } else if (test.holds(balance.power().risk())) {
            sentences.add("All together adds up within the stated uncertainties (chance of worse: " + chance + ").");
        } else {
            sentences.add("It doesn't add up within the stated uncertainties (chance of worse: " + chance + ").");
        }
        for (FoundError one : found) {
            sentences.add(one.what().sentence() + " Chance of that where nothing is wrong: "
                    + (one.risk() < LEAST ? "" : "at most ") + percent(one.risk()) + ".");
            sentences.addAll(same(one.confusion().same()));
            one.confusion()
                    .alike()
                    .forEach(other -> sentences.add("Hardly different: "
                            + other.other().sentence() + " (correlation "
                            + Rounded.text(Amounts.of(other.correlation(), SpreadingUnits.ONE), 2) + ")"));
            sentences.addAll(one.confusion().reasons());
        }
        if (found.isEmpty()) {
            sentences.add("No single error is beyond chance.");
        }
        return List.copyOf(sentences);
    }

    /** Of many trucks one sentence. */
    private static List<String> same(List<Suspicion> all) {
        List<String> sentences = new ArrayList<>();
        List<String> trucks = new ArrayList<>();
        for (Suspicion one : all) {
            if (one instanceof Suspicion.TruckReports truck && truck.byTheRest().isPresent()) {
                Measured<Dimensionless> error = truck.byTheRest().get();
                trucks.add(truck.truck()
                        + (Words.isNegative(error) ? " under-reports by " : " over-reports by ")
                        + Words.plusMinus(error));
            } else {
                sentences.add("Nothing tells this from: " + one.sentence());
            }
        }
        if (!trucks.isEmpty()) {
            sentences.add("Nothing tells this from "
                    + (trucks.size() == 1 ? "a truck that is off: " : "one of these trucks that is off, alone: ")
                    + String.join(", ", trucks) + ".");
        }
        return sentences;
    }

    private static String percent(double probability) {
        return probability < LEAST
                ? "below 0.01 %"
                : Rounded.text(Amounts.ofSi(probability, SpreadingUnits.PERCENT), 2);
    }
}
