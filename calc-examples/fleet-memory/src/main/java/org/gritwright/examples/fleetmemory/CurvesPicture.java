package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.UnitSymbol;

/**
 * The curves of all seasons: above, what leaves per revolution over the opening; below, by how much that differs from the first season's curve,
 * which is too little to be seen above. Lines are fitted curves and nothing else; what was caught are marks. The last seasons have a
 * mark and a line of their own, the earlier ones share dots and thin lines.
 */
final class CurvesPicture {
    private static final int BESIDE = 16;
    private static final int TOP = 10;
    private static final int VALUES_END = 220;
    private static final int CHANGES_TOP = 252;
    private static final int CHANGES_END = 372;
    private static final int MOST_TICKS = 6;
    private static final int FEW_TICKS = 4;

    /** Beyond the openings, so that marks stand clear of the edges. */
    private static final double ROOM = 1.15;

    /** A change's scale ends no nearer than this, in percent, so that tiny ones look tiny. */
    private static final double LEAST_EDGE = 1;

    /** The newest season's in front. */
    private static final List<Drawing.Mark> MARKS =
            List.of(Drawing.Mark.CIRCLE, Drawing.Mark.DIAMOND, Drawing.Mark.SQUARE, Drawing.Mark.TRIANGLE);

    private static final List<String> LOOKS = List.of("solid", "dashed", "long", "dotted");

    private static final String EARLIER = "thin";
    private static final int SAMPLE = 44;
    private static final int SAMPLE_HEIGHT = 12;

    private final SeasonCurves curves;
    private final Picture.Width width;
    private final double perSi;
    private final Drawing drawing;
    private final Scale across;
    private final Scale values;
    private final Scale changes;

    CurvesPicture(SeasonCurves curves, Picture.Width width) {
        this.curves = curves;
        this.width = width;
        Quantity<?> largest = curves.largest();
        double most = curves.openings().lastKey();
        perSi = largest.getValue().doubleValue() / most;
        across = new Scale(0, ROOM * most * perSi, width.left(), width.width() - BESIDE);
        double highest = 0;
        double edge = LEAST_EDGE;
        for (SeasonCurves.Curve season : curves.seasons()) {
            for (Map.Entry<Double, SeasonCurves.At> one : season.byOpening().entrySet()) {
                PointStory.Caught caught = one.getValue().caught();
                highest = Math.max(highest, caught.value() + caught.half().orElse(0.0));
                edge = Math.max(
                        edge, Math.abs(curves.changed(season, one.getKey()).orElse(0.0)));
            }
            for (CurveFit.Band band : line(season)) {
                highest = Math.max(highest, band.value());
                edge = Math.max(
                        edge,
                        changed(band.opening(), band.value()).map(Math::abs).orElse(0.0));
            }
        }
        for (CurveFit.Band band : band()) {
            for (double value : new double[] {band.low(), band.high()}) {
                edge = Math.max(
                        edge, changed(band.opening(), value).map(Math::abs).orElse(0.0));
            }
        }
        values = new Scale(0, 1.05 * highest, VALUES_END, TOP);
        changes = new Scale(-1.2 * edge, 1.2 * edge, CHANGES_END, CHANGES_TOP);
        drawing = new Drawing(
                width.width(),
                CHANGES_END + 44,
                "Two charts of " + curves.material() + " over the gate opening, " + symbol(largest.getUnit()) + ", in "
                        + Words.count(curves.seasons().size(), "season") + ": what leaves, " + curves.symbol()
                        + ", and by how much that differs from " + curves.reference()
                        + ", %. The table gives the numbers.");
    }

    @SuppressWarnings("unchecked") // whatever kind it is, only its symbol is asked for
    private static <Q extends Quantity<Q>> String symbol(Unit<?> unit) {
        return UnitSymbol.of((Unit<Q>) unit).symbol();
    }

    /** A line and a mark of the picture, and whose they are. */
    record Key(Drawing sample, String words) {}

    /** The newest season first, and the earlier ones together. */
    List<Key> keys() {
        List<Key> keys = new ArrayList<>();
        List<SeasonCurves.Curve> seasons = curves.seasons();
        for (int back = 0; back < Math.min(MARKS.size(), seasons.size()); back++) {
            SeasonCurves.Curve season = seasons.get(seasons.size() - 1 - back);
            keys.add(new Key(
                    sample(season.fit().map(fit -> LOOKS.get(keys.size())), MARKS.get(back)),
                    "season " + season.season() + (season.fit().isPresent() ? "" : ", no curve fitted")));
        }
        int earlier = seasons.size() - MARKS.size();
        if (earlier > 0) {
            boolean isFitted = seasons.subList(0, earlier).stream()
                    .anyMatch(one -> one.fit().isPresent());
            keys.add(new Key(
                    sample(isFitted ? Optional.of(EARLIER) : Optional.empty(), Drawing.Mark.DOT),
                    Words.count(earlier, "earlier season")));
        }
        return keys;
    }

