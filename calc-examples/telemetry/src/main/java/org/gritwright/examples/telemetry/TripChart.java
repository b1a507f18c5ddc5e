package org.gritwright.examples.telemetry;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** One trip of one truck: the rate over the distance, with the target's band, and what was outside of it or isn't known. */
final class TripChart {
    private static final int WIDTH = 1080;
    private static final int HEIGHT = 460;
    private static final double LEFT = 72;
    private static final double RIGHT = WIDTH - 20.0;
    private static final double TOP = 92;
    private static final double BOTTOM = HEIGHT - 60.0;
    private static final double LEGEND = 66;
    private static final double NARROWEST_WORD = 13;

    /** Above so many times the target a scale would hide what matters. */
    private static final double HIGHEST = 2;

    /** Where nobody said what was wanted, as in lb per lane-mile. */
    private static final double NO_TARGET = 200;

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.US);

    private static final Map<Verdict, String> LOOKS = Map.of(
            Verdict.BELOW, "below",
            Verdict.ABOVE, "above",
            Verdict.UNKNOWN, "unknown",
            Verdict.NOT_SPREADING, "off");

    private final String truck;
    private final Target target;
    private final Trip trip;
    private final double pieceMiles;
    private final ZoneOffset offset;
    private final List<Trip.Piece> pieces;
    private final Axis across;
    private final Axis up;

    TripChart(String truck, Target target, Trip trip, double pieceMiles, ZoneOffset offset) {
        this.truck = truck;
        this.target = target;
        this.trip = trip;
        this.pieceMiles = pieceMiles;
        this.offset = offset;
        this.pieces = trip.pieces(target);
        double end = (pieces.get(pieces.size() - 1).number() + 1) * pieceMiles;
        double highest = HIGHEST * (target.isKnown() ? target.poundsPerLaneMile() : NO_TARGET);
        this.across = new Axis(0, end, LEFT, RIGHT);
        this.up = new Axis(0, highest, BOTTOM, TOP);
    }

    Drawing drawing() {
        String start = TIME.format(Instant.ofEpochMilli(trip.startMillis()).atOffset(offset));
        String title = truck + ": rate laid on the trip that began " + start;
        Drawing drawing = new Drawing(
                WIDTH,
                HEIGHT,
                title,
                "Rate in pounds per lane-mile over distance in miles, in pieces of " + text(pieceMiles)
                        + " mile. The table of pieces has the numbers.");
        drawing.label("head", LEFT, 26, title);
        drawing.label("start", LEFT, 46, subtitle());
        band(drawing);
        stretches(drawing);
        rates(drawing);
        drawing.bottom(across, BOTTOM, "distance, mi");
        drawing.left(up, LEFT, 18, "rate, lb per lane-mile");
        legend(drawing);
        return drawing;
    }

    private String subtitle() {
        String wanted = target.isKnown()
                ? "target " + text(target.poundsPerLaneMile()) + " lb per lane-mile, band ±"
                        + text(target.band().limit().getValue().doubleValue()) + " %"
                : "no one target";
        String lanes = text(target.lanes()) + (target.lanes() > 1 ? " lanes" : " lane") + " in a pass";
        boolean isHigher = pieces.stream().anyMatch(piece -> piece.poundsPerMile() / target.lanes() > up.to());
        return wanted + "; " + lanes + "; one step is " + text(pieceMiles) + " mi"
                + (isHigher ? "; higher rates stand at the upper edge" : "");
    }

    private void band(Drawing drawing) {
        if (target.isKnown()) {
            double rate = target.poundsPerLaneMile();
            double part = target.band().limit().getValue().doubleValue() / 100;
            drawing.box("band", LEFT, up.at(rate * (1 + part)), RIGHT, up.at(rate * (1 - part)));
            drawing.line("target", LEFT, up.at(rate), RIGHT, up.at(rate));
        }
    }

    /** Neighbors of one verdict are one stretch. */
    private void stretches(Drawing drawing) {
        int from = 0;
        for (int i = 1; i <= pieces.size(); i++) {
            if (i == pieces.size()
                    || pieces.get(i).verdict() != pieces.get(from).verdict()) {
                stretch(drawing, pieces.get(from), pieces.get(i - 1));
                from = i;
            }
        }
    }

    private void stretch(Drawing drawing, Trip.Piece first, Trip.Piece last) {
        String look = LOOKS.get(first.verdict());
        if (look != null) {
            double left = across.at(first.number() * pieceMiles);
            double right = across.at((last.number() + 1) * pieceMiles);
            drawing.box(look, left, TOP, right, BOTTOM);
            String words = first.verdict() == Verdict.NOT_SPREADING
                    ? "off"
                    : first.verdict().words();
            double middle = (left + right) / 2;
            if (right - left > 9.0 * words.length()) {
                drawing.label("strong", middle, BOTTOM - 12, words);
            } else if (right - left > NARROWEST_WORD) {
                drawing.label("upright-strong", middle + 4, BOTTOM - 30, words);
            }
        }
    }

    private void rates(Drawing drawing) {
        StringBuilder path = new StringBuilder();
        boolean drawn = false;
        for (Trip.Piece piece : pieces) {
            if (piece.spreadingMillimeters() == 0) {
                drawn = false;
                continue;
            }
            double height = up.at(piece.poundsPerMile() / target.lanes());
            path.append(drawn ? 'L' : 'M')
                    .append(Drawing.place(across.at(piece.number() * pieceMiles), height))
                    .append('L')
                    .append(Drawing.place(across.at((piece.number() + 1) * pieceMiles), height));
            drawn = true;
        }
        drawing.path("rate", path);
    }

    private void legend(Drawing drawing) {
        double x = LEFT;
        x = legend(drawing, "within", "within the band", x);
        x = legend(drawing, "below", "below", x);
        x = legend(drawing, "above", "above", x);
        x = legend(drawing, "unknown", "nobody knows what was laid", x);
        legend(drawing, "off", "spreading off", x);
    }

    static double legend(Drawing drawing, String look, String words, double x) {
        drawing.box(look, x, LEGEND - 4, x + 30, LEGEND + 12);
        drawing.box("frame", x, LEGEND - 4, x + 30, LEGEND + 12);
        drawing.label("start", x + 37, LEGEND + 9, words);
        return x + 62 + 7.6 * words.length();
    }

    private static String text(double number) {
        return Drawing.text(BigDecimal.valueOf(Math.round(number * 1000) / 1000.0));
    }
}
