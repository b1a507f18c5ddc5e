package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.random.RandomGenerator;

/**
 * An invented truck: what truly leaves per revolution, and what its display holds. It changes from day to day of its story.
 *
 * <p>What truly leaves is proportional to the gate opening, drifts by a rate a year and jumps with repairs.
 */
final class InventedTruck {
    /** A drag chain of 7 teeth of 2.25 in, 22 in wide, turns once for 5.2 turns of the sensed shaft: salt of 78 lb/ft³, not quite full. */
    private static final double POUNDS_PER_REVOLUTION_AND_INCH = 2.6;

    /** Another load, another moisture. */
    private static final double DAY_TO_DAY = 0.005;

    private static final double CATCH_TO_CATCH = 0.004;
    private static final double TRUCK_TO_TRUCK = 0.03;
    private static final double DAYS_A_YEAR = 365.25;

    private final String id;
    private final List<Double> openings;
    private final double drift;
    private final Map<LocalDate, Double> jumps;
    private final RandomGenerator random;
    private final double fullness;
    private final LocalDate first;
    private final Map<Double, Held> held = new HashMap<>();
    private double ofDay;

    /** What a display holds for an opening. */
    record Held(double poundsPerRevolution, LocalDate since) {}

    /**
     * A truck as it is new.
     *
     * @param openings at which gate openings it is calibrated, in inches
     * @param drift the relative change of what leaves, a year
     * @param jumps relative changes from days on
     * @param first the day from which it drifts
     */
    InventedTruck(
            String id,
            List<Double> openings,
            double drift,
            Map<LocalDate, Double> jumps,
            LocalDate first,
            RandomGenerator random) {
        this.id = id;
        this.openings = openings;
        this.drift = drift;
        this.jumps = jumps;
        this.first = first;
        this.random = random;
        fullness = 1 + TRUCK_TO_TRUCK * random.nextGaussian();
        for (double opening : openings) {
            // Of the years before the story.
            held.put(opening, new Held(hundredth(opening * POUNDS_PER_REVOLUTION_AND_INCH), first.minusYears(1)));
        }
    }

    String id() {
        return id;
    }

    List<Double> openings() {
        return openings;
    }

    void begin() {
        ofDay = Math.exp(DAY_TO_DAY * random.nextGaussian());
    }

    /** What a catch of so many revolutions brings. */
    double pounds(double opening, double revolutions, LocalDate day) {
        return truePounds(opening, day) * ofDay * Math.exp(CATCH_TO_CATCH * random.nextGaussian()) * revolutions;
    }

    /** Per revolution, on a day like any other. */
    private double truePounds(double opening, LocalDate day) {
        double since = ChronoUnit.DAYS.between(first, day) / DAYS_A_YEAR;
        double jumped = jumps.entrySet().stream()
                .filter(jump -> !jump.getKey().isAfter(day))
                .mapToDouble(jump -> 1 + jump.getValue())
                .reduce(1, (one, other) -> one * other);
        return POUNDS_PER_REVOLUTION_AND_INCH * opening * fullness * jumped * Math.exp(drift * since);
    }

    /** By how much its display over-reports: indicated ÷ true − 1, with the opening that it spreads with. */
    double trueError(LocalDate day) {
        double opening = openings.get(0);
        return held(opening).poundsPerRevolution() / truePounds(opening, day) - 1;
    }

    Held held(double opening) {
        return Objects.requireNonNull(held.get(opening));
    }

    /** Enters a value in the display's steps. */
    double enter(double opening, double poundsPerRevolution, LocalDate day) {
        double entered = hundredth(poundsPerRevolution);
        held.put(opening, new Held(entered, day));
        return entered;
    }

    private static double hundredth(double number) {
        return Math.rint(100 * number) / 100;
    }
}
