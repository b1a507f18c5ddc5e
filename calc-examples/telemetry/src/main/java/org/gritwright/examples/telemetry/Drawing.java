package org.gritwright.examples.telemetry;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.ClasspathLoader;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A picture as shapes and labels, which a template writes as SVG. A "look" is a class of its style sheet. */
final class Drawing {
    /** @param d the path, as SVG writes it */
    record Shape(String look, String d) {}

    record Label(String look, String x, String y, String text) {}

    private static final double TICK = 5;

    private final int width;
    private final int height;
    private final String title;
    private final String description;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();

    /** @param description for who can't see it */
    Drawing(int width, int height, String title, String description) {
        this.width = width;
        this.height = height;
        this.title = title;
        this.description = description;
    }

    void line(String look, double fromX, double fromY, double toX, double toY) {
        shapes.add(new Shape(look, "M" + place(fromX, fromY) + "L" + place(toX, toY)));
    }

    void path(String look, CharSequence d) {
        shapes.add(new Shape(look, d.toString()));
    }

    void box(String look, double left, double top, double right, double bottom) {
        if (right > left) {
            shapes.add(new Shape(
                    look,
                    "M" + place(left, top) + "L" + place(right, top) + "L" + place(right, bottom) + "L"
                            + place(left, bottom) + "Z"));
        }
    }

    void label(String look, double x, double y, String text) {
        labels.add(new Label(look, number(x), number(y), text));
    }

    /** An axis along the bottom, with its title. */
    void bottom(Axis axis, double y, String axisTitle) {
        for (BigDecimal tick : axis.ticks()) {
            double x = axis.at(tick.doubleValue());
            line("axis", x, y, x, y + TICK);
            label("middle", x, y + 20, text(tick));
        }
        line("axis", axis.fromPlace(), y, axis.toPlace(), y);
        label("middle", (axis.fromPlace() + axis.toPlace()) / 2, y + 42, axisTitle);
    }

    /** An axis up the left side, with its title. */
    void left(Axis axis, double x, double titleX, String axisTitle) {
        for (BigDecimal tick : axis.ticks()) {
            double y = axis.at(tick.doubleValue());
            line("axis", x - TICK, y, x, y);
            label("end", x - 9, y + 4, text(tick));
        }
        line("axis", x, axis.fromPlace(), x, axis.toPlace());
        label("upright", titleX, (axis.fromPlace() + axis.toPlace()) / 2, axisTitle);
    }

    static String text(BigDecimal tick) {
        return tick.stripTrailingZeros().toPlainString();
    }

    static String place(double x, double y) {
        return number(x) + " " + number(y);
    }

    private static String number(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }

    void writeTo(Writer out) throws IOException {
        ClasspathLoader loader = new ClasspathLoader(Drawing.class.getClassLoader());
        loader.setPrefix("org/gritwright/examples/telemetry");
        PebbleEngine engine = new PebbleEngine.Builder()
                .loader(loader)
                .autoEscaping(true)
                .defaultLocale(Locale.ROOT)
                .strictVariables(true)
                .build();
        StringWriter text = new StringWriter();
        engine.getTemplate("drawing.peb")
                .evaluate(
                        text,
                        Map.of(
                                "width", width,
                                "height", height,
                                "title", title,
                                "description", description,
                                "shapes", shapes,
                                "labels", labels));
        out.write(text.toString());
    }
}
