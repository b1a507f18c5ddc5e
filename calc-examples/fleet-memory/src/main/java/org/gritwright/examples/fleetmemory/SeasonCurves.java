package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import org.gritwright.core.history.History;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.Setting;

/**
 * What leaves per revolution of one material by one metering over the gate opening, season by season: the last catch of each season at each
 * opening.
 *
 * @param symbol the unit of what leaves, for example "lb/rev"
 * @param seasons in the order of time
 */
record SeasonCurves(String material, String symbol, List<Curve> seasons) {
    /**
     * A season.
     *
     * @param byOpening the last catch at each opening by its SI number, the smallest first
     */
    record Curve(String season, NavigableMap<Double, At> byOpening) {}

    /** A catch at an opening, and as it is printed. */
    record At(Setting opening, PointStory.Caught caught, String text) {}

    /** What may stand in one chart. */
    private record Key(String material, Metering metering, Setting.Scale scale, String symbol) {}

    private record Told(PointStory story, PointStory.Caught caught) {
        CalibrationPoint point() {
            return caught.by().what().point().orElseThrow();
        }
    }

    /** Those of a truck's materials and meterings that have an opening at all. */
    static List<SeasonCurves> of(History history, List<PointStory> stories) {
        Seasons seasons = new Seasons(history);
        List<Told> all = new ArrayList<>();
        for (PointStory story : stories) {
            story.catches().forEach(one -> all.add(new Told(story, one)));
        }
        all.removeIf(one -> one.point().setting().quantity().isEmpty());
        all.sort(Comparator.comparing(one -> one.caught().implied().at()));
        Map<Key, Map<String, NavigableMap<Double, At>>> curves = new LinkedHashMap<>();
        for (Told one : all) {
            Setting opening = one.point().setting();
            curves.computeIfAbsent(
                            new Key(
                                    one.point().material().name(),
                                    one.point().metering(),
                                    opening.scale(),
                                    one.story().symbol()),
                            key -> new LinkedHashMap<>())
                    .computeIfAbsent(seasons.of(one.caught().by().at().day()), season -> new TreeMap<>())
                    .put(opening.si(), new At(opening, one.caught(), one.story().text(one.caught())));
        }
        return curves.entrySet().stream()
                .map(entry -> new SeasonCurves(
                        entry.getKey().material(),
                        entry.getKey().symbol(),
                        entry.getValue().entrySet().stream()
                                .map(season -> new Curve(season.getKey(), season.getValue()))
                                .toList()))
                .toList();
    }

    /** All openings of all seasons, the smallest first. */
    NavigableMap<Double, Setting> openings() {
        NavigableMap<Double, Setting> openings = new TreeMap<>();
        seasons.forEach(season -> season.byOpening().forEach((si, at) -> openings.putIfAbsent(si, at.opening())));
        return openings;
    }

    /** With one opening there is no curve to draw. */
    boolean isCurve() {
        return openings().size() > 1;
    }

    /** The unit in which openings are called, by that of the largest. */
    Quantity<?> largest() {
        return openings().lastEntry().getValue().quantity().orElseThrow();
    }

    /** By how much what leaves at an opening differs from what left there in the first season that has it, in percent. */
    Optional<Double> changed(Curve season, double opening) {
        Optional<At> first = seasons.stream()
                .flatMap(one -> Optional.ofNullable(one.byOpening().get(opening)).stream())
                .findFirst();
        Optional<At> then = Optional.ofNullable(season.byOpening().get(opening));
        return then.map(one ->
                100 * (one.caught().value() / first.orElseThrow().caught().value() - 1));
    }
}
