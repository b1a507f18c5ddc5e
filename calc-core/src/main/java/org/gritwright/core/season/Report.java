package org.gritwright.core.season;

import java.util.ArrayList;
import java.util.List;
import org.gritwright.core.balance.GlobalTest;
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
        String chance =
                " within the stated uncertainties: with no mistake anywhere, the chance of a misfit this large or larger"
                        + " is " + percent(test.probability()) + ".";
        if (test.degreesOfFreedom() == 0) {
            sentences.add("There is nothing to check: no number tells of another.");
        } else if (test.holds(balance.power().risk())) {
            sentences.add("All together adds up" + chance);
        } else {
            sentences.add("It doesn't add up" + chance);
        }
        for (FoundError one : found) {
            sentences.add(one.what().sentence() + " With no mistake in the whole season, the chance of a finding this"
                    + " clear is " + (one.risk() < LEAST ? "" : "at most ") + percent(one.risk()) + ".");
            sentences.addAll(one.confusion().sentences());
        }
        if (found.isEmpty()) {
            sentences.add("No single error is beyond chance.");
        }
        return List.copyOf(sentences);
    }

    private static String percent(double probability) {
        return probability < LEAST
                ? "below 0.01 %"
                : Rounded.text(Amounts.ofSi(probability, SpreadingUnits.PERCENT), 2);
    }
}
