package org.gritwright.core.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.gritwright.core.fleet.assessment.NextStep;

/** The simulation's figures as tables. */
final class SimulationPage {
    private final Map<String, Tally> tallies = new TreeMap<>();

    SimulationPage(List<Tally> measured) {
        measured.forEach(tally -> tallies.put(tally.scenario() + " " + tally.key(), tally));
    }

    private Tally tally(String scenario, String key) {
        return tallies.getOrDefault(scenario + " " + key, new Tally(scenario, key, 0, 0));
    }

    /** Fault × what the technician is told. */
    String told() {
        StringBuilder table = new StringBuilder("| trucks that are | trucks | visible | can be told | find the fault"
                + " | fix the record | match the display | check the entries | enter the correction | catch more | calibrate, verify"
                + " | check delivery, road | nothing |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
        for (Scenario scenario : Scenarios.all()) {
            String id = scenario.id();
            table.append("| ").append(scenario.words());
            List<Integer> cells = new ArrayList<>();
            cells.add(tally(id, "visible").trials());
            cells.add(tally(id, "visible").hits());
            cells.add(tally(id, "tellable").hits());
            cells.add(told(id, NextStep.FIND_FAULT));
            cells.add(told(id, NextStep.FIX_RECORD));
            cells.add(told(id, NextStep.MATCH_DISPLAY));
            cells.add(told(id, NextStep.CHECK_ENTRIES));
            cells.add(told(id, NextStep.ENTER_CORRECTION));
            cells.add(told(id, NextStep.CATCH_MORE));
            cells.add(told(id, NextStep.CALIBRATE, NextStep.VERIFY, NextStep.CONFIRM_CORRECTION));
            cells.add(told(id, NextStep.CHECK_DELIVERY, NextStep.FIX_ROAD_SPEED));
            cells.add(told(id, NextStep.NOTHING, NextStep.CHECK_ROAD_SPEED));
            cells.forEach(cell -> table.append(" | ").append(cell));
            table.append(" |\n");
        }
        return table.toString();
    }

    private int told(String scenario, NextStep... steps) {
        int sum = 0;
        for (NextStep step : steps) {
            sum += tally(scenario, step.name()).hits();
        }
        return sum;
    }

    /** What is measured beside the bar. */
    String bar() {
        StringBuilder table = new StringBuilder(
                "| trucks that are | share | measured | 99 % bound | bar | |\n|---|---|---|---|---|---|\n");
        for (Scenario scenario : Scenarios.all()) {
            for (Measure measure : scenario.measures()) {
                Tally tally = tally(scenario.id(), measure.id());
                boolean lower = measure.direction() == Measure.Direction.LOWER;
                String bound = tally.trials() == 0
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "%s %.1f %%",
                                lower ? "≤" : "≥",
                                100 * (lower ? tally.upperBound() : tally.lowerBound()));
                String bar = measure.bar().isEmpty()
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "%s %.1f %%",
                                lower ? "≤" : "≥",
                                100 * measure.bar().getAsDouble());
                table.append(String.join(
                                " | ",
                                "| " + scenario.words(),
                                measure.words(),
                                tally.words(),
                                bound,
                                bar,
                                measure.verdict(tally).orElse("")))
                        .append(" |\n");
            }
        }
        return table.toString();
    }

    /** How often printed intervals hold the truth. */
    String coverage() {
        StringBuilder table =
                new StringBuilder("| interval | with an interval | hold the truth | bar | |\n|---|---|---|---|---|\n");
        for (Coverage one : Coverage.all()) {
            Tally tally = tally(one.id(), Coverage.HELD);
            table.append(String.format(
                    Locale.ROOT,
                    "| %s | %d | %.1f %% | %s | %s |%n",
                    one.words(),
                    tally.trials(),
                    100 * tally.share(),
                    one.threeCatchesOrMore() ? "93 to 97 %" : "≥ 93 %",
                    tally.trials() == 0 ? "none printed" : one.isMet(tally) ? "met" : "not met"));
        }
        return table.toString();
    }
}
