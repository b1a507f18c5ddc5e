package org.gritwright.examples.fleetday;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.LongStream;

/**
 * Linear axes in a part of a picture, with what is drawn in them, as shapes and labels that a template writes as SVG. A
 * "look" is a class of the style sheet.
 */
final class Plot {
    /** From one end to the other, of numbers or of the picture's places; places grow downward. */
    record Span(double from, double to) {
        private double at(double number, Span numbers) {
            return from + (number - numbers.from) / (numbers.to - numbers.from) * (to - from);
        }

        /** Round numbers between the ends. */
        private List<BigDecimal> ticks() {
            BigDecimal step = roundStep(BigDecimal.valueOf(to - from));
            return LongStream.rangeClosed(
                            multiple(from, step, RoundingMode.CEILING), multiple(to, step, RoundingMode.FLOOR))
                    .mapToObj(i -> step.multiply(BigDecimal.valueOf(i)))
                    .toList();
        }

        private static long multiple(double end, BigDecimal step, RoundingMode rounding) {
            return BigDecimal.valueOf(end).divide(step, 0, rounding).longValueExact();
        }
    }

    /** What a mark looks like: its outline as a path from its middle, with its look. */
    enum Mark {
        CIRCLE("mark", "m-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0-9 0z"),
        DIAMOND("mark", "m0-6l6 6l-6 6l-6-6z"),
        SQUARE("mark", "m-5-5h10v10h-10z"),
        CROSS("stroke", "m-5-5l10 10m0-10l-10 10");

        private final String look;
        private final String outline;

        Mark(String look, String outline) {
            this.look = look;
            this.outline = outline;
        }
    }

    /** @param d the path, as SVG writes it */
    record Shape(String look, String d) {}

    record Label(String look, long x, long y, String text) {}

    private static final int FEWEST_STEPS = 4;
    private static final List<Integer> ROUND = List.of(5, 2, 1);
    private static final double TICK = 4;

    private final Span across;
    private final Span up;
    private final Span xs;
    private final Span ys;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    /**
     * @param across from the left edge to the right
     * @param up from the lower edge to the upper
     * @param xs the numbers at the left and the right edge
     * @param ys the numbers at the lower and the upper edge
     */
    Plot(Span across, Span up, Span xs, Span ys) {
        this.across = across;
        this.up = up;
        this.xs = xs;
        this.ys = ys;
    }

    List<Shape> shapes() {
        return shapes;
    }

    List<Label> labels() {
        return labels;
    }

    /** The largest of 1, 2 or 5 times a power of ten that goes into a range four times or more. */
    static BigDecimal roundStep(BigDecimal range) {
        BigDecimal largest = range.divide(BigDecimal.valueOf(FEWEST_STEPS));
        int power = largest.precision() - largest.scale() - 1;
        return ROUND.stream()
                .map(digit -> BigDecimal.valueOf(digit).scaleByPowerOfTen(power))
                .filter(step -> step.compareTo(largest) <= 0)
                .findFirst()
                .orElseThrow();
    }

    static String text(BigDecimal tick) {
        return tick.stripTrailingZeros().toPlainString().replace('-', '−');
    }

    /** How wide the labels of an upright axis are at most, in an ordinary font. */
    static double widthOfLabels(Span ys) {
        return 8.0
                * ys.ticks().stream()
                        .mapToInt(tick -> text(tick).length())
                        .max()
                        .orElse(0);
    }

    void line(String look, double fromX, double fromY, double toX, double toY) {
        shapes.add(new Shape(look, "M" + place(fromX, fromY) + "L" + place(toX, toY)));
    }

    void vertical(String look, double x) {
        line(look, x, ys.from, x, ys.to);
    }

    <T> void line(String look, List<T> points, ToDoubleFunction<T> x, ToDoubleFunction<T> y) {
        shapes.add(new Shape(look, "M" + path(points, x, y)));
    }

    <T> void band(
            String look, List<T> points, ToDoubleFunction<T> x, ToDoubleFunction<T> low, ToDoubleFunction<T> high) {
        List<T> back = new ArrayList<>(points);
        Collections.reverse(back);
        shapes.add(new Shape(look, "M" + path(points, x, high) + "L" + path(back, x, low) + "Z"));
    }

    void mark(Mark mark, double x, double y) {
        shapes.add(new Shape(mark.look, "M" + place(x, y) + mark.outline));
    }

    /** A text at the left edge of the picture, beside a height. */
    void beside(double y, String text) {
        label("start", 0, up.at(y, ys), text);
    }

    /** A short text right above a place. */
    void above(double x, double y, String text) {
        label("middle", across.at(x, xs), up.at(y, ys) - 9, text);
    }

    private void label(String look, double x, double y, String text) {
        labels.add(new Label(look, Math.round(x), Math.round(y), text));
    }

    void xAxis(Function<BigDecimal, String> words) {
        for (BigDecimal tick : xs.ticks()) {
            double x = across.at(tick.doubleValue(), xs);
            shapes.add(new Shape("axis", format("M%.2f %.2fv%.2f", x, up.from, TICK)));
            label("middle", x, up.from + 18, words.apply(tick));
        }
        line("axis", xs.from, ys.from, xs.to, ys.from);
    }

    void xTitle(String title) {
        label("middle", (across.from + across.to) / 2, up.from + 40, title);
    }

    void yAxis(String title) {
        for (BigDecimal tick : ys.ticks()) {
            double y = up.at(tick.doubleValue(), ys);
            shapes.add(new Shape("axis", format("M%.2f %.2fh%.2f", across.from, y, -TICK)));
            label("end", across.from - 8, y, text(tick));
        }
        vertical("axis", xs.from);
        label("upright", 12, (up.from + up.to) / 2, title);
    }

    private <T> String path(List<T> points, ToDoubleFunction<T> x, ToDoubleFunction<T> y) {
        return points.stream()
                .map(point -> place(x.applyAsDouble(point), y.applyAsDouble(point)))
                .collect(Collectors.joining("L"));
    }

    private String place(double x, double y) {
        return format("%.2f %.2f", across.at(x, xs), up.at(y, ys));
    }

    private static String format(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers);
    }
}
