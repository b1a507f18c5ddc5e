package org.gritwright.examples.fleetmemory;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * A picture of lines, areas, marks and words that a template writes as SVG. A "look" is a class of the style sheet. Shape tells marks
 * apart and never color, so that it is read in black and white too.
 */
final class Drawing {
    /** A mark's outline, from its middle; what stands for it in words. */
    enum Mark {
        CIRCLE("mark", "●", "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0z"),
        SQUARE("mark", "■", "m-4-4h8v8h-8z"),
        DIAMOND("mark", "◆", "m0-5.5l5.5 5.5l-5.5 5.5l-5.5-5.5z"),
        TRIANGLE("mark", "▲", "m0-5l5 9h-10z"),
        RING("ring", "◯", "m-8.5 0a8.5 8.5 0 1 0 17 0a8.5 8.5 0 1 0-17 0z");

        private final String look;
        private final String sign;
        private final String outline;

        Mark(String look, String sign, String outline) {
            this.look = look;
            this.sign = sign;
            this.outline = outline;
        }

        String sign() {
            return sign;
        }
    }

    /** @param d the path, as SVG writes it */
    record Shape(String look, String d) {}

    record Label(String look, long x, long y, String text) {}

    /** A place of a line or an area. */
    record Spot(double x, double y) {}

    private static final int TICK = 4;
    private static final int BELOW_AXIS = 17;
    private static final int LEFT_OF_AXIS = 7;

    private final int width;
    private final int height;
    private final String description;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    /** @param description for who can't see it */
    Drawing(int width, int height, String description) {
        this.width = width;
        this.height = height;
        this.description = description;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public String description() {
        return description;
    }

    /** In the order in which they are drawn. */
    public List<Shape> shapes() {
        return shapes;
    }

    public List<Label> labels() {
        return labels;
    }

    void line(String look, double fromX, double fromY, double toX, double toY) {
        line(look, List.of(new Spot(fromX, fromY), new Spot(toX, toY)));
    }

    void line(String look, List<Spot> spots) {
        shapes.add(new Shape(look, path(spots)));
    }

    void area(String look, List<Spot> edge, List<Spot> otherEdge) {
        List<Spot> all = new ArrayList<>(edge);
        List<Spot> back = new ArrayList<>(otherEdge);
        Collections.reverse(back);
        all.addAll(back);
        shapes.add(new Shape(look, path(all) + "Z"));
    }

    void mark(Mark mark, double x, double y) {
        shapes.add(new Shape(mark.look, "M" + place(x, y) + mark.outline));
    }

    /** @param look where the text lies of the place: "start", "middle" or "end" */
    void text(String look, double x, double y, String text) {
        labels.add(new Label(look, Math.round(x), Math.round(y), text));
    }

    void shape(String look, String d) {
        shapes.add(new Shape(look, d));
    }

    void xAxis(double y, Scale across, List<BigDecimal> ticks, java.util.function.Function<BigDecimal, String> words) {
        line("axis", across.start(), y, across.end(), y);
        for (BigDecimal tick : ticks) {
            double x = across.at(tick.doubleValue());
            line("axis", x, y, x, y + TICK);
            text("middle", x, y + BELOW_AXIS, words.apply(tick));
        }
    }

    void yAxis(double x, Scale up, int most, String title) {
        line("axis", x, up.start(), x, up.end());
        for (BigDecimal tick : up.ticks(most)) {
            double y = up.at(tick.doubleValue());
            line("axis", x - TICK, y, x, y);
            text("end", x - LEFT_OF_AXIS, y, words(tick));
        }
        text("upright", 9, (up.start() + up.end()) / 2, title);
    }

    static String words(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString().replace('-', '−');
    }

    private static String path(List<Spot> spots) {
        StringBuilder path = new StringBuilder();
        for (Spot spot : spots) {
            path.append(path.isEmpty() ? 'M' : 'L').append(place(spot.x, spot.y));
        }
        return path.toString();
    }

    static String place(double x, double y) {
        return String.format(Locale.ROOT, "%.2f %.2f", x, y);
    }
}
