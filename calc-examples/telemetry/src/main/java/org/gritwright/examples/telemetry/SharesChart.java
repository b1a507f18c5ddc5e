package org.gritwright.examples.telemetry;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gritwright.core.telemetry.RateShares;

/** How much of the way was within the target's band, beside what was laid: a bar a truck, or a bar a road. */
final class SharesChart {
    private static final int WIDTH = 1080;
    private static final double LEFT = 130;
    private static final double RIGHT = 720;
    private static final double TOP = 92;
    private static final double LINE = 40;
    private static final double BAR = 24;
    private static final double POUNDS_PER_TON = 2000;
    private static final int MOST_ROADS = 30;

    private final String title;
    private final String description;
    private final List<Bar> bars;

    /**
     * A bar.
     *
     * @param unknown millimeters of which nobody knows what was laid
     * @param laid in words
     */
    private record Bar(String name, RateShares shares, long unknown, String laid) {
        long known() {
            return shares.below() + shares.within() + shares.above();
        }

        double whole() {
            return Math.max(1, (double) known() + unknown);
        }

        double within() {
            return shares.within() / whole();
        }
    }

    private SharesChart(String title, String description, List<Bar> bars) {
        this.title = title;
        this.description = description;
        this.bars = bars;
    }

    static SharesChart ofFleet(Summary summary) {
        return new SharesChart(
                "The season: how much of each truck's way was laid within the band",
                "A bar a truck, and the fleet's last. The summary has the numbers.",
                summary.lines().stream()
                        .map(line ->
                                new Bar(line.name(), line.shares(), line.way().unknown(), laid(line)))
                        .toList());
    }

    private static String laid(Summary.Line line) {
        String off = line.badRows() == 0 ? "" : String.format(Locale.ROOT, ", %,d bad rows", line.badRows());
        return tons(line.laid().amount(), line.expandedPounds()) + off;
    }

    /** Where there are many, those of which least was within. */
    static SharesChart ofRoads(Map<String, RoadTotals> roads) {
        List<Bar> bars = roads.entrySet().stream()
                .filter(road -> !road.getKey().isEmpty())
                .map(road -> new Bar(
                        road.getKey(),
                        road.getValue().shares(),
                        road.getValue().way().unknown(),
                        tons(
                                road.getValue().laid().amount(),
                                UsUnits.expandedPounds(road.getValue().laid()))))
                .sorted(Comparator.comparingDouble(Bar::within).thenComparing(Bar::name))
                .toList();
        String which = bars.size() > MOST_ROADS ? ", the " + MOST_ROADS + " roads with least of it" : "";
        return new SharesChart(
                "The season: how much of each road's way was laid within the band" + which,
                "A bar a road, of all trucks that were on it. The table of roads has the numbers.",
                bars.subList(0, Math.min(MOST_ROADS, bars.size())));
    }

    Drawing drawing() {
        double bottom = TOP + LINE * bars.size() + 8;
        Drawing drawing = new Drawing(WIDTH, (int) bottom + 60, title, description);
        drawing.label("head", LEFT, 26, title);
        drawing.label("start", LEFT, 46, "of the way with spreading on, and that of which nobody knows what was laid");
        double x = TripChart.legend(drawing, "within", "within the band", LEFT);
        x = TripChart.legend(drawing, "below", "below", x);
        x = TripChart.legend(drawing, "above", "above", x);
        TripChart.legend(drawing, "unknown", "nobody knows", x);
        drawing.label("start", RIGHT + 20, 75, "laid, short tons (95 %)");
        Axis percent = new Axis(0, 100, LEFT, RIGHT);
        double y = TOP;
        for (Bar bar : bars) {
            draw(drawing, percent, bar, y + 8);
            y += LINE;
        }
        drawing.bottom(percent, bottom, "share of the way, %");
        return drawing;
    }

    private static void draw(Drawing drawing, Axis percent, Bar bar, double top) {
        drawing.label("end", LEFT - 10, top + 17, bar.name());
        double at = 0;
        at = part(drawing, percent, "within", at, bar.within(), top);
        at = part(drawing, percent, "below", at, bar.shares().below() / bar.whole(), top);
        at = part(drawing, percent, "above", at, bar.shares().above() / bar.whole(), top);
        part(drawing, percent, "unknown", at, bar.unknown() / bar.whole(), top);
        drawing.label("start", RIGHT + 20, top + 17, bar.laid());
    }

    private static double part(Drawing drawing, Axis percent, String look, double from, double share, double top) {
        double to = from + 100 * share;
        drawing.box(look, percent.at(from), top, percent.at(to), top + BAR);
        return to;
    }

    private static String tons(long milligrams, double expandedPounds) {
        return String.format(
                Locale.ROOT,
                "%.2f ± %.2f",
                UsUnits.pounds(milligrams) / POUNDS_PER_TON,
                expandedPounds / POUNDS_PER_TON);
    }
}
