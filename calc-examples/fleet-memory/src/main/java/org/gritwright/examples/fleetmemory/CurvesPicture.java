package org.gritwright.examples.fleetmemory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.gritwright.units.UnitSymbol;

/**
 * The curves of all seasons: above, what leaves per revolution over the opening; below, by how much that has changed since the first season,
 * which is too little to be seen above. The last seasons have a mark each, the earlier ones thin lines.
 */
final class CurvesPicture {
    private static final int WIDTH = 520;
    private static final int LEFT = 84;
    private static final int RIGHT = WIDTH - 16;
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

    private final SeasonCurves curves;
    private final double perSi;
    private final Drawing drawing;
    private final Scale across;
    private final Scale values;
    private final Scale changes;

    CurvesPicture(SeasonCurves curves) {
        this.curves = curves;
        Quantity<?> largest = curves.largest();
        double most = curves.openings().lastKey();
        perSi = largest.getValue().doubleValue() / most;
        across = new Scale(0, ROOM * most * perSi, LEFT, RIGHT);
        double highest = 0;
        double edge = LEAST_EDGE;
        for (SeasonCurves.Curve season : curves.seasons()) {
            for (Map.Entry<Double, SeasonCurves.At> one : season.byOpening().entrySet()) {
                PointStory.Caught caught = one.getValue().caught();
                highest = Math.max(highest, caught.value() + caught.half().orElse(0.0));
                edge = Math.max(
                        edge, Math.abs(curves.changed(season, one.getKey()).orElse(0.0)));
            }
        }
        values = new Scale(0, 1.05 * highest, VALUES_END, TOP);
        changes = new Scale(-1.2 * edge, 1.2 * edge, CHANGES_END, CHANGES_TOP);
        drawing = new Drawing(
                WIDTH,
                CHANGES_END + 44,
                "Two charts of " + curves.material() + " over the gate opening, " + symbol(largest.getUnit()) + ", in "
                        + Words.count(curves.seasons().size(), "season") + ": what leaves, " + curves.symbol()
                        + ", and by how much it has changed since the first season, %. The table gives the numbers.");
    }

    @SuppressWarnings("unchecked") // whatever kind it is, only its symbol is asked for
    private static <Q extends Quantity<Q>> String symbol(Unit<?> unit) {
        return UnitSymbol.of((Unit<Q>) unit).symbol();
    }

    /** Which mark is whose, for example "● from 2025-11-01, ◆ from 2024-11-01; thin lines: 3 earlier seasons". */
    String legend() {
        List<String> named = new ArrayList<>();
        List<SeasonCurves.Curve> seasons = curves.seasons();
        for (int back = 0; back < Math.min(MARKS.size(), seasons.size()); back++) {
            named.add(MARKS.get(back).sign() + " season "
                    + seasons.get(seasons.size() - 1 - back).season());
        }
        int earlier = seasons.size() - MARKS.size();
        return String.join(", ", named) + (earlier > 0 ? "; thin lines: " + Words.count(earlier, "earlier season") : "")
                + ".";
    }

    Drawing drawn() {
        for (int i = 0; i < curves.seasons().size(); i++) {
            season(curves.seasons().get(i), curves.seasons().size() - 1 - i);
        }
        drawing.yAxis(LEFT, values, MOST_TICKS, "what leaves, " + curves.symbol());
        drawing.xAxis(VALUES_END, across, across.ticks(MOST_TICKS), Drawing::words);
        drawing.line("axis", LEFT, changes.at(0), RIGHT, changes.at(0));
        drawing.yAxis(LEFT, changes, FEW_TICKS, "changed by, %");
        drawing.xAxis(CHANGES_END, across, across.ticks(MOST_TICKS), Drawing::words);
        String unit = symbol(curves.largest().getUnit());
        drawing.text(
                "middle",
                (LEFT + RIGHT) / 2.0,
                CHANGES_END + 38.0,
                "gate opening" + (unit.isEmpty() ? "" : ", " + unit));
        return drawing;
    }

    /** @param back how many seasons are newer */
    private void season(SeasonCurves.Curve season, int back) {
        String look = back < LOOKS.size() ? LOOKS.get(back) : "thin";
        List<Drawing.Spot> above = new ArrayList<>();
        List<Drawing.Spot> below = new ArrayList<>();
        season.byOpening().forEach((si, at) -> {
            double x = across.at(si * perSi);
            above.add(new Drawing.Spot(x, values.at(at.caught().value())));
            Optional<Double> change = curves.changed(season, si);
            change.ifPresent(each -> below.add(new Drawing.Spot(x, changes.at(each))));
        });
        for (List<Drawing.Spot> spots : List.of(above, below)) {
            if (spots.size() > 1) {
                drawing.line(look, spots);
            }
            if (back < MARKS.size()) {
                spots.forEach(spot -> drawing.mark(MARKS.get(back), spot.x(), spot.y()));
            }
        }
    }
}
