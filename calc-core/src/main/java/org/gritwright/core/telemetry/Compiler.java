package org.gritwright.core.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import javax.measure.quantity.Dimensionless;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.Amounts;
import org.gritwright.units.InvalidInputException;
import org.jspecify.annotations.Nullable;

/** A timeline to plain arrays. */
final class Compiler {
    private final Timeline timeline;
    private final Counter counter;
    private final long earliest;
    private final long latest;
    private final List<Share> shares = new ArrayList<>();
    private final Map<Shared, Integer> places = new HashMap<>();

    Compiler(Timeline timeline, Counter counter, Instant from, Instant until) {
        this.timeline = Objects.requireNonNull(timeline, "timeline");
        this.counter = Objects.requireNonNull(counter, "counter");
        this.earliest = Times.earliest(from, until);
        this.latest = Times.latest(from, until);
    }

    /**
     * What is known of the ways on which errors grew with turns or amounts.
     *
     * @param isRefused whether there may be no such error
     * @param counted what a first pass counted
     */
    record Ways(boolean isRefused, Optional<RowSums> counted) {
        static final Ways REFUSED = new Ways(true, Optional.empty());
        static final Ways COUNTED = new Ways(false, Optional.empty());

        static Ways known(RowSums counted) {
            return new Ways(false, Optional.of(counted));
        }
    }

    /** What shares its errors, and the way on which one grew, however many borders of others lie in between. */
    private record Shared(TimelineEntry entry, Optional<Timeline.Correction> off) {}

    RowEvaluator compile(Ways ways) {
        List<String> slots = timeline.slots();
        HeldArrays[][] held = slots.stream().map(slot -> held(slot, ways)).toArray(HeldArrays[][]::new);
        return new RowEvaluator(
                slots, timeline.isOfLiquids(), earliest, latest, counter, held, shares.toArray(Share[]::new));
    }

    private HeldArrays[] held(String slot, Ways ways) {
        List<TimelineEntry> entries = timeline.entries().stream()
                .filter(entry -> entry.slot().equals(slot))
                .toList();
        List<Timeline.Correction> corrections = timeline.corrections().stream()
                .filter(one -> one.found().slot().equals(slot) && one.found().isShown())
                .toList();
        List<Long> borders = new ArrayList<>(borders(entries, corrections));
        List<HeldArrays> held = new ArrayList<>();
        for (int i = 0; i < borders.size(); i++) {
            long from = borders.get(i);
            long until = i + 1 < borders.size() ? borders.get(i + 1) : Long.MAX_VALUE;
            held.add(held(inForce(entries, from), corrections, from, until, ways));
        }
        return held.toArray(HeldArrays[]::new);
    }

    private static SortedSet<Long> borders(List<TimelineEntry> entries, List<Timeline.Correction> corrections) {
        TreeSet<Long> borders = new TreeSet<>();
        entries.forEach(entry -> borders.add(entry.from().toEpochMilli()));
        long first = borders.first();
        for (Timeline.Correction correction : corrections) {
            borders.add(correction.found().asLeft().toEpochMilli());
            borders.add(correction.found().at().toEpochMilli());
            if (correction.onset() instanceof Onset.AtOnce once) {
                borders.add(once.at().toEpochMilli());
            }
        }
        // Nothing is in force before the first entry, whatever was found.
        return new TreeSet<>(borders.tailSet(first));
    }

    /** The entries that came last before or at a time: all of one time. */
    private static List<TimelineEntry> inForce(List<TimelineEntry> entries, long time) {
        Instant last = entries.stream()
                .map(TimelineEntry::from)
                .filter(from -> from.toEpochMilli() <= time)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return entries.stream().filter(entry -> entry.from().equals(last)).toList();
    }

    private HeldArrays held(
            List<TimelineEntry> entries, List<Timeline.Correction> corrections, long from, long until, Ways ways) {
        TimelineEntry first = entries.get(0);
        if (first.held() instanceof TimelineEntry.Nothing) {
            return HeldArrays.nothing(from, until);
        }
        if (first.held() instanceof TimelineEntry.Curve curve) {
            CurveTable table = CurveTable.of(curve.curve());
            Optional<Timeline.Correction> correction = within(corrections, from).findFirst();
            int share =
                    share(first, "curve", correction, from, "curve of " + first.slot() + " from " + first.from(), ways);
            return HeldArrays.curve(
                    from, until, table, divisor(correction, from), share, drift(correction, share, ways));
        }
        return values(entries, corrections, from, until, ways);
    }

