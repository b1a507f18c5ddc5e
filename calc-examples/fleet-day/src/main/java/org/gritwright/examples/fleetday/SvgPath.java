package org.gritwright.examples.fleetday;

import java.awt.geom.Path2D;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the paths that {@link Plot} writes: straight lines, and half circles that go up first. */
final class SvgPath {
    private static final Pattern STEP = Pattern.compile("([MmLlhvaZz])([^A-Za-z]*)");
    private static final Pattern NUMBER = Pattern.compile("-?[0-9]*\\.?[0-9]+");

    /** How far a cubic curve's handles reach to make a quarter of a circle of radius 1. */
    private static final double HANDLE = 0.5522847498;

    private final Path2D.Double path = new Path2D.Double();
    private double x;
    private double y;

    private SvgPath() {}

    static Path2D of(String d) {
        SvgPath reader = new SvgPath();
        Matcher step = STEP.matcher(d);
        while (step.find()) {
            double[] numbers = NUMBER.matcher(step.group(2))
                    .results()
                    .mapToDouble(number -> Double.parseDouble(number.group()))
                    .toArray();
            reader.step(step.group(1).charAt(0), numbers);
        }
        return reader.path;
    }

    private void step(char command, double[] numbers) {
        switch (command) {
            case 'M' -> move(numbers[0], numbers[1]);
            case 'm' -> move(x + numbers[0], y + numbers[1]);
            case 'L' -> line(numbers[0], numbers[1]);
            case 'l' -> line(x + numbers[0], y + numbers[1]);
            case 'h' -> line(x + numbers[0], y);
            case 'v' -> line(x, y + numbers[0]);
            case 'a' -> halfCircle(numbers[5]);
            default -> path.closePath();
        }
    }

    private void move(double toX, double toY) {
        x = toX;
        y = toY;
        path.moveTo(x, y);
    }

    private void line(double toX, double toY) {
        x = toX;
        y = toY;
        path.lineTo(x, y);
    }

    /** Counterclockwise on the page to a place at the same height. */
    private void halfCircle(double across) {
        double radius = across / 2;
        double handle = HANDLE * radius;
        path.curveTo(x, y + handle, x + radius - handle, y + radius, x + radius, y + radius);
        path.curveTo(x + radius + handle, y + radius, x + across, y + handle, x + across, y);
        x += across;
    }
}
