package org.gritwright.examples.fleetmemory;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A picture of lines, areas, marks and words that a template writes as SVG. A "look" is a class of the style sheet. Shape tells marks
 * apart and never color, so that it is read in black and white too.
 */
final class Drawing {
    /** What a mark looks like, how far it reaches from its middle, and what stands for it in words. */
    enum Mark {
        CIRCLE("mark", "●", 4),
        SQUARE("mark", "■", 4),
        DIAMOND("mark", "◆", 5.5),
        TRIANGLE("mark", "▲", 5),
        DOT("quiet", "•", 2.2),
        RING("ring", "◯", 8.5);

        private final String look;
        private final String sign;
        private final double reach;

        Mark(String look, String sign, double reach) {
            this.look = look;
            this.sign = sign;
            this.reach = reach;
        }

        String sign() {
            return sign;
        }

        /** From its middle, in steps from place to place. */
        private String outline(double r) {
            return switch (this) {
                case CIRCLE, RING, DOT ->
                    steps("m%s 0a%s %s 0 1 0 %s 0a%s %s 0 1 0 %s 0z", -r, r, r, 2 * r, r, r, -2 * r);
                case SQUARE -> steps("m%s %sh%sv%sh%sz", -r, -r, 2 * r, 2 * r, -2 * r);
                case DIAMOND -> steps("m0 %sl%s %sl%s %sl%s %sz", -r, r, r, -r, r, -r, -r);
                case TRIANGLE -> steps("m0 %sl%s %sh%sz", -r, r, 1.8 * r, -2 * r);
            };
        }

        private static String steps(String form, Double... numbers) {
            return String.format(
                    Locale.ROOT,
                    form,
                    Stream.of(numbers)
                            .map(number -> words(BigDecimal.valueOf(number).setScale(2, RoundingMode.HALF_EVEN))
                                    .replace('−', '-'))
                            .toArray());
        }
    }

    /** @param d the path, as SVG writes it */
    record Shape(String look, String d) {}

    record Label(String look, long x, long y, String text) {}

    /** A place of a line or an area. */
    record Spot(double x, double y) {}

    private static final double SMALL = 0.5;

    private static final int TICK = 4;
    private static final int BELOW_AXIS = 17;
    private static final int LEFT_OF_AXIS = 7;

    private final int width;
    private final int height;
    private final String description;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();
    private boolean areMarksSmall;

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
        shapes.add(new Shape(mark.look, "M" + place(x, y) + mark.outline(mark.reach * (areMarksSmall ? SMALL : 1))));
    }

    /** Where marks are so many that they would hide each other. */
    void makeMarksSmall() {
        areMarksSmall = true;
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
        text("upright", 7, (up.start() + up.end()) / 2, title);
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