    private HeldArrays values(
            List<TimelineEntry> entries, List<Timeline.Correction> corrections, long from, long until, Ways ways) {
        int size = entries.size();
        double[] settings = new double[size];
        double[] perCounts = new double[size];
        int[] places = new int[size];
        @Nullable Drift[] drifts = new Drift[size];
        for (int i = 0; i < size; i++) {
            TimelineEntry entry = entries.get(i);
            TimelineEntry.Value value = (TimelineEntry.Value) entry.held();
            Setting setting = value.setting();
            settings[i] = setting.scale() == Setting.Scale.NONE ? Double.NaN : setting.si();
            Optional<Timeline.Correction> correction = within(corrections, from)
                    .filter(one -> one.found().setting().isSameAs(setting))
                    .findFirst();
            places[i] = share(entry, setting.toString(), correction, from, "", ways);
            perCounts[i] = AmountPerCount.of(value.inForce()) / divisor(correction, from);
            drifts[i] = drift(correction, places[i], ways);
        }
        return HeldArrays.values(from, until, settings, perCounts, places, drifts);
    }

    private static Stream<Timeline.Correction> within(List<Timeline.Correction> corrections, long from) {
        return corrections.stream()
                .filter(one -> from >= one.found().asLeft().toEpochMilli()
                        && from < one.found().at().toEpochMilli());
    }

    private static double error(Timeline.Correction correction) {
        return Amounts.si(Dimensionless.class, correction.found().error().value());
    }

    private static boolean isOff(Timeline.Correction correction, long from) {
        return !(correction.onset() instanceof Onset.AtOnce once)
                || from >= once.at().toEpochMilli();
    }

    /** What an error that came at once divides by, once it is there. */
    private static double divisor(Optional<Timeline.Correction> correction, long from) {
        return correction
                .filter(one -> one.onset() instanceof Onset.AtOnce && isOff(one, from))
                .map(one -> 1 + error(one))
                .orElse(1.0);
    }

    private static @Nullable Drift drift(Optional<Timeline.Correction> correction, int share, Ways ways) {
        if (correction.isEmpty() || !(correction.get().onset() instanceof Onset.Gradually gradually)) {
            return null;
        }
        AsFound found = correction.get().found();
        double error = error(correction.get());
        if (gradually == Onset.Gradually.WITH_TIME) {
            double from = found.asLeft().toEpochMilli();
            return new Drift(gradually, error, from, found.at().toEpochMilli() - from);
        }
        if (ways.isRefused()) {
            throw new InvalidInputException(
                    "onset", "at once, or gradually with time, unless there are two passes", gradually.toString());
        }
        double length = ways.counted()
                .map(counted -> (double)
                        (gradually == Onset.Gradually.WITH_TURNS
                                ? counted.turned(share)
                                : counted.gone(share).amount()))
                .orElse(0.0);
        return length > 0 ? new Drift(gradually, error, 0, length) : null;
    }

    private int share(
            TimelineEntry entry,
            String setting,
            Optional<Timeline.Correction> correction,
            long from,
            String curve,
            Ways ways) {
        Optional<Timeline.Correction> off = correction.filter(one -> isOff(one, from));
        Integer place = places.get(new Shared(entry, off));
        if (place != null) {
            return place;
        }
        places.put(new Shared(entry, off), shares.size());
        Optional<Timeline.Correction> atOnce = off.filter(one -> one.onset() instanceof Onset.AtOnce);
        Optional<Timeline.Correction> grown = off.filter(one -> one.onset() instanceof Onset.Gradually);
        // What is divided by what was found is as wrong as that, and no longer as what was calibrated.
        List<SharedError> errors = atOnce.isPresent() ? List.of() : entry.errors();
        String[] ids = Stream.concat(errors.stream().map(SharedError::id), atOnce.map(Compiler::id).stream())
                .toArray(String[]::new);
        double[] sizes = DoubleStream.concat(
                        errors.stream().mapToDouble(one -> Amounts.si(Dimensionless.class, one.standardUncertainty())),
                        atOnce.stream().mapToDouble(Compiler::relative))
                .toArray();
        shares.add(new Share(
                entry.slot() + ", " + setting + ", from " + Instant.ofEpochMilli(from),
                ids,
                sizes,
                atOnce.isPresent() ? "" : curve,
                grown.map(Compiler::id).orElse(""),
                grown.map(Compiler::relative).orElse(0.0),
                grown.filter(one -> one.onset() != Onset.Gradually.WITH_TIME)
                        .flatMap(one -> ways.counted())
                        .map(counted -> counted.turned(shares.size()))
                        .orElse(Long.MAX_VALUE)));
        return shares.size() - 1;
    }

    private static String id(Timeline.Correction correction) {
        return "error of " + correction.found().slot() + " found at "
                + correction.found().at();
    }

    private static double relative(Timeline.Correction correction) {
        return correction
                .found()
                .error()
                .standardUncertainty()
                .map(u -> Amounts.si(Dimensionless.class, u) / (1 + error(correction)))
                .orElse(0.0);
    }
}
