package org.gritwright.core.simulation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gritwright.core.fleet.assessment.NextStep;

/** One run over all faults of liquids, with as many trucks as {@link FleetSimulation} is asked for, and its figures as tables. */
final class LiquidSimulation {
    private static final Path COMMITTED = Path.of("src", "test", "resources", "simulation");
    private static final Path MEASURED = Path.of("target", "simulation");
    private static final int FEW = 6;

    private final FleetSimulation wanted;

    LiquidSimulation(FleetSimulation wanted) {
        this.wanted = wanted;
    }

    private String file() {
        return "liquid-" + wanted.name().toLowerCase(Locale.ROOT) + ".csv";
    }

    /** Leaves a file that can be copied over the committed one. */
    List<Tally> run() throws IOException {
        boolean few = wanted == FleetSimulation.FAST;
        long seed = wanted == FleetSimulation.FINAL ? Scenarios.FINAL_SEED : Scenarios.WORKING_SEED;
        List<Tally> tallies = new ArrayList<>();
        for (LiquidFault fault : LiquidFault.values()) {
            int trucks = fault == LiquidFault.NONE ? Scenarios.HEALTHY_TRUCKS : Scenarios.TRUCKS_A_FAULT;
            tallies.addAll(LiquidFleet.tallies(fault, seed, few ? FEW : trucks));
        }
        Files.createDirectories(MEASURED);
        Files.writeString(
                MEASURED.resolve(file()),
                tallies.stream().map(Tally::line).collect(Collectors.joining("\n", "", "\n")));
        return tallies;
    }

    List<Tally> committed() throws IOException {
        return Files.readAllLines(COMMITTED.resolve(file())).stream()
                .map(Tally::parse)
                .toList();
    }

    /** What is measured worse than before. */
    static List<String> worse(List<Tally> then, List<Tally> now) {
        Map<String, Tally> before = byKey(then);
        Map<String, Tally> after = byKey(now);
        List<String> worse = new ArrayList<>();
        for (LiquidFault fault : LiquidFault.values()) {
            for (LiquidMeasure measure : LiquidMeasure.values()) {
                Tally was = before.get(key(fault, measure.id()));
                Tally is = after.get(key(fault, measure.id()));
                if (was == null || measure.isWorse(is, was)) {
                    worse.add(fault.words() + ": " + measure.words() + ": " + is.words() + ", was " + was);
                }
            }
        }
        return worse;
    }

    private static String key(LiquidFault fault, String measured) {
        return "liquid-" + fault.id() + " " + measured;
    }

    private static Map<String, Tally> byKey(List<Tally> all) {
        return all.stream().collect(Collectors.toMap(one -> one.scenario() + " " + one.key(), one -> one));
    }

    /** Fault × what the technician is told. */
    static String told(List<Tally> all) {
        Map<String, Tally> tallies = byKey(all);
        StringBuilder table =
                new StringBuilder("| trucks | number | find the fault | fix the record | check the entries,"
                        + " match the display | enter the correction | catch more | calibrate, verify | check delivery | nothing |\n"
                        + "|---|---|---|---|---|---|---|---|---|---|\n");
        for (LiquidFault fault : LiquidFault.values()) {
            Stream<Integer> cells = Stream.of(
                    tallies.get(key(fault, NextStep.NOTHING.name())).trials(),
                    told(tallies, fault, NextStep.FIND_FAULT),
                    told(tallies, fault, NextStep.FIX_RECORD),
                    told(tallies, fault, NextStep.CHECK_ENTRIES, NextStep.MATCH_DISPLAY),
                    told(tallies, fault, NextStep.ENTER_CORRECTION),
                    told(tallies, fault, NextStep.CATCH_MORE),
                    told(tallies, fault, NextStep.CALIBRATE, NextStep.VERIFY, NextStep.CONFIRM_CORRECTION),
                    told(tallies, fault, NextStep.CHECK_DELIVERY, NextStep.FIX_ROAD_SPEED, NextStep.FIT_TO_DRIVE),
                    told(tallies, fault, NextStep.NOTHING, NextStep.CHECK_ROAD_SPEED));
            table.append(cells.map(String::valueOf)
                    .collect(Collectors.joining(" | ", "| " + fault.words() + " | ", " |\n")));
        }
        return table.toString();
    }

    private static int told(Map<String, Tally> tallies, LiquidFault fault, NextStep... steps) {
        return Stream.of(steps)
                .mapToInt(step -> tallies.get(key(fault, step.name())).hits())
                .sum();
    }

    /** What is measured beside the bar. */
    static String bar(List<Tally> all) {
        Map<String, Tally> tallies = byKey(all);
        StringBuilder table =
                new StringBuilder("| trucks | share | measured | 99 % bound | bar | |\n|---|---|---|---|---|---|\n");
        for (LiquidFault fault : LiquidFault.values()) {
            for (LiquidMeasure measure : LiquidMeasure.values()) {
                Tally tally = tallies.get(key(fault, measure.id()));
                if (tally.trials() > 0) {
                    table.append(String.join(
                                    " | ",
                                    "| " + fault.words(),
                                    measure.words(),
                                    tally.words(),
                                    measure.bound(tally),
                                    measure.barInWords(),
                                    measure.verdict(tally)))
                            .append(" |\n");
                }
            }
        }
        return table.toString();
    }
}
