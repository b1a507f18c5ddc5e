package org.gritwright.examples.fleetmemory;

import java.time.LocalDate;
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
import org.gritwright.core.history.What;
import org.gritwright.core.metering.Metering;
import org.gritwright.core.observation.CalibrationPoint;
import org.gritwright.core.spi.Setting;

/**
 * What leaves per revolution of one material by one metering over the gate opening, season by season: the last catch of each season at each
 * opening, and the curve that was fitted to its calibration.
 *
 * @param symbol the unit of what leaves, for example "lb/rev"
 * @param seasons in the order of time
 */
record SeasonCurves(String material, String symbol, List<Curve> seasons) {
    /**
     * A season.
     *
     * @param byOpening the last catch at each opening by its SI number, the smallest first
     * @param fit the last curve that was entered into the display, or the last one if none was; none where no record has one
     */
    record Curve(String season, NavigableMap<Double, At> byOpening, Optional<CurveFit> fit) {}

    /** A catch at an opening, and as it is printed. */
    record At(Setting opening, PointStory.Caught caught, String text) {}

    /** What may stand in one chart. */
    private record Key(String material, Metering metering, Setting.Scale scale, String symbol) {}

    private record Told(PointStory story, PointStory.Caught caught) {
        CalibrationPoint point() {
            return caught.by().what().point().orElseThrow();
        }

        LocalDate day() {
            return caught.by().at().day();
        }

        boolean isLike(CalibrationPoint other) {
            return point().material().name().equals(other.material().name())
                    && point().metering().equals(other.metering())
                    && point().setting().scale() == other.setting().scale();
        }

        Key key() {
            return new Key(
                    point().material().name(),
                    point().metering(),
                    point().setting().scale(),
                    story.symbol());
        }
    }

    /** Those of a truck's materials and meterings that have an opening at all. */
    static List<SeasonCurves> of(Overview fleet, List<PointStory> stories) {
        List<Told> all = new ArrayList<>();
        for (PointStory story : stories) {
            story.catches().forEach(one -> all.add(new Told(story, one)));
        }
        all.removeIf(one -> one.point().setting().quantity().isEmpty());
        all.sort(Comparator.comparing(one -> one.caught().implied().at()));
        Map<Key, List<Told>> together = new LinkedHashMap<>();
        all.forEach(one ->
                together.computeIfAbsent(one.key(), key -> new ArrayList<>()).add(one));
        Seasons seasons = new Seasons(fleet.history());
        return together.values().stream()
                .map(told -> of(told, seasons, fits(told, fleet)))
                .toList();
    }

    private static SeasonCurves of(List<Told> told, Seasons seasons, List<CurveFit> fits) {
        Map<String, NavigableMap<Double, At>> catches = new LinkedHashMap<>();
        for (Told one : told) {
            Setting opening = one.point().setting();
            catches.computeIfAbsent(seasons.of(one.day()), season -> new TreeMap<>())
                    .put(opening.si(), new At(opening, one.caught(), one.story().text(one.caught())));
        }
        Map<String, CurveFit> bySeason = new LinkedHashMap<>();
        for (CurveFit fit : fits) {
            bySeason.merge(seasons.of(fit.day()), fit, (old, now) -> now.isEntered() || !old.isEntered() ? now : old);
        }
        return new SeasonCurves(
                told.get(0).point().material().name(),
                told.get(0).story().symbol(),
                catches.entrySet().stream()
                        .map(season -> new Curve(
                                season.getKey(), season.getValue(), Optional.ofNullable(bySeason.get(season.getKey()))))
                        .toList());
    }

    /** In the order of time. */
    private static List<CurveFit> fits(List<Told> told, Overview fleet) {
        Map<String, Told> byRecord = new LinkedHashMap<>();
        for (Told one : told) {
            if (one.caught().isCalibration()
                    && fleet.curves().of(one.caught().by()).isPresent()) {
                byRecord.putIfAbsent(one.caught().by().source(), one);
            }
        }
        List<LocalDate> entered = entered(told.get(0), fleet);
        List<Told> each = List.copyOf(byRecord.values());
        List<CurveFit> fits = new ArrayList<>();
        for (int i = 0; i < each.size(); i++) {
            LocalDate from = each.get(i).day();
            LocalDate next = i + 1 < each.size() ? each.get(i + 1).day() : LocalDate.MAX;
            fits.add(new CurveFit(
                    from,
                    entered.stream().anyMatch(day -> !day.isBefore(from) && day.isBefore(next)),
                    fleet.curves().of(each.get(i).caught().by()).orElseThrow(),
                    each.get(i).story().line().perKilogram()));
        }
        return fits;
    }

    /** The days on which somebody wrote down that a value was entered, and not by a correction, which knows no curve. */
    private static List<LocalDate> entered(Told like, Overview fleet) {
        History history = fleet.history();
        return history.changes(like.story().point().history().truck()).stream()
                .filter(change -> !change.at().isAfter(fleet.at())
                        && change.isWrittenDown()
                        && !(change.by().what() instanceof What.Corrected)
                        && change.to().filter(to -> like.isLike(to.point())).isPresent())
                .map(change -> change.at().atOffset(history.yard()).toLocalDate())
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

    /** The first season that has a curve. */
    Optional<Curve> first() {
        return seasons.stream().filter(season -> season.fit().isPresent()).findFirst();
    }

    /**
     * What is compared with: what leaves at an opening by the curve of the first season that has one, if something was caught there or at
     * openings about it; else what left in the first catch there; none where none was made.
     */
    Optional<Double> reference(double opening) {
        return first().flatMap(Curve::fit)
                .filter(fit -> fit.holds(opening))
                .map(fit -> fit.at(opening))
                .or(() -> seasons.stream()
                        .flatMap(one -> Optional.ofNullable(one.byOpening().get(opening)).stream())
                        .findFirst()
                        .map(at -> at.caught().value()));
    }

    /** The same in words, for example "the first curve (season from 2023-11-01)". */
    String reference() {
        Optional<CurveFit> fit = first().flatMap(Curve::fit);
        if (fit.isEmpty()) {
            return "the first catch at the opening";
        }
        boolean isForAll = openings().keySet().stream().allMatch(fit.get()::holds);
        return "the first curve (season " + first().orElseThrow().season() + ")"
                + (isForAll ? "" : "; at openings beyond it, from the first catch there");
    }

    /** By how much the season's last catch at an opening differs from what is compared with, in percent. */
    Optional<Double> changed(Curve season, double opening) {
        return Optional.ofNullable(season.byOpening().get(opening))
                .map(one -> percent(one.caught().value(), reference(opening).orElseThrow()));
    }

    static double percent(double value, double reference) {
        return 100 * (value / reference - 1);
    }
}
