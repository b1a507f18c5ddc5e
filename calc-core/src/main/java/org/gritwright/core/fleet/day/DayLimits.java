package org.gritwright.core.fleet.day;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.gritwright.units.InvalidInputException;
import org.gritwright.units.RefusalCode;
import org.gritwright.units.check.Require;

/**
 * How much a day may hold before it isn't computed with: computing takes time in proportion to it. A day with too many trucks is
 * refused, and of a truck with too much of something nothing is computed. Immutable, thread-safe, a value.
 *
 * @param trucks the most trucks of a day, 1 or more
 * @param catches the most calibration catches of a truck, and the most verification catches, course runs and changes, 1 or more
 * @param containers the most weighings and fills of a truck, in all its catches, 1 or more
 * @param openings the most calibration points of a truck's catches, and the most values in force, control settings and
 *     nozzles, 1 or more
 * @param routes the most routes of a day, and the most tanks; routes may name ten times as many trucks as it may have, 1 or more
 * @param drivePoints the most points that were measured of a truck's drive, 1 or more
 */
public record DayLimits(int trucks, int catches, int containers, int openings, int routes, int drivePoints) {
    private static final int MOST_ROUTES = 1000;
    private static final int MOST_POINTS = 1000;

    /** How many routes a truck may be named by, if all are. */
    private static final int NAMED = 10;

    /** 10 000 trucks and 1000 routes; 1000 catches, 10 000 containers, 1000 openings and 1000 points of the drive a truck. */
    public static final DayLimits COMMON = new DayLimits(10_000, 1000, 10_000, 1000);

    /**
     * Limits with the common ones of routes and of points of a drive.
     *
     * @param trucks as of the record
     * @param catches as of the record
     * @param containers as of the record
     * @param openings as of the record
     * @throws InvalidInputException if one is below 1
     */
    public DayLimits(int trucks, int catches, int containers, int openings) {
        this(trucks, catches, containers, openings, MOST_ROUTES, MOST_POINTS);
    }

    /**
     * Checks the limits.
     *
     * @throws InvalidInputException if one is below 1
     */
    public DayLimits {
        Require.that(
                IntStream.of(trucks, catches, containers, openings, routes, drivePoints)
                                .min()
                                .orElseThrow()
                        >= 1,
                "limits of a day",
                "1 or more each",
                () -> trucks + " trucks, " + catches + " catches, " + containers + " containers, " + openings
                        + " openings, " + routes + " routes, " + drivePoints + " points of a drive");
    }

    /**
     * Checks how many trucks, routes and tanks there are.
     *
     * @param day a day
     * @throws InvalidInputException if there are too many
     */
    public void requireFew(FleetDay day) {
        long named =
                day.routes().stream().mapToLong(route -> route.trucks().size()).sum();
        refusal("trucks of a day", trucks, day.trucks().size())
                .or(() -> refusal("routes of a day", routes, day.routes().size()))
                .or(() -> refusal("trucks named by all routes", (long) NAMED * trucks, named))
                .or(() -> refusal("tanks of a day", routes, day.tanks().size()))
                .ifPresent(refused -> {
                    throw refused;
                });
    }

    /**
     * What a truck has too much of.
     *
     * @param truck a truck
     * @return the refusal; none if it is within the limits
     */
    public Optional<InvalidInputException> excess(TruckDay truck) {
        long points = truck.entries()
                .map(entry -> List.of(entry.material(), entry.setting()))
                .distinct()
                .count();
        int weighings = truck.entries()
                .mapToInt(entry -> entry.containers().size()
                        + entry.read().map(read -> read.fills().size()).orElse(0))
                .sum();
        int runs = truck.roadSpeed().map(check -> check.runs().size()).orElse(0);
        return refusal(
                        "calibration catches",
                        catches,
                        truck.calibrationCatches().size())
                .or(() -> refusal(
                        "verification catches",
                        catches,
                        truck.verificationCatches().size()))
                .or(() -> refusal("course runs", catches, runs))
                .or(() -> refusal("changes", catches, truck.changes().size()))
                .or(() -> refusal("containers of all catches", containers, weighings))
                .or(() -> refusal("calibration points of all catches", openings, points))
                .or(() -> refusal(
                        "calibrations in force", openings, truck.inForce().size()))
                .or(() -> refusal(
                        "control settings",
                        openings,
                        truck.spreader().controlSettings().size()))
                .or(() -> refusal(
                        "nozzles of the boom",
                        openings,
                        truck.boom().map(boom -> boom.nozzles().size()).orElse(0)))
                .or(() -> refusal(
                        "points of the drive",
                        drivePoints,
                        truck.drive().map(DriveEntry::points).orElse(0)));
    }

    private static Optional<InvalidInputException> refusal(String field, long most, long found) {
        return found <= most
                ? Optional.empty()
                : Optional.of(new InvalidInputException(
                        RefusalCode.TOO_HIGH, field, "at most " + most, String.valueOf(found), String.valueOf(most)));
    }
}
