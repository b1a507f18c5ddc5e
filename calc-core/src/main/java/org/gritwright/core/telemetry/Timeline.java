package org.gritwright.core.telemetry;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.observation.Material;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * What was in force when, for one metering of one truck: the values that its display held for each slot, and what later
 * verifications showed them to be off by.
 *
 * <p>In a slot a later entry takes the place of what it held, and entries of one time, such as values at several settings,
 * stand beside each other. Before the first entry nothing is in force. A value is for its own setting; where the rows have no settings, or the value's
 * point has none, it is for all. A curve is for the settings between its caught ones. Immutable, thread-safe, a value.
 *
 * @param entries the entries in the order of time
 * @param corrections what verifications found, and how it came about
 */
public record Timeline(List<TimelineEntry> entries, List<Correction> corrections) {
    /**
     * A correction backwards.
     *
     * @param found what was found
     * @param onset how it came about
     */
    public record Correction(AsFound found, Onset onset) {
        /**
         * Checks that they go together.
         *
         * @throws org.gritwright.units.InvalidInputException if it came about before it was right for the last time, or after it was
         *     found
         */
        public Correction {
            Require.given(Correction.class, found, onset);
            if (onset instanceof Onset.AtOnce once) {
                Require.that(
                        !once.at().isBefore(found.asLeft()) && !once.at().isAfter(found.at()),
                        "time of the change",
                        "within " + found.asLeft() + " and " + found.at(),
                        once.at());
            }
        }
    }

    /**
     * Sorts the entries and checks that they go together.
     *
     * @throws org.gritwright.units.InvalidInputException if there is no entry, some are of grains and others of a liquid, two of one slot
     *     and time are for one setting, two materials or two sensors' pulses, or a curve is beside others, a correction is of a slot or setting that wasn't in force or reaches
     *     back beyond what was, or two corrections of one slot and setting, or of one curve, overlap in time
     */
    public Timeline {
        Require.given(Timeline.class, entries, corrections);
        entries = entries.stream()
                .sorted(Comparator.comparing(TimelineEntry::from)
                        .thenComparing(TimelineEntry::slot)
                        .thenComparing(Timeline::setting))
                .toList();
        corrections = List.copyOf(corrections);
        Require.that(!entries.isEmpty(), "timeline", "one entry or more", "none");
        List<Boolean> kinds =
                materials(entries).stream().map(Material::isLiquid).distinct().toList();
        Require.that(kinds.size() < 2, "timeline", "of grains alone or of liquids alone", "both");
        for (int i = 1; i < entries.size(); i++) {
            requireBeside(entries.get(i - 1), entries.get(i));
        }
        for (Correction correction : corrections) {
            requireInForce(correction.found(), entries);
        }
        for (int i = 0; i < corrections.size(); i++) {
            for (int j = 0; j < i; j++) {
                requireApart(corrections.get(i).found(), corrections.get(j).found(), entries);
            }
        }
    }

    private static List<Material> materials(List<TimelineEntry> entries) {
        List<Material> materials = new ArrayList<>();
        for (TimelineEntry entry : entries) {
            if (entry.held() instanceof TimelineEntry.Value value) {
                materials.add(value.inForce().point().material());
            } else if (entry.held() instanceof TimelineEntry.Curve curve) {
                materials.add(curve.curve().material());
            }
        }
        return materials;
    }

    private static void requireBeside(TimelineEntry one, TimelineEntry next) {
        if (one.slot().equals(next.slot()) && one.from().equals(next.from())) {
            boolean together = one.held() instanceof TimelineEntry.Value value
                    && next.held() instanceof TimelineEntry.Value other
                    && value.goesBeside(other);
            Require.that(
                    together,
                    "entries of slot " + one.slot() + " from " + one.from(),
                    "values of one material and one sensor at different settings, or one curve alone, or nothing alone",
                    () -> named(one) + " and " + named(next));
        }
    }

    private static double setting(TimelineEntry entry) {
        return entry.held() instanceof TimelineEntry.Value value
                ? value.setting().si()
                : 0;
    }

    private static String named(TimelineEntry entry) {
        if (entry.held() instanceof TimelineEntry.Value value) {
            CalibrationPoint point = value.inForce().point();
            return point + " by " + point.metering().feedback();
        }
        return entry.held() instanceof TimelineEntry.Curve ? "a curve" : "nothing";
    }