    private static Drawing sample(Optional<String> look, Drawing.Mark mark) {
        Drawing sample = new Drawing(
                SAMPLE, SAMPLE_HEIGHT, look.map(line -> line + " line with ").orElse("") + mark.sign());
        look.ifPresent(line -> sample.line(line, 0, SAMPLE_HEIGHT / 2.0, SAMPLE, SAMPLE_HEIGHT / 2.0));
        sample.mark(mark, SAMPLE / 2.0, SAMPLE_HEIGHT / 2.0);
        return sample;
    }

    /** What lines and marks are. */
    String caption() {
        boolean isFitted = curves.first().isPresent();
        return (isFitted
                        ? "Lines: the curves that were fitted to each season’s calibration, from the lowest to the highest opening"
                                + " that was caught. Marks: the season’s last catch at each opening; beside its line, more or"
                                + " less left than by the curve."
                                + (band().isEmpty() ? "" : " Gray: holds the newest season’s curve with 95 %.")
                        : "Marks: the season’s last catch at each opening. No line joins them: no record has a curve fitted"
                                + " to them.")
                + " Below: by how much that differs from " + curves.reference() + ".";
    }

    Drawing drawn() {
        List<CurveFit.Band> band = band();
        if (!band.isEmpty()) {
            drawing.area("band", below(band, CurveFit.Band::low), below(band, CurveFit.Band::high));
        }
        for (int i = 0; i < curves.seasons().size(); i++) {
            season(curves.seasons().get(i), curves.seasons().size() - 1 - i);
        }
        drawing.yAxis(across.start(), values, MOST_TICKS, "what leaves, " + curves.symbol());
        drawing.xAxis(VALUES_END, across, across.ticks(width.mostTicks()), Drawing::words);
        drawing.line("axis", across.start(), changes.at(0), across.end(), changes.at(0));
        drawing.yAxis(across.start(), changes, FEW_TICKS, "changed by, %");
        drawing.xAxis(CHANGES_END, across, across.ticks(width.mostTicks()), Drawing::words);
        String unit = symbol(curves.largest().getUnit());
        drawing.text(
                "middle",
                (across.start() + across.end()) / 2,
                CHANGES_END + 38.0,
                "gate opening" + (unit.isEmpty() ? "" : ", " + unit));
        return drawing;
    }

    /** @param back how many seasons are newer */
    private void season(SeasonCurves.Curve season, int back) {
        String look = back < LOOKS.size() ? LOOKS.get(back) : EARLIER;
        Drawing.Mark mark = back < MARKS.size() ? MARKS.get(back) : Drawing.Mark.DOT;
        List<CurveFit.Band> line = line(season);
        line(
                look,
                line.stream()
                        .map(one -> new Drawing.Spot(across.at(one.opening() * perSi), values.at(one.value())))
                        .toList());
        line(look, below(line, CurveFit.Band::value));
        season.byOpening().forEach((si, at) -> {
            double x = across.at(si * perSi);
            drawing.mark(mark, x, values.at(at.caught().value()));
            drawing.mark(mark, x, changes.at(curves.changed(season, si).orElseThrow()));
        });
    }

    private void line(String look, List<Drawing.Spot> spots) {
        if (spots.size() > 1) {
            drawing.line(look, spots);
        }
    }

    private static List<CurveFit.Band> line(SeasonCurves.Curve season) {
        return season.fit()
                .map(fit -> fit.openings().stream().map(fit::band).toList())
                .orElse(List.of());
    }

    /** About the curve of the newest season; none where that has no curve, or nobody knows how sure it is. */
    private List<CurveFit.Band> band() {
        return line(curves.seasons().get(curves.seasons().size() - 1)).stream()
                .filter(one -> one.high() > one.low()
                        && changed(one.opening(), one.value()).isPresent())
                .toList();
    }

    private List<Drawing.Spot> below(List<CurveFit.Band> line, ToDoubleFunction<CurveFit.Band> value) {
        List<Drawing.Spot> spots = new ArrayList<>();
        for (CurveFit.Band one : line) {
            changed(one.opening(), value.applyAsDouble(one))
                    .ifPresent(change ->
                            spots.add(new Drawing.Spot(across.at(one.opening() * perSi), changes.at(change))));
        }
        return spots;
    }

    /** By how much a curve's value differs from the first curve's; none beyond the openings that one was fitted to. */
    private Optional<Double> changed(double opening, double value) {
        return curves.first()
                .flatMap(SeasonCurves.Curve::fit)
                .filter(fit -> fit.holds(opening))
                .map(fit -> SeasonCurves.percent(value, fit.at(opening)));
    }
}
