package org.gritwright.core.history;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.telemetry.SharedError;
import org.gritwright.core.uncertainty.Measured;
import org.gritwright.units.Amounts;
import org.gritwright.units.Rounded;
import org.gritwright.units.SpreadingUnits;
import org.gritwright.units.check.Require;

/**
 * By how much a truck's display was off over a time, by its verifications: one number for all of it. Immutable, thread-safe, a value.
 *
 * <p>The error is the mean of what verifications found in that time and of what was known of the values held when it began. Somewhere between the
 * least and the greatest of them lies the error by which the time's mass is off: half their distance, divided by √3, stands beside the largest of
 * their uncertainties (JCGM 100:2008, the GUM, 4.3.7: limits, and nothing known between them). More verifications don't make it smaller, since
 * a truck's error changes from day to day. After a change of the truck, or a loss of what its display held, nobody knows until the next verification:
 * for that share of the time it may be off by 10 % (common practice, no source), which widens the uncertainty.
 *
 * @param error indicated ÷ true − 1, with its whole standard uncertainty, in percent; none where nothing is known
 * @param shared the parts of the uncertainty that others share, relative; of each id the largest
 * @param verifications how many verifications it is the mean of; 0 where only a calibration is known
 * @param remarks what a person should know of it, as English sentences
 */