    /** What was found off must have been in force since it was right for the last time, and be what was found. */
    private static void requireInForce(AsFound found, List<TimelineEntry> entries) {
        List<TimelineEntry> ofSlot = entries.stream()
                .filter(entry -> entry.slot().equals(found.slot()))
                .toList();
        Require.that(
                !ofSlot.isEmpty(),
                "slot of the error found",
                "one of " + entries.stream().map(TimelineEntry::slot).distinct().toList(),
                found.slot());
        Instant since = since(found, ofSlot);
        Require.that(
                !found.asLeft().isBefore(since),
                "time as left in slot " + found.slot(),
                "no earlier than what was in force when the error was found, since " + since,
                found.asLeft());
        Require.that(
                ofSlot.stream()
                        .filter(entry -> entry.from().equals(since))
                        .anyMatch(entry -> isOf(found.setting(), entry.held())),
                "setting of the error found in slot " + found.slot(),
                "one that was in force then",
                found.setting());
    }

    private static Instant since(AsFound found, List<TimelineEntry> ofSlot) {
        return ofSlot.stream()
                .map(TimelineEntry::from)
                .filter(from -> from.isBefore(found.at()))
                .max(Comparator.naturalOrder())
                .orElse(found.at());
    }

    private static boolean isOf(Setting setting, TimelineEntry.Held held) {
        return held instanceof TimelineEntry.Curve
                || (held instanceof TimelineEntry.Value value
                        && value.inForce().point().setting().isSameAs(setting));
    }

    private static boolean isOfCurve(AsFound found, List<TimelineEntry> entries) {
        List<TimelineEntry> ofSlot = entries.stream()
                .filter(entry -> entry.slot().equals(found.slot()))
                .toList();
        Instant since = since(found, ofSlot);
        return ofSlot.stream()
                .filter(entry -> entry.from().equals(since))
                .anyMatch(entry -> entry.held() instanceof TimelineEntry.Curve);
    }

    /** A curve is corrected as a whole, so that at a time one error alone can correct it, at whatever setting it was found. */
    private static void requireApart(AsFound one, AsFound other, List<TimelineEntry> entries) {
        boolean apart = !one.slot().equals(other.slot())
                || !(one.setting().isSameAs(other.setting()) || isOfCurve(one, entries))
                || !one.asLeft().isBefore(other.at())
                || !other.asLeft().isBefore(one.at());
        Require.that(
                apart,
                "corrections of slot " + one.slot(),
                "of times that don't overlap",
                other.asLeft() + " to " + other.at() + " and " + one.asLeft() + " to " + one.at());
    }

    /**
     * A timeline without corrections.
     *
     * @param entries one entry or more, in any order
     * @return the timeline
     * @throws org.gritwright.units.InvalidInputException if the entries don't go together
     */
    public static Timeline of(List<TimelineEntry> entries) {
        return new Timeline(entries, List.of());
    }

    /**
     * The same, corrected backwards by what a verification found. It changes nothing where the error isn't shown to differ from zero
     * ({@link AsFound#isShown}).
     *
     * @param found what was found
     * @param onset how it came about
     * @return the timeline
     * @throws org.gritwright.units.InvalidInputException if it can't have come about so, isn't of what was in force since the time as left,
     *     or overlaps another correction
     */
    public Timeline correctedBackBy(AsFound found, Onset onset) {
        List<Correction> all = new ArrayList<>(corrections);
        all.add(new Correction(found, onset));
        return new Timeline(entries, all);
    }

    /**
     * The slots, or where nobody names slots the materials.
     *
     * @return each once, in the order of the alphabet
     */
    public List<String> slots() {
        return entries.stream().map(TimelineEntry::slot).distinct().sorted().toList();
    }

    /**
     * Whether what is counted is a liquid: then rows hold microliters and not milligrams.
     *
     * @return true for liquids
     */
    public boolean isOfLiquids() {
        return materials(entries).stream().anyMatch(Material::isLiquid);
    }

    /**
     * From when on something is in force.
     *
     * @return the time of the first entry
     */
    public Instant start() {
        return Objects.requireNonNull(entries.get(0)).from();
    }
}
