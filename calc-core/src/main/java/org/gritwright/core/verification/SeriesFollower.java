package org.gritwright.core.verification;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Follows the verification catches of one calibration point in the order of time and says after each which of them are judged
 * together: those in a row that were made with one calibration in force, all counted or displayed, or none. A discharge that
 * was written down twice counts once, and a catch whose data are doubted stands alone. Use it where a day's catches are
 * judged as they come; {@link VerificationSeries#of} judges those that are given. Each catch costs about the same, however many
 * came before. Not thread-safe.
 */
public final class SeriesFollower {
    private Optional<VerificationSeries> series = Optional.empty();
    /** The catches of the series that have the same numbers, by their revolutions, which a display tells less exactly. */
    private final Map<VerificationCatch.Numbers, NavigableMap<Double, List<VerificationCatch>>> seen = new HashMap<>();

    /** Follows from the first catch on. */
    public SeriesFollower() {}

    /**
     * Follows one more catch.
     *
     * @param next the next in the order of time
     * @return the series that it ends
     */
    public VerificationSeries follow(Verification next) {
        VerificationSeries extended = series.filter(before -> isTogether(before, next))
                .map(before -> extended(before, next))
                .orElseGet(() -> begun(next));
        series = Optional.of(extended);
        return extended;
    }

    private static boolean isTogether(VerificationSeries before, Verification next) {
        return VerificationSeries.isAlike(before.last(), next) && !before.last().isDoubted() && !next.isDoubted();
    }

    private VerificationSeries begun(Verification first) {
        seen.clear();
        return VerificationSeries.of(List.of(first));
    }

    private VerificationSeries extended(VerificationSeries before, Verification next) {
        if (seen.isEmpty()) {
            remember(before.last().source());
        }
        if (!isSeen(next.source())) {
            remember(next.source());
            return before.plus(next);
        }
        return before.size() == 1 ? begun(next) : before.again(next);
    }

    private void remember(VerificationCatch one) {
        seen.computeIfAbsent(one.numbers(), numbers -> new TreeMap<>())
                .computeIfAbsent(one.revolutions().orElse(0), revolutions -> new ArrayList<>())
                .add(one);
    }

    private boolean isSeen(VerificationCatch one) {
        return Optional.ofNullable(seen.get(one.numbers()))
                .filter(alike -> isAmong(alike, one))
                .isPresent();
    }

    /** Of catches with the same numbers, the nearest in revolutions tell. */
    private static boolean isAmong(NavigableMap<Double, List<VerificationCatch>> alike, VerificationCatch one) {
        double revolutions = one.revolutions().orElse(0);
        return Stream.concat(
                        Stream.ofNullable(alike.floorEntry(revolutions)),
                        Stream.ofNullable(alike.ceilingEntry(revolutions)))
                .flatMap(nearest -> nearest.getValue().stream())
                .anyMatch(one::isSameDischarge);
    }
}
