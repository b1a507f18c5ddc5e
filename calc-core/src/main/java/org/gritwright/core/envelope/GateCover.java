package org.gritwright.core.envelope;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.gritwright.core.spi.Setting;
import org.gritwright.units.check.Require;

/**
 * The smallest set of gate settings that serves a fleet, so that as few as possible have to be calibrated. Immutable, thread-safe, a
 * value.
 *
 * @param settings the settings, from the lowest
 * @param unserved the needs that no setting serves
 */
public record GateCover(List<Setting> settings, List<Need> unserved) {
    /**
     * What has to be served by one of several settings.
     *
     * @param name what people know it by, such as a truck on a route
     * @param servedBy the settings that serve it: next to each other, as a wider gate only ever discharges more; none where none does
     */
    public record Need(String name, Set<Setting> servedBy) {
        /** Checks that nothing is null. */
        public Need {
            Require.given(Need.class, name, servedBy);
            servedBy = Set.copyOf(servedBy);
        }
    }

    /** A need by the numbers of its settings. */
    private record Interval(int first, int last) {}

    /** Checks that nothing is null. */
    public GateCover {
        Require.given(GateCover.class, settings, unserved);
        settings = List.copyOf(settings);
        unserved = List.copyOf(unserved);
    }

    /**
     * The smallest set.
     *
     * @param settings all settings that may be chosen, from the lowest
     * @param needs what is to be served
     * @return the set; of several that are as small the one with the highest settings. Each need is met by the last setting that
     *     serves it, needs with the earliest such setting first (the usual way to stab intervals, which leaves none smaller)
     * @throws org.gritwright.units.InvalidInputException if a setting is there twice, a need names another one, or the settings of a
     *     need aren't next to each other
     */
    public static GateCover smallest(List<Setting> settings, List<Need> needs) {
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(needs, "needs");
        Map<Setting, Integer> numbers = new HashMap<>();
        for (Setting setting : settings) {
            numbers.put(setting, numbers.size());
        }
        Require.that(numbers.size() == settings.size(), "gate settings to choose from", "given once each", settings);
        List<Need> unserved =
                needs.stream().filter(need -> need.servedBy().isEmpty()).toList();
        List<Interval> intervals = needs.stream()
                .filter(need -> !need.servedBy().isEmpty())
                .map(need -> interval(settings, numbers, need))
                .sorted(Comparator.comparingInt(Interval::last))
                .toList();
        List<Setting> chosen = new ArrayList<>();
        int last = -1;
        for (Interval interval : intervals) {
            if (interval.first() > last) {
                last = interval.last();
                chosen.add(settings.get(last));
            }
        }
        return new GateCover(chosen, unserved);
    }

    private static Interval interval(List<Setting> settings, Map<Setting, Integer> numbers, Need need) {
        int first = Integer.MAX_VALUE;
        int last = -1;
        for (Setting setting : need.servedBy()) {
            Integer number = numbers.get(setting);
            Require.that(number != null, "setting that serves " + need.name(), "one of " + settings, setting);
            first = Math.min(first, Objects.requireNonNull(number, "it was just asked for"));
            last = Math.max(last, number);
        }
        Require.that(
                last - first + 1 == need.servedBy().size(),
                "settings that serve " + need.name(),
                "next to each other",
                settings.subList(first, last + 1).stream()
                        .filter(need.servedBy()::contains)
                        .toList());
        return new Interval(first, last);
    }
}