public record SeasonError(
        Optional<Measured<Dimensionless>> error, List<SharedError> shared, int verifications, List<String> remarks) {
    /** How far a value may be off after a change that nobody checked (common practice, no source). */
    private static final double UNKNOWN = 0.10;

    /** Errors that differ by more than that within a season are worth a remark; common practice, no source. */
    private static final double CHANGED = 0.03;

    /** Copies the lists. */
    public SeasonError {
        Require.given(SeasonError.class, error, shared, remarks);
        shared = Shared.once(shared);
        Require.that(verifications >= 0, "verifications", "0 or more", verifications);
        remarks = List.copyOf(remarks);
    }

    /** What an error is known by. */
    private record Evidence(Measured<Dimensionless> error, Event by) {
        double ratio() {
            return Amounts.si(Dimensionless.class, error.value());
        }

        double uncertainty() {
            return error.standardUncertainty()
                    .map(u -> Amounts.si(Dimensionless.class, u))
                    .orElse(0.0);
        }

        boolean isVerification() {
            return by.what() instanceof What.Verified;
        }
    }

    /**
     * By how much a truck's display was off.
     *
     * @param history what is known
     * @param truck the truck's id
     * @param material a material's name: values for others aren't asked for
     * @param from the first day
     * @param to the last day, which is in
     * @return the error; without one where nothing is known of the truck
     * @throws org.gritwright.units.InvalidInputException if the last day is before the first
     */
    public static SeasonError of(History history, String truck, String material, LocalDate from, LocalDate to) {
        Objects.requireNonNull(history, "history");
        Objects.requireNonNull(truck, "truck");
        Objects.requireNonNull(material, "material");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.that(!to.isBefore(from), "last day", "not before the first, " + from, to);
        Instant begin = from.atStartOfDay().toInstant(history.yard());
        Instant end = to.plusDays(1).atStartOfDay().toInstant(history.yard()).minusNanos(1);
        List<Evidence> verified = new ArrayList<>();
        for (Held held : history.asOf(truck, begin).values()) {
            boolean isKnown =
                    held.standing() != Standing.CHANGED_SINCE && held.verified().isPresent();
            if (isKnown && isOf(held, material)) {
                add(verified, held.error(), held.verified().get());
            }
        }
        for (Event event : history.standing(truck)) {
            Instant at = history.instant(event);
            if (event.what() instanceof What.Verified one
                    && one.inForce().point().material().name().equals(material)
                    && at.isAfter(begin)
                    && !at.isAfter(end)) {
                add(verified, Optional.of(one.error()), event);
            }
        }
        List<Evidence> known = verified.isEmpty() ? calibrated(history.asOf(truck, end), material) : verified;
        if (known.isEmpty()) {
            return new SeasonError(Optional.empty(), List.of(), 0, List.of(nothing(history, truck, material)));
        }
        return of(known, gaps(history, truck, material, begin, end), begin, end);
    }

    /** A material by another name is easily taken for one of which nothing is known. */
    private static String nothing(History history, String truck, String material) {
        String others = history.standing(truck).stream()
                .filter(event -> event.truck().isPresent())
                .flatMap(event -> event.what().point().stream())
                .map(point -> point.material().name())
                .filter(name -> !name.equals(material))
                .distinct()
                .sorted()
                .collect(Collectors.joining(", "));
        return "No verification or calibration of it with " + material + " is known"
                + (others.isEmpty() ? "." : "; its records are of " + others + ": is that the same?");
    }

    private static boolean isOf(Held held, String material) {
        return held.value().point().material().name().equals(material);
    }

    private static void add(List<Evidence> all, Optional<Measured<Dimensionless>> error, Event by) {
        error.filter(one -> one.standardUncertainty().isPresent())
                .filter(one -> all.stream().noneMatch(other -> other.by.id().equals(by.id())))
                .ifPresent(one -> all.add(new Evidence(one, by)));
    }

    /** What is known where nobody verified: by the catches from which a value was computed. */
    private static List<Evidence> calibrated(TruckState state, String material) {
        List<Evidence> all = new ArrayList<>();
        for (Held held : state.values()) {
            Optional<Event> by = held.verified().or(held::found).or(held::calibrated);
            if (by.isPresent() && isOf(held, material)) {
                add(all, held.error(), by.get());
            }
        }
        return all;
    }

    /** A time in which nobody knew what the display's value was worth: from a change or a loss to the next verification. */
    private record Gap(Event by, Instant from, Optional<Event> checked, Instant until) {
        double seconds() {
            return ChronoUnit.SECONDS.between(from, until);
        }

        String words() {
            return upperFirst(by.what().words()) + " on " + by.at() + ", and "
                    + checked.map(event -> "not checked before " + event.at()).orElse("nobody checked since")
                    + ": in that time it may be off by " + SeasonError.words(UNKNOWN)
                    + " (common practice, no source).";
        }
    }

    static String upperFirst(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** Several changes before one verification are one gap. */
    private static List<Gap> gaps(History history, String truck, String material, Instant begin, Instant end) {
        List<Gap> gaps = new ArrayList<>();
        Optional<Event> open = Optional.empty();
        for (Event event : history.standing(truck)) {
            Instant at = history.instant(event);
            if (at.isAfter(end)) {
                break;
            }
            boolean isCheck = event.what() instanceof What.Verified one
                    && one.inForce().point().material().name().equals(material);
            if (isCheck && open.isPresent()) {
                add(gaps, history, open.get(), Optional.of(event), begin, at);
                open = Optional.empty();
            } else if (open.isEmpty() && isLoss(event.what())) {
                open = Optional.of(event);
            }
        }
        open.ifPresent(event -> add(gaps, history, event, Optional.empty(), begin, end));
        return gaps;
    }

    private static boolean isLoss(What what) {
        return (what instanceof What.Changed changed && changed.concernsMass())
                || what instanceof What.SetBack
                || what instanceof What.Overwritten;
    }

    private static void add(
            List<Gap> gaps, History history, Event by, Optional<Event> checked, Instant begin, Instant until) {
        Instant at = history.instant(by);
        Instant from = at.isBefore(begin) ? begin : at;
        if (until.isAfter(from)) {
            gaps.add(new Gap(by, from, checked, until));
        }
    }

    private static SeasonError of(List<Evidence> known, List<Gap> gaps, Instant begin, Instant end) {
        List<String> remarks = new ArrayList<>();
        double mean = known.stream().mapToDouble(Evidence::ratio).average().orElseThrow();
        double least = known.stream().mapToDouble(Evidence::ratio).min().orElseThrow();
        double greatest = known.stream().mapToDouble(Evidence::ratio).max().orElseThrow();
        double own = known.stream().mapToDouble(Evidence::uncertainty).max().orElseThrow();
        double uncertainty = Math.hypot(own, (greatest - least) / 2 / Math.sqrt(3));
        if (known.stream().noneMatch(Evidence::isVerification)) {
            remarks.add("It was calibrated and not verified.");
        }
        if (greatest - least > CHANGED) {
            remarks.add("Its error wasn't the same all the time: from " + words(least) + " to " + words(greatest)
                    + ". One number for the season is the mean, and as uncertain as that.");
        }
        for (Gap gap : gaps) {
            double share = gap.seconds() / ChronoUnit.SECONDS.between(begin, end);
            uncertainty = Math.hypot(uncertainty, share * UNKNOWN);
            remarks.add(gap.words());
        }
        return new SeasonError(
                Optional.of(Measured.of(
                        Amounts.ofSi(mean, SpreadingUnits.PERCENT),
                        Amounts.ofSi(uncertainty, SpreadingUnits.PERCENT),
                        Double.POSITIVE_INFINITY)),
                shared(known),
                (int) known.stream().filter(Evidence::isVerification).count(),
                remarks);
    }

    private static String words(double ratio) {
        return Rounded.text(Amounts.ofSi(ratio, SpreadingUnits.PERCENT), 2);
    }

    private static List<SharedError> shared(List<Evidence> known) {
        Map<String, Quantity<Dimensionless>> largest = new HashMap<>();
        known.stream()
                .flatMap(one -> Timelines.shared(one.by.what()).stream())
                .forEach(one -> largest.merge(
                        one.id(),
                        one.standardUncertainty(),
                        (a, b) -> Amounts.si(Dimensionless.class, a) >= Amounts.si(Dimensionless.class, b) ? a : b));
        return largest.entrySet().stream()
                .map(one -> new SharedError(one.getKey(), one.getValue()))
                .sorted(Comparator.comparing(SharedError::id))
                .toList();
    }
}
