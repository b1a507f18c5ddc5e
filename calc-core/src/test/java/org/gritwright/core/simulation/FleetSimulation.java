package org.gritwright.core.simulation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One run over all scenarios: a few trucks of each in every build, as many as figures need where the system property
 * {@code gritwright.simulation} says {@code full}, and with other seeds where it says {@code final}.
 */
enum FleetSimulation {
    FAST(Scenarios.WORKING_SEED, 75, 100),
    FULL(Scenarios.WORKING_SEED, 1, 1),
    FINAL(Scenarios.FINAL_SEED, 1, 1);

    private static final Path COMMITTED = Path.of("src", "test", "resources", "simulation");
    private static final Path MEASURED = Path.of("target", "simulation");

    private final long seed;
    private final int oneTruckOf;
    private final int oneDayOf;

    FleetSimulation(long seed, int oneTruckOf, int oneDayOf) {
        this.seed = seed;
        this.oneTruckOf = oneTruckOf;
        this.oneDayOf = oneDayOf;
    }

    /** The one that is asked for. */
    static FleetSimulation wanted() {
        String wanted = System.getProperty("gritwright.simulation", "fast");
        return switch (wanted) {
            case "fast" -> FAST;
            case "full" -> FULL;
            case "final" -> FINAL;
            default -> throw new IllegalArgumentException("gritwright.simulation=" + wanted);
        };
    }

    List<Tally> run() {
        List<Tally> tallies = new ArrayList<>();
        Scenarios.all().forEach(scenario -> tallies.addAll(scenario.tallies(seed, scenario.trucks() / oneTruckOf)));
        Coverage.all().forEach(one -> tallies.add(one.tally(seed, Coverage.DAYS / oneDayOf)));
        return tallies;
    }

    private String file() {
        return name().toLowerCase(Locale.ROOT) + ".csv";
    }

    /** Leaves a file that can be copied over the committed one. */
    void write(List<Tally> tallies) throws IOException {
        Files.createDirectories(MEASURED);
        Files.writeString(
                MEASURED.resolve(file()),
                tallies.stream().map(Tally::line).collect(Collectors.joining("\n", "", "\n")));
    }

    boolean isCommitted() {
        return Files.exists(COMMITTED.resolve(file()));
    }

    List<Tally> committed() throws IOException {
        return Files.readAllLines(COMMITTED.resolve(file())).stream()
                .map(Tally::parse)
                .toList();
    }
}
